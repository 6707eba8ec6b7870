"""Personal recovery: what the repeat test (largest set, 60 s, largest set again) says of somebody's slow gain g."""

import pytest

from webapp.engine import EngineError, break_up, reps_over_sets
from webapp.engine.parameters import SLOW_GAIN, SLOW_GAIN_HIGHEST, SLOW_GAIN_LOWEST
from webapp.engine.reserve import second_set, slow_gain

SECONDS = 2.5


def test_without_a_test_it_is_the_population_s():
    assert slow_gain(None, SECONDS) == SLOW_GAIN


@pytest.mark.parametrize("largest", [1, 3, 7, 7.9])
def test_below_eight_the_test_is_left_aside(largest):
    for again in (0, 2, largest):
        assert slow_gain([largest, again], SECONDS) == SLOW_GAIN


@pytest.mark.parametrize("largest", [8, 12, 20, 35])
def test_fewer_again_means_slower_recovery(largest):
    """More of the second set lost, larger g; never the other way."""
    gains = [slow_gain([largest, again], SECONDS) for again in (0, largest // 4, largest // 2, 2 * largest // 3, largest - 2, largest)]
    assert gains == sorted(gains, reverse=True)
    assert gains[0] > SLOW_GAIN > gains[-1]


@pytest.mark.parametrize("largest", [8, 12, 20, 35])
@pytest.mark.parametrize("again", [0, 1, 5, 30, 300])
def test_it_stays_within_bounds(largest, again):
    assert SLOW_GAIN_LOWEST <= slow_gain([largest, again], SECONDS) <= SLOW_GAIN_HIGHEST


@pytest.mark.parametrize("largest", [10, 16, 24])
def test_who_repeats_what_the_population_repeats_is_the_population(largest):
    again = second_set(largest, SECONDS, SLOW_GAIN)
    assert slow_gain([largest, again], SECONDS) == pytest.approx(SLOW_GAIN, abs=0.02)  # the grid of g


@pytest.mark.parametrize("largest", [12, 20, 30])
@pytest.mark.parametrize("gain", [0.4, 0.6, 1.1, 1.4])
def test_the_gain_that_made_a_test_is_found_again_part_of_the_way(largest, gain):
    """A test right to half a repetition pulls g towards the truth, the population's spread pulls it back."""
    found = slow_gain([largest, second_set(largest, SECONDS, gain)], SECONDS)
    assert abs(found - gain) < abs(SLOW_GAIN - gain)
    assert (found - SLOW_GAIN) * (gain - SLOW_GAIN) > 0


def test_half_a_repetition_moves_it_little():
    """The test's own error: half a repetition is no new person."""
    again = second_set(20, SECONDS, SLOW_GAIN)
    assert abs(slow_gain([20, again + 0.5], SECONDS) - slow_gain([20, again - 0.5], SECONDS)) < 0.35  # one width of the prior


def test_slower_recovery_leaves_fewer_later_and_takes_longer():
    quick, slow = {"repeat_test": [20, 15]}, {"repeat_test": [20, 5]}
    assert reps_over_sets(20, SECONDS, 60, 3, recovery=quick)[1] > reps_over_sets(20, SECONDS, 60, 3, recovery=slow)[1]
    assert break_up(20, 50, SECONDS, recovery=quick)["time_s"] < break_up(20, 50, SECONDS, recovery=slow)["time_s"]


def test_the_model_s_second_set_is_the_one_of_sets_to_failure():
    assert second_set(15, SECONDS, SLOW_GAIN) == pytest.approx(reps_over_sets(15, SECONDS, 60, 2)[1], rel=1e-6)


@pytest.mark.parametrize("recovery", ["quick", 3, [20, 9], True, {"repeat_test": 9}, {"repeat_test": [20]}, {"repeat_test": [0, 3]}, {"repeat_test": [20, -1]}])
def test_what_is_no_test_is_refused(recovery):
    with pytest.raises(EngineError):
        reps_over_sets(20, SECONDS, 60, 2, recovery=recovery)
