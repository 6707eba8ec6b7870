"""What the gym has: said once in the form, kept for the next workout, and used by the warm-up."""

import pytest
from form_reader import errors, fields

from webapp.engine import warm_up
from webapp.problems import WorkoutError
from webapp.typed_gym import from_gym, to_gym
from webapp.workouts import checked, completed

BLOCK = "options-0-blocks-0-"
KG_PER_LB = 0.45359237  # NIST SP 811 App. B.8, exact
M_PER_INCH = 0.0254  # same


@pytest.fixture
def typed(client):
    """A form filled in so that it can be saved."""
    return fields(client.get("/new")) | {"title": "Brass Bell", BLOCK + "movement": "Ring dip", BLOCK + "amount": "24"}


def press(client, typed, address="/new"):
    return client.post(address, data=typed)


def published_gym(client, typed):
    """`gym` as it reaches the class."""
    answer = press(client, typed)
    assert answer.status_code == 303, errors(answer)
    client.post(answer.location, data=fields(client.get(answer.location)) | {"do": "publish"})
    return client.get(answer.location.replace("/c/", "/w/") + "/json").get_json()["gym"]


def test_nothing_said_is_a_usual_gym(client, typed):
    assert typed["gym-there"] == ["row", "bike", "run", "wall", "bar"]
    assert published_gym(client, typed) is None


@pytest.mark.parametrize("text, sizes", [
    ("10 12 15", [10, 12, 15]), ("10,12,15", [10, 12, 15]), ("10, 12, 15", [10, 12, 15]), ("15;12;10", [10, 12, 15]),
    ("2,5 5 7,5", [2.5, 5, 7.5]), ("2,5;5;7,5", [2.5, 5, 7.5]), ("2,5, 5, 7,5", [2.5, 5, 7.5]), ("2.5,5,7.5", [2.5, 5, 7.5]),
    ("22,5 ; 30", [22.5, 30]), ("12 12 10", [10, 12]), ("22.5", [22.5]), ("0", []),
])
def test_a_line_is_read_however_its_numbers_are_set_apart(client, typed, text, sizes):
    gym = published_gym(client, typed | {"gym-dumbbells": text})
    assert gym == {"rack": {"dumbbells_kg": sizes}, "machines": None, "wall": True, "bar": True}


@pytest.mark.parametrize("name, text", [
    ("dumbbells", "heavy"), ("dumbbells", "10 heavy"), ("dumbbells", "10 kg"), ("dumbbells", "-5"), ("dumbbells", "0 10"),
    ("dumbbells", "5 999"), ("kettlebells", "NaN"), ("kettlebells", "1e400"), ("plates", "2x10"), ("plates", "10-20"),
    ("plates", "1,25,2,5,5"), ("bars", "22,5"), ("bars", "20,"), ("bars", ",,"), ("sandbags", "١٢"), ("balls", "<script>"), ("boxes", "0.5"),
    ("boxes", "3000"), ("dumbbells", " ".join(str(10 + size / 10) for size in range(61))), ("plates", "1" * 5000),
])
def test_absurd_input_gets_a_message_at_its_line_and_loses_nothing(client, typed, name, text):
    typed |= {f"gym-{name}": text, "gym-there": ["bike"], "gym-bars_unit": "lb"}
    answer = press(client, typed)
    assert answer.status_code == 422
    assert list(errors(answer)) == [f"gym-{name}"] and errors(answer)[f"gym-{name}"]
    assert '<details class="panel" id="gym" open>' in answer.text
    again = fields(answer)
    assert {field: again[field] for field in typed if field != "csrf_token"} == {
        field: value for field, value in typed.items() if field != "csrf_token"
    }


def test_a_choice_that_is_on_no_list_is_not_ours(client, typed):
    assert press(client, typed | {"gym-there": ["sauna"]}).status_code == 400
    assert press(client, typed | {"gym-bars_unit": "stone"}).status_code == 400


def test_what_was_said_comes_back_as_it_was_typed_and_in_the_next_workout(client, typed):
    said = {
        "gym-dumbbells": "50 35; 20", "gym-dumbbells_unit": "lb", "gym-kettlebells": "8, 12, 16", "gym-plates": "0", "gym-bars": "45, 35",
        "gym-bars_unit": "lb", "gym-boxes": "24 20", "gym-boxes_unit": "in", "gym-sandbags": "9.98", "gym-there": ["bike", "wall"],
    }
    address = press(client, typed | said).location
    for page in (address + "/edit", "/new"):
        again = fields(client.get(page))
        assert {name: again[name] for name in said} == said, page
    assert fields(client.get("/new"))["title"] == ""


