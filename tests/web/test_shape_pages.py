"""What class, screen and paper say of each shape of workout."""

from contextlib import closing

import pytest
from form_reader import words
from sample_workout import small_workout

from webapp import lane_sheets
from webapp.store import database, workouts
from webapp.workouts import checked, completed

pytestmark = pytest.mark.slow
DIPS = {"movement": "ring-dip", "amount": 4, "unit": "reps"}
CARRY = {"movement": "sandbag-carry", "amount": 24, "unit": "m", "mark_every": 12, "load_kg": {"a": 40, "b": 30}}
LIFT = {"movement": "front-squat", "amount": 1, "unit": "reps"}
REST = {"movement": "rest", "amount": 30, "unit": "s"}


def options(*blocks, **more):
    return [{"key": "prescribed", "name": "As prescribed", "blocks": list(blocks)} | more]


def made(**changed):
    """The small workout with another shape and other blocks, checked."""
    return completed(checked(small_workout() | {"advice": [], "cap_s": None} | changed))


AMRAP = made(shape="amrap", time_s=300, options=options(DIPS, CARRY, REST))
LADDER = made(shape="amrap", time_s=240, options=options(DIPS | {"amount": 2, "step": 2}))
INTERVALS = made(shape="intervals", interval_s=90, interval_count=4, options=options(DIPS | {"step": 1}, CARRY))
LOAD = made(shape="load", time_s=600, options=options(LIFT))
RISING = made(shape="for_time", options=options(CARRY | {"load_step_kg": 5}, rounds=3))
FALLING = made(shape="for_time", options=options(CARRY | {"load_step_kg": -2}, DIPS | {"amount": 10, "step": -1}, rounds=10))
PARTS = completed(checked(small_workout() | {"shape": None, "options": [], "parts": [
    {"shape": "for_time", "cap_s": 240, "rest_after_s": 120, "options": options(DIPS), "title": "Quick"},
    {"shape": "load", "time_s": 480, "options": options(LIFT)},
]}))
ALL = {"amrap": AMRAP, "ladder": LADDER, "intervals": INTERVALS, "load": LOAD, "rising": RISING, "falling": FALLING, "parts": PARTS}


@pytest.fixture
def show(app, client):
    """A function that publishes a workout and gives the text of one of its pages."""
    def text_of(workout, page=""):
        with closing(database.connect(app.config["DATABASE"])) as db:
            stored, _ = workouts.create(db, workout)
            workouts.publish(db, stored.code, 1)
        answer = client.get(f"/w/{stored.code}{page}")
        assert answer.status_code == 200
        return words(answer).replace("\u00a0", " ")
    return text_of


@pytest.mark.parametrize("page", ["", "/json", "/words/es.json", "/sheet", "/lane-sheet", "/qr"])
@pytest.mark.parametrize("name", ALL)
def test_every_page_of_every_shape_opens(show, name, page):
    assert show(ALL[name], page)


@pytest.mark.parametrize("workout, said", [
    (AMRAP, ["Most rounds in 5 minutes", "4 reps Ring dip", "30 seconds Rest"]),
    (LADDER, ["A ladder, as far as you get in 4 minutes", "2 – 4 – 6 … reps Ring dip"]),
    (INTERVALS, ["Every 1:30", "4 intervals", "4 – 5 – 6 – 7 reps Ring dip"]),
    (LOAD, ["Heaviest lift in 10 minutes", "1 rep Front squat"]),
    # 5 kg = 11.02 lb, 2 kg = 4.41 lb: NIST SP 811 App. B.8
    (RISING, ["For time", "3 rounds", "5 kg (11 lb) heavier each round"]),
    (FALLING, ["10 – 9 – 8 – … – 1 reps Ring dip", "2 kg (4.4 lb) lighter each round"]),
    (PARTS, ["Quick", "time cap 4:00", "Then a rest of 2 minutes.", "Part 2", "Heaviest lift in 8 minutes"]),
])
@pytest.mark.parametrize("page", ["", "/sheet"])
def test_the_briefing_names_the_shape_and_the_work(show, workout, said, page):
    text = show(workout, page)
    assert [phrase for phrase in said if phrase not in text] == []


