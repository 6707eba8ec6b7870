"""judge(): a whole plan of the athlete's own, run through the same simulation as ours."""

import math

from .checks import choice, listing, mapping, number, optional
from .errors import EngineError
from .heaviest import judge_heaviest
from .intervals import interval_length
from .judge_intervals import interval_verdict, own_intervals, own_margins, with_gaps
from .pacing import slowed
from .parameters import BREATH_S, GROUPS
from .planner import SHAPES, part_of
from .prepare import Case, stints_of
from .score import count_of, counted, full_count, rounds_done
from .trace import trace
from .units import whole
from .whole import at_rest, in_one_go


def judge(workout: dict, numbers: dict, settings: dict, own_blocks: list) -> dict:
    """Return what an athlete's own break-up of a whole workout does, for the numbers as given.

    Parameters
    ----------
    workout, numbers, settings : as in `plan`. Most rounds in a time are judged over as many rounds as `own_blocks` has.
    own_blocks : one mapping for each block of the plan in turn, with sets [block units] and rests_s (one fewer than sets) [s], and where the
    plan has them cadence (share of the usual seconds) and lead_s (wait before the first set) [s]; None for a block done in one go. Intervals:
    the same, interval after interval. Heaviest lift: the attempts, see `judge_heaviest`. A workout in parts: one such list for each part.

    Returns
    -------
    dict : time_s, None when it fails or the cap comes first [s]; finishes; count and count_in_all; rounds and extra for most rounds in a
    time, else None; lowest_reserve [0–1]; fails before the cap, None or {block, round, rep (of that block, from 1), done [its unit] before, unit,
    at_s}; blocks with
    sets, rests_s, rests_breaths, start_s, end_s, set_starts_s, lowest_reserve, limiting_group, expected_at_cap, count_at_cap, one for each
    begun; reserve_curve up to the cap. Intervals: besides, intervals, breaks and margin_s, see `interval_verdict`; what counts is counted up to
    the end of the one that breaks. Heaviest lift: see `judge_heaviest`. A workout in parts: {"parts": [one for each]}.

    Raises
    ------
    EngineError : numbers out of range; sets that do not add up to the block's amount (`sets_do_not_fill`, the block's number).
    """
    given = listing("own_blocks_not_a_list", own_blocks)
    if mapping("workout_not_a_mapping", workout).get("parts") is not None:
        parts = listing("parts_not_a_list", workout["parts"])
        return {"parts": [judge(part_of(workout, part), numbers, settings, own_part(given, index)) for index, part in enumerate(parts)]}
    shape = choice("shape_unknown", mapping("workout_not_a_mapping", workout).get("shape"), SHAPES)
    case = Case(workout, numbers, settings)
    if shape == "load":
        return judge_heaviest(case, given)
    if shape == "intervals":
        return judge_in_intervals(case, given)
    stints = own_stints(case, given)
    breakups = own_breakups(case, stints, given)
    return verdict(case, stints, breakups, trace(stints, breakups, case.gain, at_rest()))


def own_part(given: list, index: int):
    """Return the own blocks of one part, none where nothing is said of it."""
    return given[index] if index < len(given) else []


def own_stints(case: Case, given: list) -> list:
    """Return the stints that own blocks are given for."""
    stints = stints_of(case, for_rounds(case, len(given)))
    if len(given) > len(stints):
        raise EngineError("too_many_blocks", len(given))
    return stints


def judge_in_intervals(case: Case, given: list) -> dict:
    """Return what own sets within the intervals do."""
    stints = own_intervals(case, given)
    breakups = own_breakups(case, stints, with_gaps(stints, given))
    course = trace(stints, breakups, case.gain, at_rest())
    margins = own_margins(stints, course, interval_length(case))
    case.cap_s = margins["end_s"]
    return interval_verdict(case, stints, verdict(case, stints, breakups, course), margins)


def own_breakups(case: Case, stints: list, given: list) -> list:
    """Return the break-ups of own blocks, one for each stint; a stint's cadence becomes the own block's, in place."""
    breakups = []
    for index in range(len(stints)):
        own = given[index] if index < len(given) else None
        stints[index] = at_cadence(case, stints[index], own)
        breakups.append(own_breakup(stints[index], own))
    return breakups


def for_rounds(case: Case, count: int) -> dict:
    """Return the option with as many rounds as `count` blocks make, for most rounds in a time (its end is the case's cap); else as it is."""
    if case.workout.get("shape") != "amrap" or case.option.get("rep_scheme") is not None:
        return case.option
    case.cap_s = number("time_out_of_range", case.workout.get("time_s"), 10, 3 * 3600)
    blocks = len(listing("no_blocks", case.option.get("blocks")))
    return {**case.option, "rounds": max(1, math.ceil(count / max(1, blocks)))}


def at_cadence(case: Case, stint: dict, own) -> dict:
    """Return the stint at the cadence an own block keeps, the usual one where it says nothing."""
    if own is None or stint["kind"] == "rest":
        return stint
    given = mapping("own_block_not_a_mapping", own).get("cadence")
    return stint if given is None else slowed(stint, number("cadence_out_of_range", given, 0.5, 2), case.lungs)


