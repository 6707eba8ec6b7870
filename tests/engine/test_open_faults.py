"""What does not hold on 2026-11-25; each belongs with the tests of its subject once the engine is mended.

Hard cases where a plan on the countable grid is over 2 % quicker or counts more; a bolder style slower in expectation; parameters that another fit to
the published tables betters.
"""

import random

import pytest
from engine_samples import able, block, workout
from scipy.optimize import minimize
from test_hard_cases import assert_nothing_counts_more, assert_nothing_quicker, sets_of
from test_plan_properties import drawn
from test_published_sets import rms

from webapp.engine import breakups, parameters, reserve
from webapp.engine.choose import best_layout
from webapp.engine.draws import draw_people, outcomes
from webapp.engine.parameters import STYLES
from webapp.engine.prepare import Case, stints_of

REST = block("rest", 60, "s")
FITTED = ["QUICK_TIME_CONSTANT_S", "SLOW_TIME_CONSTANT_S", "SLOW_GAIN", "SLOW_THRESHOLD"]
NEARLY_BEST = 0.02  # of the first set: how much better than the stated parameters the best may be; found 2026-11-25: 0.017 while the state took whole repetitions only, 0.035 since
EXPECTED = 1.01  # of the time to expect, for the rule of fewest breaks


def test_broken_where_more_than_one_can_do_is_asked():
    """Eight for somebody with six: at most two at a time while more than six are to come. Brute force."""
    layout = assert_nothing_quicker(workout([block("pull-up", 8)]), able("keen", pull_up=6))
    assert sets_of(layout)[0][0] == 2


def test_broken_where_the_same_group_follows():
    """The same six of eight, with eight handstand push-ups to come: at most three at a time, and the second block is not paid for. Brute force."""
    layout = assert_nothing_quicker(workout([block("ring-dip", 6), block("handstand-push-up", 4)]), able("keen", ring_dip=8, handstand_push_up=8))
    assert max(sets_of(layout)[0]) <= 3


def test_two_blocks_of_one_group():
    """Pull-ups after ring rows, neither to be had in one. Brute force over both together."""
    assert_nothing_quicker(workout([block("ring-row", 6), block("pull-up", 5)]), able("keen", ring_row=8, pull_up=6))


def test_a_rest_between_is_used():
    """Five and five for somebody with six, a minute between: by hand, exp(-60/30) = 0.14 of quick fatigue is left, so both go in one; e^-2 of 0.9 and a
    little slow fatigue leave over 0.7. The half rule knows no rest, so the first is in twos. Brute force."""
    layout = assert_nothing_quicker(workout([block("pull-up", 5), REST, block("pull-up", 5)]), able("keen", pull_up=6))
    assert sets_of(layout)[2] == [5]


def test_a_ladder_is_climbed_unbroken_until_it_bites():
    """Two, four, six for somebody with nine, 8 s between: brute force over all rounds together."""
    asked = workout([block("pull-up", 2, step=2)], rounds=3)
    layout = assert_nothing_quicker(asked, able("keen", pull_up=9))
    assert sets_of(layout)[0] == [2]


def expected_s(asked, numbers, style):
    """Mean time over all the draws of the plan that a style gets. [s]"""
    case = Case(asked, numbers, {"style": style})
    case.stints = stints_of(case, case.option)
    layout = best_layout(case, None, None)
    people = draw_people(case.stints, 1, case.gain)
    results = outcomes(layout["stints"], layout["breakups"], people, None)
    return sum(result["seconds"] for result in results) / len(results)


def test_bolder_is_never_slower_in_expectation():
    """Over the draws of the numbers, those who fail included."""
    rng = random.Random(43)
    for _ in range(8):
        asked, numbers = drawn(rng)
        times = [expected_s(asked, numbers, style) for style in STYLES]
        assert times[1] <= times[0] * EXPECTED, (asked["options"], numbers, times)
        assert times[2] <= times[1] * EXPECTED, (asked["options"], numbers, times)


def test_a_cap_a_little_later():
    """Sixty seconds for somebody with eight: three, four, three with 8 and 25 s between are ten. Brute force over one more."""
    assert_nothing_counts_more(workout([block("handstand-push-up", 20)], cap_s=60), able("keen", handstand_push_up=8))


def test_the_count_after_a_tie_break():
    """Brute force over one more: five, 5 s, two are seven by 51.8 s."""
    asked = workout([block("sit-up", 10), block("handstand-push-up", 30)], cap_s=55, tie_break_after_block=1)
    assert_nothing_counts_more(asked, able("keen", sit_up=40, handstand_push_up=8))


@pytest.fixture(scope="module", autouse=True)
def costs_found_once():
    """Not here: the model's parameters change from test to test."""


def rms_with(monkeypatch, values):
    """The same with other values of the four fitted parameters."""
    for name, value in zip(FITTED, values, strict=True):
        monkeypatch.setattr(breakups if name == "SLOW_GAIN" else reserve, name, float(value))
    return rms()


def stated():
    """The four parameters as stated."""
    return [getattr(parameters, name) for name in FITTED]


@pytest.mark.parametrize("place", range(4), ids=FITTED)
@pytest.mark.parametrize("factor", [0.8, 0.9, 1.1, 1.2])
def test_no_parameter_alone_fits_much_better(monkeypatch, place, factor):
    values = stated()
    values[place] *= factor
    assert rms_with(monkeypatch, values) > rms_with(monkeypatch, stated()) - NEARLY_BEST / 2


def test_the_fit_repeated_is_hardly_better_than_the_stated_values(monkeypatch):
    """Least squares by an outside optimiser (scipy, Nelder–Mead), started at the stated values."""
    found = minimize(lambda values: rms_with(monkeypatch, values), stated(), method="Nelder-Mead", options={"maxiter": 120})
    assert rms_with(monkeypatch, stated()) - found.fun <= NEARLY_BEST
    assert found.x == pytest.approx(stated(), rel=0.4)  # the valley is flat, but it is this valley
