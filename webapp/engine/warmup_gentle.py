"""The gentle parts of a warm-up: getting warm, loosening, settling, and what a step looks like.

A step is a mapping with all of these keys, None where they do not apply:

phase : get_warm, loosen, build, burst or settle. piece, round : of the build, from 1
name, code : the library's English text of the drill, or the code of a step without one, worded by the web layer; one of the two
movement, to_movement : library keys; the second one for the change-over alone
amount, unit, side : what to do; "both" for the same on each side. holds, hold : keys of the holds to try, and the one chosen
load_kg, label : mass of one implement [kg], and what gyms call it, {"kg", "lb"}; a label is not a conversion. height_m : of the box [m]
at_s, seconds : when it begins before the heat, and how long it lasts [s]
cue : a text of the library, or a code with parameters. optional : an extra, which begins with the next step and takes no time of its own
needs_partner, instead : whether it takes two, and the name of the solo drill it may replace
"""

from .parameters import (
    DRILL_POSITIONS,
    HANGING,
    LONGEST_HOLD_S,
    MACHINE_SHARES,
    POSITION_GROUPS,
    SPARED_SHARE,
    STEP_S,
)
from .units import rounded
from .warmup_loads import load_label, nearest_below

# Positions asked for by the library, the loaded move that opens each, and the group that must not be sore for it; anatomy.
LOADED_MOVES = [
    ["arms overhead", "hold_overhead", "overhead"], ["elbows high in front", "hold_front", "push"], ["bottom of the squat", "hold_squat", "legs"],
    ["back of the thighs", "hold_hinge", "hinge"], ["lower back", "hold_hinge", "hinge"], ["front of the hips", "hold_split", "legs"],
    ["upper back", "carry_sides", "grip"], ["forearms", "carry_sides", "grip"],
]  # fmt: skip
STEADY_POSITIONS = ["hold_squat", "hold_hinge"]  # both sides at once
BRISKER_FROM_S = 150.0  # s, easy work this long is split into easy and a little brisker; chosen


def warm_step(phase: str, name: str | None, code: str | None, seconds: float) -> dict:
    """Return a step with nothing in it but its phase, its text or code, and its time; `at_s` is set when all steps are known."""
    return {
        "phase": phase, "movement": None, "name": name, "code": code, "amount": None, "unit": None, "load_kg": None, "label": None,
        "side": None, "round": None, "at_s": 0.0, "seconds": seconds, "cue": None, "optional": False, "needs_partner": False,
        "instead": None, "piece": None, "height_m": None, "to_movement": None, "holds": [], "hold": None,
    }  # fmt: skip


def in_steps(seconds: float) -> float:
    """Return a time rounded to what one can follow on a clock, at least one step. [s]"""
    return max(STEP_S, rounded(seconds, STEP_S))


def choose_machine(movers: list, limiting: dict, day: dict) -> dict:
    """Return the machine that loads least what the workout needs most, and what to say about it.

    Returns
    -------
    dict : movement, a key or None for a jog; code of the step; reasons.
    """
    group = limiting["entry"]["primary"]
    sparing = [machine for machine in day["machines"] if MACHINE_SHARES[machine].get(group, 0.0) <= SPARED_SHARE]
    seated = [machine for machine in sparing if machine != "run"]
    best = lightest_machine(seated if len(seated) > 0 else sparing if len(sparing) > 0 else day["machines"], limiting, movers, day)
    if best is None:
        code = "walk_and_swing" if "legs" in day["sore"] else "jog"
        return {"movement": None, "code": code, "reasons": [{"code": "no_machine_jog"}]}
    spares = best in sparing
    worst = best
    for machine in day["machines"]:
        if machine_load(machine, limiting, movers, day) > machine_load(worst, limiting, movers, day) + 1e-9:
            worst = machine
    reasons = [{"code": "machine_spares" if spares else "machine_light", "machine": {"code": "the_" + best}, "group": group}]
    if worst != best and MACHINE_SHARES[worst].get(group, 0.0) > SPARED_SHARE and worst != limiting["movement"]:
        reasons.append({"code": "machine_avoid", "machine": {"code": "the_" + worst}, "group": group})
    return {"movement": best, "code": "easy_" + best, "reasons": reasons}


def lightest_machine(machines: list, limiting: dict, movers: list, day: dict) -> str | None:
    """Return the machine that loads least what will be needed, the first of those that load as little; None for none."""
    best = None
    for machine in machines:
        if best is None or machine_load(machine, limiting, movers, day) < machine_load(best, limiting, movers, day) - 1e-9:
            best = machine
    return best


def machine_load(machine: str, limiting: dict, movers: list, day: dict) -> float:
    """Return how much a machine loads what will be needed: sore groups first, then the limiting movement's, then everybody's."""
    shares = MACHINE_SHARES[machine]
    total = 0.0
    for group in sorted(list(shares.keys())):
        needed = 3 * limiting["entry"]["shares"].get(group, 0.0) + 10 * len([1 for sore in day["sore"] if sore == group])
        for mover in movers:
            needed = needed + mover["entry"]["shares"].get(group, 0.0) / len(movers)
        total = total + shares[group] * needed
    return total


