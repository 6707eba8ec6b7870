"""One movement, fresh: what goes in several sets, how best to break up, and what one's own break-up does."""

import math

from .checks import mapping, number
from .errors import EngineError
from .parameters import ENTRY_REPS, HELD_BACK, LEFT_AT_FAILURE, SET_UP_S, SLOW_GAIN
from .quick import Alone
from .reserve import PAST_ONE, Effort, cost_per_rep, cost_reaching, fresh, recover, set_to_failure, slow_gain
from .search import Task, find
from .segments import Segment
from .simulate import NO_STEP, run_sets
from .stints import half_steps
from .tiers import plan_rests, plan_sets
from .units import whole
from .walk import Walk

SEARCH_BUDGET = 3000  # evaluations; chosen, twice what the largest case of the benchmark takes


def gain_of(recovery: dict | None, seconds_per_rep: float) -> float:
    """Return the g of `{"repeat_test": [largest set, largest again after 60 s]}`, the population's for None."""
    test = mapping("repeat_test_bad", recovery).get("repeat_test")
    if test is None:
        return SLOW_GAIN
    if not isinstance(test, list) or len(test) != 2:
        raise EngineError("repeat_test_bad", test)
    return slow_gain([number("repeat_test_bad", test[0], 1, 1000), number("repeat_test_bad", test[1], 0, 1000)], seconds_per_rep)


def reps_over_sets(
    max_reps: float, seconds_per_rep: float, rest_s: float, sets: int, *, cap: float | None = None, recovery: dict | None = None
) -> list[float]:
    """Return the mean repetitions of successive sets to failure, or to `cap`.

    Parameters
    ----------
    max_reps : repetitions of the first set without a cap, continuous. [1–1000]
    seconds_per_rep : duration of a repetition when fresh. [0.1–60 s]
    rest_s : from the last repetition of a set to the first of the next. [0–3600 s]
    sets : how many. [1–50]
    cap : most repetitions in a set, None for none. [1–1000]
    recovery : None for the population, or {"repeat_test": [largest set, largest again after 60 s]}.

    Returns
    -------
    list : repetitions, one value per set, continuous as a mean over people is.

    Raises
    ------
    EngineError : an argument outside its range.

    Notes
    -----
    Root mean square error over sets 2 and 3 of seven published conditions: 0.130 of the first set at 3 s a repetition, 0.106 at 2 s
    (`tests/engine/test_published_sets.py`). Starting a set costs nothing here, as in those tables.
    """
    number("max_reps_out_of_range", max_reps, 1, 1000)
    number("seconds_out_of_range", seconds_per_rep, 0.1, 60)
    number("rest_out_of_range", rest_s, 0, 3600)
    number("sets_out_of_range", sets, 1, 50)
    gain = gain_of(recovery, seconds_per_rep)
    effort = Effort([0], [cost_reaching(max_reps + LEFT_AT_FAILURE, seconds_per_rep, 0.0, gain)], seconds_per_rep, 0.0)
    most = math.inf if cap is None else number("cap_out_of_range", cap, 1, 1000)
    fatigue = fresh(1)
    done = []
    for _ in range(whole(sets)):
        done.append(set_to_failure(fatigue, effort, most, gain))
        recover(fatigue, [0], rest_s)
    return done


def one_movement(max_reps: float, reps: int, seconds_per_rep: float, set_up_s: float, entry_reps: float, gain: float) -> Segment:
    """Return the segment of one movement done fresh, its arguments checked."""
    number("max_reps_out_of_range", max_reps, 1, 1000)
    number("reps_out_of_range", reps, 1, 1000)
    number("seconds_out_of_range", seconds_per_rep, 0.1, 60)
    number("set_up_out_of_range", set_up_s, 0, 120)
    number("entry_out_of_range", entry_reps, 0, 3)
    cost = cost_per_rep(max_reps, seconds_per_rep, entry_reps, gain)
    return Segment(Effort([0], [cost], seconds_per_rep, entry_reps), None, [0], whole(reps), set_up_s)


