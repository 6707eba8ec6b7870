"""who_fails(): of people who could be this athlete, how many fail in a plan of the athlete's own."""

from .checks import choice, listing, mapping
from .choose import TRIED_ON
from .draws import draw_people, outcomes, tried_on, weakest_first
from .intervals import interval_length
from .judge import own_breakups, own_stints
from .judge_intervals import own_intervals, own_margins, with_gaps
from .prepare import Case
from .trace import trace
from .whole import at_rest

MAY_FAIL = ["for_time", "amrap", "intervals"]


def who_fails(workout: dict, numbers: dict, settings: dict, own_blocks: list) -> dict:
    """Return how many of those who could be this athlete, the same people that a plan is made with, fail a step of the athlete's own plan.

    Parameters
    ----------
    workout, numbers, settings, own_blocks : as in `judge`, of one part of a workout in parts.

    Returns
    -------
    dict : people, how many were drawn; fail, how many of them fail somewhere before the cap, of intervals before the end of the one that breaks
    if all goes as given.

    Raises
    ------
    EngineError : as `judge`; the heaviest lift within a time (`shape_unknown`), whose attempts have chances of their own.
    """
    given = listing("own_blocks_not_a_list", own_blocks)
    shape = choice("shape_unknown", mapping("workout_not_a_mapping", workout).get("shape"), MAY_FAIL)
    case = Case(workout, numbers, settings)
    if shape == "intervals":
        stints = own_intervals(case, given)
        breakups = own_breakups(case, stints, with_gaps(stints, given))
        case.cap_s = own_margins(stints, trace(stints, breakups, case.gain, at_rest()), interval_length(case))["end_s"]
    else:
        stints = own_stints(case, given)
        breakups = own_breakups(case, stints, given)
    people = weakest_first(draw_people(stints, case.wanted["seed"], case.gain)[:TRIED_ON])
    return tried_on(outcomes(stints, breakups, people, case.cap_s, len(people)))
