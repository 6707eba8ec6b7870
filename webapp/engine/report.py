"""The plan as the contract has it: blocks, score, curve, and codes for reasons and warnings. Words are the web layer's."""

from .asked import lane_length
from .draws import fail_share_of, tried_on
from .lifts import style_of_lift
from .parameters import BREATH_S, GATE_TRY_EVERY_S
from .prepare import Case
from .reasons import block_reasons, deciding, plan_reasons, plan_warnings
from .score import carried_on, count_of, score_of
from .trace import trace
from .units import whole
from .whole import at_rest


def report(case: Case, layout: dict, likely: dict) -> dict:
    """Return the plan of a layout.

    Parameters
    ----------
    layout : what was planned of the case's stints, with the drawn people's results. likely : how it goes as given.
    """
    workout = case.workout
    stints = case.stints
    gain = case.gain
    cap_s = case.cap_s
    wanted = case.wanted
    option = case.option
    planned = layout["stints"]
    course = trace(planned, layout["breakups"], gain, at_rest())
    blocks = []
    for index in range(len(stints)):
        blocks.append(block_of(workout, stints, layout, course, likely, index))
    tie = option.get("tie_break_after_block")
    results = [carried_on(result, stints, planned, course, cap_s) for result in layout["felt"]]
    score = score_of(workout, stints, likely, results, tie_break(stints, planned, course, tie))
    where = deciding(stints, layout, course)
    made = {
        "option": option.get("key"),
        "style": wanted["style"],
        "risk": layout["risk"],
        "tried_on": tried_on(layout["results"]),
        "blocks": blocks,
        "score": score,
        "reserve_curve": course["curve"],
        "deciding": None if where < 0 else {"block": stints[where]["block"], "round": stints[where]["round"], "start_s": course["stints"][where]["start_s"]},
        "filled": filled_of(stints),
    }
    made["narrow"] = layout["narrow"]
    made["reasons"] = plan_reasons(workout, made, stints, where, cap_s) + layout["narrow"][:1]
    made["warnings"] = plan_warnings(workout, made, stints, cap_s, case.lungs["filled"])
    made["basis"] = {
        "stints": stints,
        "plans": [breakup["plan"] for breakup in layout["whole"]],
        "prices": [breakup.get("price") for breakup in layout["whole"]],
        "factors": layout["factors"],
        "gain": gain,
        "cap_s": cap_s,
        "style": wanted["style"],
        "lane": {"length_m": lane_length(workout)},
    }
    return made


def block_of(workout: dict, stints: list, layout: dict, course: dict, likely: dict, index: int) -> dict:
    """Return one block of the plan, in one round."""
    stint = stints[index]
    begun = index < len(course["stints"])
    done = likely["done"][index] if index < len(likely["done"]) else 0
    entry = workout["movements"].get(stint["movement"]) if stint["movement"] != "rest" else None
    block = {
        "block": stint["block"],
        "round": stint["round"],
        "movement": stint["movement"],
        "amount": stint["amount"],
        "unit": stint["unit"],
        "load_kg": stint["load_kg"],
        "mode": mode_of(stints, layout, index),
        "seconds_per_unit": (stint["seconds"] + stint["linger_s"]) / stint["step_units"],
        "switch_every": stint["switch_steps"] * stint["step_units"] if stint["switch_steps"] > 0 else None,
        "hold": stint["hold"],
        "hold_reason": stint["hold_reason"],
        "cue": None if entry is None else entry["cue"],
        "change_s": stint["change_s"] if index > 0 else 0,
        "expected_at_cap": min(stint["amount"], done * stint["step_units"]),
        "count_at_cap": count_of(stint, done, workout),
        "reached": begun,
        "cut": layout["capped"] and index == len(layout["stints"]) - 1,
        "uncut": uncut(stint, layout, index) if index < len(layout["whole"]) else None,
    }
    if begun:
        return {**block, **planned_of(stints, layout, course, index)}
    return {**block, **not_reached(stint)}


def uncut(stint: dict, layout: dict, index: int) -> dict:
    """Return how a block would be broken up if the cap never came: what an athlete starts from who tries a plan of their own."""
    breakup = layout["whole"][index]
    if index < len(layout["breakups"]) and not begins(layout["breakups"][index], breakup):
        breakup = finished_like(stint, layout["breakups"][index], breakup)
    return {"sets": [steps * stint["step_units"] for steps in breakup["sets"]], "rests_s": breakup["rests_s"]}


