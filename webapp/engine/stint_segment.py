"""A stint as a segment that can be simulated, for somebody with other numbers than those given."""

import math

from .breath import Breath
from .held import sides_of
from .reserve import PAST_ONE, Effort
from .segments import ALL_SLOTS, Segment


def segment_of(stint: dict, factor: float, pace: float) -> Segment:
    """Return the stint's segment for a largest set `factor` times and seconds `pace` times what was taken."""
    ease = math.pow(factor, stint["give"])
    costs = [cost / ease for cost in stint["costs"]]
    seconds = stint["seconds"] * pace
    linger_s = stint["linger_s"] * pace
    effort = Effort(stint["slots"], costs, seconds, stint["entry"], linger_s)
    other = None
    slots = stint["slots"]
    if stint["one_sided"] and stint["switch_steps"] > 0:
        turned = sides_of(stint["slots"])
        other = Effort(turned, costs, seconds, stint["entry"], linger_s)
        slots = [slot for slot in ALL_SLOTS if slot in stint["slots"] or slot in turned]
    segment = Segment(effort, other, slots, stint["steps"], stint["set_up_s"])
    segment.switch_steps = stint["switch_steps"] if other is not None else 0
    segment.fail_cost_s = stint["fail_cost_s"]
    segment.misses = expected_misses(stint, factor)
    segment.breath = Breath(stint["spend"], stint["refill"], stint["longer"])
    return segment


def expected_misses(stint: dict, factor: float) -> float:
    """Return the misses to expect in a skill: one for every half of the largest unbroken stretch after the first. [count]

    The largest stretch is the best of many; the usual one is taken for half of it (chosen).
    """
    if stint["kind"] != "skill":
        return 0.0
    return max(0.0, stint["steps"] / (0.5 * stint["max_steps"] * factor) - 1)


def able_factor(stint: dict, factor: float) -> float:
    """Return `factor`, or the least one at which a single step just goes: a plan must ask for something."""
    if stint["kind"] == "rest" or stint["kind"] == "paced":
        return factor
    single = stint["costs"][0] * (1 + stint["entry"])
    return max(factor, math.pow(1.02 * single / (1 - stint["keep"]), 1 / stint["give"]))


def ceiling_of(stint: dict, factor: float) -> float:
    """Return the depth no planned step may pass: failure, or what the movement keeps back at the numbers as given."""
    return min(PAST_ONE, (PAST_ONE - stint["keep"]) / math.pow(factor, stint["give"]))


def steps_of(stint: dict, pieces: list[int]) -> list[int]:
    """Return sets in steps for sets in pieces; the last takes what whole pieces leave over or want."""
    sets = []
    left = stint["steps"]
    for count in pieces:
        steps = min(left, count * stint["piece_steps"])
        sets.append(steps)
        left = left - steps
    return sets
