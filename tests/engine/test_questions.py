"""questions(): only the numbers that matter for this workout, those that decide it first."""

import copy
import json

import pytest
from engine_samples import able, block, option, six_blocks, workout, workout_of
from phones_engine import plan, questions

from webapp.engine.parameters import MOST_NEEDED
from webapp.movements import library

KEYS = {"kind", "movement", "unit", "default", "low", "high", "step", "needed", "maximal"}
KINDS = {"max_unbroken", "one_rep_max", "effort", "body_mass", "repeat_test", "wait_between_singles_s", "steady_s", "long_effort"}


def asked(made, level="regular", **settings):
    """The questions for somebody of that level."""
    return questions(made, settings, {"level": level})


def test_a_question_has_its_keys_and_a_default_within_its_bounds():
    for each in asked(six_blocks()):
        assert set(each) >= KEYS
        assert each["kind"] in KINDS
        assert each["low"] < each["high"]
        assert each["default"] is None or each["low"] <= each["default"] <= each["high"]


def test_each_movement_is_asked_once_and_none_that_is_not_in_the_option():
    made = workout_of([option([block("pull-up", 20), block("push-up", 20), block("pull-up", 10)]), option([block("ring-row", 20)], key="scaled")])
    names = [each["movement"] for each in asked(made) if each["kind"] == "max_unbroken"]
    assert sorted(names) == ["pull-up", "push-up"]
    assert {each["movement"] for each in asked(made, option="scaled")} == {"ring-row"}


def test_what_decides_comes_first():
    """Forty of a movement one does five of in one go, before ten of one that one does fifty of."""
    assert asked(workout([block("air-squat", 10), block("handstand-push-up", 40)]))[0]["movement"] == "handstand-push-up"


def test_few_are_needed_before_a_first_plan():
    made = workout([block(name, 40) for name in ("pull-up", "push-up", "ring-dip", "sit-up", "toes-to-bar", "handstand-push-up")])
    needed = [each["needed"] for each in asked(made)]
    assert sum(needed) == MOST_NEEDED
    assert needed[:MOST_NEEDED] == [True] * MOST_NEEDED


def test_easy_work_needs_no_number():
    assert not any(each["needed"] for each in asked(workout([block("air-squat", 5), block("sit-up", 5)]), "keen"))


def test_a_load_asks_for_the_one_rep_max_and_a_machine_for_a_time():
    kinds = {each["movement"]: each["kind"] for each in asked(workout([block("deadlift", 20, load_kg=80), block("row", 500, "m")])) if each["kind"] in ("one_rep_max", "effort")}
    assert kinds == {"deadlift": "one_rep_max", "row": "effort"}
    assert "body_mass" in [each["kind"] for each in asked(workout([block("deadlift", 20, load_kg=80)]))]


def heaviest(movement="front-squat", **more):
    """A workout for the heaviest lift of one movement."""
    return {**workout([block(movement, 1)]), "shape": "load", "time_s": 480, **more}


def test_a_heaviest_lift_asks_for_the_heaviest_single_first_and_takes_what_is_told():
    """Without it the attempts are a level's guess, whatever the athlete lifts."""
    first = asked(heaviest(), "keen")[0]
    assert (first["kind"], first["movement"], first["needed"]) == ("one_rep_max", "front-squat", True)
    assert first["default"] == pytest.approx(plan(heaviest(), {"level": "keen"}, {})["lift"]["best_kg"], abs=1.3)
    told = plan(heaviest(), {"level": "keen", "movements": {"front-squat": {"one_rep_max_kg": 140}}}, {})
    assert (told["lift"]["best_kg"], told["filled"]) == (140, [])
    assert "body_mass" in [each["kind"] for each in asked(heaviest())]


