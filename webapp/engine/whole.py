"""A whole workout: every stint broken up in turn, and every stint run through in turn.

A break-up is a mapping: `sets` in steps, `rests_s` one fewer, `lead_s` the wait before the first set beyond the change-over, and the
flat `plan` in pieces it came from (empty for work done in one go).
"""

import math

from .breath import rest
from .handover import hand_over, handed_on
from .one_stint import BUDGET_PER_STINT, Later, break_up_stint
from .parameters import BREATH_BREAK_S, SLOW_PRICE_S
from .reserve import PAST_ONE, Fatigue, fresh, recover, twin
from .search import LEAST_BUDGET
from .segments import ALL_SLOTS, SLOTS, Segment
from .simulate import NO_STEP, Course, run_sets, run_through
from .stint_segment import able_factor, ceiling_of, segment_of
from .tiers import plan_sets

BUDGET_IN_ALL = 2400  # evaluations for one layout, shared out evenly among its stints; chosen
NEVER_FAILS = 99.0  # ceiling of work that ends by breath or by a miss, not by depletion
LONGEST_S = 4 * 3600.0  # nobody's workout is followed further than this


class Start:
    """Where a run begins: the fatigue, the clock [s], and whether the first stint is come to by a change-over."""

    def __init__(self, fatigue: Fatigue, clock_s: float, changes: bool):
        self.fatigue = fatigue
        self.clock_s = clock_s
        self.changes = changes


def at_rest() -> Start:
    """Return the start of a workout."""
    return Start(fresh(len(SLOTS)), 0.0, False)


def still_to_come(stints: list, index: int, kinds: list) -> float:
    """Return the work of these kinds after this stint that taxes its primary group, in its own steps; light shares are left out."""
    stint = stints[index]
    if stint["kind"] == "rest":
        return 0.0
    slot = stint["slots"][0]
    total = 0.0
    for later in stints[index + 1 :]:
        if later["kind"] == "gate":
            break
        if later["kind"] in kinds and slot in later["slots"]:
            cost = later["costs"][later["slots"].index(slot)]
            if cost >= 0.5 * later["costs"][0]:
                total = total + later["steps"] * cost
    return total / stint["costs"][0]


