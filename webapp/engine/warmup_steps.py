"""The sequence: visits, bursts and gentle parts as steps in order, each with its load, its cue and its time."""

from .athlete import in_division
from .checks import number
from .parameters import (
    LOWER_STEP,
    SHARED_FROM,
    SORE_SHARE,
    STEP_S,
    TURN_MOST_S,
    TURN_S,
)
from .warmup_build import by_importance, hardest_neighbours, lighter, measures, picked, visits_of
from .warmup_gentle import get_warm, in_steps, loosen, put_load, settle, stretch_extra, warm_step
from .warmup_loads import nearest_below, ramp_load

AROUND_S = 20.0  # s, beside the work of a build step: getting there, setting up, breathing; chosen
CHANGE_PLATES_S = 10.0  # s, more where plates are changed; chosen
AFTER_BURST_S = 30.0  # s of easy walking after a burst; chosen
EASIER_PACE = 1.2  # drills go this much slower than the movement; chosen
OTHER_UNIT_S = {"reps": 2.5, "m": 1.2, "cal": 4.5, "s": 1.0}  # s per unit where the movement counts in another; chosen
REHEARSAL_S = 30.0  # s, for the holds and for the change-over; chosen


def sequence(case: dict, level: dict, spares: dict, easy_s: float) -> list:
    """Return the steps of a warm-up at one level, without times before the heat.

    Parameters
    ----------
    case : movers, limiting, day, division, machine, blocks, several_rounds. level : a row of WARM_UP_LEVELS. spares : measures taken, by group.
    easy_s : easy minutes at the beginning. [s]
    """
    movers = picked(case["movers"], level["movers"])
    day = case["day"]
    steps = get_warm(case["machine"], easy_s, day)
    if level["positions"] > 0:
        steps.extend(loosen(movers, case["limiting"], day, level["positions"]))
        extra = stretch_extra(case["limiting"], day) if level["change_over"] == 1 else None
        if extra is not None:
            steps.append(extra)
    steps.extend(build_steps(movers, case, level, spares))
    if level["change_over"] == 1:
        steps.extend(change_over(case, movers))
    if level["bursts"] > 0:
        steps.extend(burst_steps(movers, case, level["bursts"], spares))
    steps.extend(settle(case["movers"], level["settle_s"]))
    return steps


def build_steps(movers: list, case: dict, level: dict, spares: dict) -> list:
    """Return the steps of the build: visits in order, the holds after the first piece, a partner's drill as an extra."""
    steps = []
    visits = visits_of(movers, level, spares)
    partnered = case["limiting"]["partner"] is None or level["change_over"] == 0
    hold = holds_step(movers, case) if level["holds"] == 1 else None
    for visit in visits:
        if hold is not None and visit["piece"] == 2:
            steps.append(hold)
            hold = None
        for rung in visit["rungs"]:
            if not partnered and visit["mover"]["limiting"]:
                steps.append(partner_step(visit, rung, case))
                partnered = True
            steps.append(visit_step(visit, rung, case))
        if len(movers) == 1 and level["rounds"] == 2:
            steps.append(apart_step(visit))
    if hold is not None:
        steps.append(hold)
    return steps


def apart_step(visit: dict) -> dict:
    """Return the easy moves between the visits of a mover that has nothing to alternate with."""
    step = warm_step("build", None, "shake_out", 20.0)
    step["piece"] = visit["piece"]
    step["round"] = visit["round"]
    return step


def visit_step(visit: dict, rung: dict, case: dict) -> dict:
    """Return the step of one rung on a visit."""
    return drill_step("build", visit["mover"], rung, case, visit["piece"], visit["round"])


def partner_step(visit: dict, rung: dict, case: dict) -> dict:
    """Return the drill that needs a partner, to do instead of the solo one if somebody is there: it takes no time of its own."""
    step = visit_step(visit, visit["mover"]["partner"], case)
    step["optional"] = True
    step["needs_partner"] = True
    step["instead"] = rung["name"]
    return step


def drill_step(phase: str, mover: dict, rung: dict, case: dict, piece: int | None, turn: int | None) -> dict:
    """Return the step of one rung of a mover, in a round of a piece or in none."""
    day = case["day"]
    step = warm_step(phase, rung["name"], None if rung["name"] is not None else "shake_out", 0.0)
    step["movement"] = mover["movement"]
    step["amount"] = rung["amount"]
    step["unit"] = rung["unit"]
    step["piece"] = piece
    step["round"] = turn
    if mover["entry"]["sides"] == "one" and mover["block"].get("sides") != "both":
        step["side"] = "both"
    load_step(step, mover, rung, day["rack"])
    height_step(step, mover, rung, case)
    step["cue"] = cue_of(phase, mover, rung, day)
    work_s = work_seconds(mover, rung) * (2 if step["side"] == "both" else 1)
    around_s = AFTER_BURST_S if phase == "burst" else AROUND_S
    if mover["entry"]["load_kind"] == "barbell" and phase == "build":
        around_s = around_s + CHANGE_PLATES_S
    step["seconds"] = in_steps(work_s + around_s + turns_s(day) + STEP_S / 2)
    return step


