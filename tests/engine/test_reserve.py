"""Quick and slow fatigue: exact points by hand, directions, and two ways to the same answer."""

import math

import pytest

from webapp.engine.parameters import QUICK_TIME_CONSTANT_S, SLOW_FLOOR, SLOW_GAIN, SLOW_THRESHOLD, SLOW_TIME_CONSTANT_S, SLOWING
from webapp.engine.reserve import PAST_ONE, Effort, cost_per_rep, cost_reaching, enter, fresh, perform, recover, reps_to_failure, slow_share

SECONDS = 2.5
LARGEST = [1, 2, 3, 5, 8, 12, 20, 33, 60]
SOON = 1e-6  # a repetition as short as this decays by less than the tolerances below


def tired(quick, slow):
    """The state of one slot."""
    fatigue = fresh(1)
    fatigue.quick[0], fatigue.slow[0] = quick, slow
    return fatigue


def depth(fatigue, slot=0):
    """Quick and slow fatigue together."""
    return fatigue.quick[slot] + fatigue.slow[slot]


def effort(cost, seconds=SECONDS, entry=0.0):
    """One slot's effort."""
    return Effort([0], [cost], seconds, entry)


def in_one_set(cost, seconds=SECONDS, entry=0.0):
    """Whole repetitions of a fresh set to failure."""
    fatigue = fresh(1)
    enter(fatigue, effort(cost, seconds, entry), SLOW_GAIN)
    return perform(fatigue, effort(cost, seconds, entry), 400, SLOW_GAIN)[0]


def test_one_fresh_repetition_costs_its_cost_and_decays_while_it_lasts():
    """q = 0.1: d' = 0.05 < θ, slow share s0; it lasts c·(1 + k·0.05³); then both decay. Hand arithmetic."""
    fatigue = fresh(1)
    done, seconds, deepest = perform(fatigue, effort(0.1), 1, SLOW_GAIN)
    lasts_s = 2.5 * (1 + 0.4 * 0.05**3)
    assert (SLOW_FLOOR, SLOWING) == (0.04, 0.4)
    assert done == 1
    assert seconds == pytest.approx(lasts_s, rel=1e-12)
    assert deepest == pytest.approx(0.1, rel=1e-12)
    assert fatigue.quick[0] == pytest.approx(0.1 * 0.96 * math.exp(-lasts_s / 30), rel=1e-12)
    assert fatigue.slow[0] == pytest.approx(0.1 * 0.04 * math.exp(-lasts_s / 330), rel=1e-12)


def test_a_deep_repetition_turns_mostly_slow():
    """At d = 0.7, q = 0.1: d' = 0.75, s = 0.85·0.25/0.5 = 0.425; it lasts c·(1 + 0.4·0.75³) = 1.16875·c. Hand arithmetic."""
    fatigue = tired(0.6, 0.1)
    _, seconds, _ = perform(fatigue, effort(0.1, SOON), 1, SLOW_GAIN)
    assert slow_share(0.75, 0.85) == pytest.approx(0.425, rel=1e-12)
    assert fatigue.slow[0] == pytest.approx(0.1425, rel=1e-6)
    assert fatigue.quick[0] == pytest.approx(0.6575, rel=1e-6)
    assert seconds == pytest.approx(1.16875 * SOON, rel=1e-9)


def test_the_slow_share_stays_between_its_floor_and_all():
    assert slow_share(0.0, 0.85) == slow_share(SLOW_THRESHOLD, 0.85) == SLOW_FLOOR
    assert slow_share(1.0, 1.6) == 1.0
    shares = [slow_share(step / 50, 0.85) for step in range(51)]
    assert shares == sorted(shares)


@pytest.mark.parametrize(("rest_s", "quick", "slow"), [(30, 1, 1 / 11), (60, 2, 2 / 11), (330, 11, 1), (0, 0, 0)])
def test_rest_takes_both_back_exponentially(rest_s, quick, slow):
    """τu = 30 s, τv = 330 s: the exponents are rest over them."""
    fatigue = tired(0.4, 0.3)
    recover(fatigue, [0], rest_s)
    assert fatigue.quick[0] == pytest.approx(0.4 * math.exp(-quick), rel=1e-12)
    assert fatigue.slow[0] == pytest.approx(0.3 * math.exp(-slow), rel=1e-12)


def test_two_rests_equal_one():
    once, twice = tired(0.4, 0.3), tired(0.4, 0.3)
    recover(once, [0], 47.0)
    recover(twice, [0], 12.0)
    recover(twice, [0], 35.0)
    assert (twice.quick[0], twice.slow[0]) == pytest.approx((once.quick[0], once.slow[0]), rel=1e-12)


def test_steady_singles_settle_at_the_closed_depth():
    """A rep every T s: geometric series q/(e^(T/τ) − 1), quick and slow apart, T the spacing of the reps."""
    cost, every_s = 0.08, 15.0
    fatigue = fresh(1)
    for _ in range(600):
        took = perform(fatigue, effort(cost, SOON), 1, SLOW_GAIN)[1]
        recover(fatigue, [0], every_s - took)
    quick = 0.96 * cost / (math.exp(every_s / QUICK_TIME_CONSTANT_S) - 1)
    slow = 0.04 * cost / (math.exp(every_s / SLOW_TIME_CONSTANT_S) - 1)
    assert fatigue.quick[0] == pytest.approx(quick, rel=1e-6)
    assert fatigue.slow[0] == pytest.approx(slow, rel=1e-6)
    assert quick + slow + cost / 2 < SLOW_THRESHOLD  # so that the floor share is all that turns slow


