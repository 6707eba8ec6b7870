"""plan(): a workout, an athlete's numbers and today's settings in, the athlete's plan out.

The order of the work: stints (`stints`), a cadence the lungs can keep (`pacing`), break-ups for a capacity that leaves the chosen risk of
failing (`layout`, `choose`), what happens to people who could be this athlete (`draws`), and the report (`report`).
"""

from .amrap import plan_amrap
from .checks import choice, listing, mapping
from .choose import best_layout, likely_of
from .heaviest import plan_heaviest
from .intervals import plan_intervals
from .prepare import Case, stints_of
from .report import report

SHAPES = ["for_time", "amrap", "intervals", "load"]


def plan(workout: dict, numbers: dict, settings: dict) -> dict:
    """Return the athlete's plan.

    Parameters
    ----------
    workout, numbers, settings : as DEVELOPERS.md, "Shapes", has them. Seconds, metres, kilograms.

    Returns
    -------
    dict : blocks, score, reserve_curve, reasons, warnings, filled, and what a re-plan needs; see DEVELOPERS.md, "Shapes". A workout in parts
    gives {"parts": [plan, ...]}, one for each.

    Raises
    ------
    EngineError : with a code and the offending value, for anything it cannot plan.
    """
    if mapping("workout_not_a_mapping", workout).get("parts") is not None:
        return {"parts": [plan(part_of(workout, part), numbers, settings) for part in listing("parts_not_a_list", workout["parts"])]}
    shape = choice("shape_unknown", mapping("workout_not_a_mapping", workout).get("shape"), SHAPES)
    case = Case(workout, numbers, settings)
    if shape == "amrap":
        return plan_amrap(case)
    if shape == "intervals":
        return plan_intervals(case)
    if shape == "load":
        return plan_heaviest(case)
    return plan_for_time(case)


def part_of(workout: dict, part) -> dict:
    """Return one part of a workout in parts as a workout of its own; what it does not say, the whole says."""
    own = mapping("part_not_a_mapping", part)
    shared = {**workout}
    shared.pop("parts")
    return {**shared, **own, "movements": workout.get("movements") if own.get("movements") is None else own["movements"]}


def plan_for_time(case: Case) -> dict:
    """Return the plan of work done for time, with or without a cap."""
    case.stints = stints_of(case, case.option)
    layout = best_layout(case, case.cap_s, None)
    return report(case, layout, likely_of(case, layout))
