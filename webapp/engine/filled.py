"""What still goes before the cap, added to a plan that is cut off there, as far as the style allows it.

Plans are made for less than the numbers say, so that one who is as told has time left when the cap comes. Nothing is saved for afterwards: the last
set is made longer, then more sets are done, and where they would be too great a risk fewer of them, after a longer rest.
"""

import math

from .ladder import may_be, tried, undone
from .layout import all_out, as_given, complete, steps_in
from .parameters import REST_STEP_S
from .prepare import Case
from .stint_segment import able_factor, segment_of
from .whole import Start, at_rest, break_up_all, do_stint, state_before

MOST_ADDED = 4  # stints, or parts of one, that are added; chosen


def filled_up(case: Case, people: list, cap_s: float, layout: dict) -> dict:
    """Return a layout cut off at the cap with what still goes there, where the style allows it."""
    if not layout["capped"] or len(layout["breakups"]) == 0:
        return layout
    best = layout
    if layout["stints"][len(layout["breakups"]) - 1]["kind"] == "local":
        best = better_end(case, people, cap_s, layout, all_out({**layout, "stints": case.stints}, layout, case.gain, cap_s, at_rest()))
    for _ in range(MOST_ADDED):
        longer = going_on(case, people, cap_s, best)
        if steps_in(longer) == steps_in(best):
            break
        best = longer
    return best


def better_end(case: Case, people: list, cap_s: float, layout: dict, end: dict) -> dict:
    """Return the layout with another end where the style allows it and less is left undone by that, as it is otherwise."""
    if end["breakups"] == layout["breakups"]:
        return layout
    other = tried(case, people, cap_s, None, {**layout, **end})
    return other if may_be(other, case.wanted["style"]) and undone(case.stints, other["results"]) < undone(case.stints, layout["results"]) else layout


def going_on(case: Case, people: list, cap_s: float, layout: dict) -> dict:
    """Return the layout with more of the stint at hand: all that goes as given, else half of it and so on.

    Begun soon where that is all of the stint, so that time is left for the next; else as late as it may be; the other way where less is left undone so.
    """
    in_all = steps_at_hand(case, layout)
    low = 0
    high = in_all
    while low < high:
        middle = (low + high + 1) // 2
        if left_s(case, longer_by(case, layout, middle, 0.0), cap_s) >= 0:
            low = middle
        else:
            high = middle - 1
    more = low
    while more > 0:
        soon = longer_by(case, layout, more, 0.0)
        late = longer_by(case, layout, more, REST_STEP_S * (left_s(case, soon, cap_s) // REST_STEP_S))
        best = layout
        for end in [soon, late] if more == in_all else [late, soon]:
            best = better_end(case, people, cap_s, best, end)
        if steps_in(best) > steps_in(layout):
            return best
        more = more // 2
    return layout


def at_hand(case: Case, layout: dict) -> int:
    """Return the stint that a layout ends in, or the next that is no rest where it ends with it; none for a gate and at the end: -1."""
    last = len(layout["breakups"]) - 1
    if layout["stints"][last]["steps"] < case.stints[last]["steps"]:
        return last
    place = last + 1
    while place < len(case.stints) and case.stints[place]["kind"] == "rest":
        place = place + 1
    return -1 if place == len(case.stints) or case.stints[place]["kind"] == "gate" else place


def steps_at_hand(case: Case, layout: dict) -> int:
    """Return the steps that are left of the stint at hand."""
    place = at_hand(case, layout)
    if place < 0:
        return 0
    begun = layout["stints"][place]["steps"] if place < len(layout["breakups"]) else 0
    return case.stints[place]["steps"] - begun


def left_s(case: Case, layout: dict, cap_s: float) -> float:
    """Return the time left when a layout ends as given, negative where the cap comes first. [s]"""
    went = as_given(layout["stints"], layout["breakups"], case.gain, cap_s, at_rest())
    return cap_s - went["ends_s"][len(went["ends_s"]) - 1] if went["finished"] else -1.0


def longer_by(case: Case, layout: dict, steps: int, wait_s: float) -> dict:
    """Return stints and break-ups of a layout with so many more steps of the stint at hand, planned from where it leaves the athlete, begun `wait_s`
    [s] later than they go."""
    last = len(layout["breakups"]) - 1
    place = at_hand(case, layout)
    factors = layout["factors"]
    stint = layout["stints"][last]
    fatigue = state_before(last, layout["stints"], layout["breakups"], factors, case.gain, at_rest())
    do_stint(fatigue, stint, layout["breakups"][last], segment_of(stint, able_factor(stint, factors[last]), 1.0), case.gain, 0.0)
    coming = [] + case.stints[last + 1 : place + 1] if place > last else [{**stint, "handover": 1.0, "change_s": math.ceil(max(stint["set_up_s"], stint["single_wait_s"]))}]
    coming[len(coming) - 1] = {**coming[len(coming) - 1], "steps": steps}
    begun = [factors[place]] * len(coming)
    more = break_up_all(coming, begun, case.gain, [], Start(fatigue, 0.0, True), [0.0] * len(coming))
    added = more[len(more) - 1]
    more[len(more) - 1] = {**added, "lead_s": added["lead_s"] + wait_s, "plan": []}
    if place > last:
        return ended({"stints": [] + layout["stints"] + coming, "breakups": [] + layout["breakups"] + more}, case)
    one = layout["breakups"][last]
    rest_s = coming[0]["change_s"] + more[0]["lead_s"]
    joint = {**one, "sets": one["sets"] + more[0]["sets"], "rests_s": one["rests_s"] + [rest_s] + more[0]["rests_s"], "plan": []}
    return ended({"stints": [] + layout["stints"][:last] + [{**stint, "steps": stint["steps"] + steps}], "breakups": [] + layout["breakups"][:last] + [joint]}, case)


def ended(layout: dict, case: Case) -> dict:
    """Return stints and break-ups with `capped`, whether anything is left undone."""
    return {**layout, "capped": not complete(layout["stints"], case.stints)}
