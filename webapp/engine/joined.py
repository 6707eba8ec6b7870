"""Sets of a planned workout joined, where that is quicker to expect.

The search breaks up one stint at a time, for one capacity and at a price of fatigue read off it. Whether a break earns its time over the whole
workout, for people who could be this athlete, is asked here, of plans with ever fewer sets.
"""

import math

from .ladder import may_be, tried
from .one_stint import Begun
from .prepare import Case
from .search import Task, allowed
from .stint_segment import segment_of, steps_of
from .tiers import plan_rests, plan_sets, tiers_of
from .whole import at_rest, do_stint, keeps_back, later_of, pass_change_over

WORTH_JOINING = 0.001  # share of the time to expect that fewer sets must gain; chosen


def joined(case: Case, people: list, cap_s: float | None, layout: dict) -> dict:
    """Return the layout with sets joined for as long as the style allows it and it is quicker to expect."""
    best = layout
    for index in range(len(layout["breakups"])):
        going = True
        while going:
            other = with_fewer_sets(case, people, cap_s, best, index)
            going = other["expected"] < best["expected"]
            best = other
    return best


def with_fewer_sets(case: Case, people: list, cap_s: float | None, layout: dict, index: int) -> dict:
    """Return the layout with fewer sets in one stint, all in one go or the last two joined, the first that is better; as it is where neither is."""
    plans = fewer_sets(layout["breakups"][index]["plan"]) if layout["stints"][index]["kind"] == "local" else []  # only these are seen to fail
    now_s = seconds_as_given(layout, case.gain) if len(plans) > 0 else 0.0
    for plan in plans:
        other = replaced(layout, index, plan)
        if may_go(other, index, case.gain) and seconds_as_given(other, case.gain) < now_s:
            other = tried(case, people, cap_s, None, other)
            if may_be(other, case.most_risk) and other["expected"] < layout["expected"] * (1 - WORTH_JOINING):
                return other
    return layout


def fewer_sets(plan: list[float]) -> list:
    """Return a flat plan in one set, and with its last two joined; none for one that is not in sets."""
    if len(plan) < 4:
        return []
    end = len(plan) - 1
    shorter = plan[:end]
    shorter[end - 2] = shorter[end - 2] - 1
    last_two = tiers_of(shorter, plan[end] + plan[end - 3])
    in_one_go = [sum(plan_sets(plan))]
    return [in_one_go] if len(last_two) == 1 else [in_one_go, last_two]


def replaced(layout: dict, index: int, plan: list[float]) -> dict:
    """Return the layout with one stint broken up by another flat plan."""
    breakup = {**layout["breakups"][index], "plan": plan, "sets": steps_of(layout["stints"][index], plan_sets(plan)), "rests_s": plan_rests(plan)}
    breakups = [] + layout["breakups"][:index] + [breakup] + layout["breakups"][index + 1 :]
    return {**layout, "breakups": breakups, "whole": layout["whole"] if layout["capped"] else breakups}


def may_go(layout: dict, index: int, gain: float) -> bool:
    """Are the sets of a stint no larger than the work still to come allows?"""
    stints = layout["stints"][: len(layout["breakups"])]
    begun = Begun(stints[index], 1.0, gain, later_of(stints, index, 0.0, False))
    task = Task(begun.pieces, begun.least_rest_s, lambda left: begun.largest_set(left), lambda plan: 0.0, 0)
    return allowed(task, layout["breakups"][index]["plan"])


def seconds_as_given(layout: dict, gain: float) -> float:
    """Return how long a layout takes if all goes as the numbers say, math.inf where a set takes more than its movement keeps back. [s]"""
    fatigue = at_rest().fatigue
    clock = 0.0
    for index, breakup in enumerate(layout["breakups"]):
        stint = layout["stints"][index]
        clock = clock + pass_change_over(fatigue, stint, index > 0)
        if stint["kind"] == "gate":
            break
        if stint["kind"] == "local" and not keeps_back(fatigue, stint, breakup, gain):
            return math.inf
        clock = clock + do_stint(fatigue, stint, breakup, segment_of(stint, 1.0, 1.0), gain, clock).seconds
    return clock