@pytest.mark.parametrize("largest", LARGEST)
@pytest.mark.parametrize("entry", [0.0, 0.4])
def test_exactly_the_largest_set_goes(largest, entry):
    cost = cost_per_rep(largest, SECONDS, entry, SLOW_GAIN)
    assert in_one_set(cost, SECONDS, entry) == largest


@pytest.mark.parametrize("largest", LARGEST)
def test_the_cost_is_midway_between_the_two_edges(largest):
    """Both edges found anew by bisection on whole repetitions, another way than the engine's."""

    def largest_cost(reps):
        low, high = 1e-6, 1.0
        for _ in range(60):
            middle = (low + high) / 2
            low, high = (middle, high) if in_one_set(middle) >= reps else (low, middle)
        return low

    middle = (largest_cost(largest) + largest_cost(largest + 1)) / 2
    assert cost_per_rep(largest, SECONDS, 0.0, SLOW_GAIN) == pytest.approx(middle, rel=1e-6)


@pytest.mark.parametrize("largest", [90, 150, 250, 399])
def test_very_large_sets_go_too(largest):
    """Where one recovers almost as fast as one tires the cost hardly depends on the set; a bracket too low once made a hundred 171."""
    assert in_one_set(cost_per_rep(largest, SECONDS, 0.0, SLOW_GAIN)) == largest


@pytest.mark.parametrize("seconds", [0.3, 2.5, 60.0])
def test_a_larger_set_is_a_smaller_cost_however_large(seconds):
    """Beyond 400 repetitions in proportion, without a jump or an end."""
    costs = [cost_per_rep(largest, seconds, 0.4, SLOW_GAIN) for largest in (1, 5, 30, 120, 350, 399, 401, 600, 2000, 20000)]
    assert costs == sorted(costs, reverse=True)
    assert all(0 < cost < 1 for cost in costs)


def test_a_single_and_two_cost_what_the_model_says():
    """M = 1: between all of it and what lets two go; M = 2 hides q of about 0.33 to 0.5."""
    assert 0.7 < cost_per_rep(1, SECONDS, 0.0, SLOW_GAIN) < 0.8
    assert 0.33 < cost_per_rep(2, SECONDS, 0.0, SLOW_GAIN) < 0.5


@pytest.mark.parametrize("reps", [1.5, 4.2, 10.0, 17.9, 45.0])
def test_the_cost_found_gives_back_its_repetitions(reps):
    cost = cost_reaching(reps, SECONDS, 0.4, SLOW_GAIN)
    assert reps_to_failure(fresh(1), effort(cost, SECONDS, 0.4), SLOW_GAIN) == pytest.approx(reps, rel=1e-6)


def test_continuous_repetitions_never_jump():
    """The part of a last repetition runs from 0 to 1: a cost 0.5 % larger leaves at most 2.5 % fewer, more only where one recovers on the way."""
    cost, before = 0.08, math.inf
    while cost < 0.6:
        reps = reps_to_failure(fresh(1), effort(cost), SLOW_GAIN)
        assert before == math.inf or 0.975 * before < reps < before
        cost, before = cost * 1.005, reps


def test_a_larger_cost_never_allows_more():
    reps = [in_one_set(step / 200) for step in range(2, 200)]
    assert reps == sorted(reps, reverse=True)


@pytest.mark.parametrize("quick", [0.1, 0.4, 0.8])
@pytest.mark.parametrize("slow", [0.0, 0.1, 0.2])
def test_more_rest_never_leaves_less(quick, slow):
    depths = []
    for rest_s in range(0, 300, 10):
        fatigue = tired(quick, slow)
        recover(fatigue, [0], rest_s)
        depths.append(depth(fatigue))
    assert depths == sorted(depths, reverse=True)


def test_more_rest_between_sets_never_costs_repetitions():
    done = []
    for rest_s in range(0, 400, 20):
        fatigue = fresh(1)
        reps_to_failure(fatigue, effort(0.07), SLOW_GAIN)
        recover(fatigue, [0], rest_s)
        done.append(reps_to_failure(fatigue, effort(0.07), SLOW_GAIN))
    assert done == sorted(done)


def test_repetitions_slow_as_one_tires():
    fatigue = fresh(1)
    cost = cost_per_rep(20, SECONDS, 0.0, SLOW_GAIN)
    seconds = [perform(fatigue, effort(cost), 1, SLOW_GAIN)[1] for _ in range(20)]
    assert seconds == sorted(seconds)
    assert seconds[0] < 1.01 * SECONDS
    assert 1.3 * SECONDS < seconds[-1] < 1.4 * SECONDS


def test_no_repetition_goes_past_the_ceiling():
    for ceiling in (0.5, 0.85, PAST_ONE):
        fatigue = fresh(1)
        done, _, deepest = perform(fatigue, effort(0.06), 100, SLOW_GAIN, ceiling)
        assert 0 < done < 100
        assert deepest <= ceiling
        assert depth(fatigue) + 0.06 > ceiling  # one more would have gone past


def test_the_entry_costs_its_share_of_a_repetition():
    """0.4 of q = 0.1 on a fresh muscle: u = 0.04·0.96, v = 0.04·0.04."""
    fatigue = fresh(1)
    enter(fatigue, effort(0.1, entry=0.4), SLOW_GAIN)
    assert (fatigue.quick[0], fatigue.slow[0]) == pytest.approx((0.0384, 0.0016), rel=1e-12)
