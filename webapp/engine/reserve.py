"""Quick and slow fatigue of the muscle groups, one repetition at a time.

A group's quick fatigue u and slow fatigue v are shares of its capacity; depth is u + v, reserve is 1 - depth. A repetition
adds its cost, most of it quick while the depth is below a threshold, ever more of it slow beyond; any time that passes takes
both back exponentially. In a coach's words: the first half of your maximum is cheap, the second half is paid back slowly.

- `Fatigue`: the state of all groups.  - `Effort`: what one repetition of a movement takes.
- `perform`: a set.  - `recover`: time passing.  - `cost_per_rep`: the cost behind a largest unbroken set.
- `set_to_failure`: a set as people do it in the mean.

Neglected: heat, sleep, technique, nerves, and everything between groups but the shares of a movement.
"""

import math

from .parameters import (
    BREATH_SLOWS,
    LEFT_AT_FAILURE,
    MANY_SINGLES,
    QUICK_TIME_CONSTANT_S,
    REPEAT_TEST_FROM,
    REPEAT_TEST_REST_S,
    REPEAT_TEST_SD_REPS,
    SLOW_FLOOR,
    SLOW_GAIN,
    SLOW_GAIN_HIGHEST,
    SLOW_GAIN_LOWEST,
    SLOW_GAIN_SD,
    SLOW_GAIN_STEP,
    SLOW_THRESHOLD,
    SLOW_TIME_CONSTANT_S,
    SLOWING,
)
from .units import whole

PAST_ONE = 1.0 + 1e-9  # a repetition that ends at depth 1 to the last bit still counts
MOST_REPS = 400  # a longer set is not followed to its end but taken to go on in proportion: 400 that use up half stand for 800
COST_TOLERANCE = 1e-11  # relative error of repetitions at which a cost counts as found


class Fatigue:
    """Quick and slow fatigue of every slot (muscle group, or one side of it), and what is spent of W′ in its two parts, each 0–1."""

    def __init__(self, quick: list[float], slow: list[float], air_fast: float, air_slow: float):
        self.quick = quick
        self.slow = slow
        self.air_fast = air_fast
        self.air_slow = air_slow


class Effort:
    """What one repetition takes.

    Attributes
    ----------
    slots : the slots it loads, primary first; list of indices.
    costs : share of each slot's capacity that one repetition takes, one per slot. [0–1]
    seconds : duration of a repetition when fresh. [s]
    entry : cost of starting a set. [repetitions]
    linger_s : how much longer each lasts on purpose: time in position, in which nothing recovers. [s]
    """

    def __init__(self, slots: list[int], costs: list[float], seconds: float, entry: float, linger_s: float = 0.0):
        self.slots = slots
        self.costs = costs
        self.seconds = seconds
        self.entry = entry
        self.linger_s = linger_s


def fresh(slots: int) -> Fatigue:
    """Return the state of `slots` rested slots."""
    return Fatigue([0.0] * slots, [0.0] * slots, 0.0, 0.0)


def twin(fatigue: Fatigue) -> Fatigue:
    """Return a state that changes on its own."""
    return Fatigue(fatigue.quick[:], fatigue.slow[:], fatigue.air_fast, fatigue.air_slow)


def quick_time_constant(air_spent: float) -> float:
    """Return τu for somebody who has spent that share of W′: hard breathing slows local recovery. [s]"""
    return QUICK_TIME_CONSTANT_S * (1 + BREATH_SLOWS * air_spent)


def recover(fatigue: Fatigue, slots: list[int], seconds: float):
    """Let `seconds` [s] pass for `slots`, in place: u ← u·e^(−t/τu), v ← v·e^(−t/τv)."""
    keep_quick = math.exp(-seconds / quick_time_constant(fatigue.air_fast + fatigue.air_slow))
    keep_slow = math.exp(-seconds / SLOW_TIME_CONSTANT_S)
    quick = fatigue.quick
    slow = fatigue.slow
    for slot in slots:
        quick[slot] = quick[slot] * keep_quick
        slow[slot] = slow[slot] * keep_slow


def enter(fatigue: Fatigue, effort: Effort, gain: float):
    """Take the cost of starting a set, in place."""
    if effort.entry == 0:
        return
    for position in range(len(effort.slots)):
        slot = effort.slots[position]
        cost = effort.entry * effort.costs[position]
        share = slow_share(fatigue.quick[slot] + fatigue.slow[slot] + cost / 2, gain)
        fatigue.quick[slot] = fatigue.quick[slot] + cost * (1 - share)
        fatigue.slow[slot] = fatigue.slow[slot] + cost * share


def slow_share(depth: float, gain: float) -> float:
    """Return the share of a cost that turns into slow fatigue when spent at `depth`. [0–1]"""
    return min(1.0, max(SLOW_FLOOR, gain * (depth - SLOW_THRESHOLD) / (1 - SLOW_THRESHOLD)))


