"""What the library says is short, safe, translatable, and nobody's trademark."""

import re

import pytest

from webapp import movements

# Abbreviations in daily trade use, not any one owner's.
TRADE_ABBREVIATIONS = {"hspu", "hspus", "c2b", "ctb", "t2b", "ttb", "rmu", "du", "dus", "kb", "db", "cal"}

each_entry = pytest.mark.parametrize("key, entry", movements.library().items(), ids=list(movements.library()))


def sentences(entry):
    return " ".join(entry["cautions"]).lower()


@each_entry
def test_a_cue_has_at_most_four_words(key, entry):
    assert 1 <= len(entry["cue"].split()) <= 4


@each_entry
def test_lists_are_as_long_as_a_briefing_can_bear(key, entry):
    assert 3 <= len(entry["standards"]) <= 5
    assert 2 <= len(entry["no_reps"]) <= 4
    assert entry["equipment"] and entry["loosen"] and entry["lane"]
    assert len(entry["measures"]) <= 3 and 2 <= len(entry["cautions"]) <= 5


@each_entry
def test_every_text_is_short_and_clean(key, entry):
    for text in movements.texts(entry):
        assert text == text.strip() and "  " not in text
        assert len(text) <= 160, text


@each_entry
def test_names_are_in_sentence_case_and_other_spellings_in_lower_case(key, entry):
    assert entry["name"][0].isupper() and entry["name"][1:] == entry["name"][1:].lower()
    assert all(spelling == spelling.lower() for spelling in entry["also"])
    assert len(set(entry["also"])) == len(entry["also"])


@each_entry
def test_no_text_carries_an_initialism(key, entry):
    for text in movements.texts(entry):
        if text != entry["seconds_source"]:
            assert not re.search(r"\b[A-Z]{2,}\b", text), text


@each_entry
def test_abbreviations_are_words_of_the_trade(key, entry):
    for spelling in entry["also"]:
        for word in re.findall(r"[a-z0-9]+", spelling):
            if not re.search(r"[aeiouy]", word) or re.search(r"\d", word):
                assert word in TRADE_ABBREVIATIONS | {"s"}, spelling


@each_entry
def test_inverted_work_carries_its_three_cautions(key, entry):
    if entry["inverted"]:
        for words in ("mat under the head", "two metres clear", "no kick-up when you are dizzy", "doctor", "to fail safely"):
            assert words in sentences(entry)


@each_entry
def test_overhead_and_heavy_work_says_how_to_fail_safely(key, entry):
    if entry["keep_reserve"]:
        assert "to fail safely" in sentences(entry)


@each_entry
def test_cautions_defer_to_the_coach_on_the_floor(key, entry):
    assert "the coach on the floor" in sentences(entry)


@each_entry
def test_texts_are_all_translatable_strings_and_none_is_empty(key, entry):
    found = list(movements.texts(entry))
    assert all(isinstance(text, str) and text for text in found)
    expected = [entry["name"], entry["lane"], entry["cue"], *entry["standards"], *entry["cautions"], *entry["equipment"]]
    expected += [part for hold in entry["holds"] for part in (hold["name"], hold["why"])]
    expected += [drill["name"] for drill in entry["drills"]]
    assert set(expected) <= set(found)


def test_push_press_and_push_jerk_name_each_other_and_the_second_bend_of_the_knees():
    press, jerk = movements.entry("push-press"), movements.entry("push-jerk")
    assert (press["confused_with"]["movement"], jerk["confused_with"]["movement"]) == ("push-jerk", "push-press")
    assert "second time" in press["confused_with"]["difference"] and "second time" in jerk["confused_with"]["difference"]


def test_every_drill_name_that_is_a_movement_is_spelled_as_its_entry():
    names = {entry["name"].lower(): entry["name"] for entry in movements.library().values()}
    for entry in movements.library().values():
        for item in entry["drills"] + entry["easier"]:
            assert names.get(item["name"].lower(), item["name"]) == item["name"]
