"""Why a plan is as it is, and what to mind: codes with parameters, worded by the web layer (`webapp/wording.py`)."""

import math

from .lifts import lift_reasons
from .parameters import FAIL_RISK, SMALL_MAX
from .stint_segment import expected_misses

IDLE_S = 15  # left to the end from here on it is said; less goes by with a change-over and getting ready; chosen
TAXED = 0.85  # a group below this reserve at the start of a block opens smaller than fresh; chosen


def deciding(stints: list, layout: dict, course: dict) -> int:
    """Return the index of the stint that decides the workout, -1 for none.

    A gate, else the one that loses most time to rests and slow repetitions.
    """
    worst = -1
    most_s = 0.0
    for index in range(len(course["stints"])):
        went = course["stints"][index]
        stint = layout["stints"][index]
        lost_s = went["end_s"] - went["start_s"] - stint["steps"] * stint["seconds"]
        if stint["kind"] != "rest" and lost_s > most_s + 1e-6:
            worst = index
            most_s = lost_s
    at_gate = len(course["stints"])
    if at_gate < len(stints) and stints[at_gate]["kind"] == "gate" and not layout["capped"]:
        return worst if worst >= 0 else at_gate - 1
    return worst


def block_reasons(stints: list, stint: dict, breakup: dict, went: dict, index: int) -> list:
    """Return why one block is planned as it is."""
    if stint["kind"] == "paced":
        return paced_reasons(stint, breakup, went["end_s"] - went["start_s"])
    if stint["kind"] == "rest":
        return [{"code": "rest_block"}]
    if stint["kind"] == "skill":
        return [{"code": "skill_all_out" if index == len(stints) - 1 else "skill_until_miss", "misses": expected_misses(stint, 1.0)}]
    reasons = sets_reasons(stint, breakup) + kept_up_reasons(stint) + lift_reasons(stint, breakup) + slowed_reasons(stint)
    if went["reserve_before"] < TAXED and len(breakup["sets"]) > 1:
        reasons.append({"code": "taxed_before", "group": stint["primary"], "reserve_fraction": went["reserve_before"]})
    if breakup["lead_s"] > 0:
        reasons.append({"code": "wait_before", "lead_s": breakup["lead_s"]})
    if stint["switch_steps"] > 0:
        reasons.append({"code": "switch_at_marks", "every_m": stint["switch_steps"] * stint["step_units"]})
    return reasons


def paced_reasons(stint: dict, breakup: dict, took_s: float) -> list:
    """Return why work that ends by breath is done as it is; it lasts as long as it took, unless the cap cut it short."""
    lasts_s = max(took_s, stint["steps"] * (stint["seconds"] + stint["linger_s"]))
    first = {"code": "paced_by_breath", "lasts_s": lasts_s} if len(breakup["sets"]) == 1 else {"code": "paced_in_sets", "group": stint["primary"]}
    return [first] + slowed_reasons(stint)


def kept_up_reasons(stint: dict) -> list:
    """Return that the pace is the one long efforts say can be kept up, where it is slower than usual."""
    share = stint.get("usual_pace")
    return [] if share is None or share > 0.995 else [{"code": "pace_kept_up", "share_fraction": share}]


def slowed_reasons(stint: dict) -> list:
    """Return that a cadence was slowed for breath, where it was."""
    if stint["cadence"] <= 1.005:
        return []
    return [{"code": "slowed_for_breath", "share_fraction": 1 / stint["cadence"]}]


def sets_reasons(stint: dict, breakup: dict) -> list:
    """Return why the sets of a block are as large as they are."""
    sets = breakup["sets"]
    most = largest_told(stint)
    opening = sets[0] * stint["step_units"]
    if len(sets) == 1:
        cut = opening < stint["amount"] - 1e-6  # of what the cap leaves only whole units are done
        return [{"code": "unbroken_fits", "amount": math.floor(opening + 1e-6) if cut else opening, "unit": stint["unit"], "max": most}]
    if stint["max_steps"] <= SMALL_MAX:
        return [{"code": "singles_small_max", "max": most, "wait_s": breakup["rests_s"][0]}]
    reasons = [{"code": "opens_at", "opening": opening, "unit": stint["unit"], "max": most, "share_fraction": opening / most}]
    if sets[len(sets) - 1] > sets[len(sets) - 2]:
        reasons.append({"code": "last_set_larger", "last": sets[len(sets) - 1] * stint["step_units"], "unit": stint["unit"]})
    return reasons


