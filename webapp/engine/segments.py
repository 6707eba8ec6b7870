"""One block in one round, ready to be simulated, and a set of it.

A `Segment`'s work is counted in steps: a repetition, or a stretch of metres, calories or seconds. `any_set` does a set, sides changing on the
way where they do.
"""

from .breath import Breath, breathe
from .parameters import FAIL_COST_S, SWITCH_S
from .reserve import Effort, Fatigue, enter, perform, recover

SLOTS = ["push", "pull", "grip", "grip", "overhead", "overhead", "legs", "hinge", "trunk"]  # each side carries for itself
ALL_SLOTS = [0, 1, 2, 3, 4, 5, 6, 7, 8]
LEFT_OF = {"grip": 2, "overhead": 4}


class Segment:
    """One block in one round as the simulation sees it.

    Attributes
    ----------
    effort : what a step takes; `other_side` the same with the sides changed, None for work on both sides at once.
    slots : every slot the segment loads, on either side; `elsewhere` those it leaves alone.
    steps : work to do, whole steps. set_up_s : least rest between two sets. [s]
    switch_steps : steps after which sides change, 0 for never.
    misses : misses to expect while doing all of it, a skill's own stops. [count]
    fail_cost_s : lost by a failed attempt beside the step itself. [s]
    breath : what the work does to W′.
    """

    def __init__(self, effort: Effort, other_side: Effort | None, slots: list[int], steps: int, set_up_s: float):
        self.effort = effort
        self.other_side = other_side
        self.slots = slots
        self.elsewhere = [slot for slot in ALL_SLOTS if slot not in slots]
        self.steps = steps
        self.set_up_s = set_up_s
        self.switch_steps = 0
        self.misses = 0.0
        self.fail_cost_s = FAIL_COST_S
        self.breath = Breath(0.0, 1.0, 0.0)


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
    """Do a set of the segment, with or without changes of side, and breathe for it. Same result as `perform`."""
    if segment.switch_steps > 0:
        result = switched_set(fatigue, segment, reps, gain, ceiling, before)
    else:
        enter(fatigue, segment.effort, gain)
        result = perform(fatigue, segment.effort, reps, gain, ceiling)
    longer_s = breathe(fatigue, result[1], segment.breath)
    if longer_s > 0:
        recover(fatigue, segment.slots, longer_s)
        result[1] = result[1] + longer_s
    return result
