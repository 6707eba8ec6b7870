"""Every code the engine can answer with has a sentence, and every sentence can be filled in."""

import re
from pathlib import Path

import pytest

from webapp.catalogues import placeholders
from webapp.wording import GROUPS, WORDS, clock, say

ENGINE = Path(__file__).resolve().parents[2] / "webapp" / "engine"
SOURCES = "\n".join(path.read_text("utf-8") for path in sorted(ENGINE.glob("*.py")))
CHECKS = r'\b(?:EngineError|number|whole_number|choice|mapping|listing)\(\s*"([a-z_]+)"'


def test_every_refusal_of_the_engine_is_worded():
    assert set(re.findall(CHECKS, SOURCES)) - set(WORDS) == set()


def test_every_reason_and_warning_of_the_engine_is_worded():
    """A code put together from two parts ends in an underscore here: some sentence must begin so."""
    found = set(re.findall(r'"code": "([a-z_.]+)"', SOURCES))
    assert [code for code in found - set(WORDS) if not code.endswith("_")] == []
    assert [code for code in found if code.endswith("_") and not any(known.startswith(code) for known in WORDS)] == []


def test_every_group_is_worded():
    from webapp.engine.parameters import GROUPS as ENGINE_GROUPS

    assert set(ENGINE_GROUPS) == set(GROUPS)


def filled_in(code):
    parameters = {name: "push" if name == "group" else 0.5 if name.endswith("_fraction") else 12 for name in placeholders(WORDS[code])}
    return say({"code": code, **parameters})


def test_every_sentence_fills_in(app):
    with app.test_request_context("/"):
        assert [code for code in WORDS if "{" in filled_in(code)] == []


@pytest.mark.parametrize("item, expected", [
    ({"code": "be_there_by", "block": 3, "movement": "row", "at_s": 326.9}, "Be at block 3, Row, by 5:27."),
    ({"code": "be_there_by", "block": 2, "movement": "row", "at_s": 38.4}, "Be at block 2, Row, by 0:38."),
    ({"code": "be_there_by_in_round", "block": 2, "round": 3, "movement": "row", "at_s": 326.9}, "Be at Row in round 3 by 5:27."),
    ({"code": "interval_breaks", "interval": 9, "over_s": 101, "keep": {"code": "keep_reps", "count": 2, "all": 6}},
     "Interval 9 no longer fits, by 1:41. From there do 2 of the 6 and keep the clock."),
    ({"code": "test_narrows", "movement": "row", "number": {"code": "own_effort"}, "to_fraction": 0.6},
     "Tell us your best time at Row: the range shrinks to 60% of what it is."),
    ({"code": "switch_at_marks", "every_m": 7.62}, "Switch sides at a mark, every 7.6 m."),
    ({"code": "cap_is_close", "chance_fraction": 0.875, "cap_s": 660}, "The cap is close: about 88% chance of finishing before 11:00."),
    ({"code": "riskier_than_style", "people": 20, "fail": 9},
     "Riskier than you asked for: of 20 people with numbers like yours, 9 would fail somewhere. No calmer plan was found."),
    ({"code": "hold_spares", "group": "grip"}, "Chosen to spare what comes next: grip."),
])
def test_parameters_are_shown_by_what_their_name_says(app, item, expected):
    with app.test_request_context("/?lang=en"):
        assert say(item, {"row": "Row"}) == expected


@pytest.mark.parametrize("seconds, shown", [(0, "0:00"), (59.6, "1:00"), (60, "1:00"), (3600, "60:00"), (7322, "122:02")])
def test_times_are_read_as_on_a_clock(seconds, shown):
    assert clock(seconds) == shown


def test_every_number_that_may_be_asked_for_has_its_words():
    """Of each kind in which `athlete.number_asked` answers, and of the efforts."""
    assert {"own_effort", "own_max_unbroken", "own_one_rep_max", "own_steady_s"} <= set(WORDS)
