"""What slow fatigue costs the blocks to come, and plans made at that price."""

import pytest
from benchmarks.whole_cases import numbers_of, workout_of

from webapp.engine.layout import lay_out
from webapp.engine.prepare import Case, stints_of
from webapp.engine.whole import at_rest, break_up_all
from webapp.engine.worth import worths

WORKOUTS = [("bar and rings", "keen"), ("rounds of two", "keen"), ("two presses", "regular"), ("pull thrice", "regular"), ("small chipper", "expert")]


@pytest.fixture(params=WORKOUTS, ids=" ".join)
def made(request):
    """Stints, break-ups at the first guess of the price, factors and gain."""
    case = Case(workout_of(request.param[0]), numbers_of(*request.param), {})
    stints = stints_of(case, case.option)
    ones = [1.0] * len(stints)
    return stints, break_up_all(stints, ones, case.gain, [], at_rest(), [None] * len(stints)), ones, case.gain


def test_only_what_is_still_to_come_of_a_group_gives_a_price(made):
    stints, breakups, factors, gain = made
    prices = worths(stints, breakups, factors, gain, at_rest())
    for index, price in enumerate(prices):
        slot = stints[index]["slots"][0]
        used_later = any(later["slots"][0] == slot for later in stints[index + 1 :])
        assert price >= 0 and (used_later or price == 0)


def test_plans_at_that_price_are_never_slower(made):
    stints, guessed, factors, gain = made
    assert lay_out(stints, factors, gain, None, [], at_rest())["whole"][-1]["end_s"] <= guessed[-1]["end_s"] + 1e-6


def test_less_is_saved_for_work_that_hardly_suffers():
    """Fifteen ring dips, then far fewer push-ups than the largest set: at the first guess of the price, half as long rests again."""
    case = Case(workout_of("bar and rings"), numbers_of("bar and rings", "keen"), {})
    stints = stints_of(case, case.option)
    ones = [1.0] * len(stints)
    guessed = break_up_all(stints, ones, case.gain, [], at_rest(), [None] * len(stints))
    planned = lay_out(stints, ones, case.gain, None, [], at_rest())["whole"]
    assert sum(planned[0]["rests_s"]) < 0.8 * sum(guessed[0]["rests_s"])
    assert planned[-1]["end_s"] < 0.96 * guessed[-1]["end_s"]
