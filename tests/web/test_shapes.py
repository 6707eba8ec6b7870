"""Every shape the engine plans: set with the form, checked, read back, briefed, judged."""

import pytest
from form_reader import errors, fields, words
from sample_workout import small_workout

from webapp.problems import WorkoutError
from webapp.quick_engine import plan  # as the server asks for plans
from webapp.workouts import checked, completed

pytestmark = pytest.mark.slow
BLOCK = "options-0-blocks-0-"
LIFT = {BLOCK + "movement": "Front squat", BLOCK + "amount": "1"}
TYPED = {
    "amrap": {"time": "8:00", BLOCK + "step": "2", BLOCK + "amount": "2"},
    "intervals": {"interval": "1:30", "interval_count": "8"},
    "load": {"time": "12:00", **LIFT},
    "for_time": {"options-0-rounds": "5", BLOCK + "movement": "Push press", BLOCK + "load_a": "95", BLOCK + "load_b": "65",
                 BLOCK + "load_unit": "lb", BLOCK + "load_step": "5", BLOCK + "amount": "10", BLOCK + "step": "-2", "cap": "9:00"},
}
KEPT = {
    "amrap": {"time_s": 480}, "intervals": {"interval_s": 90, "interval_count": 8}, "load": {"time_s": 720}, "for_time": {"cap_s": 540},
}
# What stands in the fields of the other shapes when a coach has changed their mind.
LEFT_OVER = {"cap": "soon", "time": "x", "interval": "-", "interval_count": "many", "options-0-rep_scheme": "a", "options-0-tie_break": "9"}


@pytest.fixture
def typed(client):
    return fields(client.get("/new")) | {"title": "Brass Bell", BLOCK + "movement": "Ring dip", BLOCK + "amount": "6"}


def published(client, typed):
    """Save and publish what was typed; the base of its class pages."""
    saved = client.post("/new", data=typed)
    assert saved.status_code == 303, errors(saved)
    page = client.get(saved.location)
    answer = client.post(saved.location, data=fields(page) | {"do": "publish"})
    assert answer.status_code == 303, words(answer)
    return saved.location.replace("/c/", "/w/")


@pytest.mark.parametrize("shape", TYPED)
def test_each_shape_is_set_read_back_and_planned(client, typed, shape):
    typed |= {"shape": shape} | TYPED[shape]
    base = published(client, typed)
    workout = client.get(base + "/json").get_json()
    assert workout["shape"] == shape and KEPT[shape].items() <= workout.items()
    assert plan(workout, {}, {"option": "prescribed"})["score"]
    again = fields(client.get(base.replace("/w/", "/c/") + "/edit"))
    assert {name: again[name] for name in TYPED[shape]} == TYPED[shape]


def test_loads_that_rise_are_kept_exactly_and_their_label_with_them(client, typed):
    base = published(client, typed | {"shape": "for_time"} | TYPED["for_time"])
    block = client.get(base + "/json").get_json()["options"][0]["blocks"][0]
    # 5 lb = 2.26796185 kg: NIST SP 811 App. B.8, 1 lb = 0.45359237 kg exactly
    assert block["load_step_kg"] == 2.26796185 and block["as_written"] == "95 / 65 lb · + 5 lb"


@pytest.mark.parametrize("shape", ["amrap", "intervals", "load"])
def test_what_belongs_to_another_shape_neither_stands_in_the_way_nor_gets_in(client, typed, shape):
    own = {name: value for name, value in LEFT_OVER.items() if name not in TYPED[shape]}
    base = published(client, typed | {"shape": shape} | TYPED[shape] | own)
    workout = client.get(base + "/json").get_json()
    assert "cap_s" not in workout and not {"rounds", "rep_scheme", "tie_break_after_block"} & set(workout["options"][0])


def test_changing_the_shape_keeps_what_was_typed_for_the_other(client, typed):
    typed |= {"cap": "12:00", "options-0-rounds": "3"}
    again = fields(client.post("/new", data=typed | {"shape": "amrap", "do": "add-block:0"}))
    assert (again["shape"], again["cap"], again["options-0-rounds"]) == ("amrap", "12:00", "3")


