"""A cadence the lungs can keep: where breath limits, cadence first, breaks second.

All work that can be slowed is slowed by the same share, the least at which W′ is not spent beyond what the style allows before the last
block and does not run out in it. Machines and runs slow by speed; repetitions slow within what cadence allows, at the cost of the time in
position. Where even the slowest cadence is too much, work done in one go is broken by short rests.
"""

import math

from .breath import breath_of
from .layout import as_given, lay_out
from .parameters import AIR_SPENT, CADENCE_BY_STYLE, CADENCE_SLOWEST, MOST_BREATH_BREAKS, POSITION_COST
from .prepare import Case
from .whole import LONGEST_S, at_rest, in_one_go

HALVINGS = 6


def slowed_for_breath(stint: dict, share: float, lungs: dict) -> dict:
    """Return the stint with its cadence `share` times as slow, where that helps: paced work, or work above critical power."""
    return slowed(stint, share, lungs) if stint["kind"] == "paced" or stint["watts"] > lungs["cp_w"] else stint


def slowed(stint: dict, share: float, lungs: dict) -> dict:
    """Return the stint at `share` times its usual seconds, whether that helps or not; sets go no quicker than usual, and skills as they go.

    Slow repetitions are no rest: nothing recovers in the time they last longer, and it costs their groups (POSITION_COST).
    """
    if stint["kind"] != "paced" and (stint["kind"] != "local" or share <= 1):
        return stint
    made = {**stint}
    made["watts"] = stint["watts"] / math.pow(share, 3.0 if stint["by_speed"] else 1.0)
    breath = breath_of(made["watts"], lungs)
    made["spend"] = breath.spend
    made["refill"] = breath.refill
    if stint["kind"] == "paced":
        made["seconds"] = stint["seconds"] * share
    else:
        made["linger_s"] = stint["seconds"] * (share - 1)
        made["costs"] = [cost * (1 + POSITION_COST * (share - 1)) for cost in stint["costs"]]
    made["cadence"] = share
    return made


def too_breathless(stints: list, breakups: list, gain: float, until_s: float, allowed: float) -> bool:
    """Does the plan spend more of W′ than allowed before the last block begun, or all of it?"""
    went = as_given(stints, breakups, gain, until_s, at_rest())
    for index in range(len(went["air"])):
        if went["air"][index] > (1 - 1e-6 if index == len(went["air"]) - 1 else allowed):
            return True
    return False


def paced_layout(case: Case, factors: list[float], cap_s: float | None) -> dict:
    """Return a layout, not cut at the cap, for a cadence the lungs can keep; the case's stints take that cadence, in place."""
    usual = case.stints
    until_s = LONGEST_S if cap_s is None else cap_s
    quickest = CADENCE_BY_STYLE[case.wanted["style"]]
    case.stints = [slowed_for_breath(stint, quickest, case.lungs) for stint in usual]
    layout = lay_out(case.stints, factors, case.gain, None, [], at_rest())
    if not too_breathless(case.stints, layout["whole"], case.gain, until_s, AIR_SPENT[case.wanted["style"]]):
        return layout
    share = least_share(case, usual, layout, until_s, quickest)
    case.stints = [slowed_for_breath(stint, share, case.lungs) for stint in usual]
    if share >= CADENCE_SLOWEST - 0.01:
        break_for_breath(case, layout, until_s)
    return lay_out(case.stints, factors, case.gain, None, layout["whole"], at_rest())


def least_share(case: Case, usual: list, layout: dict, until_s: float, low: float) -> float:
    """Return the least slowing above `low` at which the lungs keep up, the slowest there is where none does, by bisection."""
    high = CADENCE_SLOWEST
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        stints = [slowed_for_breath(stint, middle, case.lungs) for stint in usual]
        if too_breathless(stints, layout["whole"], case.gain, until_s, AIR_SPENT[case.wanted["style"]]):
            low = middle
        else:
            high = middle
    return high


def break_for_breath(case: Case, layout: dict, until_s: float):
    """Break paced work by short rests, evenly and as few as will do, in place."""
    allowed = AIR_SPENT[case.wanted["style"]]
    parts = 1
    while parts <= MOST_BREATH_BREAKS and too_breathless(case.stints, layout["whole"], case.gain, until_s, allowed):
        parts = parts + 1
        for index, stint in enumerate(case.stints):
            if stint["kind"] == "paced" and stint["spend"] > 0 and index < len(layout["whole"]):
                stint["parts"] = min(parts, stint["steps"])
                layout["whole"][index] = in_one_go(stint)
