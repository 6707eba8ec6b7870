"""A layout: break-ups for a whole workout at one caution, up to where the cap or a gate ends it."""

import math

from .breath import rest
from .one_stint import BUDGET_PER_STINT, Later, break_up_stint
from .parameters import GAIN_AS_CAPACITY, RECOVERY_SD, SMALL_MAX
from .reserve import twin
from .simulate import NO_STEP, run_sets
from .stint_segment import ceiling_of, segment_of
from .tiers import trimmed
from .whole import Start, break_up_all, later_of, live_through, state_before


MOST_REPLANNED = 3  # times that the work up to the cap is planned anew; chosen
ROOM_STEPS = 3  # steps that the last block before the cap is planned beyond what went at first; chosen
THRIFTS = [0.3]  # of the usual price of slow fatigue, tried besides it; chosen: see the benchmark of whole workouts
FEW_AHEAD = 8  # stints planned anew when the cap leaves time beyond a block; chosen


def factors_for(stints: list, z: float) -> list[float]:
    """Return the capacity to plan for, one per stint: `z` standard deviations of its doubt below what was given."""
    doubt = GAIN_AS_CAPACITY * RECOVERY_SD
    return [math.exp(-z * math.sqrt(stint["sd"] * stint["sd"] + doubt * doubt)) for stint in stints]


def lay_out(stints: list, factors: list[float], gain: float, cap_s: float | None, hints: list, start: Start) -> dict:
    """Return stints and break-ups planned for these shares of the numbers, up to where the cap or a gate ends it.

    Parameters
    ----------
    hints : break-ups found for the same stints with other factors, or an empty list; the thrift they were found with is kept.

    Returns
    -------
    dict : stints, the last one shortened to what goes before the cap; breakups; capped, whether anything was cut off;
    whole, the break-ups before cutting, hints for the next; factors, as given.
    """
    made = break_up_all(stints, factors, gain, hints, start, thrifts_of(hints, stints))
    return cut_at_cap({"stints": stints, "breakups": made, "capped": False, "whole": made, "factors": factors}, gain, cap_s, start)


def carried_to_cap(layout: dict, stints: list, gain: float, cap_s: float | None, start: Start) -> dict:
    """Return a layout of `stints` with the work up to the cap planned anew, without saving for what is not reached, for as long as that gets further."""
    best = layout
    for _ in range(MOST_REPLANNED):
        if cap_s is None or not best["capped"] or len(best["breakups"]) == 0:
            break
        other = replanned({**layout, "stints": stints}, best, gain, cap_s, start)
        if not further_than(other, best):
            break
        best = {**layout, **other}
    return best


def replanned(uncut: dict, best: dict, gain: float, cap_s: float, start: Start) -> dict:
    """Return stints, breakups and capped for what `best` reaches by the cap, and a little more, planned as if nothing came after it.

    `uncut` is the layout of the whole workout.
    """
    stints = uncut["stints"]
    reached = with_room(best["stints"][: len(best["breakups"])], stints)
    factors = uncut["factors"][: len(reached)]
    again = break_up_all(reached, factors, gain, uncut["whole"][: len(reached)], start, thrifts_of(uncut["whole"], reached))
    other = cut_at_cap({"stints": reached, "breakups": again, "capped": False, "whole": again, "factors": factors}, gain, cap_s, start)
    if other["capped"]:
        return {"stints": other["stints"], "breakups": other["breakups"], "capped": True}
    done = {"stints": reached, "breakups": again, "capped": not complete(reached, stints)}
    last = len(reached) - 1
    return further(uncut, done, gain, cap_s, start) if reached[last]["steps"] == stints[last]["steps"] else done


def complete(reached: list, stints: list) -> bool:
    """Is the last of the stints reached the workout's last, and whole?"""
    return len(reached) == len(stints) and reached[len(reached) - 1]["steps"] == stints[len(stints) - 1]["steps"]


