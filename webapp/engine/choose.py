"""Which layout to take: a ladder of cautions, what happens to people who could be this athlete, and what they feel."""

import math

from .draws import draw_people, fail_share, outcomes, weakest_first
from .layout import THRIFTS, as_given, at_price, carried_to_cap, cut_at_cap, factors_for, lay_out, roughly, saves
from .narrow import narrowing
from .pacing import paced_layout
from .parameters import CAUTION, FAIL_RISK, GAIN_AS_CAPACITY, RECOVERY_SD
from .prepare import Case
from .whole import LONGEST_S, at_rest

FIRST_RUNG = 9  # of CAUTION, looked at first; chosen: where most plans end
NEARLY_SAME = 0.002  # of the time to expect, within which the less careful of two layouts is taken; chosen
STRIDES = [3, 1]  # rungs; chosen
MOST_REFINED = 40  # stints, beyond which the layout of the ladder is taken as it is; chosen: what it takes grows with their number
MOST_PRICED = 4  # stints up to which another price of slow fatigue is tried; chosen: with more it gained little for its time
TRIED_ON = 20  # people each layout of the ladder is tried on; chosen: the band at the end takes them all


def best_layout(case: Case, cap_s: float | None, arrange) -> dict:
    """Return the layout to take for a case whose stints are set, with results for people who could be this athlete, as they feel."""
    people = draw_people(case.stints, case.wanted["seed"], case.gain)
    some = weakest_first(people[:TRIED_ON])
    layouts = candidates(case, some, cap_s, arrange)
    layout = refined(case, some, cap_s, arrange, in_full(case, some, cap_s, arrange, chosen(layouts, case.wanted["style"])))
    if not may_be(layout, case.wanted["style"]):
        layout["results"] = outcomes(layout["stints"], layout["breakups"], some, cap_s, len(some))
        layout["risk"] = fail_share(layout["results"])
    feel(people, case.stints, layout, slower_per_caution(layouts, case))
    layout["felt"] = outcomes(layout["stints"], layout["breakups"], people, cap_s, len(people))
    layout["narrow"] = narrowing(case.stints, people, layout["felt"])
    return layout


def likely_of(case: Case, layout: dict) -> dict:
    """Return how a layout goes as given, not finished where it was cut at the cap."""
    until_s = LONGEST_S if case.cap_s is None else case.cap_s
    likely = as_given(layout["stints"], layout["breakups"], case.gain, until_s, at_rest())
    return {**likely, "finished": likely["finished"] and not layout["capped"]}


def candidates(case: Case, people: list, cap_s: float | None, arrange) -> list:
    """Return rough layouts of different caution, each with what happens to `people`; the quickest to expect that the style allows is among them.

    `arrange` may change a layout before it is tried: (case, layout, cap_s) to layout, None for nothing to change.
    Failing is dear, so what is to be expected falls with caution, then rises: the ladder of cautions is climbed down or up from FIRST_RUNG, in
    large steps, then small ones. The first layout is searched for, the others only given other rests, and at the cap all are just cut off.
    """
    ladder = [None for caution in CAUTION]
    best = FIRST_RUNG
    first = paced_layout(case, factors_for(case.stints, CAUTION[best]), cap_s)
    ladder[best] = tried(case, people, cap_s, arrange, cut_off(case, first, cap_s, CAUTION[best]))
    for stride in STRIDES:
        going = True
        while going:
            going = False
            for rung in [near for near in [best - stride, best + stride] if 0 <= near < len(CAUTION) and ladder[near] is None]:
                layout = lay_out(case.stints, factors_for(case.stints, CAUTION[rung]), case.gain, None, roughly(first["whole"]), at_rest())
                ladder[rung] = tried(case, people, cap_s, arrange, cut_off(case, layout, cap_s, CAUTION[rung]))
                if preferred(ladder[rung], ladder[best], case.wanted["style"]):
                    best = rung
                    going = True
                    break
    return [layout for layout in ladder if layout is not None]


def cut_off(case: Case, layout: dict, cap_s: float | None, caution: float) -> dict:
    """Return a layout of that caution just cut off at the cap."""
    return {**cut_at_cap({**layout, "rough": True}, case.gain, cap_s, at_rest()), "caution": caution}


def preferred(one: dict, other: dict, style: str) -> bool:
    """Is one layout to be taken rather than the other: allowed where the other is not, else quicker to expect, or more careful where neither is?"""
    if may_be(one, style) and may_be(other, style):
        return quicker(one, other)
    return may_be(one, style) or not may_be(other, style) and one["caution"] > other["caution"]


def quicker(one: dict, other: dict) -> bool:
    """Is one layout quicker to expect than the other? Where they are nearly the same the less careful one is, which is quicker if all goes as given."""
    if abs(one["expected"] - other["expected"]) < 1e-9:
        return False
    favour = NEARLY_SAME if one["caution"] < other["caution"] else -NEARLY_SAME if one["caution"] > other["caution"] else -1e-9
    return one["expected"] < other["expected"] * (1 + favour)


