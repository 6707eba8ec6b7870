"""Most rounds in a time: one round plan, held evenly, and all out in the last minute.

Rounds are first planned one after another as for time. Then every round takes the break-up of a later, more tired one where that costs
little: even rounds are what a tired head holds, and what the best scores are made of (Mangine et al. 2021, average round rate against score
R² 0.89–0.99). What the end leaves room for is planned for itself, so it may end on a larger set.
"""

from .checks import number
from .choose import best_layout, likely_of
from .errors import EngineError
from .evenly import climbs, quickest_round, repeated
from .layout import cut_at_cap
from .parameters import CADENCE_QUICKEST, EVEN_ROUNDS_COST, MOST_ROUNDS
from .prepare import Case, stints_of
from .report import report
from .score import rounds_done
from .stints import MOST_STINTS
from .whole import at_rest, live_through

MORE_REST_S = [-10, -5, 0, 3, 6, 10]  # added to those, for somebody more or less able; chosen


def plan_amrap(case: Case) -> dict:
    """Return the plan of as much as possible in `time_s`.

    Raises
    ------
    EngineError : no time, or blocks whose amount is taken from a rep scheme.
    """
    time_s = number("time_out_of_range", case.workout.get("time_s"), 10, 3 * 3600)
    if case.option.get("rep_scheme") is not None:
        raise EngineError("scheme_without_rounds", 0)
    case.cap_s = time_s
    case.stints = stints_of(case, {**case.option, "rounds": rounds_needed(case, time_s)})
    layout = best_layout(case, time_s, None if climbs(case.option) else evened)
    likely = likely_of(case, layout)
    made = report(case, layout, {**likely, "finished": False})
    begun = len(layout["breakups"])
    made["blocks"] = made["blocks"][:begun]
    made["score"] = in_rounds(case, made["score"])
    return made


def rounds_needed(case: Case, time_s: float) -> int:
    """Return more rounds than anybody would do: the bare work of so many fills the time with none of the rests."""
    first = stints_of(case, {**case.option, "rounds": 1})
    most = min(MOST_ROUNDS, MOST_STINTS // len(first))
    bare_s = 0.0
    for index in range(most):
        for place, stint in enumerate(first):
            step = case.option["blocks"][place].get("step")
            amount = max(1, stint["amount"] + (0 if step is None else step * index))
            bare_s = bare_s + amount / stint["step_units"] * stint["seconds"] * CADENCE_QUICKEST + stint["change_s"]
        if bare_s > time_s:
            return index + 1
    return most


def evened(case: Case, layout: dict, time_s: float) -> dict:
    """Return the layout with every round broken up alike, where that costs little; else as it is.

    Every round may be like one of its own, or of even sets with one rest, which are looked for once and then given a little more rest.
    """
    blocks = len(case.option["blocks"])
    rounds = (len(layout["breakups"]) - 1) // blocks
    whole = layout["whole"]
    if rounds < 2:
        return layout
    tried = [whole[donor * blocks : (donor + 1) * blocks] for donor in [rounds - 1, rounds // 2]]
    if len(case.round) == 0:
        case.round = even_round(case, tried[1], layout["factors"], time_s)
    tried.extend([rested_round(case, more_s) for more_s in MORE_REST_S])
    best = progress(case, whole, layout["factors"], time_s)["work_s"] * (1 - EVEN_ROUNDS_COST)
    chosen = layout
    for one in tried:
        done = progress(case, repeated(one, len(whole)), layout["factors"], time_s)
        if done["fails"] == 0 and done["work_s"] >= best:
            best = done["work_s"] + 1e-6
            alike = repeated(one, len(whole))
            chosen = {**layout, "stints": case.stints, "breakups": alike, "whole": alike, "capped": False}
    if chosen["whole"] == whole:
        return layout
    even = cut_at_cap(chosen, case.gain, time_s, at_rest())
    return even if bare_work(even) >= bare_work(layout) * (1 - EVEN_ROUNDS_COST) else layout


def bare_work(layout: dict) -> float:
    """Return how long the steps planned up to the cap take without rests. [s]"""
    return sum([stint["steps"] * stint["seconds"] for stint in layout["stints"][: len(layout["breakups"])]])


def even_round(case: Case, start: list, factors: list[float], time_s: float) -> list:
    """Return a round of even sets with which most gets done in time."""

    def done_in_time(one: list) -> float:
        done = progress(case, repeated(one, len(case.stints)), factors, time_s)
        return done["work_s"] if done["fails"] == 0 else -1.0

    return quickest_round(case.stints, start, lambda one: done_in_time(one))


def rested_round(case: Case, more_s: float) -> list:
    """Return the round of even sets with so much longer rests, none under the movement's least. [s]"""
    least_s = [max(stint["set_up_s"], stint["single_wait_s"]) for stint in case.stints[: len(case.round)]]
    return [{**breakup, "rests_s": [max(least_s[index], rest_s + more_s) for rest_s in breakup["rests_s"]]} for index, breakup in enumerate(case.round)]


def progress(case: Case, breakups: list, factors: list[float], time_s: float) -> dict:
    """Return how many steps fail and how much bare work gets done in time by somebody with these shares of the numbers. [s]"""
    ones = [1.0] * len(case.stints)
    went = live_through(case.stints, breakups, factors, ones, case.gain, time_s, at_rest())
    work_s = 0.0
    for index, steps in enumerate(went["done"]):
        work_s = work_s + steps * case.stints[index]["seconds"]
    return {"fails": sum(went["fails"]), "work_s": work_s}


def in_rounds(case: Case, score: dict) -> dict:
    """Return a score of counts as rounds and what is counted beyond them: likely, low, high each with `_extra`."""
    made = {**score, "kind": "rounds", "finishes": True}
    for name in ["likely", "low", "high"]:
        done = rounds_done(case.stints, len(case.option["blocks"]), score[name], case.workout)
        made[name + "_count"] = score[name]
        made[name] = done[0]
        made[name + "_extra"] = done[1]
    return made
