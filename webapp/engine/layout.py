"""A layout: break-ups for a whole workout at one caution, up to where the cap or a gate ends it."""

import math

from .one_stint import BUDGET_PER_STINT, Later, break_up_stint
from .parameters import GAIN_AS_CAPACITY, RECOVERY_SD, SMALL_MAX
from .tiers import trimmed
from .whole import Start, break_up_all, keeps_back, live_through, state_before
from .worth import at_worth, worths


MOST_REPLANNED = 2  # times that the work up to the cap is planned anew; chosen: five gained nothing, what is left then is filled up
SEARCHED_ANEW = 2  # stints, the last ones reached, that are searched for from nothing the first of these times: they need no longer save; chosen
FEW_AHEAD = 8  # stints planned anew when the cap leaves time beyond a block; chosen


def factors_for(stints: list, z: float) -> list[float]:
    """Return the capacity to plan for, one per stint: `z` standard deviations of its doubt below what was given."""
    doubt = GAIN_AS_CAPACITY * RECOVERY_SD
    return [math.exp(-z * math.sqrt(stint["sd"] * stint["sd"] + doubt * doubt)) for stint in stints]


def lay_out(stints: list, factors: list[float], gain: float, cap_s: float | None, hints: list, start: Start) -> dict:
    """Return stints and break-ups planned for these shares of the numbers, up to where the cap or a gate ends it.

    Parameters
    ----------
    hints : break-ups found for the same stints with other factors, whose prices are kept, or an empty list.

    Returns
    -------
    dict : stints, the last one shortened to what goes before the cap; breakups; capped, whether anything was cut off;
    whole, the break-ups before cutting, hints for the next; factors, as given; guessed, the break-ups of the first guess at the price of slow
    fatigue, an empty list where they are the same.
    """
    guessed = break_up_all(stints, factors, gain, hints, start, prices_of(hints, stints))
    made = at_worth(stints, guessed, factors, gain, start) if len(hints) == 0 else guessed
    layout = {"stints": stints, "breakups": made, "capped": False, "whole": made, "factors": factors, "guessed": guessed if made != guessed else []}
    return cut_at_cap(layout, gain, cap_s, start)


def carried_to_cap(layout: dict, stints: list, gain: float, cap_s: float | None, start: Start) -> dict:
    """Return a layout of `stints` with the work up to the cap planned anew, as if nothing came after it, where that gets further.

    First just the work reached is planned: without saving for more it takes less time. Then as much more as should go in the time that leaves.
    """
    uncut = {**layout, "stints": stints}
    best = layout
    more = 0
    for _ in range(MOST_REPLANNED):
        if cap_s is None or not best["capped"] or len(best["breakups"]) == 0:
            break
        other = replanned(uncut, best, more, gain, cap_s, start)
        other = ended_all_out(stints, other, gain, cap_s, start)
        best = other if further_than(other, best) else best
        more = spare_steps(other, gain, cap_s, start)
        if more == 0:
            break
    return best


def replanned(uncut: dict, best: dict, more: int, gain: float, cap_s: float, start: Start) -> dict:
    """Return the layout `uncut`, that of the whole workout, up to what `best` reaches by the cap and `more` steps, planned as if nothing came after."""
    stints = uncut["stints"]
    reached = with_more(best["stints"][: len(best["breakups"])], stints, more)
    factors = uncut["factors"][: len(reached)]
    last = len(reached) - 1
    hints = [] + uncut["whole"][:last] + [cut_down(uncut["whole"][last], reached[last])]
    prices = worths(reached, hints, factors, gain, start)
    kept = len(hints) if more > 0 else max(0, len(hints) - SEARCHED_ANEW)
    again = break_up_all(reached, factors, gain, hints[:kept], start, prices)
    made = cut_at_cap({"stints": reached, "breakups": again, "capped": False, "whole": again, "factors": factors}, gain, cap_s, start)
    capped = made["capped"] or not complete(reached, stints)
    return {**uncut, "stints": made["stints"], "breakups": made["breakups"], "capped": capped}


def spare_steps(layout: dict, gain: float, cap_s: float, start: Start) -> int:
    """Return how many more steps like those of its last stint would go between the end of a layout and the cap."""
    went = as_given(layout["stints"], layout["breakups"], gain, cap_s, start)
    if not layout["capped"] or not went["finished"]:
        return 0
    last = len(went["ends_s"]) - 1
    begun_s = went["ends_s"][last - 1] if last > 0 else start.clock_s
    each_s = (went["ends_s"][last] - begun_s) / max(1, layout["stints"][last]["steps"])
    return int((cap_s - went["ends_s"][last]) / max(0.1, each_s))


def complete(reached: list, stints: list) -> bool:
    """Is the last of the stints reached the workout's last, and whole?"""
    return len(reached) == len(stints) and reached[len(reached) - 1]["steps"] == stints[len(stints) - 1]["steps"]


def with_more(reached: list, stints: list, more: int) -> list:
    """Return the stints reached with so many more steps, in the last and in those after it, up to a gate."""
    made = [] + reached
    left = more
    last = len(reached) - 1
    while left > 0:
        grown = min(stints[last]["steps"], made[last]["steps"] + left)
        left = left - (grown - made[last]["steps"])
        made[last] = {**stints[last], "steps": grown}
        last = last + 1
        if left <= 0 or last >= len(stints) or stints[last]["kind"] == "gate":
            break
        made.append({**stints[last], "steps": 0})
    if made[len(made) - 1]["kind"] == "rest":
        made.pop()
    return made