def largest_told(stint: dict) -> float:
    """Return the largest set as it is told [block units]: whole repetitions, also where it was reckoned from a heaviest single."""
    most = stint["max_steps"] * stint["step_units"]
    return max(1, math.floor(most + 1e-6)) if stint["unit"] == "reps" else most


def plan_reasons(workout: dict, made: dict, stints: list, where: int, cap_s: float | None) -> list:
    """Return what the whole plan turns on."""
    reasons = []
    if where >= 0:
        stint = stints[where]
        block = made["blocks"][where]
        reasons.append(decided(stint, block))
        for_time = workout.get("shape", "for_time") == "for_time"  # elsewhere one round is as urgent as the next
        if for_time and block["start_s"] > 0 and not made["score"]["finishes"]:
            reasons.append(be_there_by(stint, stints, block["start_s"]))
    gates = [index for index in range(len(stints)) if stints[index]["kind"] == "gate"]
    if len(gates) > 0 and gates[0] > 0:  # nobody hurries to what comes first
        reasons.append(hurry_to(stints[gates[0]]))
    return reasons + (early_end(workout, made, cap_s) if len(gates) == 0 and cap_s is not None else [])


def early_end(workout: dict, made: dict, cap_s: float) -> list:
    """Return that the plan stops some time before the end, as more would be riskier than the style allows: otherwise one is left standing there."""
    shape = workout.get("shape", "for_time")
    if shape == "intervals" or (shape == "for_time" and made["score"]["finishes"]):
        return []
    at_s = max([0.0] + [block["end_s"] for block in made["blocks"] if block["end_s"] is not None])
    return [{"code": "stops_early", "at_s": at_s, "left_s": cap_s - at_s}] if cap_s - at_s >= IDLE_S else []


def hurry_to(gate: dict) -> dict:
    """Return that the time at a gate counts; with its round where it is a later one, as loads that grow make it."""
    hurry = {"code": "hurry_to_gate", "movement": gate["movement"], "block": gate["block"]}
    return hurry if gate["round"] == 1 else {**hurry, "code": "hurry_to_gate_in_round", "round": gate["round"]}


def decided(stint: dict, block: dict) -> dict:
    """Return where a plan is decided, and what gives out there: breath where it sets the pace of work done through, else a group."""
    at = {"code": "decided_at", "block": stint["block"], "movement": stint["movement"], "group": block["limiting_group"]}
    if stint["kind"] != "paced" or len(block["sets"]) != 1:
        return at
    return {"code": "decided_by_breath", "block": stint["block"], "movement": stint["movement"]}


def be_there_by(stint: dict, stints: list, at_s: float) -> dict:
    """Return when to be at a block; with its round, where there are several."""
    by = {"code": "be_there_by", "block": stint["block"], "movement": stint["movement"], "at_s": at_s}
    return by if stints[len(stints) - 1]["round"] == 1 else {**by, "code": "be_there_by_in_round", "round": stint["round"]}


def plan_warnings(workout: dict, made: dict, stints: list, cap_s: float | None, lungs_filled: bool) -> list:
    """Return what the athlete must know beside the plan; `lungs_filled` where nothing but the level tells of the lungs."""
    warnings = []
    if made["risk"] > FAIL_RISK[made["style"]] + 1e-9:
        warnings.append({"code": "riskier_than_style", "fail": made["tried_on"]["fail"], "people": made["tried_on"]["people"]})
    for guess in made["filled"]:
        warnings.append({"code": "number_guessed", "movement": guess["movement"], "number": guess["number"]})
    if lungs_filled and len([1 for stint in stints if stint["kind"] == "paced"]) > 0:
        warnings.append({"code": "lungs_preset"})
    seen = []
    for stint in stints:
        if stint["outside"] and stint["movement"] not in seen:
            seen.append(stint["movement"])
            warnings.append({"code": "load_outside_relation", "movement": stint["movement"]})
    if cap_s is not None and made["score"]["finishes"] and made["score"]["finish_chance"] < 0.9:
        warnings.append({"code": "cap_is_close", "chance_fraction": made["score"]["finish_chance"], "cap_s": cap_s})
    inverted = []
    for stint in stints:
        entry = workout["movements"].get(stint["movement"]) if stint["movement"] != "rest" else None
        if entry is not None and entry["inverted"] and stint["movement"] not in inverted:
            inverted.append(stint["movement"])
            warnings.append({"code": "inverted_care", "movement": stint["movement"]})
    return warnings
