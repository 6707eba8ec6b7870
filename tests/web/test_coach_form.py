"""Setting a workout with plain submits: blocks come, go and move, and nothing typed is lost."""

import pytest
from form_reader import errors, fields, words

BLOCK = "options-0-blocks-0-"


def press(client, typed, do="save", address="/new"):
    return client.post(address, data=typed | {"do": do})


@pytest.fixture
def typed(client):
    """A form filled in so that it can be saved."""
    return fields(client.get("/new")) | {
        "title": "Brass Bell", "cap": "12:30", BLOCK + "movement": "Ring dip", BLOCK + "amount": "24",
    }


def saved(client, typed):
    answer = press(client, typed)
    assert answer.status_code == 303, errors(answer)
    return client.get(answer.location + "/edit")


def test_a_form_filled_in_makes_a_draft_nobody_else_sees(client, typed):
    answer = press(client, typed)
    code = answer.location.rpartition("/")[2]
    assert "Draft" in words(client.get(answer.location))
    assert client.get(f"/w/{code}").status_code == 404


def test_what_was_saved_comes_back_as_it_was_typed(client, typed):
    typed |= {
        BLOCK + "movement": "Sandbag carry", BLOCK + "amount": "200", BLOCK + "unit": "ft", BLOCK + "mark_every": "25",
        BLOCK + "load_a": "100", BLOCK + "load_b": "70", BLOCK + "load_unit": "lb", BLOCK + "note": "Turn behind the line.",
        BLOCK + "advice": "Breathe out on the turn.", "lane_length": "25", "lane_unit": "ft", "options-0-cap": "9:05",
        "options-0-rounds": "3", "options-0-tie_break": "1", "source_url": "https://example.org/rules", "source_text": "As we wrote it.",
    }
    again = fields(saved(client, typed))
    assert {name: again[name] for name in typed if name not in ("csrf_token", "revision")} == {
        name: value for name, value in typed.items() if name not in ("csrf_token", "revision")
    }


def test_a_box_in_inches_and_rounds_with_numbers_come_back(client, typed):
    typed |= {
        BLOCK + "movement": "Box jump", BLOCK + "amount": "", "options-0-rounds": "", "options-0-rep_scheme": "14 10 6",
        BLOCK + "height_a": "24", BLOCK + "height_b": "20", BLOCK + "height_unit": "in",
    }
    again = fields(saved(client, typed))
    assert [again[BLOCK + name] for name in ("height_a", "height_b", "height_unit", "amount")] == ["24", "20", "in", ""]
    assert again["options-0-rep_scheme"] == "14 10 6"


@pytest.mark.parametrize("do, expected", [
    ("add-block:0", ["Ring dip", "Row", ""]),
    ("remove-block:0:0", ["Row"]),
    ("up:0:1", ["Row", "Ring dip"]),
    ("down:0:0", ["Row", "Ring dip"]),
    ("up:0:0", ["Ring dip", "Row"]),
    ("down:0:1", ["Ring dip", "Row"]),
    ("remove-block:0:77", ["Ring dip", "Row"]),
    ("remove-block:4", ["Ring dip", "Row"]),
    ("nonsense", ["Ring dip", "Row"]),
    ("remove-option:0", ["Ring dip", "Row"]),
])
def test_buttons_change_the_blocks_and_nothing_else(client, typed, do, expected):
    typed = fields(press(client, typed, "add-block:0"))
    typed["options-0-blocks-1-movement"] = "Row"
    after = fields(press(client, typed, do))
    assert [after[f"options-0-blocks-{n}-movement"] for n in range(len(expected))] == expected
    assert f"options-0-blocks-{len(expected)}-movement" not in after
    assert after["title"] == "Brass Bell"


def test_a_scaled_option_begins_as_a_copy(client, typed):
    after = fields(press(client, typed | {BLOCK + "advice": "Keep the rings close."}, "add-option"))
    assert (after[BLOCK + "advice"], after["options-1-blocks-0-advice"]) == ("Keep the rings close.", "")
    assert (after["options-1-key"], after["options-1-name"]) == ("scaled", "Scaled")
    assert after["options-1-blocks-0-movement"] == "Ring dip"
    gone = fields(press(client, after, "remove-option:1"))
    assert "options-1-name" not in gone and gone["options-0-name"] == "As prescribed"


def test_numbers_for_each_round_that_cannot_be_read_are_one_thing_to_put_right(client, typed):
    typed |= {BLOCK + "amount": "", "options-0-rounds": "", "options-0-rep_scheme": "a b c"}
    assert list(errors(press(client, typed))) == ["options-0-rep_scheme"]


def test_part_of_a_name_offers_what_may_be_meant_and_the_choice_is_kept(client, typed):
    asked = press(client, typed | {BLOCK + "movement": "push"})
    assert asked.status_code == 422 and 'value="push-press"' in asked.text and 'value="own"' in asked.text
    # The choice holds through another button, and is written out as the movement's name.
    after = fields(press(client, fields(asked) | {BLOCK + "choice": "push-press"}, "add-option"))
    assert after[BLOCK + "movement"] == "Push press"


def test_a_slip_of_the_finger_is_understood_as_a_question(client, typed):
    assert 'value="double-under"' in press(client, typed | {BLOCK + "movement": "dubble undr"}).text


