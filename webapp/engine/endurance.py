"""Efforts that last: work over time lies on a straight line, for watts and for the repetitions or metres of one movement alike.

Its slope is the rate that can be kept up (critical power, critical rate), what it starts from a store spent above it. For a movement done
longer than a minute or two in one go two all-out efforts say far more than a largest set: of a set of 50 in 75 s the reserve alone makes one
every 3.6 s for good, of 50 in 75 s and 100 in 180 s together the line makes one every 2.1 s.
"""

from .checks import listing, number
from .errors import EngineError
from .parameters import LONGEST_SET_UNITS, MIXED_PACE


def work_line(times: list[float], works: list[float]) -> list[float]:
    """Return slope and start of the least-squares line of work over time.

    Raises
    ------
    EngineError : fewer than two times, or a line that gives no positive slope and start.
    """
    count = len(times)
    if count < 2 or max(times) - min(times) < 1:
        raise EngineError("efforts_too_alike", count)
    mean_s = sum(times) / count
    mean_work = sum(works) / count
    above = sum([(times[index] - mean_s) * (works[index] - mean_work) for index in range(count)])
    below = sum([(seconds - mean_s) * (seconds - mean_s) for seconds in times])
    slope = above / below
    start = mean_work - slope * mean_s
    if slope <= 0 or start <= 0:
        raise EngineError("efforts_contradict", count)
    return [slope, start]


def line_of_efforts(given: dict) -> dict | None:
    """Return rate [units/s] and store [units] from a movement's `long_efforts`, pairs of units and seconds; None for fewer than two."""
    efforts = listing("effort_out_of_range", given.get("long_efforts"))
    if len(efforts) < 2:
        return None
    pairs = [listing("effort_out_of_range", effort) for effort in efforts]
    if min([len(pair) for pair in pairs]) < 2:
        raise EngineError("effort_out_of_range", len(efforts))
    works = [number("effort_out_of_range", pair[0], 1, 100000) for pair in pairs]
    times = [number("effort_out_of_range", pair[1], 10, 20000) for pair in pairs]
    line = work_line(times, works)
    return {"rate": line[0], "store": line[1]}


def largest_at(line: dict, seconds_per_unit: float) -> float:
    """Return how many units go in one go at a pace, before the store is spent; LONGEST_SET_UNITS at a pace that can be kept up. [units]"""
    short = 1 - seconds_per_unit * line["rate"]
    return min(LONGEST_SET_UNITS, line["store"] / short) if short > 0 else LONGEST_SET_UNITS


def pace_for(line: dict, units: float, usual_s: float) -> float:
    """Return the seconds per unit to plan for so many units in all: an even pace along the line, slowed for what surrounds it; or the usual.

    Work that the usual pace gets through in one go is left at that pace.
    """
    if units <= largest_at(line, usual_s):
        return usual_s
    return max(usual_s, MIXED_PACE * (units - line["store"]) / line["rate"] / units)
