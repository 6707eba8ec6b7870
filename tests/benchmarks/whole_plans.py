"""Whole plans with free rests, lived through by the engine's own simulation.

A plan has for every stint that is done in sets a list of `[steps, depth]`: how many, and the depth at which the set may end. The rest before a set
is the shortest, to a twentieth of a second, after which it ends no deeper than that: so every list is a plan that holds, and a search may change any
number of it alone. What is done in one go stays as the engine has it.
"""

import math

from webapp.engine.breath import rest
from webapp.engine.reserve import recover, twin
from webapp.engine.segments import ALL_SLOTS, any_set
from webapp.engine.stint_segment import ceiling_of, segment_of
from webapp.engine.whole import do_stint, pass_change_over, still_to_come

FINE_S = 0.05
LONGEST_S = 600.0


class Whole:
    """The stints of one athlete, ready to be lived through as given. `breakups` are the engine's, for work done in one go."""

    def __init__(self, stints, breakups, gain, start):
        self.stints, self.breakups, self.gain, self.start = stints, breakups, gain, start
        self.segments = [segment_of(stint, 1.0, 1.0) for stint in stints]
        self.ceilings = [ceiling_of(stint, 1.0) for stint in stints]
        self.local = [index for index, breakup in enumerate(breakups) if stints[index]["kind"] == "local" and len(breakup["sets"]) > 0]
        self.later = [still_to_come(stints, index, ["local"]) if index in self.local else 0.0 for index in range(len(stints))]
        self.evaluations = 0

    def least_rest_s(self, index):
        """Shortest rest between two sets. [s]"""
        return max(self.stints[index]["set_up_s"], self.stints[index]["single_wait_s"])

    def largest(self, index, left):
        """Largest set with `left` steps of the stint to do: the half rule."""
        stint = self.stints[index]
        if stint["max_steps"] <= 3:
            return stint["piece_steps"]
        return stint["below_half"] * stint["piece_steps"] if left + self.later[index] > stint["max_steps"] + 1e-9 else left

    def keeps_rules(self, index, sets):
        """Do these sets fill the stint in whole pieces and keep the half rule?"""
        stint, left = self.stints[index], self.stints[index]["steps"]
        if sum(sets) != left or min(sets) < 1 or any(size % stint["piece_steps"] for size in sets[:-1]):
            return False
        for size in sets:
            if size > self.largest(index, left):
                return False
            left -= size
        return True


def fits(whole, fatigue, index, size, ceiling, done, rest_s):
    """Does a set go after this rest? The state after it and its seconds, None where it does not."""
    after = twin(fatigue)
    rest(after, whole.segments[index].slots, rest_s)
    result = any_set(after, whole.segments[index], size, whole.gain, ceiling, done)
    return (after, result) if result[0] == size else None


def shortest(whole, fatigue, index, size, ceiling, done, least_s, guess_s):
    """The shortest rest after which a set goes, looked for around a guess: rest, state after, result; None for none."""
    found = fits(whole, fatigue, index, size, ceiling, done, least_s)
    if found:
        return least_s, *found
    low, high, stride = least_s, max(least_s + FINE_S, guess_s), 2 * FINE_S
    found = fits(whole, fatigue, index, size, ceiling, done, high)
    while not found:
        low, high, stride = high, high + stride, 2 * stride
        if high > LONGEST_S:
            return None
        found = fits(whole, fatigue, index, size, ceiling, done, high)
    stride = 2 * FINE_S
    while high - low > stride:  # close in from above: a guess is most often nearly right
        nearer = fits(whole, fatigue, index, size, ceiling, done, high - stride)
        if not nearer:
            low = high - stride
            break
        high, found, stride = high - stride, nearer, 2 * stride
    while high - low > FINE_S:
        middle = (low + high) / 2
        between = fits(whole, fatigue, index, size, ceiling, done, middle)
        low, high, found = (low, middle, between) if between else (middle, high, found)
    return high, *found


def do_sets(whole, fatigue, index, sets, guesses):
    """Do a stint in sets, in place: seconds and rests (the first is the wait before the first set), inf where it does not go."""
    segment, clock, done, rests = whole.segments[index], 0.0, 0, []
    for place, (size, depth) in enumerate(sets):
        least_s = 0.0 if place == 0 else whole.least_rest_s(index)
        guess_s = guesses[place] if place < len(guesses) else 20.0
        found = shortest(whole, fatigue, index, size, min(depth, whole.ceilings[index]), done, least_s, guess_s)
        if found is None:
            return math.inf, rests
        rest_s, after, result = found
        fatigue.quick, fatigue.slow, fatigue.air_fast, fatigue.air_slow = after.quick, after.slow, after.air_fast, after.air_slow
        clock, done = clock + rest_s + result[1], done + size
        rests.append(rest_s)
    recover(fatigue, [slot for slot in ALL_SLOTS if slot not in segment.slots], clock)
    return clock, rests


def live(whole, plan, guesses, states, first):
    """Seconds to the end, rests of every stint, and states before each; begun at the stint `first`, whose state is known. [s]"""
    whole.evaluations += 1
    fatigue, clock = twin(states[first][0]), states[first][1]
    states, rests = states[:first], dict(guesses)
    for index in range(first, len(whole.stints)):
        states.append((twin(fatigue), clock))
        clock += pass_change_over(fatigue, whole.stints[index], index > 0 or whole.start.changes)
        if index in plan:
            seconds, rests[index] = do_sets(whole, fatigue, index, plan[index], guesses.get(index, []))
            if seconds == math.inf:
                return math.inf, rests, states
            clock += seconds
        else:
            clock += do_stint(fatigue, whole.stints[index], whole.breakups[index], whole.segments[index], whole.gain, clock).seconds
    return clock, rests, states


def begun(whole):
    """The states before the first stint."""
    return [(twin(whole.start.fatigue), whole.start.clock_s)]


def as_planned(whole):
    """The engine's own break-ups as such a plan, its rests as guesses, and the seconds it takes by the engine's own simulation."""
    plan, guesses, fatigue, clock = {}, {}, twin(whole.start.fatigue), whole.start.clock_s
    for index, breakup in enumerate(whole.breakups):
        clock += pass_change_over(fatigue, whole.stints[index], index > 0 or whole.start.changes)
        if index in whole.local:
            plan[index] = depths_of(whole, fatigue, index, breakup)
            guesses[index] = [breakup["lead_s"], *breakup["rests_s"]]
        clock += do_stint(fatigue, whole.stints[index], breakup, whole.segments[index], whole.gain, clock).seconds
    return plan, guesses, clock


def depths_of(whole, fatigue, index, breakup):
    """The engine's sets, each with the depth at which it ends."""
    made, going, done = [], twin(fatigue), 0
    for place, size in enumerate(breakup["sets"]):
        rest(going, whole.segments[index].slots, breakup["lead_s"] if place == 0 else breakup["rests_s"][place - 1])
        made.append([size, any_set(going, whole.segments[index], size, whole.gain, 99.0, done)[2] + 1e-9])
        done += size
    return made