def steps_in(layout: dict) -> int:
    """Return the steps that a layout gets to."""
    return sum([stint["steps"] for stint in layout["stints"][: len(layout["breakups"])]])


def further_than(one: dict, other: dict) -> bool:
    """Does one layout get further by the cap than the other, or just as far sooner?"""
    if len(one["breakups"]) != len(other["breakups"]) or not one["capped"]:
        return len(one["breakups"]) > len(other["breakups"]) or not one["capped"]
    last = len(one["breakups"]) - 1
    return one["stints"][last]["steps"] > other["stints"][last]["steps"]


def prices_of(hints: list, stints: list) -> list:
    """Return what slow fatigue is taken to cost after each stint: as the hints have it, None where they say nothing. [s]"""
    told = [hint.get("price") for hint in hints[: len(stints)]]
    return told + [None] * (len(stints) - len(told))


def roughly(breakups: list, unbroken: bool) -> list:
    """Return break-ups as hints that are good enough for a first look once their rests fit; or, where asked for, all in one set."""
    return [{**breakup, "rough": True, "unbroken": unbroken} for breakup in breakups]


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
    return best


def ended_all_out(stints: list, layout: dict, gain: float, cap_s: float, start: Start) -> dict:
    """Return a layout of `stints` with its last set made longer where it is cut off at the cap within work that ends by a group given out."""
    last = len(layout["breakups"]) - 1
    if not layout["capped"] or last < 0 or layout["stints"][last]["kind"] != "local":
        return layout
    return {**layout, **all_out({**layout, "stints": stints}, layout, gain, cap_s, start)}


def all_out(layout: dict, best: dict, gain: float, cap_s: float, start: Start) -> dict:
    """Return the layout with its last set before the cap made longer for as long as it goes as given: nothing is saved for after the cap.

    What a movement keeps back (inverted, overhead, heavy) stays kept.
    """
    last = len(best["breakups"]) - 1
    stint = best["stints"][last]
    in_all = layout["stints"][last]["steps"]
    ones = [1.0] * len(best["stints"])
    fatigue = state_before(last, best["stints"], best["breakups"], ones, gain, start)
    while stint["steps"] < in_all and stint["max_steps"] > SMALL_MAX:
        more = min(stint["piece_steps"], in_all - stint["steps"])
        breakup = best["breakups"][last]
        sets = breakup["sets"][: len(breakup["sets"]) - 1] + [breakup["sets"][len(breakup["sets"]) - 1] + more]
        stint = {**stint, "steps": stint["steps"] + more}
        longer = {**best, "stints": [] + best["stints"][:last] + [stint], "breakups": [] + best["breakups"][:last] + [{**breakup, "sets": sets}]}
        if not keeps_back(fatigue, stint, longer["breakups"][last], gain) or not as_given(longer["stints"], longer["breakups"], gain, cap_s, start)["finished"]:
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
    factors = layout["factors"][upto : upto + FEW_AHEAD]
    there = Start(fatigue, clock_s, False)
    hints = layout["whole"][upto : upto + FEW_AHEAD]
    planned = break_up_all(coming, factors, gain, hints, there, prices_of([], coming))  # the cap is near: what fatigue is worth is not looked for
    after = cut_at_cap({"stints": coming, "breakups": planned, "capped": False, "whole": planned, "factors": factors}, gain, cap_s, there)
    made = {"stints": [] + best["stints"] + after["stints"], "breakups": [] + best["breakups"] + after["breakups"]}
    if sum(as_given(made["stints"], made["breakups"], gain, cap_s, start)["fails"]) > 0:
        return best
    return {**made, "capped": after["capped"] or upto + FEW_AHEAD < len(stints)}


def cut_hint(breakup: dict, stint: dict) -> list:
    """Return a break-up's flat plan cut down to what is left of its stint, as a list of hints."""
    plan = cut_down(breakup, stint)["plan"]
    return [plan] if len(plan) > 0 else []


def cut_down(breakup: dict, stint: dict) -> dict:
    """Return a break-up cut down to what is left of its stint."""
    sets = []
    left = stint["steps"]
    for count in breakup["sets"]:
        if left > 0:
            sets.append(min(left, count))
            left = left - count
    plan = [] if len(breakup["plan"]) == 0 else trimmed(breakup["plan"], math.ceil(stint["steps"] / stint["piece_steps"] - 1e-9))
    return {**breakup, "sets": sets, "rests_s": breakup["rests_s"][: max(0, len(sets) - 1)], "plan": plan}


def shortened(stints: list, breakups: list, last: int, steps: int) -> dict:
    """Return the layout cut off after `steps` of the stint `last`, its break-up cut as it stands."""
    cut = {**stints[last], "steps": steps}
    breakup = {**cut_down(breakups[last], cut), "plan": []}
    return {"stints": [] + stints[:last] + [cut], "breakups": [] + breakups[:last] + [breakup], "capped": True}
