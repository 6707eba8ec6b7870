"""replan(): the rest of a plan made anew from what was tapped, and when.

A tap says that a set or a block is done. The state of the muscles is found by doing again what was done, in the time it took; how the
person does today is one number, the form: time planned over time taken, doubted at first.
"""

from .breath import rest
from .checks import listing, mapping, number
from .errors import EngineError
from .handover import hand_over
from .layout import lay_out
from .parameters import FORM_HIGHEST, FORM_LOWEST, FORM_PRIOR_S
from .reserve import recover
from .score import counted
from .segments import ALL_SLOTS, any_set
from .stint_segment import segment_of
from .trace import trace
from .units import clamp, whole
from .whole import NEVER_FAILS, Start, at_rest


def replan(plan: dict, events: list, now_s: float) -> dict:
    """Return the rest of the plan from what was done by now.

    Parameters
    ----------
    plan : as `plan` returned it. now_s : seconds since the start, not before the last event. [0–21600 s]
    events : in order of time, mappings with at_s [s] and kind: "set", with reps [block units] done in one go of the block now under way,
    or "block", the block now under way is done.

    Returns
    -------
    dict : blocks, the remaining ones (block, round, sets, rests_s, rest_now_s for the one under way, start_s, end_s), score (kind, likely),
    behind_s (negative ahead) [s], form (1 = as planned), reserve_curve from now on.

    Raises
    ------
    EngineError : a plan that is none, events out of order or beyond the workout.
    """
    basis = mapping("plan_not_a_plan", mapping("plan_not_a_plan", plan).get("basis"))
    stints = listing("plan_not_a_plan", basis.get("stints"))
    if len(stints) == 0:
        raise EngineError("plan_not_a_plan", 0)
    number("time_out_of_range", now_s, 0, 21600)
    past = relived(plan, stints, listing("events_not_a_list", events), basis["gain"], now_s)
    form = clamp((past["planned_s"] + FORM_PRIOR_S) / (past["taken_s"] + FORM_PRIOR_S), FORM_LOWEST, FORM_HIGHEST)
    made = {"behind_s": past["taken_s"] - past["planned_s"], "form": form}
    rest = remaining(stints, past)
    if len(rest) == 0:
        return {**made, "blocks": [], "score": {"kind": "time", "likely": past["clock_s"]}, "reserve_curve": []}
    start = Start(past["fatigue"], now_s, past["steps"] == 0 and past["index"] > 0)
    factors = [factor * form for factor in basis["factors"][past["index"] :]]
    layout = lay_out(rest, factors, basis["gain"], basis["cap_s"], hints_of(basis, past, len(rest)), start)
    course = trace(layout["stints"], layout["breakups"], basis["gain"], start)
    return {
        **made,
        "blocks": [left_of(layout, course, index) for index in range(len(course["stints"]))],
        "score": score_left(basis, stints, past, layout, course),
        "reserve_curve": course["curve"],
    }


def relived(plan: dict, stints: list, events: list, gain: float, now_s: float) -> dict:
    """Return where the athlete is: index of the stint under way, steps done of it, fatigue, clock_s, and planned_s and taken_s for
    what was done."""
    past = {"index": 0, "steps": 0, "fatigue": at_rest().fatigue, "clock_s": 0.0, "planned_s": 0.0, "taken_s": 0.0, "done": []}
    for event in events:
        at_s = number("event_out_of_order", mapping("event_not_a_mapping", event).get("at_s"), past["clock_s"], now_s)
        if past["index"] >= len(stints) or stints[past["index"]]["kind"] == "gate":
            raise EngineError("event_beyond_workout", at_s)
        stint = stints[past["index"]]
        left = stint["steps"] - past["steps"]
        steps = left
        if event.get("kind") == "set":
            steps = whole(number("reps_out_of_range", event.get("reps"), 0, 100000) / stint["step_units"])
        elif event.get("kind") != "block":
            raise EngineError("event_unknown", event.get("kind"))
        take(past, stint, min(steps, left), at_s, gain)
        if past["steps"] >= stint["steps"]:
            planned_s = plan["blocks"][past["index"]]["end_s"]
            past["planned_s"] = past["taken_s"] if planned_s is None else planned_s
            past["done"].append(stint["steps"])
            past["index"] = past["index"] + 1
            past["steps"] = 0
    rest(past["fatigue"], ALL_SLOTS, now_s - past["clock_s"])
    if past["steps"] > 0:
        past["done"].append(past["steps"])
    return past


