"""judge(): a whole plan of the athlete's own, run through the same simulation as ours."""

from .checks import listing, mapping, number
from .errors import EngineError
from .prepare import Case, stints_of
from .score import counted, full_count
from .trace import trace
from .units import whole
from .whole import at_rest, in_one_go


def judge(workout: dict, numbers: dict, settings: dict, own_blocks: list) -> dict:
    """Return what an athlete's own break-up of a whole workout does, for the numbers as given.

    Parameters
    ----------
    workout, numbers, settings : as in `plan`.
    own_blocks : one mapping for each block of the plan in turn, with sets [block units] and rests_s (one fewer than sets) [s];
    None for a block done in one go.

    Returns
    -------
    dict : time_s, None when it fails or the cap comes first [s]; finishes; count and count_in_all; lowest_reserve [0–1];
    fails, None or {block, round, rep (of that block, from 1), at_s}; blocks with start_s, end_s, set_starts_s, lowest_reserve;
    reserve_curve.

    Raises
    ------
    EngineError : numbers out of range; sets that do not add up to the block's amount (`sets_do_not_fill`, the block's number).
    """
    case = Case(workout, numbers, settings)
    stints = stints_of(case, case.option)
    given = listing("own_blocks_not_a_list", own_blocks)
    if len(given) > len(stints):
        raise EngineError("too_many_blocks", len(given))
    breakups = []
    for index, stint in enumerate(stints):
        breakups.append(own_breakup(stint, given[index] if index < len(given) else None))
    return verdict(workout, stints, trace(stints, breakups, case.gain, at_rest()), case.cap_s)


def own_breakup(stint: dict, own) -> dict:
    """Return an athlete's own sets and rests of one block as a break-up in steps."""
    if own is None or stint["kind"] != "local":
        return in_one_go(stint)
    block = mapping("own_block_not_a_mapping", own)
    sets = [whole(number("reps_out_of_range", units, 0, 100000) / stint["step_units"]) for units in listing("sets_out_of_range", block.get("sets"))]
    rests_s = [number("rest_out_of_range", rest_s, 0, 3600) for rest_s in listing("rest_out_of_range", block.get("rests_s"))]
    if len(sets) == 0 or min(sets) < 1 or sum(sets) != stint["steps"]:
        raise EngineError("sets_do_not_fill", stint["block"])
    if len(rests_s) != len(sets) - 1:
        raise EngineError("rests_do_not_fit", stint["block"])
    return {"sets": sets, "rests_s": rests_s, "lead_s": 0.0, "plan": []}


def verdict(workout: dict, stints: list, course: dict, cap_s: float | None) -> dict:
    """Return what the course of a plan comes to, up to the cap."""
    end_s = course["stints"][len(course["stints"]) - 1]["end_s"] if len(course["stints"]) > 0 else 0.0
    done = [stint["steps"] for stint in stints[: len(course["stints"])]]
    fails = course["fails"]
    if fails is not None:
        done[fails["stint"]] = fails["step"] - 1
    in_time = cap_s is None or end_s <= cap_s
    finishes = fails is None and len(done) == len(stints) and in_time
    return {
        "time_s": end_s if finishes else None,
        "finishes": finishes,
        "count": counted(stints, done, workout) if in_time else counted(stints, done_by(stints, course, cap_s), workout),
        "count_in_all": full_count(stints, workout),
        "lowest_reserve": 0.0 if fails is not None else min([1.0] + [went["lowest_reserve"] for went in course["stints"]]),
        "fails": None if fails is None else failing(stints, fails),
        "blocks": [own_block(stints[index], went) for index, went in enumerate(course["stints"])],
        "reserve_curve": course["curve"],
    }


def failing(stints: list, fails: dict) -> dict:
    """Return where a plan fails, as an athlete counts."""
    stint = stints[fails["stint"]]
    return {"block": stint["block"], "round": stint["round"], "rep": fails["step"], "at_s": fails["at_s"]}


def own_block(stint: dict, went: dict) -> dict:
    """Return how one block of an athlete's own plan goes."""
    return {
        "block": stint["block"],
        "round": stint["round"],
        "start_s": went["start_s"],
        "end_s": went["end_s"],
        "set_starts_s": went["set_starts_s"],
        "lowest_reserve": went["lowest_reserve"],
    }


def done_by(stints: list, course: dict, moment_s: float) -> list:
    """Return the steps done by a moment of the workout's clock, one value per stint begun, evenly spread within a stint."""
    done = []
    for index, went in enumerate(course["stints"]):
        if went["end_s"] <= moment_s:
            done.append(stints[index]["steps"])
        elif went["start_s"] < moment_s:
            share = (moment_s - went["start_s"]) / (went["end_s"] - went["start_s"])
            done.append(int(share * stints[index]["steps"]))
    return done
