"""warm_up(): a workout, an athlete's numbers and today's settings in, a timed sequence counted back from the heat out.

The order of the work: the day (`warmup_day`), the movers and their ladders (`warmup_movers`), the richest level that fits the time there is
(`warmup_steps`, from `warmup_gentle` and `warmup_build`), and the reserve model, which makes it lighter until it passes (`warmup_check`).

Phases in order: get_warm, loosen, build, burst, settle. When time is short it keeps, to the last: some easy work, one rehearsal of the
limiting movement, one of the heaviest load. Limits: knows nothing of injuries; a sore part only takes the load off.
"""

from .asked import rounds_of
from .checks import listing, mapping
from .parameters import (
    EMERGENCY_LEVEL,
    ESSENTIAL_S,
    GAP_LEAST_S,
    GAP_S,
    GAP_SHARE,
    GAP_SHORTEST_S,
    LIGHTEST,
    REPEAT_S,
    SHORTEST_STEP_S,
    SLIP_FOR_REPEAT_S,
    STEP_S,
    WARM_UP_LEAST_S,
    WARM_UP_LEVELS,
    WARM_UP_LONGEST_S,
    WARM_UP_USUAL_S,
)
from .prepare import Case, stints_of
from .units import rounded
from .warmup_build import easiest_rung, measures
from .warmup_check import run_through_model
from .warmup_day import day_of
from .warmup_gentle import choose_machine, get_warm, in_steps, warm_step
from .warmup_movers import movers_of
from .warmup_steps import drill_step, sequence

LATER_FROM_S = 60.0  # s to spare before it is worth saying "start later"; chosen
MOST_UNHURRIED_S = 15.0  # s more for a step where there is time; chosen
MOST_TURNS = 20  # of making it lighter; chosen
TOO_LATE_S = 20.0  # s of warm-up below which there is no sequence; chosen
LONGEST_GAP_S = 600.0  # s; window of 2-10 min, see GAP_LEAST_S


def warm_up(workout: dict, numbers: dict, settings: dict) -> dict:
    """Return the athlete's warm-up.

    Parameters
    ----------
    workout, numbers, settings : as for a plan. Of the settings, all optional, it also reads:
        warm_up_min, minutes there are before the heat [min]; late_by_s, how late the athlete begins; slipped_by_s, how much later the heat
        starts than the athlete warmed up for; called_early, seconds left when called now [s]
        room_c [°C]; humidity_percent [%]; heat_start, for its hour alone
        rack, lists balls_kg, bars_kg, boxes_m, dumbbells_kg, kettlebells_kg, plates_kg (each size as many pairs as needed), sandbags_kg;
        largest_sets, by movement, of the break-up the athlete means to do
        machines, of row, bike and run, [] for none; lane_shared_by, people on the lane; wall_free, bar_free, whether one can be used

    Returns
    -------
    dict : steps, as `warmup_gentle` describes them, each ending where the next begins but for optional ones; starts_s and ends_s, before the
    heat [s]; checks, from `warmup_check`, with what was kept; reasons and warnings, codes with parameters.

    Raises
    ------
    EngineError : with a code and the offending value, for anything it cannot work with.
    """
    case = case_of(workout, mapping("numbers_not_a_mapping", numbers), settings)
    full = lightened_until_fit(case, WARM_UP_LONGEST_S, 0)
    time_s = time_there_is(case["day"], full)
    made = full
    if time_s < WARM_UP_LONGEST_S:
        called = case["day"]["called_s"] is not None and time_s < WARM_UP_USUAL_S
        made = lightened_until_fit(case, time_s, EMERGENCY_LEVEL if called else 0)
    return told(case, made, full, time_s)


def case_of(workout: dict, numbers: dict, settings) -> dict:
    """Return everything that is known before the time is looked at."""
    whole_workout = mapping("workout_not_a_mapping", workout)
    parts = listing("options_not_a_list", whole_workout.get("parts"))
    first = mapping("workout_not_a_mapping", parts[0]) if len(parts) > 0 else whole_workout
    asked = {**whole_workout, **first}
    asked["movements"] = {**mapping("movement_unknown", whole_workout.get("movements")), **mapping("movement_unknown", first.get("movements"))}
    athlete = Case(asked, numbers, settings)
    day = day_of(numbers, settings)
    stints = [stint for stint in stints_of(athlete, athlete.option) if stint["round"] == 1]
    movers = movers_of(asked, athlete.option, stints, numbers, day)
    limiting = [mover for mover in movers if mover["limiting"]][0]
    return {
        "movers": movers, "limiting": limiting, "day": day, "division": athlete.division, "gain": athlete.gain, "blocks": athlete.option["blocks"],
        "several_rounds": len(rounds_of(athlete.option)) > 1, "group": limiting["entry"]["primary"],
        "machine": choose_machine(movers, limiting, day),
    }  # fmt: skip