def take(past: dict, stint: dict, steps: int, at_s: float, gain: float):
    """Do `steps` of the stint under way so that they end at `at_s` [s], in place; what the work did not take was rest before it.

    A whole block that took longer than its work is done in small sets with the rest spread between them.
    """
    work_s = steps * stint["seconds"]
    if past["steps"] == 0 and steps > 0 and past["index"] > 0:
        hand_over(past["fatigue"], stint)
    spare_s = max(0.0, at_s - past["clock_s"] - work_s)
    size = max(1, min(steps, stint["below_half"] * stint["piece_steps"]))
    sets = max(1, -whole(-steps / size - 0.5 + 1e-9)) if steps > 0 else 1
    segment = segment_of(stint, 1.0, 1.0)
    done = 0
    while done < steps:
        rest(past["fatigue"], ALL_SLOTS, spare_s / sets)
        result = any_set(past["fatigue"], segment, min(size, steps - done), gain, NEVER_FAILS, past["steps"] + done)
        recover(past["fatigue"], segment.elsewhere, result[1])
        done = done + min(size, steps - done)
    past["steps"] = past["steps"] + steps
    past["clock_s"] = at_s
    past["taken_s"] = at_s


def remaining(stints: list, past: dict) -> list:
    """Return the stints not yet done, the one under way cut to what is left of it."""
    if past["index"] >= len(stints):
        return []
    under_way = stints[past["index"]]
    return [{**under_way, "steps": under_way["steps"] - past["steps"]}] + stints[past["index"] + 1 :]


def hints_of(basis: dict, past: dict, count: int) -> list:
    """Return the first plan's break-ups of the stints not yet begun, as hints; the one under way is searched afresh."""
    prices = listing("plan_not_a_plan", basis.get("prices", [None] * len(basis["plans"])))
    hints = [{"plan": plan, "price": prices[place]} for place, plan in enumerate(basis["plans"])][past["index"] :]
    if past["steps"] > 0 and len(hints) > 0:
        hints[0] = {**hints[0], "plan": []}
    return hints[:count]


def left_of(layout: dict, course: dict, index: int) -> dict:
    """Return one remaining block."""
    stint = layout["stints"][index]
    breakup = layout["breakups"][index]
    went = course["stints"][index]
    return {
        "block": stint["block"],
        "round": stint["round"],
        "movement": stint["movement"],
        "sets": [steps * stint["step_units"] for steps in breakup["sets"]],
        "rests_s": breakup["rests_s"],
        "rest_now_s": breakup["lead_s"],
        "start_s": went["start_s"],
        "end_s": went["end_s"],
    }


def score_left(basis: dict, stints: list, past: dict, layout: dict, course: dict) -> dict:
    """Return the score to expect now."""
    end_s = course["stints"][len(course["stints"]) - 1]["end_s"] if len(course["stints"]) > 0 else past["clock_s"]
    ended = len(course["stints"]) < len(layout["stints"]) or layout["capped"]
    if not ended and (basis["cap_s"] is None or end_s <= basis["cap_s"]):
        return {"kind": "time", "likely": end_s}
    done = [stint["steps"] for stint in stints[: past["index"]]]
    for index in range(len(course["stints"])):
        before = past["steps"] if index == 0 else 0
        done.append(before + layout["stints"][index]["steps"])
    return {"kind": "count", "likely": counted(stints, done, {"lane": basis["lane"]})}