def later_of(stints: list, index: int, price_s: float | None, rough: bool) -> Later:
    """Return what is still to come of a stint's group, and the price of the slow fatigue it leaves there: as given, the usual one for None. [s]

    The usual price grows with the work to come up to one largest set of it. It is a first guess: `worth` looks what fatigue costs in truth.
    """
    budget = min(BUDGET_PER_STINT, max(LEAST_BUDGET, BUDGET_IN_ALL // len(stints)))
    steps = still_to_come(stints, index, ["local"])
    if stints[index]["rest_follows"]:
        return Later(steps, 0.0, budget, rough)
    if price_s is not None:
        return Later(steps, price_s, budget, rough)
    taxing = still_to_come(stints, index, ["local", "paced"])
    usual_s = SLOW_PRICE_S * min(1.0, taxing / stints[index]["max_steps"])
    return Later(steps, usual_s * handed_on(stints, index), budget, rough)


def in_one_go(stint: dict) -> dict:
    """Return the break-up of work that is not planned in sets: all of it, or even parts where breath needs them."""
    sets = []
    left = stint["steps"]
    for part in range(stint["parts"]):
        count = min(left, math.ceil(left / (stint["parts"] - part)))
        if count > 0:
            sets.append(count)
            left = left - count
    return {"sets": sets, "rests_s": [BREATH_BREAK_S] * max(0, len(sets) - 1), "lead_s": 0.0, "plan": []}


def empties(fatigue: Fatigue, stint: dict, breakup: dict, factor: float, gain: float) -> bool:
    """Would work that is to end by breath empty a muscle group on the way?"""
    segment = segment_of(stint, factor, 1.0)
    return run_sets(twin(fatigue), segment, breakup["sets"], breakup["rests_s"], gain, PAST_ONE).failed_at != NO_STEP


def break_up_all(stints: list, factors: list[float], gain: float, hints: list, start: Start, prices: list) -> list:
    """Return the break-up of every stint in turn, up to a gate.

    Parameters
    ----------
    factors : capacity to plan for, one per stint. [share of what was given]
    hints : break-ups found for the same stints with other factors, or an empty list; `rough` ones are only given other rests, `kept` ones stay.
    prices : what slow fatigue left by each stint is taken to cost the later ones, None for the usual. [s for all of a group's]

    Returns
    -------
    list : break-ups, each with `price`, and `end_s`, when its stint ends for somebody of that capacity [s].
    """
    fatigue = twin(start.fatigue)
    clock = start.clock_s
    found = []
    for index, stint in enumerate(stints):
        clock = clock + pass_change_over(fatigue, stint, index > 0 or start.changes)
        breakup = in_one_go(stint)
        later = later_of(stints, index, prices[index], index < len(hints) and hints[index].get("rough", False))
        if index < len(hints) and hints[index].get("kept", False):
            breakup = hints[index]
        elif stint["kind"] == "local" or stint["kind"] == "paced" and empties(fatigue, stint, breakup, factors[index], gain):
            breakup = break_up_stint(fatigue, stint, factors[index], gain, later, hints_for(stints, found, hints, index))
        if stint["kind"] != "gate":
            segment = segment_of(stint, able_factor(stint, factors[index]), 1.0)
            clock = clock + do_stint(fatigue, stint, breakup, segment, gain, clock).seconds
        found.append({**breakup, "price": later.price, "end_s": clock, "kept": False})
        if stint["kind"] == "gate":
            break
    return found


def state_before(last: int, stints: list, breakups: list, factors: list[float], gain: float, start: Start) -> Fatigue:
    """Return the fatigue before the stint `last`, its change-over passed, of somebody with these shares of the numbers."""
    fatigue = twin(start.fatigue)
    clock = start.clock_s
    for index in range(last + 1):
        clock = clock + pass_change_over(fatigue, stints[index], index > 0 or start.changes)
        if index < last:
            segment = segment_of(stints[index], able_factor(stints[index], factors[index]), 1.0)
            clock = clock + do_stint(fatigue, stints[index], breakups[index], segment, gain, clock).seconds
    return fatigue


def hints_for(stints: list, found: list, hints: list, index: int) -> list:
    """Return flat plans to start a stint's search from: its own with other factors, else the same block's in the round before."""
    if index < len(hints) and len(hints[index]["plan"]) > 0:
        plan = hints[index]["plan"]
        return [plan, [sum(plan_sets(plan))]] if hints[index].get("unbroken", False) else [plan]
    return like_before(stints, found, index)


def like_before(stints: list, found: list, index: int) -> list:
    """Return the plan found for the same block and amount in the round before, as a list of hints."""
    for earlier in range(index - 1, -1, -1):
        same = stints[earlier]["block"] == stints[index]["block"] and stints[earlier]["steps"] == stints[index]["steps"]
        if same and len(found[earlier]["plan"]) > 0:
            return [found[earlier]["plan"]]
    return []


def pass_change_over(fatigue: Fatigue, stint: dict, changes: bool) -> float:
    """Let the change-over before the stint pass, in place, where there is one, and return it. [s]

    Here, and nowhere else, the fatigue of the movement before becomes that of the next.
    """
    seconds = stint["change_s"] if changes else 0.0
    if changes:
        hand_over(fatigue, stint)
    rest(fatigue, ALL_SLOTS, seconds)
    return seconds


def rest_length(stint: dict, clock: float) -> float:
    """Return how long a stint of nothing but time lasts when begun at `clock` [s]: its amount, or up to the end of its interval. [s]"""
    return stint["amount"] if stint["until_s"] is None else max(0.0, stint["until_s"] - clock)


def do_stint(fatigue: Fatigue, stint: dict, breakup: dict, segment: Segment, gain: float, clock: float) -> Course:
    """Do a stint as planned, in place, all slots included; a step that cannot be done is the caller's to find in the course."""
    if stint["kind"] == "rest":
        course = Course()
        course.seconds = rest_length(stint, clock)
        rest(fatigue, ALL_SLOTS, course.seconds)
        return course
    rest(fatigue, ALL_SLOTS, breakup["lead_s"])
    ceiling = NEVER_FAILS if stint["kind"] != "local" else PAST_ONE
    course = run_sets(fatigue, segment, breakup["sets"], breakup["rests_s"], gain, ceiling)
    recover(fatigue, segment.elsewhere, course.seconds)
    return led(course, breakup["lead_s"])


def keeps_back(fatigue: Fatigue, stint: dict, breakup: dict, gain: float) -> bool:
    """Would a stint begun in this state, all as the numbers say, leave what its movement keeps back? `do_stint` fails nobody before the group is empty."""
    rested = twin(fatigue)
    segment = segment_of(stint, 1.0, 1.0)
    rest(rested, segment.slots, breakup["lead_s"])
    return run_sets(rested, segment, breakup["sets"], breakup["rests_s"], gain, ceiling_of(stint, 1.0)).failed_at == NO_STEP


def led(course: Course, lead_s: float) -> Course:
    """Return the course on a clock that began `lead_s` [s] earlier."""
    course.seconds = course.seconds + lead_s
    course.starts_s = [moment_s + lead_s for moment_s in course.starts_s]
    course.ends_s = [moment_s + lead_s for moment_s in course.ends_s]
    return course


def live_through(
    stints: list, breakups: list, factors: list[float], paces: list[float], gain: float, until_s: float, start: Start
) -> dict:
    """Return how the plan goes for somebody whose capacity and pace are not what was given; who fails carries on.

    Returns
    -------
    dict : seconds to the end of the last stint, or `until_s` [s]; finished : bool; done : steps done by then, one per stint begun;
    fails : failed steps, one per stint begun; ends_s : end of each stint finished [s]; air : share of W′ spent after each begun.
    """
    fatigue = twin(start.fatigue)
    clock = start.clock_s
    done = []
    fails = []
    ends_s = []
    air = []
    for index in range(len(breakups)):
        stint = stints[index]
        clock = clock + pass_change_over(fatigue, stint, index > 0 or start.changes)
        if clock >= until_s or stint["kind"] == "gate":
            return {"seconds": min(clock, until_s), "finished": False, "done": done, "fails": fails, "ends_s": ends_s, "air": air}
        course = live_stint(fatigue, stint, breakups[index], factors[index], paces[index], gain, clock, until_s)
        fails.append(course.fails)
        air.append(fatigue.air_fast + fatigue.air_slow)
        begun = clock
        clock = clock + course.seconds
        if clock > until_s:
            done.append(steps_by(course, stint, breakups[index], until_s - begun))
            return {"seconds": until_s, "finished": False, "done": done, "fails": fails, "ends_s": ends_s, "air": air}
        done.append(stint["steps"])
        ends_s.append(clock)
    return {"seconds": clock, "finished": len(breakups) == len(stints), "done": done, "fails": fails, "ends_s": ends_s, "air": air}


def live_stint(
    fatigue: Fatigue, stint: dict, breakup: dict, factor: float, pace: float, gain: float, clock: float, until_s: float
) -> Course:
    """Do a stint begun at `clock` the way a person does, in place, all slots included, up to about `until_s` of the same clock. [s]"""
    segment = segment_of(stint, factor, pace)
    if stint["kind"] != "local":
        return do_stint(fatigue, stint, breakup, segment, gain, clock)
    rest(fatigue, ALL_SLOTS, breakup["lead_s"])
    course = run_through(fatigue, segment, breakup["sets"], breakup["rests_s"], gain, until_s - clock)
    recover(fatigue, segment.elsewhere, course.seconds)
    return led(course, breakup["lead_s"])


def steps_by(course: Course, stint: dict, breakup: dict, moment_s: float) -> int:
    """Return the steps done by `moment_s` [s] of the stint's own clock, evenly spread within a set; the misses of a skill, which come last in its course,
    are spread over all of it."""
    done = 0.0
    if stint["kind"] == "skill" and course.seconds > 0:
        moment_s = moment_s * course.ends_s[len(course.ends_s) - 1] / course.seconds
    for index in range(len(course.starts_s)):
        start = course.starts_s[index]
        end = course.ends_s[index] if index < len(course.ends_s) else moment_s
        if moment_s >= end:
            done = done + breakup["sets"][index]
        elif moment_s > start:
            done = done + breakup["sets"][index] * (moment_s - start) / (end - start)
    return int(math.floor(done + 1e-9))