def perform(fatigue: Fatigue, effort: Effort, reps: int, gain: float, ceiling: float = PAST_ONE) -> list[float]:
    """Do up to `reps` repetitions without a break, in place, and stop before the first that cannot be done; see `enter` for starting.

    Parameters
    ----------
    fatigue : changed to the state at the end of the last repetition.
    effort : what a repetition takes; its first slot is the primary one and sets how the repetitions slow.
    reps : repetitions wanted, >= 0.
    gain : the person's g. [0.2–1.6]
    ceiling : depth no repetition may pass; 1 is failure, less holds something back. [0–1]

    Returns
    -------
    list : repetitions done, time they took [s], greatest depth met in any slot [0–1].

    Notes
    -----
    A repetition takes its cost at its middle, then decays while it lasts, c·(1 + k·d³) with d at its middle in the primary
    slot. Slots the movement does not load are left to the caller. With a ceiling above 1, for work that ends by breath or by a miss, a
    slot that is empty stays empty.
    """
    quick = fatigue.quick
    slow = fatigue.slow
    slots = effort.slots
    costs = effort.costs
    count = len(slots)
    lead = slots[0]
    half_lead = costs[0] / 2
    slope = gain / (1 - SLOW_THRESHOLD)
    quick_s = quick_time_constant(fatigue.air_fast + fatigue.air_slow)
    elapsed = 0.0
    deepest = 0.0
    done = 0
    while done < reps:
        for position in range(count):
            slot = slots[position]
            if quick[slot] + slow[slot] + costs[position] > ceiling:
                return [done, elapsed, deepest]
        middle = quick[lead] + slow[lead] + half_lead
        seconds = effort.seconds * (1 + SLOWING * middle * middle * middle)
        keep_quick = math.exp(-seconds / quick_s)
        keep_slow = math.exp(-seconds / SLOW_TIME_CONSTANT_S)
        for position in range(count):
            slot = slots[position]
            depth = quick[slot] + slow[slot]
            cost = costs[position]
            if depth + cost > PAST_ONE:
                cost = max(0.0, PAST_ONE - depth)
            share = slope * (depth + cost / 2 - SLOW_THRESHOLD)
            if share < SLOW_FLOOR:
                share = SLOW_FLOOR
            elif share > 1:
                share = 1.0
            if depth + cost > deepest:
                deepest = depth + cost
            quick[slot] = (quick[slot] + cost * (1 - share)) * keep_quick
            slow[slot] = (slow[slot] + cost * share) * keep_slow
        elapsed = elapsed + seconds + effort.linger_s
        done = done + 1
    return [done, elapsed, deepest]


def reps_to_failure(fatigue: Fatigue, effort: Effort, gain: float) -> float:
    """Return how many repetitions go until failure in the primary slot, continuous, leaving the state after the last whole one.

    Notes
    -----
    The part of a last, impossible repetition is what was left at the deepest point of the set over what the next repetition
    would have needed beyond what came back during the last one: 0 where the last just went, 1 where one more just goes.
    Beyond MOST_REPS the count goes on in proportion to the depth reached.
    """
    slot = effort.slots[0]
    enter(fatigue, effort, gain)
    result = perform(fatigue, effort, MOST_REPS, gain)
    if result[0] >= MOST_REPS:
        return result[0] / result[2]
    left = 1 - fatigue.quick[slot] - fatigue.slow[slot]
    if result[0] == 0:
        return max(0.0, left / effort.costs[0])
    came_back = left - (1 - result[2])
    return result[0] + max(0.0, (1 - result[2]) / (effort.costs[0] - came_back))


def set_to_failure(fatigue: Fatigue, effort: Effort, most: float, gain: float) -> float:
    """Do a set to failure or to `most` repetitions, in place, and return the repetitions, continuous as a mean over people is.

    Notes
    -----
    Who stops because the next repetition does not go has between nothing and one of it left, LEFT_AT_FAILURE in the mean. The part of a last
    repetition that is counted is done, so that the state is as continuous as the count: more rest never gives fewer in all.
    """
    reps = min(most, max(0.0, reps_to_failure(twin(fatigue), effort, gain) - LEFT_AT_FAILURE))
    going = int(math.floor(reps))
    enter(fatigue, effort, gain)
    perform(fatigue, effort, going, gain)
    perform_part(fatigue, effort, reps - going, gain)
    return reps


def perform_part(fatigue: Fatigue, effort: Effort, part: float, gain: float):
    """Do a part [0–1] of a repetition, in place: that share of its cost, of its time and of what comes back."""
    lead = effort.slots[0]
    middle = fatigue.quick[lead] + fatigue.slow[lead] + part * effort.costs[0] / 2
    enter(fatigue, Effort(effort.slots, effort.costs, effort.seconds, part), gain)
    recover(fatigue, effort.slots, part * effort.seconds * (1 + SLOWING * middle * middle * middle))