def begins(planned: dict, other: dict) -> bool:
    """Is a break-up the beginning of another one, its last set perhaps cut short?"""
    last = len(planned["sets"]) - 1
    if last < 0:
        return True
    if last >= len(other["sets"]) or planned["sets"][last] > other["sets"][last]:
        return False
    return planned["sets"][:last] == other["sets"][:last] and planned["rests_s"] == other["rests_s"][:last]


def finished_like(stint: dict, planned: dict, other: dict) -> dict:
    """Return a break-up that was filled up before the cap, with what it leaves of its stint in the last sets of another one."""
    further = []
    left = stint["steps"] - sum(planned["sets"])
    for size in reversed(other["sets"]):
        if left > 0:
            further.append(min(left, size))
            left = left - size
    usual_s = [stint["set_up_s"]] + planned["rests_s"] + other["rests_s"]
    rests_s = planned["rests_s"] + [usual_s[len(usual_s) - 1]] * len(further)
    return {"sets": planned["sets"] + list(reversed(further)), "rests_s": rests_s}


def not_reached(stint: dict) -> dict:
    """Return the planned part of a block the athlete does not get to, or cannot do: a few tries at a gate."""
    tries = stint["tries"] if stint["kind"] == "gate" else 0
    return {
        "sets": [1] * tries,
        "rests_s": [GATE_TRY_EVERY_S] * max(0, tries - 1),
        "rests_breaths": [whole(GATE_TRY_EVERY_S / BREATH_S)] * max(0, tries - 1),
        "style_of_lift": None,
        "lead_s": 0,
        "set_starts_s": [],
        "start_s": None,
        "end_s": None,
        "lowest_reserve": 1.0,
        "fail_risk": 0.0,
        "limiting_group": stint["primary"],
        "reasons": [{"code": "gate", "movement": stint["movement"], "tries": tries}] if stint["kind"] == "gate" else [{"code": "not_reached"}],
    }


def planned_of(stints: list, layout: dict, course: dict, index: int) -> dict:
    """Return the planned part of a block: sets in the block's units, rests, times, reserves, reasons."""
    stint = layout["stints"][index]
    breakup = layout["breakups"][index]
    went = course["stints"][index]
    return {
        "sets": [steps * stint["step_units"] for steps in breakup["sets"]],
        "rests_s": breakup["rests_s"],
        "rests_breaths": [max(1, whole(rest_s / BREATH_S)) for rest_s in breakup["rests_s"]],
        "style_of_lift": style_of_lift(stint, breakup["sets"]),
        "lead_s": breakup["lead_s"],
        "set_starts_s": went["set_starts_s"],
        "start_s": went["start_s"],
        "end_s": went["end_s"],
        "lowest_reserve": went["lowest_reserve"],
        "fail_risk": fail_share_of(layout["results"], index),
        "limiting_group": went["limiting_group"],
        "reasons": block_reasons(stints, stint, breakup, went, index),
    }


def mode_of(stints: list, layout: dict, index: int) -> str:
    """Return how a block is done: "sets", "unbroken", at a "cadence", or "all_out"."""
    kind = stints[index]["kind"]
    if kind == "skill":
        return "all_out" if index == len(stints) - 1 else "unbroken"
    if kind == "rest":
        return "cadence"
    if kind == "gate" or index >= len(layout["breakups"]):
        return "sets"
    if kind == "paced" and len(layout["breakups"][index]["sets"]) == 1:
        return "cadence"
    return "unbroken" if len(layout["breakups"][index]["sets"]) == 1 else "sets"


def tie_break(stints: list, planned: list, course: dict, after_block) -> float | None:
    """Return when the block that breaks ties is done for the last time within the plan, None where it is not. [s]"""
    moment_s = None
    for index in range(len(course["stints"])):
        if stints[index]["block"] == after_block and planned[index]["steps"] == stints[index]["steps"]:
            moment_s = course["stints"][index]["end_s"]
    return moment_s


def filled_of(stints: list) -> list:
    """Return the numbers taken from the level, each once: movement and number."""
    filled = []
    seen = []
    for stint in stints:
        for name in stint["filled"]:
            key = stint["movement"] + "/" + name
            if key not in seen:
                seen.append(key)
                filled.append({"movement": stint["movement"], "number": name})
    return filled