def own_breakup(stint: dict, own) -> dict:
    """Return an athlete's own sets and rests of one block as a break-up in steps."""
    if own is None or (stint["kind"] != "local" and stint["kind"] != "paced"):
        return in_one_go(stint)
    block = mapping("own_block_not_a_mapping", own)
    sets = [whole(number("reps_out_of_range", units, 0, 100000) / stint["step_units"]) for units in listing("sets_out_of_range", block.get("sets"))]
    rests_s = [number("rest_out_of_range", rest_s, 0, 3600) for rest_s in listing("rest_out_of_range", block.get("rests_s"))]
    if len(sets) == 0 or min(sets) < 1 or sum(sets) != stint["steps"]:
        raise EngineError("sets_do_not_fill", stint["block"])
    if len(rests_s) != len(sets) - 1:
        raise EngineError("rests_do_not_fit", stint["block"])
    return {"sets": sets, "rests_s": rests_s, "lead_s": optional("rest_out_of_range", block.get("lead_s"), 0, 3600, 0.0), "plan": []}


def verdict(case: Case, stints: list, breakups: list, course: dict) -> dict:
    """Return what the course of a plan comes to, up to the cap."""
    workout = case.workout
    cap_s = math.inf if case.cap_s is None else case.cap_s
    begun = [went for went in course["stints"] if went["start_s"] <= cap_s]
    end_s = course["stints"][len(course["stints"]) - 1]["end_s"] if len(course["stints"]) > 0 else 0.0
    fails = course["fails"] if end_s <= cap_s else None
    done = [done_by(stints[index], breakups[index], went, cap_s) for index, went in enumerate(begun)]
    if fails is not None:
        done[fails["stint"]] = fails["step"] - 1
    finishes = fails is None and len(begun) == len(stints) and end_s <= cap_s
    count = counted(stints, done, workout)
    blocks = len(case.option["blocks"])
    made = rounds_done(stints, blocks, count, workout) if workout.get("shape") == "amrap" else [None, None]
    return {
        "time_s": end_s if finishes else None,
        "finishes": finishes,
        "count": count,
        "count_in_all": full_count(stints, workout),
        "rounds": made[0],
        "extra": made[1],
        "lowest_reserve": 0.0 if fails is not None else lowest_by(course, cap_s),
        "fails": None if fails is None else failing(stints, fails),
        "blocks": [own_block(workout, stints[index], breakups[index], went, done[index]) for index, went in enumerate(begun)],
        "reserve_curve": [moment for moment in course["curve"] if moment["t_s"] <= cap_s],
    }


def lowest_by(course: dict, cap_s: float) -> float:
    """Return the least reserve of any group up to a moment of the workout's clock. [0–1]"""
    lowest = 1.0
    for went in course["stints"]:
        if went["end_s"] <= cap_s:
            lowest = min(lowest, went["lowest_reserve"])
    for moment in course["curve"]:
        if moment["t_s"] <= cap_s:
            lowest = min([lowest] + [moment[group] for group in GROUPS])
    return lowest


def failing(stints: list, fails: dict) -> dict:
    """Return where a plan fails, as an athlete counts."""
    stint = stints[fails["stint"]]
    done = (fails["step"] - 1) * stint["step_units"]
    return {"block": stint["block"], "round": stint["round"], "rep": int(math.floor(done + 1e-6)) + 1, "done": done, "unit": stint["unit"], "at_s": fails["at_s"]}


def own_block(workout: dict, stint: dict, breakup: dict, went: dict, done: int) -> dict:
    """Return how one block of an athlete's own plan goes."""
    return {
        "block": stint["block"],
        "round": stint["round"],
        "sets": [steps * stint["step_units"] for steps in breakup["sets"]],
        "rests_s": breakup["rests_s"],
        "rests_breaths": [max(1, whole(rest_s / BREATH_S)) for rest_s in breakup["rests_s"]],
        "start_s": went["start_s"],
        "end_s": went["end_s"],
        "set_starts_s": went["set_starts_s"],
        "lowest_reserve": went["lowest_reserve"],
        "limiting_group": went["limiting_group"],
        "expected_at_cap": min(stint["amount"], done * stint["step_units"]),
        "count_at_cap": count_of(stint, done, workout),
    }


def done_by(stint: dict, breakup: dict, went: dict, moment_s: float) -> int:
    """Return the steps of a stint done by a moment of the workout's clock, evenly spread within a set."""
    if stint["kind"] == "rest" or went["end_s"] <= moment_s:
        return stint["steps"]
    done = 0.0
    for index in range(len(went["set_ends_s"])):
        start_s = went["set_starts_s"][index]
        length_s = went["set_ends_s"][index] - start_s
        done = done + breakup["sets"][index] * max(0.0, min(1.0, (moment_s - start_s) / max(length_s, 1e-9)))
    return int(math.floor(done + 1e-9))
