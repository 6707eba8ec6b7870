"""The search's inner loop against the full simulation, several groups against one, and how people who fail carry on."""

import math
import random

import pytest

from webapp.engine.breath import breath_of
from webapp.engine.parameters import SLOW_GAIN
from webapp.engine.quick import Alone
from webapp.engine.reserve import PAST_ONE, Effort, cost_per_rep, fresh, perform, recover
from webapp.engine.segments import Segment
from webapp.engine.simulate import NO_STEP, Course, run_sets, run_through
from webapp.engine.whole import steps_by

SAME = 1e-9  # relative: the same arithmetic in another order
LUNGS = {"cp_w": 220.0, "w_prime_j": 15000.0}


def one_group(rng):
    """A segment of one slot, an athlete of any strength, resting or not before it."""
    seconds = rng.uniform(1, 4)
    cost = cost_per_rep(rng.uniform(3, 40), seconds, 0.4, SLOW_GAIN)
    segment = Segment(Effort([0], [cost], seconds, rng.choice([0.0, 0.4])), None, [0], 50, 4.0)
    fatigue = fresh(2)
    fatigue.quick[0], fatigue.slow[0] = rng.uniform(0, 0.3), rng.uniform(0, 0.2)
    return fatigue, segment


def sided(rng):
    """The same on one hand at a time, the other hand's slot resting meanwhile."""
    fatigue, segment = one_group(rng)
    segment.other_side = Effort([1], segment.effort.costs, segment.effort.seconds, segment.effort.entry)
    segment.slots = [0, 1]
    segment.switch_steps = rng.randint(2, 9)
    fatigue.quick[1], fatigue.slow[1] = rng.uniform(0, 0.3), rng.uniform(0, 0.2)
    return fatigue, segment


def any_plan(rng):
    """Some sets and rests."""
    sets = [rng.randint(1, 8) for _ in range(rng.randint(1, 9))]
    return sets, [rng.uniform(0, 60) for _ in sets[1:]]


def seconds_alone(fatigue, segment, sets, rests_s, gain, ceiling, price):
    """What the inner loop says of sets and rests, inf where one fails. [s]"""
    way = Alone(fatigue, segment, gain, ceiling, price)
    state = way.start()
    for index, steps in enumerate(sets):
        if not way.do_set(state, steps):
            return math.inf
        if index < len(rests_s):
            way.do_rest(state, rests_s[index])
    return way.comes_to(state)


def both_ways(fatigue, segment, sets, rests_s, gain, ceiling):
    """Seconds by the inner loop and by the simulation, inf where it fails."""
    quick_s = seconds_alone(fatigue, segment, sets, rests_s, gain, ceiling, 0.0)
    course = run_sets(fatigue, segment, sets, rests_s, gain, ceiling)
    return quick_s, course.seconds if course.failed_at == NO_STEP else math.inf


@pytest.mark.parametrize("make", [one_group, sided])
def test_the_inner_loop_is_the_simulation(make):
    """300 seeded cases each, at rest of breath; some hold and some fail."""
    rng = random.Random(11)
    failed = 0
    for _ in range(300):
        fatigue, segment = make(rng)
        inner_s, full_s = both_ways(fatigue, segment, *any_plan(rng), rng.uniform(0.3, 1.4), rng.choice([PAST_ONE, 0.85, 0.75]))
        failed += full_s == math.inf
        assert inner_s == pytest.approx(full_s, rel=SAME)
    assert 30 < failed < 270


def test_the_inner_loop_is_the_simulation_for_work_that_takes_breath():
    rng = random.Random(12)
    for _ in range(300):
        fatigue, segment = one_group(rng)
        segment.breath = breath_of(rng.uniform(0, 700), LUNGS)
        fatigue.air_fast, fatigue.air_slow = rng.uniform(0, 0.5), rng.uniform(0, 0.5)
        inner_s, full_s = both_ways(fatigue, segment, *any_plan(rng), SLOW_GAIN, PAST_ONE)
        assert inner_s == pytest.approx(full_s, rel=SAME)


def test_the_inner_loop_is_the_simulation_for_sides_that_change_out_of_breath():
    rng = random.Random(13)
    for _ in range(300):
        fatigue, segment = sided(rng)
        segment.breath = breath_of(rng.uniform(0, 700), LUNGS)
        fatigue.air_fast, fatigue.air_slow = rng.uniform(0, 0.5), rng.uniform(0, 0.5)
        inner_s, full_s = both_ways(fatigue, segment, *any_plan(rng), SLOW_GAIN, PAST_ONE)
        assert inner_s == pytest.approx(full_s, rel=SAME)


def test_the_price_is_for_the_slow_fatigue_left():
    """What the blocks to come will pay: 450 s for all of it, hand arithmetic on the simulation's end state."""
    rng = random.Random(14)
    for _ in range(50):
        fatigue, segment = one_group(rng)
        sets, rests_s = [2, 2, 2], [15, 15]
        bare_s = seconds_alone(fatigue, segment, sets, rests_s, SLOW_GAIN, PAST_ONE, 0.0)
        priced_s = seconds_alone(fatigue, segment, sets, rests_s, SLOW_GAIN, PAST_ONE, 450.0)
        if run_sets(fatigue, segment, sets, rests_s, SLOW_GAIN).failed_at == NO_STEP:
            assert priced_s - bare_s == pytest.approx(450 * fatigue.slow[0], rel=1e-6)


def test_the_inner_loop_changes_nothing():
    fatigue, segment = one_group(random.Random(3))
    before = (list(fatigue.quick), list(fatigue.slow))
    seconds_alone(fatigue, segment, [3, 3, 3], [20, 20], SLOW_GAIN, PAST_ONE, 0.0)
    assert (fatigue.quick, fatigue.slow) == before