def get_warm(machine: dict, easy_s: float, day: dict) -> list:
    """Return the easy minutes, the last third a little brisker where there are enough of them."""
    brisk_s = rounded(easy_s / 3, STEP_S) if easy_s >= BRISKER_FROM_S else 0.0
    steps = []
    for seconds, cue in [(easy_s - brisk_s, "talk_easily"), (brisk_s, "a_little_brisker")]:
        if seconds > 0:
            step = warm_step("get_warm", None, machine["code"], seconds)
            step["movement"] = machine["movement"]
            step["amount"] = seconds
            step["unit"] = "s"
            step["cue"] = {"code": "layers_on" if day["cool"] and cue == "talk_easily" else cue}
            steps.append(step)
    return steps


def loosen(movers: list, limiting: dict, day: dict, positions: int) -> list:
    """Return up to `positions` active drills: a light load in a position asked for first, then the movements' own, the limiting one's before."""
    ordered = [limiting] + [mover for mover in movers if mover["movement"] != limiting["movement"]]
    steps = [loaded_move(ordered, day)]
    names = []
    for mover in ordered:
        for drill in mover["entry"]["drills"]:
            loosens = drill["phase"] == "loosen" and drill["name"] not in names and not drill["partner"]
            if loosens and mover["care"] == "none" and is_for_today(DRILL_POSITIONS.get(drill["name"]), day):
                names.append(drill["name"])
                steps.append(loosen_step(drill, mover, day))
    return steps[:positions]


def is_for_today(position: str | None, day: dict) -> bool:
    """Is a position for this body and this room today: nothing sore in it, and a bar free to hang from where it is a hang?"""
    if position == HANGING and not day["bar_free"]:
        return False
    groups = POSITION_GROUPS.get(position, []) if position is not None else []
    return len([1 for group in groups if group in day["sore"]]) == 0


def loaded_move(ordered: list, day: dict) -> dict:
    """Return the light carry or hold in the position the workout asks for most, sore parts spared."""
    code = "carry_sides" if "grip" not in day["sore"] else "shake_out"
    for mover in reversed(ordered):
        for move in reversed(LOADED_MOVES):
            if move[0] in mover["entry"]["loosen"] and move[2] not in day["sore"]:
                code = move[1]
    step = warm_step("loosen", None, code, 40.0)
    step["amount"] = 30.0 if code in STEADY_POSITIONS else 15.0
    step["unit"] = "s"
    step["side"] = None if code in STEADY_POSITIONS else "both"
    if code != "shake_out":
        put_load(step, lightest(day))
    return step


def lightest(day: dict) -> dict | None:
    """Return the light load to loosen with, a kettlebell or else a dumbbell; None where the gym has neither."""
    for kind, key in [("kettlebell", "kettlebells_kg"), ("dumbbell", "dumbbells_kg")]:
        load_kg = nearest_below(day["rack"][key], day["light_kg"], day["light_kg"])
        if load_kg is not None:
            return {"kg": load_kg, "label": load_label(kind, load_kg)}
    return None


def put_load(step: dict, load: dict | None):
    """Set load and label of a step, in place."""
    if load is not None:
        step["load_kg"] = load["kg"]
        step["label"] = load["label"]


def loosen_step(drill: dict, mover: dict, day: dict) -> dict:
    """Return a step for a loosening drill of the library."""
    step = warm_step("loosen", drill["name"], None, 30.0)
    step["amount"] = min(drill["amount"], LONGEST_HOLD_S) if drill["unit"] == "s" else drill["amount"]
    step["unit"] = drill["unit"]
    if mover["entry"]["sides"] == "one" and drill["load_share"] is not None:
        step["side"] = "both"
        step["seconds"] = 40.0
    if drill["load_share"] is not None:
        put_load(step, lightest(day))
    return step


def stretch_extra(mover: dict, day: dict) -> dict | None:
    """Return an optional short stretch of the first position a movement asks for that is for today; it takes no time of the sequence."""
    positions = [position for position in mover["entry"]["loosen"] if is_for_today(position, day)]
    if len(positions) == 0:
        return None
    step = warm_step("loosen", None, "stretch_short", 20.0)
    step["amount"] = 20.0
    step["unit"] = "s"
    step["optional"] = True
    step["cue"] = positions[0]
    return step


def settle(movers: list, settle_s: float) -> list:
    """Return the last part: lane, chalk where hands need it, breathing."""
    chalk = len([1 for mover in movers if "chalk" in mover["entry"]["equipment"]]) > 0
    if settle_s < 30:
        return [warm_step("settle", None, "breathe", settle_s)]
    lane_s = in_steps(settle_s / 3)
    chalk_s = in_steps(settle_s / 4) if chalk and settle_s >= 45 else 0.0
    steps = [warm_step("settle", None, "lane_check", lane_s)]
    if chalk_s > 0:
        steps.append(warm_step("settle", None, "chalk", chalk_s))
    steps.append(warm_step("settle", None, "breathe", settle_s - lane_s - chalk_s))
    return steps