def test_a_movement_of_ones_own_needs_two_facts_and_can_then_be_planned(client, typed):
    typed |= {BLOCK + "movement": "Tyre flip"}
    asked = fields(press(client, typed)) | {BLOCK + "choice": "own"}
    wrong = press(client, asked)
    assert errors(wrong) == dict.fromkeys((BLOCK + "own_seconds", BLOCK + "own_group"), "Please fill this in.")
    assert "own-tyre-flip" not in wrong.text
    again = fields(saved(client, asked | {BLOCK + "own_seconds": "5,5", BLOCK + "own_group": "legs"}))
    assert [again[BLOCK + name] for name in ("movement", "choice", "own_seconds", "own_group")] == [
        "Tyre flip", "own", "5.5", "legs"
    ]


def test_a_movement_of_ones_own_without_texts_is_no_empty_heading(client, typed):
    typed |= {BLOCK + "movement": "Tyre flip", BLOCK + "choice": "own", BLOCK + "own_seconds": "5", BLOCK + "own_group": "legs"}
    address = press(client, typed).location
    client.post(address, data=fields(client.get(address)) | {"do": "publish"})
    page = client.get(address.replace("/c/", "/w/") + "/sheet")
    assert "Tyre flip" in words(page) and "<h3>Tyre flip</h3>" not in page.text


def test_a_movement_of_ones_own_reaches_the_class(client, typed):
    typed |= {BLOCK + "movement": "Tyre flip", BLOCK + "choice": "own", BLOCK + "own_seconds": "5", BLOCK + "own_group": "legs"}
    address = press(client, typed).location
    answer = client.post(address, data=fields(client.get(address)) | {"do": "publish", "own-tyre-flip:standards": "Over, not round."})
    assert answer.status_code == 303
    base = address.replace("/c/", "/w/")
    assert "<h3>Tyre flip</h3>" in client.get(base + "/sheet").text
    for page in ("", "/sheet", "/lane-sheet"):
        assert "Tyre flip" in words(client.get(base + page)), page
    assert "Over, not round." in words(client.get(base))


@pytest.mark.parametrize("name, value, said", [
    ("title", "", "Name of the workout: Please fill this in."), ("cap", "x", "Time cap: Write minutes"),
    ("lane_length", "x", "Length of the lane: “x”"), ("divisions-0", "", "Divisions: Please fill this in."),
    (BLOCK + "amount", "", "Option 1, block 1 · How many: Please fill this in."), (BLOCK + "load_b", "x", "Option 1, block 1 · Load, Women: “x”"),
    (BLOCK + "height_a", "x", "Option 1, block 1 · Height, Men: “x”"), ("options-0-rounds", "x", "Option 1 · Rounds: “x”"),
    ("gym-plates", "x", "What the gym has · Plates: “x”"), ("options-0-tie_break", "7", "Option 1 · Tie-break: the time after block number: There"),
])
def test_the_list_of_problems_names_the_field(client, typed, name, value, said):
    answer = press(client, typed | {name: value})
    assert answer.status_code == 422 and said in words(answer)


def test_one_division_is_enough(client, typed):
    again = fields(saved(client, typed | {"divisions-0": "Everybody", "divisions-1": ""}))
    assert (again["divisions-0"], again["divisions-1"]) == ("Everybody", "")


def test_a_load_for_one_division_stands_for_both(client, typed):
    typed |= {BLOCK + "movement": "Push press", BLOCK + "load_a": "32,5"}
    again = fields(saved(client, typed))
    assert (again[BLOCK + "load_a"], again[BLOCK + "load_b"]) == ("32.5", "32.5")


def test_pounds_are_converted_exactly_and_their_label_kept(client, typed):
    typed |= {BLOCK + "movement": "Push press", BLOCK + "load_a": "95", BLOCK + "load_unit": "lb"}
    page = client.get(press(client, typed).location)
    client.post(page.request.path, data=fields(page) | {"do": "publish"})
    block = client.get(page.request.path.replace("/c/", "/w/") + "/json").get_json()["options"][0]["blocks"][0]
    # 95 lb = 43.09127515 kg: NIST SP 811 App. B.8, 1 lb = 0.45359237 kg exactly
    assert block["load_kg"] == {"a": 43.09127515, "b": 43.09127515}
    assert block["as_written"] == "95 lb"


def test_a_stale_token_keeps_what_was_typed_and_brings_a_fresh_one(client, typed):
    answer = press(client, typed | {"csrf_token": "stale"})
    assert answer.status_code == 400
    again = fields(answer)
    assert again[BLOCK + "movement"] == "Ring dip" and again["title"] == "Brass Bell"
    assert press(client, again).status_code == 303


def test_the_form_is_never_kept_by_a_browser_or_a_phone(client):
    assert client.get("/new").headers["Cache-Control"] == "no-store"


def test_the_form_speaks_spanish_names_too(client, typed):
    """Whatever the catalogue holds by now, the page says its language and saves."""
    answer = client.get("/new?lang=es")
    assert '<html lang="es"' in answer.text
    assert press(client, typed, address="/new?lang=es").status_code == 303


def test_saving_too_often_from_one_address_is_stopped(client, typed, app):
    app.extensions["limiter"].most = {"new workout": 1, "wrong coach link": 1}
    assert press(client, typed).status_code == 303
    assert press(client, typed).status_code == 429


def test_another_language_takes_along_what_was_typed(client, typed):
    page = client.get("/new")
    assert 'href="?lang=es"' not in page.text and 'formaction="?lang=es"' in page.text
    answer = client.post("/new?lang=es", data=typed | {"do": "language", BLOCK + "amount": "x"})
    assert answer.status_code == 200 and '<html lang="es"' in answer.text and errors(answer) == {}
    again = fields(answer)
    assert (again["title"], again[BLOCK + "movement"], again[BLOCK + "amount"]) == ("Brass Bell", "Ring dip", "x")
    assert press(client, again | {BLOCK + "amount": "24"}, address="/new?lang=es").status_code == 303