def work_seconds(mover: dict, rung: dict) -> float:
    """Return how long a rung's work takes on one side. [s]"""
    if rung["unit"] != mover["entry"]["unit"]:
        return rung["amount"] * OTHER_UNIT_S[rung["unit"]]
    return rung["amount"] * mover["unit_s"] * (1.0 if rung["full"] else EASIER_PACE)


def turns_s(day: dict) -> float:
    """Return the time one waits for one's turn on a shared lane. [s]"""
    return min(TURN_MOST_S, TURN_S * (day["people"] - 1)) if day["people"] >= SHARED_FROM else 0.0


def load_step(step: dict, mover: dict, rung: dict, rack: dict):
    """Set what is lifted, in place."""
    load_kg = mover["stint"]["load_kg"]
    kind = mover["entry"]["load_kind"]
    if load_kg is None or load_kg <= 0 or kind is None or mover["care"] in ["no_wall", "no_bar", "upright"]:
        return
    share = rung["share"]
    if share is None and rung["full"] and mover["care"] == "none":
        share = SORE_SHARE if step["round"] == 1 else 1.0
    if share is not None:
        put_load(step, ramp_load(kind, share, load_kg, rack))


def height_step(step: dict, mover: dict, rung: dict, case: dict):
    """Set how high the box is, in place: the one asked for, a lower one of this gym on the low rung."""
    height_m = in_division(mover["block"].get("height_m"), case["division"])
    if height_m is None or mover["care"] != "none":
        return
    number("height_out_of_range", height_m, 0.05, 10)
    step["height_m"] = height_m
    if rung["low"]:
        lower_m = nearest_below(case["day"]["rack"]["boxes_m"], LOWER_STEP * height_m, LOWER_STEP * height_m)
        step["height_m"] = lower_m


def cue_of(phase: str, mover: dict, rung: dict, day: dict):
    """Return what to think of: the reason for care, race rhythm, turns, or the movement's own cue."""
    if mover["care"] != "none":
        return {"code": "instead_" + mover["care"], "movement": mover["movement"]}
    if phase == "burst":
        return {"code": "race_rhythm"}
    if day["people"] >= SHARED_FROM and mover["entry"]["unit"] == "m":
        return {"code": "take_turns"}
    return mover["entry"]["cue"] if rung["full"] else {"code": "smooth_and_easy"}


def holds_step(movers: list, case: dict) -> dict | None:
    """Return the trying of the holds, for the limiting movement or the next that has a choice; the step says which one is chosen."""
    for mover in by_importance(movers):
        holds = mover["entry"]["holds"]
        if mover["stint"]["hold"] is not None and len(holds) >= 2 and mover["care"] == "none" and mover["max_units"] >= 1:
            step = warm_step("build", None, "try_holds", REHEARSAL_S)
            step["movement"] = mover["movement"]
            step["holds"] = [hold["key"] for hold in holds]
            step["hold"] = mover["stint"]["hold"]
            step["piece"] = 1
            if mover["stint"]["load_kg"] is not None and mover["entry"]["load_kind"] is not None:
                put_load(step, ramp_load(mover["entry"]["load_kind"], SORE_SHARE, mover["stint"]["load_kg"], case["day"]["rack"]))
            return step
    return None


def change_over(case: dict, movers: list) -> list:
    """Return one rehearsal of the change-over between the hardest neighbours that are for today, nothing where no two meet."""
    fit = [mover for mover in case["movers"] if mover["care"] == "none"]
    pair = hardest_neighbours(case["blocks"], case["several_rounds"], fit)
    if len(pair) == 0:
        return []
    step = warm_step("build", None, "change_over_rehearsal", REHEARSAL_S)
    step["movement"] = pair[0]["movement"]
    step["to_movement"] = pair[1]["movement"]
    return [step]


def burst_steps(movers: list, case: dict, count: int, spares: dict) -> list:
    """Return race-pace bursts, the limiting movement's first; quick feet where nobody's ladder has one."""
    steps = []
    for mover in by_importance(movers):
        rung = mover["burst"]
        spare = measures(mover, spares)
        if rung is not None and spare < 2 and len(steps) < count:
            steps.append(drill_step("burst", mover, {**rung, "amount": lighter(rung, spare)}, case, None, None))
    if len(steps) == 0:
        code = "quick_hands" if "legs" in case["day"]["sore"] else "quick_feet"
        step = warm_step("burst", None, code, 20.0)
        step["amount"] = 10.0
        step["unit"] = "s"
        steps.append(step)
    return steps