def test_the_next_workout_begins_with_what_was_said_last(client, typed):
    press(client, typed | {"gym-bars": "20"})
    press(client, typed | {"gym-bars": "15"})
    assert fields(client.get("/new"))["gym-bars"] == "15"


def test_another_browser_begins_with_a_usual_gym(app, client, typed):
    press(client, typed | {"gym-bars": "15"})
    assert fields(app.test_client().get("/new"))["gym-bars"] == ""


def test_pounds_and_inches_are_kept_exactly_and_what_is_written_on_them_beside(client, typed):
    gym = published_gym(client, typed | {
        "gym-bars": "45 35", "gym-bars_unit": "lb", "gym-boxes": "20", "gym-boxes_unit": "in", "gym-there": [],
    })
    assert gym["rack"]["bars_kg"] == pytest.approx([35 * KG_PER_LB, 45 * KG_PER_LB], abs=1e-8)
    assert gym["rack"]["boxes_m"] == pytest.approx([20 * M_PER_INCH], abs=1e-8)
    assert gym["as_written"] == {"bars_kg": "45 35 lb", "boxes_m": "20 in"}
    assert (gym["machines"], gym["wall"], gym["bar"]) == ([], False, False)


def ramp(client, typed):
    """Loads and labels of a warm-up for a push press or dumbbell snatch of this gym, and the workout's load."""
    gym = published_gym(client, typed)
    workout = completed(checked({
        "schema": 1, "title": "Brass Bell", "shape": "for_time", "cap_s": 600, "divisions": [{"key": "a", "name": "Everybody"}], "gym": gym,
        "options": [{"key": "prescribed", "name": "As prescribed", "rounds": 3, "blocks": [
            {"movement": "dumbbell-snatch", "amount": 20, "unit": "reps", "load_kg": {"a": 22.5}}]}],
    }))
    day = {"option": "prescribed", "division": "a", "style": "even", "rack": gym["rack"], "machines": gym["machines"], "warm_up_min": 20}
    return [step for step in warm_up(workout, {}, day)["steps"] if step["movement"] == "dumbbell-snatch" and step["load_kg"]]


def test_the_ramp_to_a_dumbbell_takes_what_is_there(client, typed):
    """A ramp to 22.5 kg in a gym with dumbbells of 8, 14 and 22.5 kg: no other load, and the working load at the end."""
    loads = [step["load_kg"] for step in ramp(client, typed | {"gym-dumbbells": "8 14 22,5"})]
    assert set(loads) <= {8, 14, 22.5} and loads[-1] == 22.5 and min(loads) < 22.5


def test_a_dumbbell_of_a_pound_gym_is_called_by_what_is_written_on_it(client, typed):
    """12 lb is 5.44 kg (NIST SP 811) and is written 12, not the 10 of the nearest five pounds; 45 lb stands where 20 kg does (common practice)."""
    steps = ramp(client, typed | {"gym-dumbbells": "12 45", "gym-dumbbells_unit": "lb"})
    labels = {step["label"]["lb"]: step["label"]["kg"] for step in steps}
    assert set(labels) <= {12, 45} and labels[45] == 20


def test_a_page_that_did_not_ask_says_nothing_of_the_gym():
    """Unticked boxes send nothing: without the page's mark they are not read as a gym with nothing in it."""
    assert to_gym(from_gym(None) | {"asked": "", "there": []}, {}) is None


@pytest.mark.parametrize("gym", [
    7, [], "usual", {"rack": []}, {"rack": {"anvils_kg": [50]}}, {"rack": {"bars_kg": 20}}, {"rack": {"bars_kg": ["20"]}},
    {"rack": {"bars_kg": [None]}}, {"rack": {"bars_kg": [-20]}}, {"rack": {"plates_kg": [5] * 61}}, {"machines": ["sauna"]},
    {"rack": {"bars_kg": ""}}, {"rack": {"bars_kg": {}}}, {"machines": [["row"]]}, {"machines": {"row": 1}}, {"machines": ""}, {"wall": "yes"}, {"as_written": {"bars_kg": 45}}, {"as_written": 45}, {"as_written": {"bars_kg": "4" * 400}},
])
def test_a_gym_made_by_hand_is_checked(workout, gym):
    with pytest.raises(WorkoutError):
        checked(workout | {"gym": gym})


def test_a_gym_made_by_hand_is_shown_in_the_form():
    shown = from_gym({"rack": {"bars_kg": [15, 20.41165665], "boxes_m": [0.5, 0.61]}, "machines": []})
    assert (shown["bars"], shown["boxes"], shown["boxes_unit"]) == ("15, 20.411657", "50, 61", "cm")
    assert shown["there"] == ["wall", "bar"]
