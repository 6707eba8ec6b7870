"""Absurd input ends in EngineError with a code, or in a plan that makes sense; nothing else, and soon."""

import copy
import json
import math
import time

import pytest
from engine_samples import able, block, six_blocks, workout

from webapp.engine import EngineError, break_up, class_table, judge, judge_break_up, learn, options, plan, questions, replan, reps_over_sets, warm_up

pytestmark = pytest.mark.slow
ABSURD = [0, -3, 1e9, 1e308, 0.5, math.nan, math.inf, True, "", "dieciséis", [1], {"a": None}, None]
SOON_S = 15.0  # for one call on a busy machine; a plan takes a few tenths, one of 240 stints two or three
TOP = ["shape", "cap_s", "divisions", "options", "movements", "lane", "title", "schema"]
OPTION = ["key", "name", "rounds", "blocks", "rep_scheme", "tie_break_after_block", "cap_s"]
BLOCK = ["movement", "amount", "unit", "load_kg", "load_of_body", "mark_every", "sides", "implements", "height_m", "target_m", "step", "note"]
NUMBERS = ["body_mass_kg", "height_m", "level", "age", "efforts", "sore", "strain_prone", "inverted_ok", "movements"]
MOVEMENT = ["max_unbroken", "seconds_per_unit", "repeat_test", "one_rep_max_kg", "wait_between_singles_s"]
SETTINGS = ["option", "division", "style", "form", "seed", "heat_start", "warm_up_min", "room_c", "rack", "lane_shared_by"]


def refused_or(call, *arguments, **more):
    """What a call gives, None where it refuses with a code; anything else fails the test, as does taking long."""
    started = time.perf_counter()
    try:
        answer = call(*arguments, **more)
    except EngineError as error:
        assert isinstance(error, ValueError)
        assert error.code.replace("_", "").isalnum(), error.code
        answer = None
    assert time.perf_counter() - started < SOON_S
    return answer


def assert_sane(made):
    """A plan that is JSON without nan, with a finite score."""
    if made is None:
        return
    json.dumps(made, allow_nan=False)
    assert made["score"]["likely"] >= 0
    assert all(each["lowest_reserve"] <= 1 for each in made["blocks"])


def two_blocks():
    """A small workout: a carry and pressing."""
    return workout([block("sandbag-carry", 20, "m", mark_every=10, load_kg={"a": 40, "b": 30}), block("handstand-push-up", 4)], cap_s=600)


@pytest.mark.parametrize("key", TOP)
def test_absurd_workouts(key):
    for value in ABSURD:
        assert_sane(refused_or(plan, {**two_blocks(), key: value}, {}, {}))


@pytest.mark.parametrize("key", OPTION)
def test_absurd_options(key):
    for value in ABSURD:
        made = two_blocks()
        made["options"][0][key] = value
        assert_sane(refused_or(plan, made, {}, {}))


@pytest.mark.parametrize("place", [0, 1])
@pytest.mark.parametrize("key", BLOCK)
def test_absurd_blocks(key, place):
    for value in ABSURD:
        made = two_blocks()
        made["options"][0]["blocks"][place][key] = value
        assert_sane(refused_or(plan, made, {}, {}))


@pytest.mark.parametrize("value", ABSURD, ids=str)
def test_absurd_things_where_a_block_an_option_or_a_division_should_be(value):
    for place in ("blocks", "options", "divisions", "parts"):
        made = two_blocks()
        holder = made["options"][0] if place == "blocks" else made
        holder[place] = [value]
        answer = refused_or(plan, made, {}, {})
        assert_sane(None if answer is None or "parts" in answer else answer)
        if place == "options":
            assert refused_or(options, made, {}, {}) is None


@pytest.mark.parametrize("key", NUMBERS)
def test_absurd_numbers(key):
    for value in ABSURD:
        assert_sane(refused_or(plan, two_blocks(), {key: value}, {}))


@pytest.mark.parametrize("key", MOVEMENT)
def test_absurd_numbers_of_a_movement(key):
    for value in ABSURD:
        given = {"max_unbroken": 10, "repeat_test": 5, key: value}
        assert_sane(refused_or(plan, two_blocks(), {"movements": {"handstand-push-up": given, "sandbag-carry": given}}, {}))


@pytest.mark.parametrize("effort", [3, "row", [], {}, {"kind": "row"}, {"kind": "row", "m": 0, "s": 0}, {"kind": "row", "m": "2000", "s": 400}, {"kind": ["row"], "m": 2000, "s": 400}])
def test_absurd_efforts(effort):
    rowing = workout([block("row", 500, "m"), block("push-up", 10)])
    assert_sane(refused_or(plan, rowing, {"efforts": [effort]}, {}))
    assert_sane(refused_or(plan, rowing, {"efforts": [{"kind": "row", "m": 500, "s": 100}, effort]}, {}))


@pytest.mark.parametrize("key", SETTINGS)
def test_absurd_settings(key):
    for value in ABSURD:
        assert_sane(refused_or(plan, two_blocks(), {}, {key: value}))


