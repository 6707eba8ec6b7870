"""The ladder of cautions: layouts made for ever less than the numbers say, and which of two is to be taken.

Failing is dear, so what is to be expected falls with caution, then rises again.
"""

from .draws import fail_share, outcomes
from .layout import cut_at_cap, ended_all_out, factors_for, lay_out, roughly
from .pacing import paced_layout
from .parameters import CAUTION
from .prepare import Case
from .whole import at_rest

FIRST_RUNG = 9  # of CAUTION, looked at first; chosen: where most plans end
STRIDES = [3, 1]  # rungs; chosen
CLEARLY = 0.01  # share of the time to expect by which layouts of the first guess must be better; chosen: of nearly the same, the others gain more by refining
NEARLY_SAME = 0.002  # of the time to expect, within which the less careful of two layouts is taken; chosen


def candidates(case: Case, people: list, cap_s: float | None, arrange) -> list:
    """Return rough layouts of different caution, each with what happens to `people`; the quickest to expect that the style allows is among them.

    `arrange` may change a layout before it is tried: (case, layout, cap_s) to layout, None for nothing to change.
    What slow fatigue is worth was read off for somebody of one capacity. Where the layouts of the first guess, which rests longer, are clearly
    better for people who could be this athlete, they are returned.
    """
    first = paced_layout(case, factors_for(case.stints, CAUTION[FIRST_RUNG]), cap_s)
    layouts = all_rungs(case, people, cap_s, arrange, first)
    if len(first["guessed"]) == 0:
        return layouts
    guessed = all_rungs(case, people, cap_s, arrange, {**first, "whole": first["guessed"], "breakups": first["guessed"]})
    return guessed if clearly_better(chosen(guessed, case.most_risk), chosen(layouts, case.most_risk), case.most_risk) else layouts


def all_rungs(case: Case, people: list, cap_s: float | None, arrange, first: dict) -> list:
    """Return layouts like the first, which is of the caution of FIRST_RUNG, in order of caution.

    The ladder is climbed down or up from there, in large steps, then small ones. The others are only given other rests, and at the cap all are just
    cut off.
    """
    ladder = [None for caution in CAUTION]
    best = FIRST_RUNG
    ladder[best] = tried(case, people, cap_s, arrange, cut_off(case, first, cap_s, CAUTION[best]))
    for stride in STRIDES:
        going = True
        while going:
            going = False
            here = best
            for rung in [near for near in [here - stride, here + stride] if 0 <= near < len(CAUTION) and ladder[near] is None]:
                ladder[rung] = tried(case, people, cap_s, arrange, looked_at(case, cap_s, arrange, CAUTION[rung], first["whole"], ladder[here]))
                if preferred(ladder[rung], ladder[best], case.most_risk):
                    best = rung
                    going = True
    return [layout for layout in ladder if layout is not None]


def looked_at(case: Case, cap_s: float | None, arrange, caution: float, first: list, best: dict) -> dict:
    """Return a layout of that caution: the first break-ups with other rests, cut off at the cap; for a ladder within a time one searched for in full, since
    how far it gets is all that counts and the last rungs hardly resemble each other."""
    factors = factors_for(case.stints, caution)
    if case.workout["shape"] == "amrap" and arrange is None:
        full = lay_out(case.stints, factors, case.gain, cap_s, best["whole"], at_rest())
        return {**ended_all_out(case.stints, full, case.gain, cap_s, at_rest()), "caution": caution}
    return cut_off(case, lay_out(case.stints, factors, case.gain, None, roughly(first, arrange is None), at_rest()), cap_s, caution)


def cut_off(case: Case, layout: dict, cap_s: float | None, caution: float) -> dict:
    """Return a layout of that caution just cut off at the cap."""
    return {**cut_at_cap({**layout, "rough": True}, case.gain, cap_s, at_rest()), "caution": caution}


def tried(case: Case, people: list, cap_s: float | None, arrange, layout: dict) -> dict:
    """Return a layout with what happens to the people until more of them failed than is allowed: results, risk [0–1], expected [s]."""
    made = layout if arrange is None else arrange(case, layout, cap_s)
    made["results"] = outcomes(made["stints"], made["breakups"], people, cap_s, int(case.most_risk * len(people) + 1e-9))
    made["risk"] = fail_share(made["results"])
    made["expected"] = expected(case.stints, made["results"])
    return made


def expected(stints: list, results: list) -> float:
    """Return what a layout costs over the draws: the mean time, with the bare work left undone where it did not get done. [s]"""
    return sum([result["seconds"] for result in results]) / len(results) + undone(stints, results)


def undone(stints: list, results: list) -> float:
    """Return how long the bare work takes that is left undone, in the mean over the draws. [s]"""
    total = 0.0
    for result in results:
        for index in range(len(stints)):
            done = result["done"][index] if index < len(result["done"]) else 0
            total = total + (stints[index]["steps"] - done) * stints[index]["seconds"]
    return total / len(results)


def may_be(layout: dict, most_risk: float) -> bool:
    """Is its risk no more than is allowed?"""
    return layout["risk"] <= most_risk + 1e-9


def preferred(one: dict, other: dict, most_risk: float) -> bool:
    """Is one layout to be taken rather than the other: allowed where the other is not, else quicker to expect, or more careful where neither is?"""
    if may_be(one, most_risk) and may_be(other, most_risk):
        return quicker(one, other)
    return may_be(one, most_risk) or not may_be(other, most_risk) and one["caution"] > other["caution"]


def quicker(one: dict, other: dict) -> bool:
    """Is one layout quicker to expect than the other? Where they are nearly the same the less careful one is, which is quicker if all goes as given."""
    if abs(one["expected"] - other["expected"]) < 1e-9:
        return False
    favour = NEARLY_SAME if one["caution"] < other["caution"] else -NEARLY_SAME if one["caution"] > other["caution"] else -1e-9
    return one["expected"] < other["expected"] * (1 + favour)


def clearly_better(one: dict, other: dict, most_risk: float) -> bool:
    """Is one layout allowed, and the other not, or clearly slower to expect?"""
    return may_be(one, most_risk) and (not may_be(other, most_risk) or one["expected"] < other["expected"] * (1 - CLEARLY))


def better(other: dict, best: dict, most_risk: float) -> dict:
    """Return the layout that is quicker to expect, `best` where the other is not allowed."""
    return other if may_be(other, most_risk) and quicker(other, best) else best


def chosen(layouts: list, most_risk: float) -> dict:
    """Return the preferred one of layouts in order of caution; of the same break-ups the most careful, whose end is then planned most carefully."""
    best = layouts[0]
    for layout in layouts[1:]:
        if preferred(layout, best, most_risk) or layout["breakups"] == best["breakups"]:
            best = layout
    return best