def with_room(reached: list, stints: list) -> list:
    """Return the stints reached, the last with a little more of its work, so that a better plan may get further."""
    last = len(reached) - 1
    more = reached[last]["steps"] + max(ROOM_STEPS, reached[last]["steps"] // 4)
    return [] + reached[:last] + [{**reached[last], "steps": min(stints[last]["steps"], more)}]


def further_than(one: dict, other: dict) -> bool:
    """Does one layout get further by the cap than the other, or just as far sooner?"""
    if len(one["breakups"]) != len(other["breakups"]) or not one["capped"]:
        return len(one["breakups"]) > len(other["breakups"]) or not one["capped"]
    last = len(one["breakups"]) - 1
    return one["stints"][last]["steps"] > other["stints"][last]["steps"]


def thrifts_of(hints: list, stints: list) -> list[float]:
    """Return how dear slow fatigue is taken to be in each stint: as the hints have it, the usual where they say nothing."""
    told = [hint.get("thrift", 1.0) for hint in hints[: len(stints)]]
    return told + [1.0] * (len(stints) - len(told))


def at_price(breakups: list, thrift: float) -> list:
    """Return break-ups as hints for the same at another price of slow fatigue."""
    return [{**breakup, "thrift": thrift} for breakup in breakups]


def roughly(breakups: list) -> list:
    """Return break-ups as hints that are good enough for a first look once their rests fit."""
    return [{**breakup, "rough": True} for breakup in breakups]


def saves(stints: list) -> bool:
    """Does any stint save for a later one of its group, so that the price of slow fatigue matters?"""
    return len([1 for index in range(len(stints)) if stints[index]["kind"] == "local" and later_of(stints, index, 1.0, False).price > 0]) > 0


def cut_at_cap(layout: dict, gain: float, cap_s: float | None, start: Start) -> dict:
    """Return the layout up to where the cap or a gate ends it; where it is `rough`, what ends there is only cut off."""
    if cap_s is None:
        return layout
    end = as_given(layout["stints"], layout["whole"], gain, cap_s, start)
    if end["finished"] or at_gate(layout["stints"], end):
        return layout
    return {**layout, **up_to_cap(layout, end, gain, cap_s, start)}


def at_gate(stints: list, result: dict) -> bool:
    """Did it end at a movement that cannot be done?"""
    begun = len(result["done"])
    return begun < len(stints) and stints[begun]["kind"] == "gate" and (begun == 0 or result["done"][begun - 1] == stints[begun - 1]["steps"])


def as_given(stints: list, breakups: list, gain: float, until_s: float, start: Start) -> dict:
    """Return how the plan goes for the athlete exactly as the numbers say."""
    ones = [1.0] * len(stints)
    return live_through(stints, breakups, ones, ones, gain, until_s, start)


def up_to_cap(layout: dict, end: dict, gain: float, cap_s: float, start: Start) -> dict:
    """Return the layout that gets furthest by the cap: the last stint is planned for just what fits, so it may end on a larger set.

    Parameters
    ----------
    layout : with `whole`, its break-ups uncut. end : how it goes as given.
    """
    stints = layout["stints"]
    whole = layout["whole"]
    last = max(0, len(end["done"]) - 1)
    if last > 0 and end["done"][last] == 0:
        return {"stints": [] + stints[:last], "breakups": [] + whole[:last], "capped": True}
    low = 1 if len(end["done"]) == 0 else max(1, end["done"][last])
    best = shortened(stints, whole, last, low)
    if stints[last]["kind"] != "local":
        return best
    if layout.get("rough", False):
        return all_out(layout, best, gain, cap_s, start)
    fatigue = state_before(last, stints, whole, layout["factors"], gain, start)
    high = min(stints[last]["steps"], low + max(3, low // 3))
    while low < high:
        middle = (low + high + 1) // 2
        stint = {**stints[last], "steps": middle}
        breakup = break_up_stint(fatigue, stint, layout["factors"][last], gain, Later(0.0, 0.0, BUDGET_PER_STINT), cut_hint(whole[last], stint))
        cut = {"stints": [] + stints[:last] + [stint], "breakups": [] + whole[:last] + [breakup], "capped": True}
        if as_given(cut["stints"], cut["breakups"], gain, cap_s, start)["finished"]:
            low = middle
            best = cut
        else:
            high = middle - 1
    if low == stints[last]["steps"]:
        return further(layout, best, gain, cap_s, start)
    return all_out(layout, best, gain, cap_s, start)


def all_out(layout: dict, best: dict, gain: float, cap_s: float, start: Start) -> dict:
    """Return the layout with its last set before the cap made longer for as long as it goes as given: nothing is saved for after the cap.

    What a movement keeps back (inverted, overhead, heavy) stays kept.
    """
    last = len(best["breakups"]) - 1
    stint = best["stints"][last]
    in_all = layout["stints"][last]["steps"]
    ones = [1.0] * len(best["stints"])
    fatigue = state_before(last, best["stints"], best["breakups"], ones, gain, start)
    segment = segment_of(stint, 1.0, 1.0)
    while stint["steps"] < in_all and stint["max_steps"] > SMALL_MAX:
        more = min(stint["piece_steps"], in_all - stint["steps"])
        breakup = best["breakups"][last]
        sets = breakup["sets"][: len(breakup["sets"]) - 1] + [breakup["sets"][len(breakup["sets"]) - 1] + more]
        rested = twin(fatigue)
        rest(rested, segment.slots, breakup["lead_s"])
        went = run_sets(rested, segment, sets, breakup["rests_s"], gain, ceiling_of(stint, 1.0))
        stint = {**stint, "steps": stint["steps"] + more}
        longer = {**best, "stints": [] + best["stints"][:last] + [stint], "breakups": [] + best["breakups"][:last] + [{**breakup, "sets": sets}]}
        if went.failed_at != NO_STEP or not as_given(longer["stints"], longer["breakups"], gain, cap_s, start)["finished"]:
            break
        best = longer
    if best["stints"][last]["steps"] < in_all:
        return best
    if last + 1 == len(layout["stints"]):
        return {**best, "capped": False}
    return roughly_further(layout, best, gain, cap_s, start) if layout.get("rough", False) else further(layout, best, gain, cap_s, start)


def roughly_further(layout: dict, best: dict, gain: float, cap_s: float, start: Start) -> dict:
    """Return the layout carried on into the next stints as they stand, cut off at the cap."""
    upto = len(best["breakups"])
    whole = [] + best["breakups"] + layout["whole"][upto:]
    end = as_given(layout["stints"], whole, gain, cap_s, start)
    if end["finished"]:
        return {"stints": layout["stints"], "breakups": whole, "capped": False}
    if len(end["done"]) <= upto:
        return best
    return up_to_cap({**layout, "whole": whole}, end, gain, cap_s, start)


def further(layout: dict, best: dict, gain: float, cap_s: float, start: Start) -> dict:
    """Return the layout carried on into the next stints, planned anew from where the last one, done whole, leaves the athlete."""
    upto = len(best["breakups"])
    stints = layout["stints"]
    if upto >= len(stints) or stints[upto]["kind"] == "gate":
        return best
    fatigue = state_before(upto, stints, best["breakups"], layout["factors"], gain, start)
    ends_s = as_given(best["stints"], best["breakups"], gain, cap_s, start)["ends_s"]
    if len(ends_s) < upto:
        return best  # the cap comes within the last one, a single repetition perhaps: there is nothing to go on from
    clock_s = ends_s[len(ends_s) - 1] + stints[upto]["change_s"]
    if clock_s >= cap_s:
        return best
    coming = stints[upto : upto + FEW_AHEAD]
    after = lay_out(coming, layout["factors"][upto : upto + FEW_AHEAD], gain, cap_s, [], Start(fatigue, clock_s, False))
    made = {"stints": [] + best["stints"] + after["stints"], "breakups": [] + best["breakups"] + after["breakups"]}
    if sum(as_given(made["stints"], made["breakups"], gain, cap_s, start)["fails"]) > 0:
        return best
    return {**made, "capped": after["capped"] or upto + FEW_AHEAD < len(stints)}


def cut_hint(breakup: dict, stint: dict) -> list:
    """Return a break-up's flat plan cut down to what is left of its stint, as a list of hints."""
    if len(breakup["plan"]) == 0:
        return []
    return [trimmed(breakup["plan"], math.ceil(stint["steps"] / stint["piece_steps"] - 1e-9))]


def shortened(stints: list, breakups: list, last: int, steps: int) -> dict:
    """Return the layout cut off after `steps` of the stint `last`, its break-up cut as it stands."""
    sets = []
    left = steps
    for count in breakups[last]["sets"]:
        if left > 0:
            sets.append(min(left, count))
            left = left - count
    breakup = {**breakups[last], "sets": sets, "rests_s": breakups[last]["rests_s"][: max(0, len(sets) - 1)], "plan": []}
    cut = {**stints[last], "steps": steps}
    return {"stints": [] + stints[:last] + [cut], "breakups": [] + breakups[:last] + [breakup], "capped": True}