def break_up(
    max_reps: float,
    reps: int,
    seconds_per_rep: float,
    *,
    set_up_s: float = SET_UP_S,
    entry_reps: float = ENTRY_REPS,
    held_back: float = HELD_BACK,
    recovery: dict | None = None,
) -> dict:
    """Return the quickest break-up of one movement, fresh, that is easy to remember and keeps something back.

    Parameters
    ----------
    max_reps : largest unbroken set. [1–1000]
    reps : repetitions to do. [1–1000]
    seconds_per_rep : duration of a repetition when fresh. [0.1–60 s]
    set_up_s : least rest between sets. [0–120 s]
    entry_reps : cost of starting a set. [0–3 repetitions]
    held_back : share of the reserve never spent. [0–0.6]
    recovery : None for the population, or {"repeat_test": [largest set, largest again after 60 s]}.

    Returns
    -------
    dict : sets, rests_s (one fewer) [s], time_s [s], lowest_reserve [0–1].

    Raises
    ------
    EngineError : an argument outside its range, or `nothing_fits` where not even singles keep that much back.
    """
    number("held_back_out_of_range", held_back, 0, 0.6)
    gain = gain_of(recovery, number("seconds_out_of_range", seconds_per_rep, 0.1, 60))
    segment = one_movement(max_reps, reps, seconds_per_rep, set_up_s, entry_reps, gain)
    below_half = half_steps(max_reps)
    walk = Walk(Alone(fresh(1), segment, gain, PAST_ONE - held_back, 0.0), segment.steps, 1)

    def largest(left: int) -> int:
        return below_half if left > max_reps else left

    plan = find(Task(segment.steps, set_up_s, largest, lambda plan: walk.bill(plan), SEARCH_BUDGET), [])
    if len(plan) == 0:
        raise EngineError("nothing_fits", held_back)
    course = run_sets(fresh(1), segment, plan_sets(plan), plan_rests(plan), gain)
    return {
        "sets": plan_sets(plan),
        "rests_s": plan_rests(plan),
        "time_s": course.seconds,
        "lowest_reserve": max(0.0, 1 - course.deepest),
    }


def judge_break_up(
    max_reps: float,
    sets: list[int],
    rests_s: list[float],
    seconds_per_rep: float,
    *,
    set_up_s: float = SET_UP_S,
    entry_reps: float = ENTRY_REPS,
    recovery: dict | None = None,
) -> dict:
    """Return what somebody's own break-up of one movement, fresh, does.

    Parameters
    ----------
    sets : repetitions per set, 1–200 sets of 1–1000.
    rests_s : from the last repetition of a set to the first of the next, one fewer than sets, none under `set_up_s`. [s]
    max_reps, seconds_per_rep, set_up_s, entry_reps, recovery : as in `break_up`.

    Returns
    -------
    dict : time_s [s], None when it fails; lowest_reserve [0–1]; fails_at_rep, counted from 1, None when it holds.

    Raises
    ------
    EngineError : an argument outside its range, or rests that do not fit the sets.
    """
    if not isinstance(sets, list) or len(sets) < 1 or len(sets) > 200:
        raise EngineError("sets_out_of_range", 0)
    if not isinstance(rests_s, list) or len(rests_s) != len(sets) - 1:
        raise EngineError("rests_do_not_fit", 0)
    for reps in sets:
        number("reps_out_of_range", reps, 1, 1000)
    number("set_up_out_of_range", set_up_s, 0, 120)
    for rest_s in rests_s:
        number("rest_out_of_range", rest_s, set_up_s, 3600)
    gain = gain_of(recovery, number("seconds_out_of_range", seconds_per_rep, 0.1, 60))
    segment = one_movement(max_reps, 1, seconds_per_rep, set_up_s, entry_reps, gain)
    course = run_sets(fresh(1), segment, sets, rests_s, gain)
    held = course.failed_at == NO_STEP
    return {
        "time_s": course.seconds if held else None,
        "lowest_reserve": max(0.0, 1 - course.deepest) if held else 0.0,
        "fails_at_rep": None if held else course.failed_at,
    }
