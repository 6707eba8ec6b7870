"""A break-up in, the course of the fatigue out.

A `Segment` is one block in one round, ready to be simulated: steps of work (a repetition, or a stretch of metres, calories or
seconds), what a step takes, and the times around its sets. `run_sets` does a segment's sets exactly and stops at the first
failure; `run_through` lets a person who fails carry on as people do, at a cost.
"""

import math

from .parameters import (
    FAIL_COST_S,
    MISS_RESTART_S,
    QUICK_TIME_CONSTANT_S,
    SLOW_FLOOR,
    SLOW_THRESHOLD,
    SLOW_TIME_CONSTANT_S,
    SLOWING,
    LONGEST_WAIT_S,
    PATIENCE_S,
    SWITCH_S,
    WAIT_STEP_S,
)
from .reserve import PAST_ONE, Effort, Fatigue, enter, perform, recover, twin

SLOTS = ["push", "pull", "grip", "grip", "overhead", "overhead", "legs", "hinge", "trunk"]  # each side carries for itself
LEFT_OF = {"grip": 2, "overhead": 4}
NO_STEP = -1
MANY_STEPS = 1000000


class Segment:
    """One block in one round as the simulation sees it.

    Attributes
    ----------
    effort : what a step takes; `other_side` the same with the sides changed, None for work on both sides at once.
    slots : every slot the segment loads, on either side.
    steps : work to do, whole steps. set_up_s : least rest between two sets. [s]
    switch_steps : steps after which sides change, 0 for never.
    misses : misses to expect while doing all of it, a skill's own stops. [count]
    fail_cost_s : lost by a failed attempt beside the step itself. [s]
    """

    def __init__(self, effort: Effort, other_side: Effort | None, slots: list[int], steps: int, set_up_s: float):
        self.effort = effort
        self.other_side = other_side
        self.slots = slots
        self.steps = steps
        self.set_up_s = set_up_s
        self.switch_steps = 0
        self.misses = 0.0
        self.fail_cost_s = FAIL_COST_S


class Course:
    """How a segment went: seconds, greatest depth, starts and ends of sets on the segment's own clock, first step that failed."""

    def __init__(self):
        self.seconds = 0.0
        self.deepest = 0.0
        self.starts_s = []
        self.ends_s = []
        self.failed_at = NO_STEP
        self.fails = 0


def side_of(segment: Segment, on_other_side: bool) -> Effort:
    """Return what a step takes on one side."""
    return segment.other_side if on_other_side and segment.other_side is not None else segment.effort


def one_side(fatigue: Fatigue, segment: Segment, reps: int, gain: float, ceiling: float, on_other_side: bool) -> list[float]:
    """Do repetitions on one side; slots of the segment which that side leaves alone recover meanwhile. Same result as `perform`."""
    effort = side_of(segment, on_other_side)
    result = perform(fatigue, effort, reps, gain, ceiling)
    recover(fatigue, [slot for slot in segment.slots if slot not in effort.slots], result[1])
    return result


def switched_set(fatigue: Fatigue, segment: Segment, reps: int, gain: float, ceiling: float, before: int) -> list[float]:
    """Do a set of `reps` steps with a change of sides every `switch_steps` of the whole segment, `before` steps being done.

    Changing sides takes time, not the cost of starting: the implement is handed over, not lifted from the floor.
    """
    done = 0
    seconds = 0.0
    deepest = 0.0
    while done < reps:
        stretch = (before + done) // segment.switch_steps
        piece = min(reps - done, (stretch + 1) * segment.switch_steps - before - done)
        if done == 0:
            enter(fatigue, side_of(segment, stretch % 2 == 1), gain)
        else:
            recover(fatigue, segment.slots, SWITCH_S)
            seconds = seconds + SWITCH_S
        result = one_side(fatigue, segment, piece, gain, ceiling, stretch % 2 == 1)
        done = done + int(result[0])
        seconds = seconds + result[1]
        deepest = max(deepest, result[2])
        if result[0] < piece:
            break
    return [done, seconds, deepest]


