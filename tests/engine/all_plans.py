"""Every plan there is, for small workouts: depth first over sets and countable rests of all blocks together, in the engine's own simulation.

Sets may be of any size the half rule and the ceiling allow, every rest any on the countable grid, not one for a tier: more plans than a head can hold.
A branch ends where even the bare work left takes it past the time to beat, or where another came to the same point no later and no more tired.
"""

import functools

from webapp.engine.breath import rest
from webapp.engine.layout import carried_to_cap, lay_out
from webapp.engine.prepare import Case, stints_of
from webapp.engine.reserve import recover, twin
from webapp.engine.segments import ALL_SLOTS, any_set
from webapp.engine.tiers import rest_grid
from webapp.engine.stint_segment import ceiling_of, segment_of
from webapp.engine.whole import at_rest, do_stint, in_one_go, pass_change_over, still_to_come

LONGEST_REST_S = 90.0  # on the grid; a longer one is never in a small plan that is quick
WAITS_S = [0.0, 5.0, 10.0, 15.0, 20.0, 30.0, 45.0]  # before a block's first set, beyond the change-over


def layout_of(asked, numbers):
    """The engine's layout for the athlete exactly as given, and the person's gain."""
    case = Case(asked, numbers, {})
    stints = stints_of(case, case.option)
    ones = [1.0] * len(stints)
    layout = lay_out(stints, ones, case.gain, case.cap_s, [], at_rest())
    return carried_to_cap(layout, stints, case.gain, case.cap_s, at_rest()), case.gain


def seconds_of(layout, gain):
    """What the layout takes when done as planned; a step past its block's ceiling fails the test. [s]"""
    fatigue, clock = at_rest().fatigue, 0.0
    for index, breakup in enumerate(layout["breakups"]):
        stint = layout["stints"][index]
        if stint["kind"] == "gate":
            break
        clock += pass_change_over(fatigue, stint, index > 0)
        course = do_stint(fatigue, stint, breakup, segment_of(stint, 1.0, 1.0), gain, clock)
        assert course.deepest <= ceiling_of(stint, 1.0) + 1e-6 or stint["kind"] != "local"
        clock += course.seconds
    return clock


def with_steps(stints, last, steps):
    """The stints up to `last`, which is cut or grown to so many steps."""
    return [*stints[:last], {**stints[last], "steps": steps}]


def least_rest_s(stint):
    """The shortest rest between two sets. [s]"""
    return max(stint["set_up_s"], stint["single_wait_s"])


class AllPlans:
    """The quickest of all plans of some stints that takes less than `to_beat_s`, if any does: `best_s`, and its `sets`."""

    def __init__(self, stints, gain, to_beat_s):
        self.stints, self.gain, self.best_s, self.sets = stints, gain, to_beat_s, None
        self.segments = [segment_of(stint, 1.0, 1.0) for stint in stints]
        self.later = [still_to_come(stints, index, ["local"]) if stint["slots"] else 0.0 for index, stint in enumerate(stints)]
        self.fewest = functools.cache(self.fewest_sets)
        bare_s = [self.bare_s(index, stint["steps"]) + (stint["change_s"] if index else 0.0) for index, stint in enumerate(stints)]
        self.after_s = [sum(bare_s[index + 1 :]) for index in range(len(stints))]
        self.been = {}
        self.begin(0, at_rest().fatigue, 0.0, [])

    def begin(self, index, fatigue, clock, sets):
        """Go on with the stint `index`."""
        if index == len(self.stints):
            if clock < self.best_s:
                self.best_s, self.sets = clock, sets
            return
        stint, fatigue = self.stints[index], twin(fatigue)
        clock += pass_change_over(fatigue, stint, index > 0)
        if stint["kind"] == "local":
            self.choose(index, fatigue, clock, clock, 0, [*sets, []])
            return
        clock += do_stint(fatigue, stint, in_one_go(stint), self.segments[index], self.gain, clock).seconds
        self.begin(index + 1, fatigue, clock, [*sets, []])

    def choose(self, index, fatigue, clock, begun, done, sets):
        """Choose a rest and a set; `begun` is when the stint began."""
        stint, segment = self.stints[index], self.segments[index]
        left = stint["steps"] - done
        if self.hopeless(index, fatigue, clock, done):
            return
        for rest_s in WAITS_S if done == 0 else [each for each in rest_grid(least_rest_s(stint)) if each <= LONGEST_REST_S]:
            if clock + rest_s + self.bare_s(index, left) + self.after_s[index] >= self.best_s:
                return
            for size in range(self.largest(index, left), 0, -1):
                after = twin(fatigue)
                rest(after, segment.slots, rest_s)
                result = any_set(after, segment, size, self.gain, ceiling_of(stint, 1.0), done)
                if result[0] < size:
                    continue
                now, taken = clock + rest_s + result[1], [*sets[:-1], [*sets[-1], (rest_s, size)]]
                if size < left:
                    self.choose(index, after, now, begun, done + size, taken)
                else:
                    recover(after, [slot for slot in ALL_SLOTS if slot not in segment.slots], now - begun)
                    self.begin(index + 1, after, now, taken)

    def largest(self, index, left):
        """The half rule."""
        stint = self.stints[index]
        if stint["max_steps"] <= 3:
            return 1
        return min(left, stint["below_half"]) if left + self.later[index] > stint["max_steps"] else left

    def bare_s(self, index, left):
        """The least that so many steps take: never slowed down, in as few sets as the half rule allows, with the shortest rests between. [s]"""
        stint = self.stints[index]
        return left * stint["seconds"] + (self.fewest(index, left) - 1) * least_rest_s(stint)

    def fewest_sets(self, index, left):
        """How few sets the half rule allows for so many steps."""
        if self.stints[index]["kind"] != "local" or self.largest(index, left) >= left:
            return 1
        return 1 + min(self.fewest(index, left - size) for size in range(1, self.largest(index, left) + 1))

    def hopeless(self, index, fatigue, clock, done):
        """Has another plan been here no later and no more tired? Whoever is fresher is never slower."""
        slots = sorted({slot for stint in self.stints[index:] for slot in stint["slots"]})
        here = (clock, fatigue.air_fast, fatigue.air_slow, *[part[slot] for slot in slots for part in (fatigue.quick, fatigue.slow)])
        known = self.been.setdefault((index, done), [])
        if any(all(one <= other + 1e-12 for one, other in zip(there, here, strict=True)) for there in known):
            return True
        known.append(here)
        return False