def cost_reaching(reps: float, seconds_per_rep: float, entry: float, gain: float) -> float:
    """Return the cost at which `reps` (continuous, > 0) repetitions go in one fresh set.

    Secant steps on the logarithms, kept inside a bracket: repetitions fall a little faster than one over the cost.
    """
    low = 1e-9
    high = 1.0
    cost = min(high, 1.15 / (reps + entry))
    slope = -1.2
    before = 0.0
    missed_before = 0.0
    for turn in range(60):
        gone = reps_to_failure(fresh(1), Effort([0], [cost], seconds_per_rep, entry), gain)
        missed = math.log(max(gone, 1e-3) / reps)
        if abs(missed) < COST_TOLERANCE:
            break
        if missed > 0:
            low = cost
        else:
            high = cost
        if turn > 0 and abs(math.log(cost / before)) > 1e-15:
            slope = min(-0.05, (missed - missed_before) / math.log(cost / before))
        before = cost
        missed_before = missed
        cost = cost * math.exp(-missed / slope)
        if cost <= low or cost >= high:
            cost = math.sqrt(low * high) if low > 1e-9 else high / 2
    return cost


def cost_per_rep(max_reps: float, seconds_per_rep: float, entry: float, gain: float) -> float:
    """Return the cost of one repetition for somebody whose largest unbroken set is `max_reps`.

    Parameters
    ----------
    max_reps : largest unbroken set when fresh, >= 1; need not be whole. [repetitions]
    seconds_per_rep : usual duration of a repetition, > 0. [s]
    entry : cost of starting the set. [repetitions]
    gain : the person's g. [0.2–1.6]

    Returns
    -------
    float : mid-way between the largest cost that still allows `max_reps` and the largest that allows one more. [0–1]
    """
    most = cost_reaching(max_reps, seconds_per_rep, entry, gain)
    return (most + cost_reaching(max_reps + 1, seconds_per_rep, entry, gain)) / 2


def cost_of_singles(wait_s: float, seconds_per_rep: float, entry: float, gain: float) -> float:
    """Return the largest cost at which single repetitions go on and on with `wait_s` between them, by bisection. [0–1]"""
    low = 0.0
    high = 1.0
    for _ in range(30):
        cost = (low + high) / 2
        effort = Effort([0], [cost], seconds_per_rep, entry)
        fatigue = fresh(1)
        gone = 0
        while gone < MANY_SINGLES:
            enter(fatigue, effort, gain)
            if perform(fatigue, effort, 1, gain)[0] == 0:
                break
            recover(fatigue, [0], wait_s)
            gone = gone + 1
        if gone == MANY_SINGLES:
            low = cost
        else:
            high = cost
    return low


def cost_kept_up(seconds: float, gain: float) -> float:
    """Return the largest cost at which a repetition every `seconds` [s] goes on for good: the depth stays where nothing slow builds up. [0–1]

    At the middle of a repetition the slow share is just still the least one, SLOW_FLOOR; quick and slow fatigue before it are geometric series.
    """
    keep_quick = math.exp(-seconds / QUICK_TIME_CONSTANT_S)
    keep_slow = math.exp(-seconds / SLOW_TIME_CONSTANT_S)
    quick = keep_quick / (1 - keep_quick)
    slow = keep_slow / (1 - keep_slow)
    depth = SLOW_THRESHOLD + SLOW_FLOOR * (1 - SLOW_THRESHOLD) / gain
    return min(1.0, depth / ((1 - SLOW_FLOOR) * quick + SLOW_FLOOR * slow + 0.5))


def slow_gain(repeat_test: list | None, seconds_per_rep: float) -> float:
    """Return the g of a person from their repeat test, or the population's without one.

    Parameters
    ----------
    repeat_test : largest set, and largest set again after 60 s; None without a test. [repetitions]
    seconds_per_rep : usual duration of a repetition, > 0. [s]

    Returns
    -------
    float : the g that weighs the test, right to half a repetition, against the population's spread. [0.2–1.6]

    Notes
    -----
    Below 8 repetitions the test says nothing and is left aside. The weighed sum of squares is scanned on a grid of g.
    """
    if repeat_test is None or repeat_test[0] < REPEAT_TEST_FROM:
        return SLOW_GAIN
    best = SLOW_GAIN
    least = math.inf
    for index in range(whole((SLOW_GAIN_HIGHEST - SLOW_GAIN_LOWEST) / SLOW_GAIN_STEP) + 1):
        gain = SLOW_GAIN_LOWEST + SLOW_GAIN_STEP * index
        again = second_set(repeat_test[0], seconds_per_rep, gain)
        misfit = ((again - repeat_test[1]) / REPEAT_TEST_SD_REPS) ** 2 + ((gain - SLOW_GAIN) / SLOW_GAIN_SD) ** 2
        if misfit < least - 1e-9:
            least = misfit
            best = gain
    return best


def second_set(max_reps: float, seconds_per_rep: float, gain: float) -> float:
    """Return the repetitions of a second set to failure, 60 s after a first one of `max_reps`."""
    cost = cost_reaching(max_reps + LEFT_AT_FAILURE, seconds_per_rep, 0.0, gain)
    effort = Effort([0], [cost], seconds_per_rep, 0.0)
    fatigue = fresh(1)
    set_to_failure(fatigue, effort, math.inf, gain)
    recover(fatigue, [0], REPEAT_TEST_REST_S)
    return set_to_failure(fatigue, effort, math.inf, gain)
