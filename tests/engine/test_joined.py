"""Sets joined at the end of planning: breaks that do not earn their time go."""

import pytest
from benchmarks.server_speed import SIX_BLOCKS, numbers
from engine_samples import block, workout
from phones_engine import plan

from webapp.engine.choose import TRIED_ON, best_layout
from webapp.engine.draws import draw_people, weakest_first
from webapp.engine.joined import fewer_sets, joined, replaced
from webapp.engine.ladder import tried
from webapp.engine.layout import factors_for, lay_out, roughly
from webapp.engine.parameters import CAUTION
from webapp.engine.prepare import Case, stints_of
from webapp.engine.whole import at_rest, break_up_all

KEEN = {"level": "keen", "inverted_ok": True}


@pytest.mark.parametrize(
    ("flat", "fewer"),
    [
        ([12], []),
        ([7, 1, 10, 5], [[12]]),
        ([3, 1, 4, 1, 7, 10, 2], [[12], [3, 1, 4, 1, 6, 10, 3]]),
        ([5, 1, 6, 4, 1, 8, 3], [[12], [5, 1, 6, 7]]),
    ],
)
def test_one_set_or_the_last_two_in_one(flat, fewer):
    """Counted by hand: the same work each time, fewer sets."""
    assert fewer_sets(flat) == fewer


def with_breaks(asked, given, index, flat):
    """The case of somebody bold, the people it is tried on, and a layout as given with one stint broken up by a flat plan and joined again."""
    case = Case(asked, given, {"style": "bold"})
    case.stints = stints_of(case, case.option)
    people = draw_people(case.stints, 1, case.gain)
    layout = lay_out(case.stints, factors_for(case.stints, CAUTION[9]), case.gain, None, [], at_rest())
    broken = tried(case, people, None, None, {**replaced(layout, index, flat), "caution": CAUTION[9]})
    return broken, joined(case, people, None, broken)


def test_a_break_is_kept_only_where_it_earns_its_time():
    """Twenty squats of somebody who does fifty, in eighteen, half a minute, and two: nobody fails without the break, and half a minute is won (by hand)."""
    broken, whole = with_breaks(workout([block("air-squat", 20)]), KEEN | {"movements": {"air-squat": {"max_unbroken": 50}}}, 0, [18, 1, 30, 2])
    assert (broken["breakups"][0]["sets"], whole["breakups"][0]["sets"]) == ([18, 2], [20])
    assert broken["expected"] - whole["expected"] == pytest.approx(30, rel=0.15)


@pytest.mark.parametrize(("level", "style"), [("keen", "steady"), ("keen", "bold"), ("regular", "bold"), ("expert", "steady")])
def test_of_a_plan_no_more_sets_can_be_joined(level, style):
    """By the people it was chosen by: thrusters and pull-ups, 21-15-9, whose last nine thrusters were cut in eight and one on 2026-11-26."""
    scheme = workout([block("thruster", None, load_kg=40), block("pull-up", None)])
    scheme["options"][0]["rep_scheme"] = [21, 15, 9]
    case = Case(scheme, {"level": level}, {"style": style})
    case.stints = stints_of(case, case.option)
    layout = best_layout(case, None, None)
    people = weakest_first(draw_people(case.stints, 1, case.gain)[:TRIED_ON])
    assert joined(case, people, None, layout)["breakups"] == layout["breakups"]


def test_paced_work_that_comes_in_sets_stays_in_sets():
    """Nobody is seen to fail in it, so that joining would always pay: the breaks are there because its group would be empty on the way."""
    asked = workout([block("air-squat", 40), block("row", 1000, "m")])
    made = plan(asked, {"level": "new"}, {"style": "bold"})["blocks"][1]
    assert made["reasons"][0]["code"] == "paced_in_sets"
    broken, still = with_breaks(asked, {"level": "new"}, 1, [2, 9, 5, 2])
    assert still["breakups"][1]["sets"] == broken["breakups"][1]["sets"]
    assert len(still["breakups"][1]["sets"]) == 10


def test_what_is_left_by_the_cap_is_used():
    """Six blocks under a cap: 144 steps, 136 before the end was filled up (regression, computed on 2026-11-26)."""
    assert plan(SIX_BLOCKS, numbers(17), {"style": "even"})["score"]["likely"] >= 140


def test_another_rung_may_go_in_one_go_where_it_is_asked_to():
    """Twenty push-ups broken up for half the number; for the whole number they go in one, if one go may be tried."""
    case = Case(workout([block("push-up", 20)]), {"level": "keen", "movements": {"push-up": {"max_unbroken": 30}}}, {})
    stints = stints_of(case, case.option)
    first = break_up_all(stints, [0.4], case.gain, [], at_rest(), [None])
    other = [break_up_all(stints, [1.0], case.gain, roughly(first, unbroken), at_rest(), [None])[0]["sets"] for unbroken in (False, True)]
    assert (len(first[0]["sets"]) > 1, len(other[0]) > 1, other[1]) == (True, True, [20])