def test_every_part_is_asked_for_its_numbers():
    light, heavy = workout([block("push-up", 30)]), heaviest("power-clean")
    together = {**light, "parts": [light, heavy], "movements": light["movements"] | heavy["movements"]}
    assert {(each["kind"], each["movement"]) for each in asked(together)} >= {("max_unbroken", "push-up"), ("one_rep_max", "power-clean")}


@pytest.mark.parametrize(("largest", "sharper"), [(1, "wait_between_singles_s"), (3, "wait_between_singles_s"), (5, None), (8, "repeat_test"), (20, "repeat_test")])
def test_small_sets_ask_for_the_wait_large_ones_for_the_repeat_test(largest, sharper):
    """Singles up to three; the repeat test from eight up."""
    made = workout([block("handstand-push-up", 30)])
    kinds = [each["kind"] for each in questions(made, {}, able(handstand_push_up=largest))]
    assert kinds[1:] == ([] if sharper is None else [sharper])


def test_a_second_effort_is_asked_for_once_the_first_is_told():
    """Two of one kind give W′ as well as CP (`test_lungs`); until then one is enough to ask."""
    made = workout([block("row", 500, "m"), block("run", 400, "m")])
    first = [{"kind": "row", "m": 2000, "s": 460}]
    asked_for = [[(each["movement"], each["m"]) for each in questions(made, {}, {"efforts": efforts}) if each["kind"] == "effort"] for efforts in ([], first)]
    assert asked_for == [[("row", 2000), ("run", 1000)], [("row", 2000), ("run", 1000), ("row", 1000)]]
    floors = [min(point["breath"] for point in plan(made, {"efforts": efforts}, {})["reserve_curve"]) for efforts in (first, [*first, {"kind": "row", "m": 1000, "s": 215}])]
    assert floors[0] != floors[1]


@pytest.mark.parametrize(("movement", "first"), [("row", {"kind": "row", "m": 2000, "s": 460}), ("run", {"kind": "run", "m": 1000, "s": 250})])
def test_every_second_effort_in_its_range_agrees_with_the_first(movement, first):
    """Others contradict it and give no plan at all: 2000 m in 7:40, then 1000 m in 3:55, slower."""
    made = workout([block(movement, 500, "m"), block("push-up", 10)])
    second = [each for each in questions(made, {}, {"efforts": [first]}) if each["kind"] == "effort"][1]
    for seconds in (second["low"], second["high"]):
        assert plan(made, {"efforts": [first, {"kind": movement, "m": second["m"], "s": seconds}]}, {})["score"]["likely"] > 0
    if movement == "row":
        assert second["high"] < 235


def test_the_pace_is_that_of_the_longest_effort_whatever_their_order():
    made = workout([block("run", 800, "m")])
    efforts = [{"kind": "run", "m": 1000, "s": 240}, {"kind": "run", "m": 3000, "s": 800}]
    likely = [plan(made, {"efforts": told}, {})["score"]["likely"] for told in (efforts, efforts[::-1])]
    assert likely[0] == likely[1]


def test_the_second_set_of_the_repeat_test_is_never_larger_than_the_first():
    made = workout([block("handstand-push-up", 30)])
    [again] = [each for each in questions(made, {}, able(handstand_push_up=9)) if each["kind"] == "repeat_test"]
    assert again["default"] < again["high"] == 9


def test_what_takes_all_out_is_marked_so():
    """Within 72 hours of the heat those are not offered as tests."""
    marked = {each["kind"]: each["maximal"] for each in asked(six_blocks(), "keen")}
    assert all(marked[kind] for kind in ("max_unbroken", "effort", "repeat_test"))


