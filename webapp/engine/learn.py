"""learn(): what a logged heat says about the numbers.

For each movement done in sets, the time its blocks took is held against the time of a plan made, as carefully as the one that was
followed, for somebody whose largest set is `f` times what was believed: people go as they feel. f is log-normal around 1 with the
number's own doubt, the time around the model's with a stated one; the mean of f over that belief is taken (a Bayesian update on a grid).
"""

import math

from .checks import listing, mapping, number, whole_number
from .errors import EngineError
from .parameters import LEARN_GRID, LEARN_LEAST_SD, LEARN_LOWEST, LEARN_TIME_SD, ONE_REP_MAX_SHARE
from .whole import LONGEST_S, at_rest, break_up_all, live_through


def learn(numbers: dict, result: dict) -> dict:
    """Return the numbers after a logged heat, with the change explained.

    Parameters
    ----------
    numbers : what the athlete gave, as for `plan`.
    result : plan, the plan that was followed; ends_s, end of each block done, in order, from the start [s]; failed, places in the
    plan's blocks, from 0, where a repetition failed (may be left out).

    Returns
    -------
    dict : numbers, a copy with new largest sets; changes, one mapping per movement with movement, before and after (largest set, in the
    movement's unit as asked), factor, sd (of the logarithm, after), expected_s and took_s over its blocks [s].

    Raises
    ------
    EngineError : a result that is none, or ends that do not rise.
    """
    told = mapping("result_not_a_result", result)
    followed = mapping("plan_not_a_plan", told.get("plan"))
    basis = mapping("plan_not_a_plan", followed.get("basis"))
    stints = listing("plan_not_a_plan", basis.get("stints"))
    blocks = listing("plan_not_a_plan", followed.get("blocks"))
    ends_s = listing("ends_not_a_list", told.get("ends_s"))
    before_s = 0.0
    for end_s in ends_s:
        before_s = number("ends_out_of_order", end_s, before_s, 21600)
    begun = min(len(ends_s), len(stints), len([1 for block in blocks if block["reached"]]))
    failed = [whole_number("failed_out_of_range", place, 0, 1000) for place in listing("failed_out_of_range", told.get("failed"))]
    changes = [update(movement, stints[:begun], basis, ends_s, failed) for movement in learnable(stints, begun)]
    return {"numbers": with_changes(numbers, changes), "changes": changes}


def learnable(stints: list, begun: int) -> list:
    """Return the movements done in sets, each once."""
    movements = []
    for stint in stints[:begun]:
        if stint["kind"] == "local" and stint["movement"] not in movements:
            movements.append(stint["movement"])
    return movements


def times_of_movement(movement: str, stints: list, ends_s: list) -> float:
    """Return the time all blocks of a movement took, change-overs included. [s]"""
    total_s = 0.0
    for index, stint in enumerate(stints):
        if stint["movement"] == movement and index < len(ends_s):
            total_s = total_s + ends_s[index] - (ends_s[index - 1] if index > 0 else 0.0)
    return total_s


def update(movement: str, stints: list, basis: dict, ends_s: list, failed: list) -> dict:
    """Return the change a result makes to one movement's largest set."""
    same = [stint for stint in stints if stint["movement"] == movement]
    first = same[0]
    took_s = times_of_movement(movement, stints, ends_s)
    did_fail = len([place for place in failed if place < len(stints) and stints[place]["movement"] == movement]) > 0
    weights = []
    logs = []
    expected_s = took_s
    hints = [{"plan": plan} for plan in basis["plans"]]
    for index in range(LEARN_GRID):
        log = math.log(LEARN_LOWEST) * (1 - 2 * index / (LEARN_GRID - 1))
        would = would_go(movement, stints, basis, math.exp(log), hints)
        if index == (LEARN_GRID - 1) // 2:
            expected_s = would["seconds"]
        misfit = math.log(max(1.0, took_s) / max(1.0, would["seconds"])) / LEARN_TIME_SD
        doubt = log / max(LEARN_LEAST_SD, first["sd"])
        other_story = 2.0 if would["fails"] != did_fail else 0.0
        weights.append(-(misfit * misfit + doubt * doubt) / 2 - other_story)
        logs.append(log)
    most = max(weights)  # the greatest weight becomes 1: an absurd time leaves a belief, not nothing at all
    return change_of(movement, first, [math.exp(weight - most) for weight in weights], logs, expected_s, took_s)


def would_go(movement: str, stints: list, basis: dict, factor: float, hints: list) -> dict:
    """Return the time a movement's blocks take somebody `factor` times as able at it who goes as they feel, and whether the plan that was
    followed would have failed them."""
    factors = [factor if stint["movement"] == movement else 1.0 for stint in stints]
    careful = [factors[index] * basis["factors"][index] for index in range(len(stints))]
    felt = break_up_all(stints, careful, basis["gain"], hints, at_rest(), [None] * len(stints))
    went = live_through(stints, felt, factors, [1.0] * len(stints), basis["gain"], LONGEST_S, at_rest())
    least = min([1.0] + [basis["factors"][index] for index in range(len(stints)) if stints[index]["movement"] == movement])
    return {"seconds": times_of_movement(movement, stints, went["ends_s"]), "fails": factor < least}


def change_of(movement: str, stint: dict, weights: list[float], logs: list[float], expected_s: float, took_s: float) -> dict:
    """Return the mean and width of the belief after the result, as a change."""
    total = sum(weights)
    mean = 0.0
    square = 0.0
    for index in range(len(logs)):
        mean = mean + weights[index] / total * logs[index]
        square = square + weights[index] / total * logs[index] * logs[index]
    before = stint["max_steps"] * stint["step_units"]
    return {
        "movement": movement,
        "unit": stint["unit"],
        "before": before,
        "after": before * math.exp(mean),
        "factor": math.exp(mean),
        "sd": max(LEARN_LEAST_SD, math.sqrt(max(0.0, square - mean * mean))),
        "expected_s": expected_s,
        "took_s": took_s,
    }


def with_changes(numbers: dict, changes: list) -> dict:
    """Return a copy of the numbers with the largest sets of the changes; what was given instead of one moves along in its place."""
    movements = {**mapping("numbers_not_a_mapping", mapping("numbers_not_a_mapping", numbers).get("movements"))}
    for change in changes:
        given = {**mapping("numbers_not_a_mapping", movements.get(change["movement"]))}
        if given.get("long_efforts") is not None or given.get("steady_s") is not None:
            given.update(lasting_changed(given, change["factor"]))
        elif given.get("max_unbroken") is not None or given.get("one_rep_max_kg") is None:
            given["max_unbroken"] = change["after"]
        else:
            given["one_rep_max_kg"] = number("one_rep_max_out_of_range", given.get("one_rep_max_kg"), 1, 600) * math.pow(change["factor"], ONE_REP_MAX_SHARE)
        movements[change["movement"]] = given
    return {**mapping("numbers_not_a_mapping", numbers), "movements": movements}


def lasting_changed(given: dict, factor: float) -> dict:
    """Return the long efforts, or else the time one could go on, of somebody `factor` times as able."""
    if given.get("long_efforts") is None:
        return {"steady_s": number("steady_out_of_range", given.get("steady_s"), 1, 4 * 3600) * factor}
    efforts = []
    for effort in listing("effort_out_of_range", given.get("long_efforts")):
        pair = listing("effort_out_of_range", effort)
        if len(pair) < 2:
            raise EngineError("effort_out_of_range", len(pair))
        efforts.append([number("effort_out_of_range", pair[0], 1, 100000) * factor, number("effort_out_of_range", pair[1], 10, 20000)])
    return {"long_efforts": efforts}
