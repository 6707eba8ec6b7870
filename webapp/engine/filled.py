"""What still goes before the cap, added to a plan that is cut off there, as far as the style allows it.

Plans are made for less than the numbers say, so that one who is as told has time left when the cap comes. Nothing is saved for afterwards: the last
set is made longer, then more sets are done, and where they would be too great a risk fewer of them, after a longer rest.
"""

import math

from .ladder import may_be, tried, undone
from .layout import as_given, complete, ended_all_out, steps_in
from .parameters import REST_STEP_S
from .prepare import Case
from .reserve import Fatigue
from .stint_segment import able_factor, segment_of
from .whole import Start, at_rest, break_up_all, do_stint, state_before

MOST_ADDED = 4  # times that more is added; chosen
ANY_PLAN = {"plan": [], "rough": True}  # a hint: a steady plan is good enough for a few sets at the end


def filled_up(case: Case, people: list, cap_s: float, layout: dict) -> dict:
    """Return a layout cut off at the cap with what still goes there, where the style allows it."""
    if not layout["capped"] or len(layout["breakups"]) == 0:
        return layout
    best = last_set_longer(case, people, cap_s, layout)
    for _ in range(MOST_ADDED):
        longer = going_on(case, people, cap_s, best)
        if steps_in(longer) == steps_in(best):
            break
        best = longer
    return best


def last_set_longer(case: Case, people: list, cap_s: float, layout: dict) -> dict:
    """Return a layout cut off at the cap with its last set there made longer, where the style allows it."""
    return better_end(case, people, cap_s, layout, ended_all_out(case.stints, layout, case.gain, cap_s, at_rest()))


def better_end(case: Case, people: list, cap_s: float, layout: dict, end: dict) -> dict:
    """Return the layout with another end where the style allows it and less is left undone by that, as it is otherwise."""
    if end["breakups"] == layout["breakups"]:
        return layout
    other = tried(case, people, cap_s, None, {**layout, **end})
    return other if may_be(other, case.most_risk) and undone(case.stints, other["results"]) < undone(case.stints, layout["results"]) else layout


def going_on(case: Case, people: list, cap_s: float, layout: dict) -> dict:
    """Return the layout with more of the stint at hand: all that goes as given, else half of it and so on.

    Begun soon where that is all of the stint, so that time is left for the next; else as late as it may be; the other way where less is left undone so.
    """
    place = at_hand(case, layout)
    if place < 0:
        return layout
    begun = layout["stints"][place]["steps"] if place < len(layout["breakups"]) else 0
    in_all = case.stints[place]["steps"] - begun
    tired = after(case, layout)
    more = 0
    high = in_all
    while more < high:
        middle = (more + high + 1) // 2
        if left_s(case, longer_by(case, layout, tired, place, middle, 0), cap_s) >= 0:
            more = middle
        else:
            high = middle - 1
    while more > 0:
        soon = longer_by(case, layout, tired, place, more, 0)
        wait_s = REST_STEP_S * math.floor(left_s(case, soon, cap_s) / REST_STEP_S)
        late = longer_by(case, layout, tired, place, more, wait_s)
        best = layout
        for end in [soon] if wait_s == 0 else [soon, late] if more == in_all else [late, soon]:
            best = better_end(case, people, cap_s, best, end)
        if steps_in(best) > steps_in(layout):
            return best
        more = more // 2
    return layout


def at_hand(case: Case, layout: dict) -> int:
    """Return which stint a layout ends in, or the next that is no rest where it ends with one; -1 for a gate and at the end."""
    place = len(layout["breakups"]) - 1
    if layout["stints"][place]["steps"] < case.stints[place]["steps"]:
        return place
    place = place + 1
    while place < len(case.stints) and case.stints[place]["kind"] == "rest":
        place = place + 1
    return -1 if place == len(case.stints) or case.stints[place]["kind"] == "gate" else place


def left_s(case: Case, layout: dict, cap_s: float) -> float:
    """Return the time left when a layout ends as given, negative where the cap comes first. [s]"""
    went = as_given(layout["stints"], layout["breakups"], case.gain, cap_s, at_rest())
    return cap_s - went["ends_s"][len(went["ends_s"]) - 1] if went["finished"] else -1.0


def longer_by(case: Case, layout: dict, tired: Fatigue, place: int, steps: int, wait_s: int) -> dict:
    """Return the end of a layout with so many more steps of the stint at `place`, planned from where it leaves the athlete, `tired`, and begun `wait_s`
    [s] later than they go: stints, breakups, and whether it is still `capped`."""
    last = len(layout["breakups"]) - 1
    stint = layout["stints"][last]
    further = {**case.stints[place], "steps": steps}
    if place == last:
        further.update({"handover": 1.0, "change_s": math.ceil(max(stint["set_up_s"], stint["single_wait_s"]))})
    coming = [] + case.stints[last + 1 : place] + [further]
    each = [layout["factors"][place]] * len(coming)
    added = break_up_all(coming, each, case.gain, [ANY_PLAN] * len(coming), Start(tired, 0.0, True), [0.0] * len(coming))
    waited = {**added[len(added) - 1], "lead_s": added[len(added) - 1]["lead_s"] + wait_s, "plan": []}
    if place > last:
        stints = [] + layout["stints"] + coming
        breakups = [] + layout["breakups"] + added[: len(added) - 1] + [waited]
    else:
        so_far = layout["breakups"][last]
        rests_s = so_far["rests_s"] + [further["change_s"] + waited["lead_s"]] + waited["rests_s"]
        stints = [] + layout["stints"][:last] + [{**stint, "steps": stint["steps"] + steps}]
        breakups = [] + layout["breakups"][:last] + [{**so_far, "sets": so_far["sets"] + waited["sets"], "rests_s": rests_s, "plan": []}]
    return {"stints": stints, "breakups": breakups, "capped": not complete(stints, case.stints)}


def after(case: Case, layout: dict) -> Fatigue:
    """Return the fatigue at the end of a layout of somebody of the capacity it is made for."""
    last = len(layout["breakups"]) - 1
    stint = layout["stints"][last]
    fatigue = state_before(last, layout["stints"], layout["breakups"], layout["factors"], case.gain, at_rest())
    do_stint(fatigue, stint, layout["breakups"][last], segment_of(stint, able_factor(stint, layout["factors"][last]), 1.0), case.gain, 0.0)
    return fatigue
