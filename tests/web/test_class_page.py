"""What the class opens: page, data, words, sheets."""

import json
import re

import pytest
from form_reader import words

PAGES = ["", "/json", "/words/en.json", "/words/es.json", "/qr", "/qr.svg", "/sheet", "/lane-sheet"]


def get(client, published, page="", **options):
    return client.get(f"/w/{published.code}{page}", **options)


@pytest.mark.parametrize("page", PAGES)
def test_every_page_of_the_class_link_opens_and_stays_out_of_search_engines(client, published, page):
    answer = get(client, published, page)
    assert answer.status_code == 200
    assert answer.headers["X-Robots-Tag"] == "noindex"


@pytest.mark.parametrize("page", PAGES)
def test_an_unknown_code_is_not_found(client, page):
    assert client.get(f"/w/nothing{page}").status_code == 404


def test_the_page_carries_the_whole_workout(client, published):
    page = get(client, published).text
    data = re.search(r'<script type="application/json" id="workout">(.*?)</script>', page, re.S)[1]
    assert json.loads(data) == published.row().published == get(client, published, "/json").get_json()


def test_the_page_holds_no_token_and_sets_no_session(client, published):
    """A phone keeps this page for good."""
    answer = get(client, published)
    assert "csrf" not in answer.text
    assert "Set-Cookie" not in answer.headers


def test_unchanged_pages_are_not_sent_again(client, published):
    for page in ("", "/json"):
        tag = get(client, published, page).headers["ETag"]
        assert get(client, published, page, headers={"If-None-Match": tag}).status_code == 304


def test_missing_data_is_answered_as_data(client):
    answer = client.get("/w/nothing/json")
    assert answer.status_code == 404 and answer.get_json()["status"] == 404


def test_the_code_as_a_picture_is_drawn_in_modules(client, published):
    picture = get(client, published, "/qr.svg")
    assert picture.mimetype == "image/svg+xml"
    assert picture.text.count("<path") >= 1 and "<script" not in picture.text


def test_the_lane_sheet_counts_on_through_blocks_and_marks(client, published):
    text = words(get(client, published, "/lane-sheet"))
    # By hand: 24 dips, then 48 m with a mark every 12 m: counts 25, 26, 27 at the marks and 28 at the end.
    assert "24 reps Ring dip 24 tie-break:" in text
    assert "25 · 26 · 27 28" in text


def test_the_lane_sheet_gives_the_judge_both_divisions_loads(client, published):
    text = words(get(client, published, "/lane-sheet")).replace("\u00a0", " ")
    # 40 kg = 88.18 lb, 30 kg = 66.14 lb: NIST SP 811 App. B.8
    assert "Sandbag carry : Men 40 kg (88.2 lb) / Women 30 kg (66.1 lb)" in text
    assert "Division" in text


def test_sheets_show_both_unit_systems(client, published):
    text = words(get(client, published, "/sheet"))
    # 40 kg = 88.18 lb, 48 m = 157.48 ft: NIST SP 811 App. B.8
    assert "40 kg (88.2 lb)" in text.replace("\u00a0", " ")
    assert "48 m (157 ft)" in text.replace("\u00a0", " ")


def test_the_sheet_carries_the_coachs_advice_as_the_coachs(client, published):
    assert "Your coach: Shake your arms out first." in words(get(client, published, "/sheet"))


@pytest.mark.parametrize("query", ["?option=nothing", "?division=nothing", "?option=prescribed&division=b"])
def test_sheets_take_any_choice(client, published, query):
    assert get(client, published, "/sheet" + query).status_code == 200
    assert get(client, published, "/lane-sheet" + query).status_code == 200