def any_set(fatigue: Fatigue, segment: Segment, reps: int, gain: float, ceiling: float, before: int) -> list[float]:
    """Do a set of the segment, with or without changes of side. Same result as `perform`."""
    if segment.switch_steps > 0:
        return switched_set(fatigue, segment, reps, gain, ceiling, before)
    enter(fatigue, segment.effort, gain)
    return perform(fatigue, segment.effort, reps, gain, ceiling)


def leads_alone(fatigue: Fatigue, segment: Segment) -> bool:
    """Is the primary slot the only one likely to give out, so that a search may look at it alone and check its answer?

    So it is where no other slot, from where it starts, gets deep even if the primary one is emptied once.
    """
    for position in range(1, len(segment.effort.slots)):
        slot = segment.effort.slots[position]
        if fatigue.quick[slot] + fatigue.slow[slot] + segment.effort.costs[position] / segment.effort.costs[0] > 0.95:
            return False
    return True


def seconds_alone(fatigue: Fatigue, segment: Segment, sets: list[int], rests_s: list[float], gain: float, ceiling: float) -> float:
    """Return what `run_sets` takes where only the primary slot can give out, math.inf where it would fail; nothing is changed. [s]

    The search's inner loop: the same model as `reserve.perform` on plain numbers, a test holds the two together. Where sides change and
    the primary slot is one side's own, the resting side's fatigue is kept aside and caught up with when its turn comes.
    """
    lead = segment.effort.slots[0]
    other = lead if segment.other_side is None else segment.other_side.slots[0]
    cost = segment.effort.costs[0]
    fresh_s = segment.effort.seconds
    entry = segment.effort.entry * cost
    slope = gain / (1 - SLOW_THRESHOLD)
    u = fatigue.quick[lead]
    v = fatigue.slow[lead]
    idle_u = fatigue.quick[other]
    idle_v = fatigue.slow[other]
    idle_since = 0.0
    elapsed = 0.0
    done = 0
    turn = segment.switch_steps if segment.switch_steps > 0 else MANY_STEPS
    for index in range(len(sets)):
        for step in range(sets[index]):
            if done == turn:
                turn = turn + segment.switch_steps
                pause_s = SWITCH_S if step > 0 else 0.0
                u = u * math.exp(-pause_s / QUICK_TIME_CONSTANT_S)
                v = v * math.exp(-pause_s / SLOW_TIME_CONSTANT_S)
                elapsed = elapsed + pause_s
                if other != lead:
                    away_s = elapsed - idle_since
                    rested_u = idle_u * math.exp(-away_s / QUICK_TIME_CONSTANT_S)
                    rested_v = idle_v * math.exp(-away_s / SLOW_TIME_CONSTANT_S)
                    idle_u = u
                    idle_v = v
                    idle_since = elapsed
                    u = rested_u
                    v = rested_v
            if step == 0:
                share = min(1.0, max(SLOW_FLOOR, slope * (u + v + entry / 2 - SLOW_THRESHOLD)))
                u = u + entry * (1 - share)
                v = v + entry * share
            depth = u + v
            if depth + cost > ceiling:
                return math.inf
            middle = depth + cost / 2
            share = slope * (middle - SLOW_THRESHOLD)
            if share < SLOW_FLOOR:
                share = SLOW_FLOOR
            elif share > 1:
                share = 1.0
            seconds = fresh_s * (1 + SLOWING * middle * middle * middle)
            u = (u + cost * (1 - share)) * math.exp(-seconds / QUICK_TIME_CONSTANT_S)
            v = (v + cost * share) * math.exp(-seconds / SLOW_TIME_CONSTANT_S)
            elapsed = elapsed + seconds
            done = done + 1
        if index < len(rests_s):
            rest_s = rests_s[index]
            u = u * math.exp(-rest_s / QUICK_TIME_CONSTANT_S)
            v = v * math.exp(-rest_s / SLOW_TIME_CONSTANT_S)
            elapsed = elapsed + rest_s
    return elapsed