@pytest.mark.parametrize("value", ABSURD, ids=str)
def test_absurd_things_in_place_of_everything(value):
    good = [two_blocks(), {}, {}]
    for place in range(3):
        asked = copy.deepcopy(good)
        asked[place] = value
        refused_or(plan, *asked)
        refused_or(judge, *asked, [])
        refused_or(questions, asked[0], asked[2], asked[1])
    refused_or(class_table, value, "prescribed", "a")
    refused_or(class_table, two_blocks(), value, "a")
    refused_or(replan, value, [], 0)
    refused_or(learn, {}, value)
    refused_or(learn, value, {})


@pytest.mark.parametrize("value", ABSURD, ids=str)
def test_absurd_break_ups(value):
    for place in range(3):
        given = [12, 50, 2.6]
        given[place] = value
        refused_or(break_up, *given)
        refused_or(judge_break_up, given[0], [5, 5], [20], given[2])
    for name in ("set_up_s", "entry_reps", "held_back", "recovery"):
        refused_or(break_up, 12, 50, 2.6, **{name: value})
    for name in ("set_up_s", "entry_reps", "recovery"):
        refused_or(judge_break_up, 12, [5, 5], [20], 2.6, **{name: value})
    refused_or(judge_break_up, 12, value, [20], 2.6)
    refused_or(judge_break_up, 12, [5, value], [20], 2.6)
    refused_or(judge_break_up, 12, [5, 5], [value], 2.6)


@pytest.mark.parametrize("value", ABSURD, ids=str)
def test_absurd_sets_to_failure(value):
    for place in range(4):
        given = [12, 2.6, 60, 3]
        given[place] = value
        done = refused_or(reps_over_sets, *given)
        assert done is None or all(math.isfinite(reps) and reps >= 0 for reps in done)
    refused_or(reps_over_sets, 12, 2.6, 60, 3, cap=value, recovery={"repeat_test": value})


@pytest.fixture(scope="module")
def good():
    """A plan to be tapped along."""
    return plan(two_blocks(), able("keen", handstand_push_up=10), {})


@pytest.mark.parametrize("value", ABSURD, ids=str)
def test_absurd_taps(good, value):
    refused_or(replan, good, value, 60)
    refused_or(replan, good, [value], 60)
    refused_or(replan, good, [], value)
    for key in ("at_s", "kind", "reps"):
        refused_or(replan, good, [{"at_s": 30, "kind": "set", "reps": 2, key: value}], 60)
    refused_or(replan, {**good, "basis": value}, [], 60)


@pytest.mark.parametrize("value", ABSURD, ids=str)
def test_absurd_results_and_own_plans(good, value):
    refused_or(learn, {}, {"plan": good, "ends_s": value})
    refused_or(learn, {}, {"plan": good, "ends_s": [value]})
    refused_or(learn, {}, {"plan": good, "ends_s": [60], "failed": value})
    refused_or(learn, {}, {"plan": value, "ends_s": [60]})
    refused_or(judge, two_blocks(), {}, {}, value)
    refused_or(judge, two_blocks(), {}, {}, [value])
    refused_or(judge, two_blocks(), {}, {}, [None, {"sets": value, "rests_s": []}])
    refused_or(judge, two_blocks(), {}, {}, [None, {"sets": [2, 2], "rests_s": value}])


@pytest.mark.parametrize(("blocks", "rounds"), [(1, 120), (20, 6), (60, 200), (1, 10**9)])
def test_huge_workouts_end_soon(blocks, rounds):
    assert_sane(refused_or(plan, workout([block("push-up", 10)] * blocks, rounds=rounds), {}, {}))


@pytest.mark.parametrize(("movement", "amount", "unit", "largest"), [("push-up", 10000, "reps", 3), ("handstand-push-up", 1000, "reps", 1), ("plank", 3600, "s", 20), ("sandbag-carry", 5000, "m", 10), ("row", 42195, "m", None)])
def test_huge_amounts_end_soon(movement, amount, unit, largest):
    assert_sane(refused_or(plan, workout([block(movement, amount, unit)]), able("new", **{movement.replace("-", "_"): largest}), {}))


def test_keys_nobody_knows_are_passed_over():
    made = six_blocks()
    plain = plan(made, {"level": "keen"}, {})
    made["colour"] = "copper"
    made["options"][0]["blocks"][0]["mood"] = [1, 2]
    assert plan(made, {"level": "keen", "shoe": 43}, {"music": None}) == plain


@pytest.mark.parametrize("door", [questions, warm_up, options], ids=lambda door: door.__name__)
@pytest.mark.parametrize("key", MOVEMENT + BLOCK)
def test_absurd_numbers_and_blocks_at_other_doors(door, key):
    for value in ABSURD:
        asked, numbers = two_blocks(), {}
        if key in MOVEMENT:
            numbers = {"movements": {"handstand-push-up": {"max_unbroken": 10, key: value}}}
        else:
            asked["options"][0]["blocks"][1][key] = value
        refused_or(door, asked, *([{}, numbers] if door is questions else [numbers, {}]))


def test_a_division_that_is_no_text_where_the_workout_has_none():
    for value in ABSURD:
        for door in (plan, warm_up):
            refused_or(door, {**two_blocks(), "divisions": []}, {}, {"division": value})


def test_options_of_a_workout_in_parts():
    one = workout([block("push-up", 5)])
    refused_or(options, {**one, "parts": [{"shape": "for_time", "options": one["options"]}]}, {}, {})
