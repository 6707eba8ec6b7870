"""The course of a plan for the athlete as the numbers say: when each set starts, how deep it goes, every group's reserve."""

from .breath import rest
from .parameters import GROUPS, MISS_RESTART_S
from .reserve import PAST_ONE, Fatigue, recover, twin
from .segments import ALL_SLOTS, SLOTS, any_set
from .stint_segment import segment_of
from .whole import NEVER_FAILS, Start, pass_change_over, rest_length


def reserves(fatigue: Fatigue) -> list[float]:
    """Return the reserve of every group, the worse side's where there are two, never below 0. [0–1, one value per group]"""
    values = []
    for group in GROUPS:
        depths = [fatigue.quick[slot] + fatigue.slow[slot] for slot in ALL_SLOTS if SLOTS[slot] == group]
        values.append(max(0.0, 1 - max(depths)))
    return values


def point(clock: float, fatigue: Fatigue) -> dict:
    """Return one point of the reserve curve: t_s [s], breath (what is left of W′) and one value per group [0–1]."""
    values = reserves(fatigue)
    made = {"t_s": clock, "breath": max(0.0, 1 - fatigue.air_fast - fatigue.air_slow)}
    for index, group in enumerate(GROUPS):
        made[group] = values[index]
    return made


def trace(stints: list, breakups: list, gain: float, start: Start) -> dict:
    """Return the course of a plan up to a gate or the first step that cannot be done.

    Returns
    -------
    dict : stints, one mapping for each begun (see `trace_stint`); curve, points of the reserves at the starts and ends of sets;
    fails : None, or {"stint", "step" in that stint counted from 1, "at_s"}.
    """
    fatigue = twin(start.fatigue)
    clock = start.clock_s
    courses = []
    curve = [point(clock, fatigue)]
    for index in range(len(breakups)):
        stint = stints[index]
        clock = clock + pass_change_over(fatigue, stint, index > 0 or start.changes)
        if stint["kind"] == "gate":
            break
        course = trace_stint(fatigue, stint, breakups[index], gain, clock, curve)
        courses.append(course)
        clock = course["end_s"]
        if course["failed_at"] > 0:
            return {"stints": courses, "curve": curve, "fails": {"stint": index, "step": course["failed_at"], "at_s": clock}}
    return {"stints": courses, "curve": curve, "fails": None}


def trace_stint(fatigue: Fatigue, stint: dict, breakup: dict, gain: float, clock: float, curve: list) -> dict:
    """Do one stint, in place, adding to the curve.

    Returns
    -------
    dict : start_s, end_s, set_starts_s, set_ends_s on the workout's clock [s]; lowest_reserve [0–1]; limiting_group;
    reserve_before, of the primary group at the start [0–1]; failed_at, the step that could not be done, 0 for none.
    """
    start_s = clock
    before = reserves(fatigue)[GROUPS.index(stint["primary"])]
    clock = clock + breakup["lead_s"]
    rest(fatigue, ALL_SLOTS, breakup["lead_s"])
    course = {"start_s": start_s, "set_starts_s": [], "set_ends_s": [], "reserve_before": before, "failed_at": 0}
    deepest = 0.0
    group = stint["primary"]
    segment = segment_of(stint, 1.0, 1.0)
    ceiling = PAST_ONE if stint["kind"] == "local" else NEVER_FAILS
    done = 0
    if stint["kind"] == "rest":
        length_s = rest_length(stint, clock)
        rest(fatigue, ALL_SLOTS, length_s)
        clock = clock + length_s
    for index, steps in enumerate(breakup["sets"]):
        course["set_starts_s"].append(clock)
        curve.append(point(clock, fatigue))
        result = any_set(fatigue, segment, steps, gain, ceiling, done)
        done = done + int(result[0])
        recover(fatigue, segment.elsewhere, result[1])
        clock = clock + result[1]
        curve.append(point(clock, fatigue))
        if result[2] > deepest:
            deepest = result[2]
            group = deepest_group(fatigue)
        course["set_ends_s"].append(clock)
        if result[0] < steps:
            course["failed_at"] = done + 1
            break
        rest_s = breakup["rests_s"][index] if index < len(breakup["rests_s"]) else pause_after(segment.misses, breakup, index)
        rest(fatigue, ALL_SLOTS, rest_s)
        clock = clock + rest_s
    curve.append(point(clock, fatigue))
    course["end_s"] = clock
    course["lowest_reserve"] = max(0.0, 1 - deepest)
    course["limiting_group"] = group
    return course


def pause_after(misses: float, breakup: dict, index: int) -> float:
    """Return the time that misses take at the end of a stint. [s]"""
    return misses * MISS_RESTART_S if index == len(breakup["sets"]) - 1 else 0.0


def deepest_group(fatigue: Fatigue) -> str:
    """Return the group with the least reserve."""
    values = reserves(fatigue)
    least = 0
    for index in range(len(values)):
        if values[index] < values[least] - 1e-9:
            least = index
    return GROUPS[least]
