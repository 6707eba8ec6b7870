"""The heaviest lift within a time: attempts in turn, the rests between them, and loads that the bar can make."""

import math

from .asked import entry_of
from .athlete import of_movement, usual_one_rep_max
from .checks import listing, mapping, number
from .draws import Dice
from .errors import EngineError
from .narrow import told_narrows
from .parameters import ATTEMPTS, ATTEMPT_REST_S, ATTEMPT_SECONDS, NARROWS, ONE_REP_MAX_DEFAULT_SD, ONE_REP_MAX_SD
from .prepare import Case
from .strength import load_fraction
from .units import rounded

LEAST_REST_S = 60.0  # s, below which another attempt is not worth its risk; chosen
RAISE = {"steady": -0.01, "even": 0.0, "bold": 0.015}  # added to every attempt's share of the maximum; chosen
LIFTERS = 200
MOST_ATTEMPTS = 20  # of one's own; chosen


def plan_heaviest(case: Case) -> dict:
    """Return attempts for the heaviest load of the first block's movement in `time_s`.

    Returns
    -------
    dict : lift, the movement, how often at each attempt and best_kg, today's most for so many; attempts, one mapping each with load_kg, at_s, rest_s (after it),
    chance_fraction (that it goes); score with kind "load", likely, low, high [kg]; blocks, reasons, warnings, filled as in every plan.

    Raises
    ------
    EngineError : no time; a movement without a one-rep max known or usual.
    """
    task = lift_task(case)
    movement = task["movement"]
    attempts = attempts_in(task["time_s"], task["best_kg"], RAISE[case.wanted["style"]], task["lift_s"], case.wanted["bar_step_kg"])
    results = lifted(attempts, task["best_kg"], task["sd"], case.wanted["seed"])
    for attempt in attempts:
        attempt["chance_fraction"] = results["chances"][attempts.index(attempt)]
    filled = [{"movement": movement, "number": "one_rep_max"}] if task["filled"] else []
    return {
        "option": case.option.get("key"),
        "style": case.wanted["style"],
        "attempts": attempts,
        "lift": {"movement": movement, "amount": task["reps"], "best_kg": task["best_kg"]},
        "blocks": [],
        "score": {"kind": "load", "likely": results["likely"], "low": results["low"], "high": results["high"], "finishes": True, "tie_break_s": None},
        "reserve_curve": [],
        "reasons": [how_many(attempts)] + narrowing_of(task, attempts, results, case.wanted["seed"]),
        "warnings": [{"code": "heavy_single_care", "movement": movement}] + [{"code": "number_guessed", **guess} for guess in filled],
        "filled": filled,
    }


def how_many(attempts: list) -> dict:
    """Return how the attempts go: how many, from where and with what rest."""
    if len(attempts) == 1:
        return {"code": "one_attempt", "first_kg": attempts[0]["load_kg"]}
    return {"code": "attempts_rise", "count": len(attempts), "first_kg": attempts[0]["load_kg"], "rest_s": attempts[0]["rest_s"]}


def narrowing_of(task: dict, attempts: list, results: dict, seed: int) -> list:
    """Return that the athlete's own one-rep max would narrow the band, where it was filled in: by how much the same attempts then say."""
    width_kg = results["high"] - results["low"]
    if not task["filled"] or width_kg <= 0:
        return []
    told = lifted(attempts, task["best_kg"], ONE_REP_MAX_SD, seed)
    to_fraction = (told["high"] - told["low"]) / width_kg
    return [told_narrows(task["movement"], "one_rep_max", to_fraction)] if to_fraction <= NARROWS else []


def lift_task(case: Case) -> dict:
    """Return what a heaviest lift asks: movement, reps at each attempt, time_s, lift_s (an attempt's own time), best_kg with its sd, filled."""
    time_s = number("time_out_of_range", case.workout.get("time_s"), 30, 3 * 3600)
    blocks = listing("no_blocks", case.option.get("blocks"))
    if len(blocks) == 0:
        raise EngineError("no_blocks", 0)
    block = mapping("block_not_a_mapping", blocks[0])
    movement = block.get("movement")
    entry = entry_of(case.workout, movement)
    reps = 1.0 if block.get("amount") is None else number("amount_out_of_range", block.get("amount"), 1, 20)
    known = one_rep_max(case, entry, movement)
    best_kg = known["kg"] * case.wanted["form"] * load_fraction("epley", reps) / load_fraction("epley", 1.0)
    lift_s = ATTEMPT_SECONDS + reps * entry["seconds_per_unit"]
    return {"movement": movement, "reps": reps, "time_s": time_s, "lift_s": lift_s, "best_kg": best_kg, "sd": known["sd"], "filled": known["filled"]}