def run_sets(fatigue: Fatigue, segment: Segment, sets: list[int], rests_s: list[float], gain: float, ceiling: float = PAST_ONE) -> Course:
    """Do the sets as planned, in place, and stop before the first step that would pass `ceiling`.

    Parameters
    ----------
    fatigue : state before the first set; changed to the state after the last.
    sets : steps per set. rests_s : from the last step of a set to the first of the next, one fewer than sets. [s]
    gain : the person's g. [0.2–1.6]
    ceiling : depth no step may pass. [0–1]

    Returns
    -------
    Course : `failed_at` is the step, counted from 1, that could not be done, or NO_STEP.
    """
    course = Course()
    done = 0
    for index in range(len(sets)):
        course.starts_s.append(course.seconds)
        result = any_set(fatigue, segment, sets[index], gain, ceiling, done)
        course.seconds = course.seconds + result[1]
        course.deepest = max(course.deepest, result[2])
        course.ends_s.append(course.seconds)
        done = done + int(result[0])
        if result[0] < sets[index]:
            course.failed_at = done + 1
            return course
        if index < len(rests_s):
            pause(fatigue, segment, course, rests_s[index])
    pause(fatigue, segment, course, segment.misses * MISS_RESTART_S)
    return course


def run_through(fatigue: Fatigue, segment: Segment, sets: list[int], rests_s: list[float], gain: float, until_s: float) -> Course:
    """Do the sets the way a person does who fails and carries on, in place, up to about `until_s` [s].

    A failed step takes its time, what was left of the reserve, and `fail_cost_s`; then the person waits until half of what is left of
    the set goes (a single at least), and finishes the set in such pieces.
    """
    course = Course()
    done = 0
    for index in range(len(sets)):
        course.starts_s.append(course.seconds)
        left = sets[index]
        wanted = left
        while left > 0 and course.seconds < until_s:
            result = any_set(fatigue, segment, wanted, gain, PAST_ONE, done)
            course.seconds = course.seconds + result[1]
            course.deepest = max(course.deepest, result[2])
            done = done + int(result[0])
            left = left - int(result[0])
            if result[0] < wanted:
                fail(fatigue, segment, course, done)
            if left > 0:
                wanted = gather(fatigue, segment, course, max(1, (left + 1) // 2), gain, done)
        course.ends_s.append(course.seconds)
        if left > 0:
            return course
        if index < len(rests_s):
            pause(fatigue, segment, course, rests_s[index])
    pause(fatigue, segment, course, segment.misses * MISS_RESTART_S)
    return course


def gather(fatigue: Fatigue, segment: Segment, course: Course, wanted: int, gain: float, done: int) -> int:
    """Rest after a failure until `wanted` steps would go, in place, or a single where that takes too long; return what goes."""
    waited_s = 0.0
    pause(fatigue, segment, course, segment.set_up_s)
    while waited_s < LONGEST_WAIT_S:
        if any_set(twin(fatigue), segment, wanted, gain, PAST_ONE, done)[0] == wanted:
            return wanted
        pause(fatigue, segment, course, WAIT_STEP_S)
        waited_s = waited_s + WAIT_STEP_S
        if waited_s >= PATIENCE_S:
            wanted = 1
    return wanted


def pause(fatigue: Fatigue, segment: Segment, course: Course, seconds: float):
    """Let a rest of `seconds` [s] pass, in place."""
    recover(fatigue, segment.slots, seconds)
    course.seconds = course.seconds + seconds


def fail(fatigue: Fatigue, segment: Segment, course: Course, done: int):
    """Take the cost of a failed step, in place: what was left in the slot that gave out turns slow, time passes."""
    course.fails = course.fails + 1
    if course.failed_at == NO_STEP:
        course.failed_at = done + 1
    slot = nearest_to_failure(fatigue, segment.effort)
    fatigue.slow[slot] = fatigue.slow[slot] + max(0.0, 1 - fatigue.quick[slot] - fatigue.slow[slot])
    course.deepest = 1.0
    pause(fatigue, segment, course, segment.effort.seconds + segment.fail_cost_s)


def nearest_to_failure(fatigue: Fatigue, effort: Effort) -> int:
    """Return the slot that the next step would take deepest."""
    worst = effort.slots[0]
    deepest = 0.0
    for position in range(len(effort.slots)):
        slot = effort.slots[position]
        depth = fatigue.quick[slot] + fatigue.slow[slot] + effort.costs[position]
        if depth > deepest + 1e-9:
            worst = slot
            deepest = depth
    return worst
