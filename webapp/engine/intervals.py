"""Work to be done in every interval: does it fit, with what margin, and which interval is the first to break.

The time left in an interval is rest up to the next, a stint of its own, so that all the rest of the engine sees one course.
"""

import math

from .checks import number, whole_number
from .choose import best_layout, likely_of
from .evenly import FEW_PARTS, best_round, climbs, even_breakups, repeated
from .layout import as_given, factors_for, lay_out
from .parameters import CAUTION
from .prepare import Case, stints_of
from .report import report
from .score import BAND, counted, full_count
from .stints import rest_stint
from .whole import LONGEST_S, Start, at_rest, break_up_all, live_through, state_before

LEAST_REST_SHARE = 0.15  # of an interval left over below which it counts as tight; chosen


def plan_intervals(case: Case) -> dict:
    """Return the plan of blocks done in every interval.

    Returns
    -------
    dict : as every plan; besides, intervals: one mapping each with interval (from 1), work_s, margin_s (negative where it does not fit), and
    reasons `interval_tight` or `interval_breaks` with the first such interval and what share of the work would fit.

    Raises
    ------
    EngineError : no interval, or a count outside 1–120.
    """
    interval_s = interval_length(case)
    count = interval_count(case)
    work = stints_of(case, {**case.option, "rounds": count, "rep_scheme": None})
    every = with_rests(work, len(case.option["blocks"]), interval_s)
    case.stints = every
    first_look = lay_out(case.stints, factors_for(case.stints, CAUTION[len(CAUTION) // 2]), case.gain, None, [], at_rest())
    case.stints = every[: reached_interval(case, first_look, interval_s) * (len(case.option["blocks"]) + 1)]
    layout = best_layout(case, None, held_alike)
    intervals = margins(case, layout, interval_s)
    if len(case.stints) < len(every) and not any_breaks(intervals):  # the plan holds longer than that look: where does it break?
        case.stints = every
        case.round = []
        layout = best_layout(case, None, held_alike)
        intervals = margins(case, layout, interval_s)
    case.cap_s = interval_s * max(1, len(intervals))
    made = report(case, layout, {**likely_of(case, layout), "finished": False})
    made["blocks"] = [block for block in made["blocks"] if block["block"] > 0 and block["reached"] and block["round"] <= len(intervals)]
    made["intervals"] = intervals
    if any_breaks(intervals) and len(made["blocks"]) > 0:  # what would come after is neither planned nor shown
        over_s = made["blocks"][len(made["blocks"]) - 1]["end_s"]
        made["reserve_curve"] = [point for point in made["reserve_curve"] if point["t_s"] <= over_s + 1e-6]
    made["reasons"] = interval_reasons(case, every, layout["whole"], intervals) + made["reasons"]
    band = sorted([count_before_break(case, result, interval_s) for result in layout["felt"]])
    edge = int(math.floor(len(band) * BAND))
    likely = made["score"]["likely"]
    low = min(likely, band[edge])
    in_all = count * full_count(case.stints[: len(case.option["blocks"])], case.workout)
    made["score"].update({"count_in_all": in_all, "finish_chance": None, "high_s": None})
    made["score"].update({"finishes": len(intervals) == count and not any_breaks(intervals), "low": low, "high": max(likely, band[len(band) - 1 - edge])})
    return made


def held_alike(case: Case, layout: dict, cap_s: float | None) -> dict:
    """Return the layout, or one with every interval broken up alike where that fits more intervals: rest within an interval costs nothing, and small
    sets from the first on may hold where the quickest way through each does not."""
    blocks = len(case.option["blocks"]) + 1
    if len(layout["whole"]) < 2 * blocks or climbs(case.option):
        return layout
    if on_time(case, case.stints, layout["whole"], layout["factors"]) * blocks >= len(layout["whole"]):
        return layout
    if len(case.round) == 0:
        case.round = alike_round(case, layout["whole"][:blocks], layout["factors"])
    alike = repeated(case.round, len(case.stints))
    if fitting(case, alike, layout["factors"]) <= fitting(case, layout["whole"], layout["factors"]):
        return layout
    whole = as_far_as_it_holds(case, alike, layout["factors"])
    return {**layout, "stints": case.stints, "breakups": whole, "whole": whole}


def as_far_as_it_holds(case: Case, alike: list, factors: list[float]) -> list:
    """Return the break-ups alike in the intervals that fit as given, and the rest planned as it comes."""
    holds = on_time(case, case.stints, alike, [1.0] * len(factors))
    upto = holds * (len(case.option["blocks"]) + 1)
    if upto >= len(alike):
        return alike
    fatigue = state_before(upto, case.stints, alike, factors, case.gain, at_rest())
    after = Start(fatigue, holds * interval_length(case), False)
    coming = case.stints[upto:]
    return alike[:upto] + break_up_all(coming, factors[upto:], case.gain, [], after, [None] * len(coming))


def alike_round(case: Case, start: list, factors: list[float]) -> list:
    """Return an interval's break-ups in even sets with which most intervals fit, or as they are."""

    def fit(one: list) -> float:
        return fitting(case, repeated(one, len(case.stints)), factors)

    return best_round(case.stints, start, fit(start), lambda one: fit(one))


def fitting(case: Case, breakups: list, factors: list[float]) -> float:
    """Return a measure of how many intervals fit: for somebody with these shares of the numbers, then as given."""
    return on_time(case, case.stints, breakups, factors) + on_time(case, case.stints, breakups, [1.0] * len(factors)) / 1000


def on_time(case: Case, stints: list, breakups: list, factors: list[float]) -> int:
    """Return in how many intervals from the first on everything goes and is done in time, for somebody with these shares of the numbers."""
    ones = [1.0] * len(stints)
    went = live_through(stints, breakups, factors, ones, case.gain, LONGEST_S, at_rest())
    fit = 0
    for index in range(len(went["ends_s"])):
        stint = stints[index]
        if went["fails"][index] > 0 or stint["block"] > 0 and went["ends_s"][index] > stint["round"] * interval_length(case):
            return fit
        if stint["block"] == 0:
            fit = fit + 1
    return fit


def any_breaks(intervals: list) -> bool:
    """Return whether the work of an interval runs over its end."""
    return len([1 for one in intervals if one["margin_s"] < 0]) > 0


def interval_length(case: Case) -> float:
    """Return how long an interval lasts. [s]"""
    return number("interval_out_of_range", case.workout.get("interval_s"), 10, 3600)


def interval_count(case: Case) -> int:
    """Return how many intervals there are."""
    return whole_number("interval_out_of_range", case.workout.get("interval_count"), 1, 120)


def count_before_break(case: Case, result: dict, interval_s: float) -> int:
    """Return what somebody counts up to the end of the first interval their work runs over."""
    done = []
    for index in range(len(result["ends_s"])):
        stint = case.stints[index]
        if stint["block"] > 0 and result["ends_s"][index] > stint["round"] * interval_s:
            break
        done.append(stint["steps"])
    return counted(case.stints, done, case.workout)


def reached_interval(case: Case, layout: dict, interval_s: float) -> int:
    """Return the first interval that breaks in a layout, one more to see it break in another, or the last."""
    intervals = margins(case, layout, interval_s)
    for one in intervals:
        if one["margin_s"] < 0:
            return min(len(intervals), one["interval"] + 1)
    return max(1, len(intervals))


def with_rests(work: list, blocks: int, interval_s: float) -> list:
    """Return the stints with a rest up to the end of each interval after its blocks; such a rest is block 0."""
    stints = []
    for index, stint in enumerate(work):
        first = index - blocks * (index // blocks) == 0
        stints.append({**stint, "change_s": 0.0 if first else stint["change_s"], "rest_follows": True})
        if index - blocks * (index // blocks) == blocks - 1:
            rest = {"block": 0, "movement": "rest", "amount": interval_s, "unit": "s", "round": stint["round"]}
            stints.append({**rest, **rest_stint(interval_s), "until_s": stint["round"] * interval_s})
    return stints


def margins(case: Case, layout: dict, interval_s: float) -> list:
    """Return how long the work of each interval takes as given, and what is left of the interval, up to the first that breaks. [s]"""
    went = as_given(case.stints, layout["whole"], case.gain, LONGEST_S, at_rest())
    made = []
    begun = 0.0
    for index in range(len(went["ends_s"])):
        if case.stints[index]["block"] == 0:
            worked_s = (went["ends_s"][index - 1] if index > 0 else 0.0) - begun
            left_s = interval_s * (len(made) + 1) - begun - worked_s
            made.append({"interval": len(made) + 1, "work_s": worked_s, "margin_s": left_s})
            if left_s < 0:
                return made
            begun = went["ends_s"][index]
    return made


def reps_each(case: Case) -> int:
    """Return the repetitions of every interval where they are all its work, 0 elsewhere."""
    block = case.option["blocks"][0]
    alone = len(case.option["blocks"]) == 1 and block["unit"] == "reps" and block.get("step") is None
    return int(block["amount"]) if alone else 0


def to_keep(case: Case, every: list, done: list, share: float) -> dict:
    """Return what to keep of the work from the interval that breaks: as many repetitions as fit it and all after it in even sets once the break-ups
    `done` of those before are behind one, or a share where there are several things to do."""
    reps = reps_each(case)
    if reps == 0:
        return {"code": "keep_share", "share_fraction": share}
    low = 1
    high = reps - 1
    while low < high:
        middle = (low + high + 1) // 2
        if fits_from_there(case, every, done, middle):
            low = middle
        else:
            high = middle - 1
    return {"code": "keep_reps", "count": low, "all": reps}


def fits_from_there(case: Case, every: list, done: list, reps: int) -> bool:
    """Would so many repetitions fit every further interval in even sets, as given, after the break-ups of those before?"""
    coming = [{**stint, "steps": reps} if stint["block"] > 0 else stint for stint in every[len(done) :]]
    stints = every[: len(done)] + coming
    ones = [1.0] * len(stints)
    pause = {"sets": [], "rests_s": [], "lead_s": 0.0, "plan": []}
    for parts in range(1, FEW_PARTS + 1):
        for breakup in even_breakups(coming[0], parts):
            if 2 * on_time(case, stints, done + repeated([breakup, pause], len(coming)), ones) == len(stints):
                return True
    return False


def interval_reasons(case: Case, every: list, breakups: list, intervals: list) -> list:
    """Return what the margins say: the first interval that breaks and what to do then, or is tight, or how much rest there is."""
    interval_s = interval_length(case)
    if len(intervals) == 0:  # the very first block cannot be done
        return []
    for one in intervals:
        if one["margin_s"] < 0:
            share = max(0.0, interval_s / (interval_s - one["margin_s"]))
            done = breakups[: (one["interval"] - 1) * (len(case.option["blocks"]) + 1)]
            keep = to_keep(case, every, done, share)
            return [{"code": "interval_breaks", "interval": one["interval"], "over_s": -one["margin_s"], "keep_fraction": share, "keep": keep}]
    least = intervals[0]
    for one in intervals:
        if one["margin_s"] < least["margin_s"]:
            least = one
    code = "interval_tight" if least["margin_s"] < LEAST_REST_SHARE * interval_s else "interval_fits"
    return [{"code": code, "interval": least["interval"], "margin_s": least["margin_s"], "work_s": least["work_s"]}]
