"""Which layout to take: the best of the `ladder` of cautions, made in full and refined, and what people who could be this athlete feel."""

import math

from .draws import draw_people, fail_share, outcomes, weakest_first
from .filled import filled_up, last_set_longer
from .joined import joined
from .ladder import FIRST_RUNG, STRIDES, better, candidates, chosen, expected, may_be, preferred, tried
from .layout import as_given, carried_to_cap, cut_at_cap, factors_for, lay_out
from .narrow import narrowing
from .parameters import CAUTION, FAIL_RISK, GAIN_AS_CAPACITY, RECOVERY_SD
from .prepare import Case
from .whole import LONGEST_S, at_rest

MOST_REFINED = 40  # stints, beyond which the layout of the ladder is taken as it is; chosen: what it takes grows with their number
GAINED_BY_JOINING = 0.05  # of the time to expect, not looked for beyond; chosen: of 76 plans further apart 4 would be better, by 0.2 %
TRIED_ON = 20  # people each layout of the ladder is tried on; chosen: the band at the end takes them all


def best_layout(case: Case, cap_s: float | None, arrange) -> dict:
    """Return the layout to take for a case whose stints are set, with results for people who could be this athlete, as they feel."""
    people = draw_people(case.stints, case.wanted["seed"], case.gain)
    some = weakest_first(people[:TRIED_ON])
    layouts = candidates(case, some, cap_s, arrange)
    layout = taken(case, some, cap_s, arrange, layouts)
    if not may_be(layout, case.most_risk):
        case.most_risk = least_risk(case, layouts + [layout], some, cap_s)
        if may_be(chosen(layouts, case.most_risk), case.most_risk):
            layout = taken(case, some, cap_s, arrange, layouts)
    feel(people, case.stints, layout, slower_per_caution(layouts, case))
    layout["felt"] = outcomes(layout["stints"], layout["breakups"], people, cap_s, len(people))
    layout["narrow"] = narrowing(case.stints, people, layout["felt"])
    return layout


def taken(case: Case, people: list, cap_s: float | None, arrange, layouts: list) -> dict:
    """Return what becomes of the best of a ladder."""
    return refined(case, people, cap_s, arrange, in_full(case, people, cap_s, arrange, preferred_of(case, people, cap_s, arrange, layouts)))


def least_risk(case: Case, layouts: list, people: list, cap_s: float | None) -> float:
    """Return the least risk of layouts none of which is as calm as the style asks for, once all the people have gone through each, in place. [0–1]"""
    for layout in layouts:
        layout["results"] = outcomes(layout["stints"], layout["breakups"], people, cap_s, len(people))
        layout["risk"] = fail_share(layout["results"])
        layout["expected"] = expected(case.stints, layout["results"])
    return min([layout["risk"] for layout in layouts])


def preferred_of(case: Case, people: list, cap_s: float | None, arrange, layouts: list) -> dict:
    """Return the layout of the ladder to go on from: the preferred one, or the one a steady style prefers where that is quicker with its sets joined."""
    best = chosen(layouts, case.most_risk)
    calm = chosen(layouts, FAIL_RISK["steady"])
    if arrange is not None or len(case.stints) > MOST_REFINED or calm["caution"] == best["caution"] or calm["capped"] or best["capped"]:
        return best
    if calm["expected"] > best["expected"] * (1 + GAINED_BY_JOINING):
        return best
    return better(joined(case, people, cap_s, calm), joined(case, people, cap_s, best), case.most_risk)


def likely_of(case: Case, layout: dict) -> dict:
    """Return how a layout goes as given, not finished where it was cut at the cap."""
    until_s = LONGEST_S if case.cap_s is None else case.cap_s
    likely = as_given(layout["stints"], layout["breakups"], case.gain, until_s, at_rest())
    return {**likely, "finished": likely["finished"] and not layout["capped"]}


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
        made = last_set_longer(case, people, cap_s, tried(case, people, cap_s, None, cut))
        rung = len(CAUTION) if may_be(made, case.most_risk) or not made["capped"] else rung + STRIDES[0]
    return made if preferred(made, rough, case.most_risk) else rough


def refined(case: Case, people: list, cap_s: float | None, arrange, layout: dict) -> dict:
    """Return the layout, or one like it that the style allows and that is quicker to expect: planned only up to the cap, or else made more carefully; sets joined.

    Where somebody fails a more careful plan may well be quicker: the ladder was only looked at roughly.
    """
    best = layout
    if len(case.stints) > MOST_REFINED:
        return filled_up(case, people, cap_s, best)
    if best["capped"]:
        other = carried_to_cap(best, case.stints, case.gain, cap_s, at_rest())
        best = better(last_set_longer(case, people, cap_s, tried(case, people, cap_s, None, other)), best, case.most_risk)
        return filled_up(case, people, cap_s, best if arrange is not None else joined(case, people, cap_s, best))
    if arrange is not None:  # rounds held evenly stay as they are
        return best
    for caution in CAUTION[CAUTION.index(best["caution"]) + 1 :]:
        if best["risk"] == 0:
            break
        other = {**lay_out(case.stints, factors_for(case.stints, caution), case.gain, cap_s, best["whole"], at_rest()), "caution": caution}
        best = better(tried(case, people, cap_s, None, other), best, case.most_risk)
        if best["caution"] != caution:
            break
    return joined(case, people, cap_s, best)


def slower_per_caution(layouts: list, case: Case) -> float:
    """Return by what share of its time a plan one standard deviation more careful takes longer, 0 or more.

    Read off the two rungs that every ladder has, so that it is the same for every style.
    """
    careful = [layout for layout in layouts if layout["caution"] == CAUTION[FIRST_RUNG + STRIDES[0]]][0]
    daring = [layout for layout in layouts if layout["caution"] == CAUTION[FIRST_RUNG - STRIDES[0]]][0]
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
