"""The check all workouts pass through, whether typed, loaded or read from a file."""

import copy

import pytest
from sample_workout import small_workout

from webapp import briefing, class_tables, lane_sheets
from webapp.own_movements import own_entry, own_key
from webapp.problems import WorkoutError
from webapp.workouts import checked, completed, read_json, texts


def problem(change):
    workout = small_workout()
    change(workout)
    with pytest.raises(WorkoutError) as caught:
        checked(workout)
    return caught.value.problems


def block(workout):
    return workout["options"][0]["blocks"][1]


@pytest.mark.parametrize("change, path, code", [
    (lambda w: block(w).update(load_kg={"z": 40}), ("options", 0, "blocks", 1, "load_kg", "z"), "unknown_division"),
    (lambda w: block(w).update(load_kg={"a": True}), ("options", 0, "blocks", 1, "load_kg", "a"), "not_a_number"),
    (lambda w: block(w).update(mark_every=49), ("options", 0, "blocks", 1, "mark_every"), "mark_beyond"),
    (lambda w: block(w).update(unit="furlongs"), ("options", 0, "blocks", 1, "unit"), "unknown_choice"),
    (lambda w: block(w).update(movement="flurble"), ("options", 0, "blocks", 1, "movement"), "unknown_movement"),
    (lambda w: block(w).update(amount=float("nan")), ("options", 0, "blocks", 1, "amount"), "not_a_number"),
    (lambda w: block(w).update(sides="left"), ("options", 0, "blocks", 1, "sides"), "unknown_choice"),
    (lambda w: w.update(shape="sideways"), ("shape",), "unknown_choice"),
    (lambda w: w.update(shape=[]), (), "not_a_workout"),
    (lambda w: w.update(schema=2), (), "not_a_workout"),
    (lambda w: w.update(options={}), ("options",), "no_options"),
    (lambda w: w.update(options=[None]), (), "not_a_workout"),
    (lambda w: w.update(divisions=7), (), "not_a_workout"),
    (lambda w: w.update(cap_s=10 ** 400), (), "not_a_workout"),
    (lambda w: w["options"][0].update(key="<b>"), (), "not_a_workout"),
    (lambda w: w.update(options=w["options"] * 5), ("options",), "too_many_options"),
    (lambda w: w["options"][0].update(rep_scheme=[9, 7], rounds=3), ("options", 0, "rounds"), "rounds_or_scheme"),
])
def test_each_mistake_is_named_at_its_place(change, path, code):
    assert problem(change)[path][0] == code


def test_the_check_changes_nothing():
    workout = small_workout()
    before = copy.deepcopy(workout)
    assert checked(workout) is workout and workout == before


@pytest.mark.parametrize("text", ["", "[", "NaN", '{"cap_s": Infinity}', '{"cap_s": 1e400}', "[" * 100_000, "1" * 5000])
def test_what_is_no_json_is_refused(text):
    with pytest.raises(WorkoutError):
        checked(read_json(text))


def test_movements_come_along_and_a_coachs_changes_stay():
    workout = small_workout()
    mine = completed(workout)["movements"]["ring-dip"] | {"standards": ["Mine."]}
    entries = completed(workout | {"movements": {"ring-dip": mine, "row": {}}})["movements"]
    assert list(entries) == ["ring-dip", "sandbag-carry"]
    assert entries["ring-dip"]["standards"] == ["Mine."]


def test_every_text_a_page_prints_can_be_translated():
    found = list(texts(completed(small_workout())))
    assert {"As prescribed", "Men", "Turn behind the line.", "Shake your arms out first.", "Ring dip"} <= set(found)


@pytest.mark.parametrize("unit", ["reps", "m", "cal", "s"])
def test_a_movement_of_ones_own_can_be_planned(unit):
    workout = small_workout()
    key = own_key("Tyre flip, è!")
    workout["movements"] = {key: own_entry("Tyre flip", unit, 5.0, "legs")}
    workout["options"][0]["blocks"][0] |= {"movement": key, "unit": unit}
    assert key == "own-tyre-flip-e"
    assert class_tables.refusal(completed(checked(workout))) is None


def test_a_movement_of_ones_own_has_every_field_of_the_library():
    from webapp import movements

    assert set(own_entry("Tyre flip", "reps", 5.0, "legs")) == set(movements.entry("ring-dip"))


def test_the_briefing_counts_as_the_engine_does():
    """By hand: 24 dips and 48 m with a mark every 12 m are 24 + 4 counts."""
    from webapp.engine import plan

    workout = completed(small_workout())
    rows = lane_sheets.running(workout, workout["options"][0])
    assert [row["count"] for row in rows] == [24, 28]
    score = plan(workout, {}, {"option": "prescribed", "division": "a"})["score"]
    assert score["count_in_all"] == 28


def test_equipment_is_counted_with_its_loads():
    workout = completed(small_workout())
    workout["options"][0]["blocks"][1] |= {"movement": "farmer-carry", "implements": 2}
    workout = completed(workout)
    things = {thing["name"]: thing for thing in briefing.equipment(workout, workout["options"][0])}
    heavy = [thing for thing in things.values() if thing["loads"]]
    assert [(thing["count"], thing["loads"]) for thing in heavy] == [(2, [40, 30])]