def test_light_other_groups_change_nothing_for_the_primary_one():
    rng = random.Random(5)
    for _ in range(50):
        cost, seconds, reps = rng.uniform(0.03, 0.2), rng.uniform(1, 4), rng.randint(1, 30)
        alone, together = fresh(1), fresh(3)
        one = perform(alone, Effort([0], [cost], seconds, 0.0), reps, SLOW_GAIN)
        many = perform(together, Effort([0, 1, 2], [cost, 0.3 * cost, 0.1 * cost], seconds, 0.0), reps, SLOW_GAIN)
        assert many == pytest.approx(one, rel=SAME)
        assert (together.quick[0], together.slow[0]) == pytest.approx((alone.quick[0], alone.slow[0]), rel=SAME)
        assert together.quick[2] + together.slow[2] < together.quick[1] + together.slow[1] < together.quick[0] + together.slow[0]


def test_another_group_can_be_the_one_that_stops_the_set():
    fatigue = fresh(2)
    fatigue.quick[1] = 0.9
    assert perform(fresh(2), Effort([0, 1], [0.1, 0.08], 1.0, 0.0), 8, SLOW_GAIN)[0] == 8
    assert perform(fatigue, Effort([0, 1], [0.1, 0.08], 1.0, 0.0), 8, SLOW_GAIN)[0] == 1  # 0.9 + 0.08 goes, (0.98)·e^(−1/30) + 0.08 does not


def test_each_side_recovers_while_the_other_carries():
    """Changing hands lets one carry on longer than keeping to one hand."""
    cost = cost_per_rep(10, 2.0, 0.0, SLOW_GAIN)
    kept = Segment(Effort([0], [cost], 2.0, 0.0), None, [0], 16, 4.0)
    changed = Segment(Effort([0], [cost], 2.0, 0.0), Effort([1], [cost], 2.0, 0.0), [0, 1], 16, 4.0)
    changed.switch_steps = 4
    assert run_sets(fresh(2), kept, [16], [], SLOW_GAIN).failed_at == 11
    assert run_sets(fresh(2), changed, [16], [], SLOW_GAIN).failed_at == NO_STEP


def test_the_step_that_fails_is_the_first_beyond_the_largest_set():
    for largest in (3, 10, 25):
        cost = cost_per_rep(largest, 2.5, 0.4, SLOW_GAIN)
        segment = Segment(Effort([0], [cost], 2.5, 0.4), None, [0], largest + 1, 4.0)
        assert run_sets(fresh(1), segment, [largest], [], SLOW_GAIN).failed_at == NO_STEP
        assert run_sets(fresh(1), segment, [largest + 1], [], SLOW_GAIN).failed_at == largest + 1


def test_rests_lie_between_the_last_step_and_the_first():
    cost = cost_per_rep(10, 2.5, 0.4, SLOW_GAIN)
    course = run_sets(fresh(1), Segment(Effort([0], [cost], 2.5, 0.4), None, [0], 6, 4.0), [2, 2, 2], [7, 13], SLOW_GAIN)
    assert course.starts_s[1] - course.ends_s[0] == pytest.approx(7)
    assert course.starts_s[2] - course.ends_s[1] == pytest.approx(13)
    assert course.seconds == course.ends_s[2]


def test_who_fails_finishes_all_the_same_and_later():
    cost = cost_per_rep(10, 2.5, 0.4, SLOW_GAIN)
    segment = Segment(Effort([0], [cost], 2.5, 0.4), None, [0], 20, 4.0)
    steady = run_sets(fresh(1), segment, [4, 4, 4, 4, 4], [30] * 4, SLOW_GAIN)
    failing = run_through(fresh(1), segment, [12, 8], [30], SLOW_GAIN, 3600.0)
    assert steady.failed_at == NO_STEP
    assert failing.fails > 0
    assert failing.failed_at == 11
    assert len(failing.ends_s) == 2
    assert failing.seconds > steady.seconds


def test_who_does_not_fail_is_simulated_alike():
    rng = random.Random(9)
    held = 0
    for _ in range(100):
        fatigue, segment = one_group(rng)
        sets, rests_s = any_plan(rng)
        again = fresh(2)
        again.quick[:], again.slow[:] = fatigue.quick, fatigue.slow
        course = run_sets(fatigue, segment, sets, rests_s, SLOW_GAIN)
        if course.failed_at == NO_STEP:
            held += 1
            assert run_through(again, segment, sets, rests_s, SLOW_GAIN, math.inf).seconds == pytest.approx(course.seconds, rel=SAME)
    assert held > 30


def test_a_rest_takes_back_the_same_in_pieces():
    one, many = fresh(2), fresh(2)
    for fatigue in (one, many):
        fatigue.quick[0], fatigue.slow[0] = 0.5, 0.2
    recover(one, [0], 30)
    for _ in range(30):
        recover(many, [0], 1)
    assert many.quick[0] == pytest.approx(one.quick[0], rel=SAME)


@pytest.mark.parametrize(("kind", "done"), [("local", 14), ("skill", 10)])
def test_a_skill_s_misses_are_spread_over_its_work(kind, done):
    """Twenty steps in 28 s, then 12 s of starting again, reckoned last: at 20 s it is 20/28 of the steps, but of a skill half of them, 20 of 40 s (by hand)."""
    course = Course()
    course.starts_s, course.ends_s, course.seconds = [0.0], [28.0], 40.0
    assert steps_by(course, {"kind": kind}, {"sets": [20]}, 20.0) == done