@pytest.mark.parametrize("shape, changed, field", [
    ("amrap", {"time": ""}, "time"), ("amrap", {"time": "0:05"}, "time"), ("amrap", {"time": "later"}, "time"),
    ("intervals", {"interval": ""}, "interval"), ("intervals", {"interval": "90"}, "interval"),
    ("intervals", {"interval_count": ""}, "interval_count"), ("intervals", {"interval_count": "121"}, "interval_count"),
    ("intervals", {"interval_count": "2.5"}, "interval_count"), ("intervals", {BLOCK + "amount": ""}, BLOCK + "amount"),
    ("load", {"time": ""}, "time"), ("load", {BLOCK + "movement": "Pull-up"}, BLOCK + "movement"),
    ("load", {BLOCK + "movement": "Rest"}, BLOCK + "movement"), ("load", {BLOCK + "amount": "21"}, BLOCK + "amount"),
    ("for_time", {"options-0-rounds": "1"}, BLOCK + "step"), ("for_time", {BLOCK + "step": "-3"}, BLOCK + "step"),
    ("for_time", {BLOCK + "step": "two"}, BLOCK + "step"), ("for_time", {BLOCK + "step": "0.5"}, BLOCK + "step"),
    ("for_time", {BLOCK + "step": "501"}, BLOCK + "step"), ("for_time", {BLOCK + "load_step": "-20"}, BLOCK + "load_step"),
    ("for_time", {BLOCK + "load_step": "heavy"}, BLOCK + "load_step"),
    ("for_time", {BLOCK + "load_a": "", BLOCK + "load_b": ""}, BLOCK + "load_step"),
    ("for_time", {BLOCK + "amount": "", "options-0-rounds": "", "options-0-rep_scheme": "9 7"}, BLOCK + "step"),
])
def test_each_mistake_has_a_sentence_at_its_field_and_loses_nothing(client, typed, shape, changed, field):
    typed |= {"shape": shape} | TYPED[shape] | changed
    answer = client.post("/new", data=typed)
    assert answer.status_code == 422 and errors(answer).get(field), errors(answer)
    again = fields(answer)
    assert {name: again[name] for name in typed if name != "csrf_token"} == {name: typed[name] for name in typed if name != "csrf_token"}


def test_a_heaviest_lift_has_one_block(client, typed):
    typed = fields(client.post("/new", data=typed | {"shape": "load", "do": "add-block:0"})) | TYPED["load"]
    typed |= {"options-0-blocks-1-movement": "Row", "options-0-blocks-1-amount": "20"}
    assert "one block" in errors(client.post("/new", data=typed))["options-0-blocks"]


def test_more_intervals_than_anybody_does_are_refused_where_they_are_counted(client, typed):
    typed = fields(client.post("/new", data=typed | {"shape": "intervals", "do": "add-block:0"}))
    typed |= {"options-0-blocks-1-movement": "Row", "options-0-blocks-1-amount": "100", "options-0-blocks-1-unit": "m"}
    answer = client.post("/new", data=typed | {"interval": "1:00", "interval_count": "61"})
    assert "more than 120 blocks" in errors(answer)["interval_count"]


def drawn(shape, **changed):
    """The small workout in another shape."""
    return small_workout() | {"shape": shape} | changed


@pytest.mark.parametrize("workout, path, code", [
    (drawn("amrap"), ("time_s",), "missing"),
    (drawn("intervals", interval_s=60), ("interval_count",), "missing"),
    (drawn("intervals", interval_s=60, interval_count="ten"), ("interval_count",), "not_a_number"),
    (drawn("amrap", time_s=True), ("time_s",), "not_a_number"),
    (drawn("load", time_s=600), ("options", 0, "blocks"), "one_lift_only"),
])
def test_a_file_is_checked_like_a_form(workout, path, code):
    with pytest.raises(WorkoutError) as caught:
        checked(workout)
    assert caught.value.problems[path][0] == code


def test_numbers_for_each_round_are_for_time_only():
    workout = drawn("amrap", time_s=600)
    del workout["options"][0]["rounds"]
    workout["options"][0]["rep_scheme"] = [9, 7]
    with pytest.raises(WorkoutError) as caught:
        checked(workout)
    assert caught.value.problems[("options", 0, "rep_scheme")][0] == "scheme_for_time_only"


def test_a_step_that_is_no_number_is_named_at_its_place():
    workout = drawn("amrap", time_s=600)
    workout["options"][0]["blocks"][0]["step"] = "two"
    with pytest.raises(WorkoutError) as caught:
        checked(completed(workout))
    assert caught.value.problems[("options", 0, "blocks", 0, "step")][0] == "not_a_number"