def time_there_is(day: dict, full: dict) -> float:
    """Return how long before the heat the athlete can begin, at most the longest. [s]"""
    if day["called_s"] is not None:
        return min(WARM_UP_LONGEST_S, day["called_s"])
    if day["minutes_s"] is not None:
        return max(0.0, min(WARM_UP_LONGEST_S, day["minutes_s"] - day["late_s"]))
    if day["late_s"] > 0:
        return max(0.0, full["ends_s"] + duration(full["steps"]) - day["late_s"])
    return WARM_UP_LONGEST_S


def gap_for(time_s: float) -> float:
    """Return the gap between the last step and the heat: a third of the time, two to five minutes, less when hardly any is left. [s]"""
    if time_s >= WARM_UP_LEAST_S:
        return max(GAP_LEAST_S, min(GAP_S, rounded(time_s * GAP_SHARE - STEP_S / 2, STEP_S)))
    return min(time_s, max(GAP_SHORTEST_S, time_s - (WARM_UP_LEAST_S - GAP_LEAST_S)))


def lightened_until_fit(case: dict, time_s: float, first_level: int) -> dict:
    """Return the richest sequence that fits, made lighter measure by measure until the reserve model lets it pass.

    Returns
    -------
    dict : steps, ends_s [s], level, spares (measures taken, by group), checks.
    """
    ends_s = gap_for(time_s)
    spares = {}
    best = {}
    for turn in range(MOST_TURNS):
        made = fitted(case, time_s - ends_s, first_level, spares)
        checks = run_through_model(made["steps"], ends_s, case["movers"], case["limiting"], case["gain"])
        best = {"steps": made["steps"], "level": made["level"], "ends_s": ends_s, "spares": {**spares}, "checks": checks}
        tired = [group for group in checks["tired"] if spares.get(group, 0) < LIGHTEST]
        if len(tired) == 0:
            return best
        for group in tired:
            spares[group] = spares.get(group, 0) + 1
    return best


