"""Texts a coach leaves alone stay in every athlete's language; changed ones stay the coach's."""

import pytest

from webapp import coach_texts

ENTRY = {
    "standards": ["Start low.", "Finish high."], "shares": {"push": 1.0},
    "holds": [{"key": "deep", "name": "Deep", "why": "Rests the hands.", "shares": {"grip": 0.2}}],
}


@pytest.fixture(autouse=True)
def in_another_language(monkeypatch):
    """A language in which every text is marked."""
    monkeypatch.setattr(coach_texts, "gettext", lambda text: f"«{text}»")


def test_lines_left_alone_go_back_to_their_english_keys():
    shown = "\n".join(coach_texts.shown_lines(ENTRY, "standards"))
    assert shown == "«Start low.»\n«Finish high.»"
    assert coach_texts.changed(ENTRY, "standards", shown)["standards"] == ENTRY["standards"]


def test_only_the_changed_line_becomes_the_coachs():
    after = coach_texts.changed(ENTRY, "standards", "«Finish high.»\r\n\r\n  Mine.  ")
    assert after["standards"] == ["Finish high.", "Mine."]
    assert ENTRY["standards"] == ["Start low.", "Finish high."]


def test_holds_left_alone_stay_whole_and_new_ones_cost_what_the_first_does():
    shown = coach_texts.shown_lines(ENTRY, "holds")[0]
    after = coach_texts.changed(ENTRY, "holds", shown + "\nMine")["holds"]
    assert after[0] == ENTRY["holds"][0]
    assert (after[1]["name"], after[1]["why"], after[1]["shares"]) == ("Mine", "", {"grip": 0.2})


def test_a_first_hold_costs_what_the_movement_does():
    after = coach_texts.changed(ENTRY | {"holds": []}, "holds", "Mine | Because.")["holds"]
    assert (after[0]["why"], after[0]["shares"]) == ("Because.", {"push": 1.0})
