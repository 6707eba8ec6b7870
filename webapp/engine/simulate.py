"""A break-up in, its course out.

`run_sets` does a segment's sets exactly and stops at the first failure; `run_through` lets a person who fails carry on as people do, at a
cost.
"""

from .breath import rest
from .parameters import LONGEST_GATHER_S, MISS_RESTART_S, PATIENCE_S, WAIT_STEP_S
from .reserve import PAST_ONE, Effort, Fatigue, twin
from .segments import Segment, any_set

NO_STEP = -1


class Course:
    """How a segment went: seconds, greatest depth, starts and ends of sets on the segment's own clock, first step that failed."""

    def __init__(self):
        self.seconds = 0.0
        self.deepest = 0.0
        self.starts_s = []
        self.ends_s = []
        self.failed_at = NO_STEP
        self.fails = 0


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
    while waited_s < LONGEST_GATHER_S:
        if any_set(twin(fatigue), segment, wanted, gain, PAST_ONE, done)[0] == wanted:
            return wanted
        pause(fatigue, segment, course, WAIT_STEP_S)
        waited_s = waited_s + WAIT_STEP_S
        if waited_s >= PATIENCE_S:
            wanted = 1
    return wanted


def pause(fatigue: Fatigue, segment: Segment, course: Course, seconds: float):
    """Let a rest of `seconds` [s] pass, in place."""
    rest(fatigue, segment.slots, seconds)
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