def test_every_minute_is_called_so(show):
    assert "Every minute" in show(INTERVALS | {"interval_s": 60})
    assert "Every 2 minutes" in show(INTERVALS | {"interval_s": 120})


@pytest.mark.parametrize("workout, said", [
    (AMRAP, "Score to expect"), (INTERVALS, "How far it goes"), (RISING | {"cap_s": 200}, "Where the cap finds you"),
])
def test_the_table_says_what_the_score_will_be(show, workout, said):
    assert said in show(workout, "/sheet")


def test_attempts_have_no_table_by_largest_set(show):
    assert "Largest set" not in show(LOAD, "/sheet")


def test_the_judge_counts_within_each_round():
    """By hand: 4 dips, then 24 m with a mark every 12 m are 4 and 6 counts; a rest counts nothing and has no column."""
    sheet, = lane_sheets.of(AMRAP, "prescribed")
    assert sheet["kind"] == "rounds" and len(sheet["columns"]) == 2
    assert {tuple(cell["count"] for cell in row["cells"]) for row in sheet["rows"]} == {(4, 6)}
    assert [row["round"] for row in sheet["rows"]][:3] == [1, 2, 3]


def test_a_ladder_has_a_rung_for_each_row_of_the_judge():
    sheet, = lane_sheets.of(LADDER, "prescribed")
    assert [row["cells"][0]["amount"] for row in sheet["rows"]][:4] == [2, 4, 6, 8]
    assert sheet["columns"][0]["amount"] is None


def test_the_judge_sees_when_each_interval_begins_and_what_is_due(show):
    sheet, = lane_sheets.of(INTERVALS, "prescribed")
    assert [row["at_s"] for row in sheet["rows"]] == [0, 90, 180, 270]
    assert [[cell["count"] for cell in row["cells"]] for row in sheet["rows"]] == [[4, 6], [5, 7], [6, 8], [7, 9]]
    text = show(INTERVALS, "/lane-sheet")
    assert "1:30" in text and "In time" in text and "Intervals done in time" in text


@pytest.mark.parametrize("workout, said", [
    (AMRAP, ["Whole rounds", "and beyond them"]), (LOAD, ["Attempt", "Good lift", "Heaviest good lift"]),
    (RISING, ["Finishing time, or count at the cap"]), (PARTS, ["Quick", "Finishing time", "Part 2", "Heaviest good lift"]),
])
def test_the_lane_sheet_asks_for_the_score_of_its_shape(show, workout, said):
    text = show(workout, "/lane-sheet")
    assert [phrase for phrase in said if phrase not in text] == []


def test_the_running_count_follows_a_ladder():
    """By hand: 10, 9 ... 1 dips and a carry of 2 counts in each of 10 rounds are 55 + 20."""
    sheet, = lane_sheets.of(FALLING, "prescribed")
    assert sheet["rows"][-1]["count"] == 75
    assert [row["count"] for row in sheet["rows"]][:4] == [2, 12, 14, 23]


@pytest.mark.parametrize("parts, path", [
    ([PARTS["parts"][0]], ("parts",)),
    ([PARTS["parts"][0], PARTS["parts"][1] | {"time_s": None}], ("parts", 1, "time_s")),
    ([PARTS["parts"][0], PARTS["parts"][1] | {"options": options(LIFT, key="other")}], ("parts", 1, "options")),
    ([PARTS["parts"][0] | {"rest_after_s": -1}, PARTS["parts"][1]], ("parts", 0, "rest_after_s")),
    ([PARTS["parts"][0] | {"options": options()}, PARTS["parts"][1]], ("parts", 0, "options", 0, "blocks")),
    ([PARTS["parts"][0] | {"parts": []}, PARTS["parts"][1]], ()),
    ([None, 7], ()), ([7, 8], ()), ("ab", ()), ({"a": 1}, ()), ([[], []], ()),
    ([PARTS["parts"][0]] * 50, ("parts",)),
])
def test_parts_are_checked_each_for_itself(parts, path):
    from webapp.problems import WorkoutError

    with pytest.raises(WorkoutError) as caught:
        checked(small_workout() | {"parts": parts})
    assert path in caught.value.problems