@pytest.mark.parametrize("level", ["new", "regular", "keen", "expert"])
def test_giving_the_defaults_gives_nearly_the_plan_without_numbers(level):
    """To 3 %: defaults are shown rounded."""
    made = six_blocks()
    movements = {each["movement"]: {"max_unbroken": each["default"]} for each in asked(made, level) if each["kind"] == "max_unbroken"}
    given, bare = ({"level": level, **numbers} for numbers in ({"movements": movements}, {}))
    times = [plan(made, numbers, {"style": "even"})["blocks"] for numbers in (given, bare)]
    assert [block_made["reached"] for block_made in times[0]] == [block_made["reached"] for block_made in times[1]]
    stints = [plan(made, numbers, {})["basis"]["stints"] for numbers in (given, bare)]
    for one, other in zip(*stints, strict=True):
        assert one["max_steps"] == pytest.approx(other["max_steps"], rel=0.03, abs=0.51)


def test_every_movement_of_the_library_has_its_questions():
    for key, entry in library().items():
        for each in asked(workout([block(key, 10, entry["unit"], load_kg=entry["typical_load_kg"])])):
            json.dumps(each, allow_nan=False)


def test_nothing_is_changed():
    given = [six_blocks(), {"division": "b"}, able(pull_up=9)]
    kept = copy.deepcopy(given)
    questions(*given)
    assert given == kept


def light_and_heavy(light, heavy, heavy_first=False):
    """A workout in two parts, one for time and one for the heaviest lift."""
    parts = [workout([light]), heaviest(heavy)]
    parts = parts[::-1] if heavy_first else parts
    return {**parts[0], "parts": parts, "movements": parts[0]["movements"] | parts[1]["movements"]}


def kinds_of(made, movement):
    return sorted(each["kind"] for each in asked(made) if each["movement"] == movement)


@pytest.mark.parametrize("heavy_first", [False, True])
def test_a_movement_light_in_one_part_and_heaviest_in_another_asks_both_its_numbers(heavy_first):
    """Twenty-one thrusters at 35 kg go by the largest set, which the heaviest single only guesses at."""
    made = light_and_heavy(block("thruster", 21, load_kg=35), "thruster", heavy_first)
    assert kinds_of(made, "thruster") == ["max_unbroken", "one_rep_max", "repeat_test"]
    assert sorted(each["kind"] for each in asked(made) if each["needed"]) == ["max_unbroken", "one_rep_max"]


@pytest.mark.parametrize("heavy_first", [False, True])
def test_where_the_single_tells_the_light_part_too_it_is_asked_once(heavy_first):
    made = light_and_heavy(block("front-squat", 20, load_kg=50), "front-squat", heavy_first)
    [single] = [each for each in asked(made) if each["movement"] == "front-squat"]
    assert (single["kind"], single["needed"]) == ("one_rep_max", True)
    alone = next(each for each in asked(heaviest("front-squat")) if each["kind"] == "one_rep_max")
    assert single["default"] == alone["default"]


def test_without_an_answer_the_light_part_goes_by_the_single_that_was_told_and_the_question_says_so():
    made = light_and_heavy(block("thruster", 21, load_kg=35), "thruster")
    numbers = {"level": "regular", "movements": {"thruster": {"one_rep_max_kg": 60}}}
    [light] = [each for each in questions(made, {}, numbers) if each["kind"] == "max_unbroken"]
    [before] = [each for each in asked(made) if each["kind"] == "max_unbroken"]
    assert (light["by_single"], before["by_single"]) == (True, False)
    [stint] = plan(made, numbers, {})["parts"][0]["basis"]["stints"]
    assert light["default"] == pytest.approx(stint["max_steps"], abs=0.5)
    [told] = plan(made, {**numbers, "movements": {"thruster": {"one_rep_max_kg": 60, "max_unbroken": 30}}}, {})["parts"][0]["basis"]["stints"]
    assert told["max_steps"] == 30


def test_a_second_effort_says_which_it_is_held_against():
    efforts = [each for each in questions(workout([block("row", 500, "m")]), {}, {"efforts": [{"kind": "row", "m": 2000, "s": 460}]}) if each["kind"] == "effort"]
    assert [(each["m"], each.get("beside_m")) for each in efforts] == [(2000, None), (1000, 2000)]