def one_rep_max(case: Case, entry: dict, movement: str) -> dict:
    """Return the athlete's one-rep max, told or from the level: kg, sd of its logarithm, filled."""
    told = of_movement(case.numbers, movement).get("one_rep_max_kg")
    if told is not None:
        return {"kg": number("one_rep_max_out_of_range", told, 1, 600), "sd": ONE_REP_MAX_SD, "filled": False}
    usual_kg = usual_one_rep_max(entry, case.numbers, case.division)
    if usual_kg is None:
        raise EngineError("one_rep_max_unknown", movement)
    return {"kg": usual_kg, "sd": ONE_REP_MAX_DEFAULT_SD, "filled": True}


def attempts_in(time_s: float, best_kg: float, more: float, lift_s: float, step_kg: float) -> list:
    """Return the attempts that fit the time, the last always near the maximum, loads on the bar's steps and rising."""
    count = len(ATTEMPTS)
    while count > 1 and count * lift_s + (count - 1) * LEAST_REST_S > time_s:
        count = count - 1
    rest_s = min(ATTEMPT_REST_S, math.floor((time_s - count * lift_s) / max(1, count - 1))) if count > 1 else 0.0
    attempts = []
    before_kg = 0.0
    for place, share in enumerate(ATTEMPTS[len(ATTEMPTS) - count :]):
        load_kg = max(step_kg, rounded((share + more) * best_kg, step_kg))
        if load_kg <= before_kg:
            load_kg = before_kg + step_kg
        before_kg = load_kg
        attempts.append({"load_kg": load_kg, "at_s": place * (lift_s + rest_s), "rest_s": rest_s if place < count - 1 else 0.0, "chance_fraction": 0.0})
    return attempts


def lifted(attempts: list, best_kg: float, sd: float, seed: int) -> dict:
    """Return chances of each attempt and the band of the best load over seeded draws of the day's maximum."""
    dice = Dice(seed)
    maxima = sorted([best_kg * math.exp(sd * dice.normal()) for _ in range(LIFTERS)])
    bests = []
    for maximum in maxima:
        made = [attempt["load_kg"] for attempt in attempts if attempt["load_kg"] <= maximum]
        bests.append(max([0.0] + made))
    chances = [len([1 for maximum in maxima if maximum >= attempt["load_kg"]]) / LIFTERS for attempt in attempts]
    return {"chances": chances, "likely": bests[LIFTERS // 2], "low": bests[LIFTERS // 10], "high": bests[LIFTERS - 1 - LIFTERS // 10]}


def judge_heaviest(case: Case, given: list) -> dict:
    """Return what attempts of the athlete's own promise: loads and rests, one after another.

    Parameters
    ----------
    given : one mapping for each attempt with load_kg and rest_s (after it) [s].

    Returns
    -------
    dict : attempts, each with load_kg, rest_s, at_s, fits (is it over in time), rested (at least a minute before it), chance_fraction (that it
    goes, 0 where it does not fit); likely, low, high, the best load [kg]; spare_s, what is left after the last that fits, None for none.
    The rests move the clock and not the chance: nothing held here says how much a short one takes from a single.

    Raises
    ------
    EngineError : `sets_out_of_range` with none or more than `MOST_ATTEMPTS`; a load or a rest out of range.
    """
    task = lift_task(case)
    if len(given) == 0 or len(given) > MOST_ATTEMPTS:
        raise EngineError("sets_out_of_range", len(given))
    attempts = own_attempts(given, task)
    in_time = [attempt for attempt in attempts if attempt["fits"]]
    results = lifted(in_time, task["best_kg"], task["sd"], case.wanted["seed"])
    for index, attempt in enumerate(in_time):
        attempt["chance_fraction"] = results["chances"][index]
    return {
        "attempts": attempts,
        "likely": results["likely"],
        "low": results["low"],
        "high": results["high"],
        "spare_s": task["time_s"] - in_time[len(in_time) - 1]["at_s"] - task["lift_s"] if len(in_time) > 0 else None,
    }


def own_attempts(given: list, task: dict) -> list:
    """Return an athlete's own attempts on the clock, those beyond its end marked."""
    attempts = []
    clock_s = 0.0
    rest_s = LEAST_REST_S
    for each in given:
        own = mapping("own_block_not_a_mapping", each)
        load_kg = number("load_out_of_range", own.get("load_kg"), 0.5, 1000)
        fits = clock_s + task["lift_s"] <= task["time_s"] + 1e-6
        attempt = {"load_kg": load_kg, "at_s": clock_s, "rested": rest_s >= LEAST_REST_S, "fits": fits, "chance_fraction": 0.0}
        rest_s = number("rest_out_of_range", own.get("rest_s"), 0, 3600)
        attempt["rest_s"] = rest_s
        attempts.append(attempt)
        clock_s = clock_s + task["lift_s"] + rest_s
    return attempts
