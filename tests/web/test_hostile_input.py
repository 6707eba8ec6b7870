"""Absurd input: a message at the field, nothing lost, never an error of ours."""

import pytest
from form_reader import errors, fields, words

BLOCK = "options-0-blocks-0-"
MARKUP = "<script>alert(1)</script>\"'&"


@pytest.fixture
def typed(client):
    return fields(client.get("/new")) | {"title": "Brass Bell", BLOCK + "movement": "Ring dip", BLOCK + "amount": "24"}


ABSURD = [
    (BLOCK + "amount", "0"), (BLOCK + "amount", "-3"), (BLOCK + "amount", "1000000000"), (BLOCK + "amount", "10^9"),
    (BLOCK + "amount", "dieciséis"), (BLOCK + "amount", "1e400"), (BLOCK + "amount", "NaN"), (BLOCK + "amount", "inf"),
    (BLOCK + "amount", ""), (BLOCK + "amount", "2.5"), (BLOCK + "amount", "١٢"), (BLOCK + "amount", "1" * 5000),
    (BLOCK + "amount", "12 kg"), (BLOCK + "amount", "1,000,000"), (BLOCK + "movement", ""),
    (BLOCK + "movement", "flurble"), (BLOCK + "movement", "press"), (BLOCK + "movement", MARKUP),
    (BLOCK + "unit", "cal"), (BLOCK + "load_a", "0"), (BLOCK + "load_a", "heavy"), (BLOCK + "load_a", "9999"),
    (BLOCK + "mark_every", "2"), (BLOCK + "height_a", "-1"), (BLOCK + "height_b", "tall"), (BLOCK + "note", "x" * 501), (BLOCK + "advice", "x" * 501),
    ("cap", "0"), ("cap", "0:00"), ("cap", "soon"), ("cap", "12:99"), ("cap", "-5"), ("cap", "999:00"), ("title", ""),
    ("title", "   "), ("title", "x" * 81), ("divisions-0", ""), ("divisions-1", "Men"), ("lane_length", "NaN"),
    ("lane_length", "0"), ("options-0-rounds", "0"), ("options-0-rounds", "1.5"), ("options-0-rounds", "51"),
    ("options-0-rep_scheme", "a b"), ("options-0-rep_scheme", "0 0"), ("options-0-tie_break", "2"),
    ("options-0-tie_break", "-1"), ("options-0-cap", "x"), ("options-0-name", ""), ("source_url", "http://example.org"),
    ("source_url", "javascript:alert(1)"), ("source_url", "https://"), ("source_url", "https://[x"),
    ("source_url", "https://example.org/\u0000"), ("source_text", "x" * 20_001),
]


@pytest.mark.parametrize("name, value", ABSURD, ids=lambda value: value[:20])
def test_absurd_input_gets_a_message_at_its_field_and_loses_nothing(client, typed, name, value):
    typed |= {name: value}
    answer = client.post("/new", data=typed)
    assert answer.status_code == 422
    assert errors(answer).get(name), errors(answer)
    again = fields(answer)
    kept = {
        field: text if isinstance(text, list) else text.strip("\n")
        for field, text in again.items() if field in typed and field != "csrf_token"
    }
    assert kept == {field: text for field, text in typed.items() if field != "csrf_token"}


@pytest.mark.parametrize("value", ["2,5", "2.5", " 2,5 "])
def test_commas_and_points_are_decimals(client, typed, value):
    typed |= {BLOCK + "movement": "Push press", BLOCK + "load_a": value}
    assert client.post("/new", data=typed).status_code == 303


def test_a_workout_without_blocks_is_refused_where_blocks_go(client, typed):
    typed = {name: value for name, value in typed.items() if "-blocks-" not in name}
    answer = client.post("/new", data=typed)
    assert answer.status_code == 422 and errors(answer)["options-0-blocks"] == "Add at least one block."


def test_a_workout_without_options_is_refused(client, typed):
    typed = {name: value for name, value in typed.items() if not name.startswith("options-")}
    answer = client.post("/new", data=typed)
    assert answer.status_code == 422 and "options" in errors(answer)


def test_two_hundred_blocks_are_too_many_and_all_of_them_come_back(client, typed):
    first = {name.removeprefix(BLOCK): value for name, value in typed.items() if name.startswith(BLOCK)}
    for number in range(200):
        typed |= {f"options-0-blocks-{number}-{name}": value for name, value in first.items() if value}
    answer = client.post("/new", data=typed)
    assert answer.status_code == 422
    assert "20" in errors(answer)["options-0-blocks"]
    assert fields(answer)["options-0-blocks-199-movement"] == "Ring dip"


def test_rest_alone_is_no_workout(client, typed):
    answer = client.post("/new", data=typed | {BLOCK + "movement": "Rest", BLOCK + "unit": "s", BLOCK + "amount": "60"})
    assert errors(answer)["options-0-blocks"] == "There is nothing to do here but rest."


def test_more_work_than_a_day_holds_is_refused(client, typed):
    typed = fields(client.post("/new", data=typed | {"do": "add-block:0"}))
    typed |= {f"options-0-blocks-{n}-movement": "Ring dip" for n in (0, 1, 2)}
    typed |= {f"options-0-blocks-{n}-amount": "5" for n in (0, 1, 2)} | {"options-0-rounds": "50"}
    typed |= {"options-0-blocks-2-unit": "reps"}
    assert "options-0-rounds" in errors(client.post("/new", data=typed))


def test_more_fields_than_anybody_types_are_refused_before_they_are_read(client, typed):
    typed |= {f"options-0-blocks-{number}-note": "x" for number in range(400)}
    assert client.post("/new", data=typed).status_code == 413


def test_a_choice_that_is_on_no_list_is_not_ours(client, typed):
    assert client.post("/new", data=typed | {BLOCK + "load_unit": "stone"}).status_code == 400


def test_five_megabytes_get_a_page_that_says_so(client):
    answer = client.post("/new", data={"title": "x" * 5_000_000}, headers={"Accept-Language": "en"})
    assert answer.status_code == 413
    assert "too much at once" in words(answer)


def test_markup_in_every_field_stays_text(client, typed):
    texts = ["title", "divisions-0", "options-0-name", BLOCK + "note", BLOCK + "advice", "notes", "source_text"]
    typed |= dict.fromkeys(texts, MARKUP) | {"divisions-1": "Women"}
    page = client.get(client.post("/new", data=typed).location)
    areas = {name: MARKUP for name in fields(page) if ":" in name}
    client.post(page.request.path, data=fields(page) | areas | {"do": "publish"})
    base = page.request.path.replace("/c/", "/w/")
    for address in ("", "/sheet", "/lane-sheet", "/qr"):
        assert "<script>alert" not in client.get(base + address).text, address
    assert "<script>alert" not in client.get(page.request.path).text
    assert client.get(base + "/json").get_json()["title"] == MARKUP


@pytest.mark.parametrize("address", ["/w/%00", "/w/../../etc", "/w/" + "x" * 3000, "/c/'%20OR%201=1", "/static/x/../../pyproject.toml",
                                     "/static/0/..%2f..%2fpyproject.toml", "/words/xx.json", "/?lang=%00", "/?lang=<script>"])
def test_odd_addresses_get_an_ordinary_answer(client, address):
    answer = client.get(address, follow_redirects=True)
    assert answer.status_code in (200, 404)
    assert "<script>alert" not in answer.text and "Traceback" not in answer.text