def in_full(case: Case, people: list, cap_s: float | None, arrange, rough: dict) -> dict:
    """Return a rough layout searched for in full, or as arranged, and planned in full up to the cap; as it is where that is not preferred.

    What is planned up to the cap is planned more carefully for as long as the style does not allow it.
    """
    whole = {**rough, "stints": case.stints, "breakups": rough["whole"], "capped": False}
    if arrange is None:
        whole = lay_out(case.stints, rough["factors"], case.gain, None, rough["whole"], at_rest())
    rung = CAUTION.index(rough["caution"])
    made = rough
    while rung < len(CAUTION):
        uncut = {**whole, "rough": False, "factors": factors_for(case.stints, CAUTION[rung])}
        cut = {**cut_at_cap(uncut, case.gain, cap_s, at_rest()), "factors": rough["factors"], "caution": rough["caution"]}
        made = tried(case, people, cap_s, None, cut)
        rung = len(CAUTION) if may_be(made, case.wanted["style"]) or not made["capped"] else rung + STRIDES[0]
    return made if preferred(made, rough, case.wanted["style"]) else rough


def tried(case: Case, people: list, cap_s: float | None, arrange, layout: dict) -> dict:
    """Return a layout with what happens to the people until more of them failed than the style allows: results, risk [0–1], expected [s]."""
    made = layout if arrange is None else arrange(case, layout, cap_s)
    made["results"] = outcomes(made["stints"], made["breakups"], people, cap_s, int(FAIL_RISK[case.wanted["style"]] * len(people)))
    made["risk"] = fail_share(made["results"])
    made["expected"] = expected(case.stints, made["results"])
    return made


def may_be(layout: dict, style: str) -> bool:
    """Is its risk one that the style allows?"""
    return layout["risk"] <= FAIL_RISK[style] + 1e-9


def refined(case: Case, people: list, cap_s: float | None, arrange, layout: dict) -> dict:
    """Return the layout, or one like it that the style allows and that is quicker to expect: with slow fatigue cheaper, planned only up to the cap, or
    made more carefully.

    Where somebody fails a more careful plan may well be quicker: the ladder was only looked at roughly.
    """
    best = layout
    if len(case.stints) > MOST_REFINED:
        return best
    if best["capped"]:
        other = {**carried_to_cap(best, case.stints, case.gain, cap_s, at_rest()), "caution": best["caution"]}
        best = better(tried(case, people, cap_s, None, other), best, case.wanted["style"])
    if arrange is not None:  # rounds held evenly stay as they are
        return best
    for caution in CAUTION[CAUTION.index(best["caution"]) + 1 :]:
        if best["risk"] == 0:
            break
        other = lay_out(case.stints, factors_for(case.stints, caution), case.gain, cap_s, best["whole"], at_rest())
        before = best
        best = better(tried(case, people, cap_s, arrange, {**other, "caution": caution}), best, case.wanted["style"])
        if best["caution"] == before["caution"]:
            break
    if len(case.stints) <= MOST_PRICED and saves(case.stints):
        for thrift in THRIFTS:
            other = {**lay_out(case.stints, best["factors"], case.gain, cap_s, at_price(best["whole"], thrift), at_rest()), "caution": best["caution"]}
            best = better(tried(case, people, cap_s, arrange, other), best, case.wanted["style"])
    return best


def better(other: dict, best: dict, style: str) -> dict:
    """Return the layout that is quicker to expect, `best` where the style does not allow the other."""
    return other if may_be(other, style) and quicker(other, best) else best


def expected(stints: list, results: list) -> float:
    """Return what a layout costs over the draws: the mean time, with the bare work left undone where it did not get done. [s]"""
    total = 0.0
    for result in results:
        total = total + result["seconds"]
        for index in range(len(stints)):
            done = result["done"][index] if index < len(result["done"]) else 0
            total = total + (stints[index]["steps"] - done) * stints[index]["seconds"]
    return total / len(results)


def chosen(layouts: list, style: str) -> dict:
    """Return the preferred one of layouts in order of caution."""
    best = layouts[0]
    for layout in layouts[1:]:
        if preferred(layout, best, style):
            best = layout
    return best


def slower_per_caution(layouts: list, case: Case) -> float:
    """Return by what share of its time a plan one standard deviation more careful takes longer, 0 or more."""
    careful = max(layouts, key=lambda layout: layout["caution"])
    daring = min(layouts, key=lambda layout: layout["caution"])
    if careful["caution"] - daring["caution"] < 0.1:
        return 0.0
    slower = as_given(case.stints, careful["whole"], case.gain, LONGEST_S, at_rest())["seconds"]
    quicker = as_given(case.stints, daring["whole"], case.gain, LONGEST_S, at_rest())["seconds"]
    if quicker <= 0:  # the very first block is a gate
        return 0.0
    return max(0.0, math.log(slower / quicker) / (careful["caution"] - daring["caution"]))


def feel(people: list, stints: list, layout: dict, share: float):
    """Give everybody the share of time they gain or lose by going as they feel: a deviation stronger is a plan that much more daring.

    How strong somebody is counts where the plan spends its time on sets, in place.
    """
    doubt = GAIN_AS_CAPACITY * RECOVERY_SD
    for person in people:
        strength = 0.0
        weight = 0.0
        for index in range(len(layout["breakups"])):
            stint = stints[index]
            rests_s = sum(layout["breakups"][index]["rests_s"])
            deviation = math.sqrt(stint["sd"] * stint["sd"] + doubt * doubt)
            if rests_s > 0:
                strength = strength + rests_s * math.log(person["factors"][index]) / deviation
                weight = weight + rests_s
        person["ahead"] = share * strength / weight if weight > 0 else 0.0