def fitted(case: dict, active_s: float, first_level: int, spares: dict) -> dict:
    """Return the steps of the richest level that fits `active_s` [s], easy minutes filled up to those of the next richer one."""
    for index in range(first_level, len(WARM_UP_LEVELS)):
        level = WARM_UP_LEVELS[index]
        easy_s = easy_seconds(case["day"], index)
        steps = sequence(case, level, spares, easy_s)
        spare_s = active_s - duration(steps)
        if spare_s >= 0:
            most_s = easy_seconds(case["day"], max(0, index - 1)) - easy_s
            more_s = STEP_S * (min(spare_s, most_s) // STEP_S)
            if more_s > 0:
                steps = sequence(case, level, spares, easy_s + more_s)
            unhurried(steps, spare_s - more_s)
            return {"steps": steps, "level": index}
    return {"steps": squeezed(case, active_s, spares), "level": len(WARM_UP_LEVELS)}


def unhurried(steps: list, spare_s: float):
    """Give time that is left over to the steps of build and bursts, in place, evenly and not without end."""
    active = [step for step in steps if step["phase"] in ["build", "burst"] and not step["optional"]]
    if len(active) > 0:
        each_s = min(MOST_UNHURRIED_S, STEP_S * (spare_s / len(active) // STEP_S))
        for step in active:
            step["seconds"] = step["seconds"] + each_s


def easy_seconds(day: dict, index: int) -> float:
    """Return the easy minutes of a level on this day. [s]"""
    extra_s = day["easy_extra_s"] if index < EMERGENCY_LEVEL else 0.0
    return in_steps(WARM_UP_LEVELS[index]["easy_s"] * day["easy_share"] + extra_s * day["easy_share"])


def squeezed(case: dict, active_s: float, spares: dict) -> list:
    """Return the essentials in hardly any time, [] where there is none: easy work, one rep of what limits, one of the heaviest, a breath."""
    if active_s < TOO_LATE_S:
        return []
    share = min(1.0, active_s / sum(ESSENTIAL_S))
    seconds = [max(SHORTEST_STEP_S, STEP_S * (part * share // STEP_S)) for part in ESSENTIAL_S]
    heaviest = [mover for mover in case["movers"] if mover["heaviest"] and not mover["limiting"]]
    rest = [one_rehearsal(case["limiting"], seconds[1], case, spares)]
    if len(heaviest) > 0:
        rest.append(one_rehearsal(heaviest[0], seconds[2], case, spares))
    rest.append(warm_step("settle", None, "breathe", seconds[3]))
    easy_s = STEP_S * ((active_s - duration(rest)) // STEP_S)
    return get_warm(case["machine"], max(SHORTEST_STEP_S, min(easy_s, easy_seconds(case["day"], len(WARM_UP_LEVELS) - 1))), case["day"]) + rest


def one_rehearsal(mover: dict, seconds: float, case: dict, spares: dict) -> dict:
    """Return one rep (or a short stretch) of the highest rung of a mover, of an easier one after any measure."""
    rung = mover["ladder"][len(mover["ladder"]) - 1] if measures(mover, spares) == 0 else easiest_rung(mover["ladder"], mover)
    amount = 1 if rung["unit"] == "reps" else min(rung["amount"], 5)
    step = drill_step("build", mover, {**rung, "amount": amount}, case, None, None)
    step["seconds"] = seconds
    return step


def duration(steps: list) -> float:
    """Return how long the steps last, extras aside. [s]"""
    return sum([step["seconds"] for step in steps if not step["optional"]])


def told(case: dict, made: dict, full: dict, time_s: float) -> dict:
    """Return the warm-up with its times before the heat, its checks, reasons and warnings."""
    steps = after_slip(case, made["steps"], made["spares"])
    ends_s = made["ends_s"]
    checks = made["checks"]
    if len(steps) > len(made["steps"]):
        checks = run_through_model(steps, ends_s, case["movers"], case["limiting"], case["gain"])
    if case["day"]["called_s"] is not None and len(steps) > 0:
        ends_s = max(ends_s, min(LONGEST_GAP_S, time_s - duration(made["steps"])))
    starts_s = ends_s + duration(steps)
    count_back(steps, starts_s)
    return {
        "steps": steps,
        "starts_s": starts_s,
        "ends_s": ends_s,
        "checks": {**checks, **kept(case, steps), "level": made["level"], "lightened": made["spares"]},
        "reasons": warm_up_reasons(case, made, full, starts_s),
        "warnings": warm_up_warnings(case, made, time_s),
    }


def count_back(steps: list, starts_s: float):
    """Set when each step begins before the heat, in place; an extra begins with the step after it and takes no time of its own."""
    at_s = starts_s
    for step in steps:
        step["at_s"] = at_s
        if not step["optional"]:
            at_s = at_s - step["seconds"]


def after_slip(case: dict, steps: list, spares: dict) -> list:
    """Return the steps with what a slipped heat asks for: keeping warm, and beyond 15 minutes the last part again."""
    slipped_s = case["day"]["slipped_s"]
    if slipped_s <= 0 or len(steps) == 0:
        return steps
    again_s = REPEAT_S if slipped_s > SLIP_FOR_REPEAT_S else 0.0
    waiting = warm_step("settle", None, "keep_warm", slipped_s - again_s)
    return [] + steps + [waiting] + (repeat_steps(case, spares) if again_s > 0 else [])


def repeat_steps(case: dict, spares: dict) -> list:
    """Return the three minutes that come again: easy, one rep of what limits and of the heaviest, quick feet, breathing."""
    steps = get_warm(case["machine"], ESSENTIAL_S[0], case["day"])
    for mover in case["movers"]:
        if mover["limiting"] or mover["heaviest"]:
            steps.append(one_rehearsal(mover, 30.0, case, spares))
    burst = warm_step("burst", None, "quick_hands" if "legs" in case["day"]["sore"] else "quick_feet", ESSENTIAL_S[1])
    steps.append(burst)
    steps.append(warm_step("settle", None, "breathe", REPEAT_S - duration(steps)))
    return steps


def kept(case: dict, steps: list) -> dict:
    """Return whether the essentials are there: easy time [s], the limiting movement, the heaviest load."""
    build = [step["movement"] for step in steps if step["phase"] in ["build", "burst"] and not step["optional"] and step["amount"] is not None]
    heaviest = [mover["movement"] for mover in case["movers"] if mover["heaviest"]]
    return {
        "easy_s": sum([step["seconds"] for step in steps if step["phase"] == "get_warm"]),
        "limiting_rehearsed": case["limiting"]["movement"] in build,
        "heaviest_movement": heaviest[0] if len(heaviest) > 0 else None,
        "heaviest_rehearsed": len(heaviest) == 0 or heaviest[0] in build,
    }


def warm_up_reasons(case: dict, made: dict, full: dict, starts_s: float) -> list:
    """Return why the sequence is as it is."""
    day = case["day"]
    reasons = [] + case["machine"]["reasons"] + day["reasons"]
    reasons.extend(limiting_reasons(case["limiting"], made["steps"]))
    for mover in case["movers"]:
        if mover["stint"]["kind"] == "gate" and mover["stint"]["load_kg"] is not None:
            reasons.append({"code": "load_beyond_max", "movement": mover["movement"]})
        if mover["care"] != "none":
            reasons.append({"code": "instead_" + mover["care"], "movement": mover["movement"]})
    reasons.extend(unloaded_reasons(case["movers"], made["steps"]))
    for step in made["steps"]:
        if step["code"] == "try_holds":
            reasons.append({"code": "hold_tried", "movement": step["movement"], "hold": hold_name(case["movers"], step)})
    reasons.extend(burst_reasons(day, made["steps"]))
    if day["called_s"] is not None:
        reasons.append({"code": "called_early"})
    elif made["level"] == full["level"] and day["minutes_s"] is not None and day["slipped_s"] <= 0:
        if day["minutes_s"] - day["late_s"] - starts_s >= LATER_FROM_S:
            reasons.append({"code": "start_later", "starts_s": starts_s})
    if made["level"] > full["level"]:
        reasons.append({"code": "warm_up_shortened", "usual_s": full["ends_s"] + duration(full["steps"])})
    for group in sorted(list(made["spares"].keys())):
        reasons.append({"code": "warm_up_lightened", "group": group})
    return reasons


def burst_reasons(day: dict, steps: list) -> list:
    """Return which bursts are as long as the largest set the athlete means to do."""
    reasons = []
    for step in steps:
        largest = day["largest_sets"].get(step["movement"]) if step["phase"] == "burst" and step["unit"] == "reps" else None
        if largest is not None and step["amount"] == max(1, int(largest // 1)):
            reasons.append({"code": "burst_as_planned", "movement": step["movement"], "reps": step["amount"]})
    return reasons


def hold_name(movers: list, step: dict) -> str | None:
    """Return the library's name of the hold a step has chosen."""
    for mover in movers:
        for hold in mover["entry"]["holds"]:
            if mover["movement"] == step["movement"] and hold["key"] == step["hold"]:
                return hold["name"]
    return None


def unloaded_reasons(movers: list, steps: list) -> list:
    """Return which loaded movements are rehearsed without a load because this gym has none light enough."""
    reasons = []
    for mover in movers:
        load_kg = mover["stint"]["load_kg"]
        if load_kg is not None and load_kg > 0 and mover["care"] == "none":
            own = [step for step in steps if step["movement"] == mover["movement"] and step["name"] == mover["entry"]["name"]]
            if len([1 for step in own if step["load_kg"] is None]) > 0:
                reasons.append({"code": "nothing_light_enough", "movement": mover["movement"]})
    return reasons


def limiting_reasons(limiting: dict, steps: list) -> list:
    """Return how many reps a round the limiting movement gets where it is a skill done in reps, and why drills stand for it where they do."""
    if limiting["care"] != "none" or limiting["entry"]["unit"] != "reps" or limiting["stint"]["load_kg"] is not None:
        return []
    if limiting["max_units"] < 1:
        return [{"code": "limiting_no_rep", "movement": limiting["movement"]}]
    name = limiting["entry"]["name"]
    amounts = [step["amount"] for step in steps if step["phase"] == "build" and step["name"] == name and step["unit"] == "reps"]
    return [{"code": "limiting_dose", "movement": limiting["movement"], "reps": max(amounts)}] if len(amounts) > 0 else []


def warm_up_warnings(case: dict, made: dict, time_s: float) -> list:
    """Return what the athlete must know beside the steps."""
    warnings = [] + case["day"]["warnings"]
    if time_s < WARM_UP_LEAST_S:
        warnings.append({"code": "warm_up_too_short"})
    elif time_s < WARM_UP_USUAL_S:
        warnings.append({"code": "warm_up_emergency"})
    if len([1 for mover in case["movers"] if mover["entry"]["inverted"] and mover["care"] in ["none", "sore"]]) > 0:
        for code in ["mat_under_head", "two_metres_clear", "no_kick_up_dizzy"]:
            warnings.append({"code": code})
    for group in made["checks"]["tired"]:
        warnings.append({"code": "warm_up_tires", "group": group})
    return warnings
