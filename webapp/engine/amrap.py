"""Most rounds in a time: one round plan, held evenly, and all out in the last minute.

Rounds are first planned one after another as for time. Then every round takes the break-up of a later, more tired one where that costs
little: even rounds are what a tired head holds, and what the best scores are made of (Mangine et al. 2021, average round rate against score
R² 0.89–0.99). What the end leaves room for is planned for itself, so it may end on a larger set.
"""

from .checks import number
from .choose import best_layout, likely_of
from .errors import EngineError
from .layout import cut_at_cap
from .parameters import CADENCE_QUICKEST, EVEN_ROUNDS_COST, MOST_ROUNDS
from .prepare import Case, stints_of
from .report import report
from .score import rounds_done
from .stints import MOST_STINTS
from .whole import at_rest, live_through


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
    layout = best_layout(case, time_s, evened)
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
    """Return the layout with every round broken up like one of its later ones, where that costs little; else as it is."""
    blocks = len(case.option["blocks"])
    rounds = (len(layout["breakups"]) - 1) // blocks
    whole = layout["whole"]
    if rounds < 2 or len([1 for block in case.option["blocks"] if block.get("step") is not None]) > 0:
        return layout
    base = progress(case, layout["stints"], layout["breakups"], layout["factors"], time_s)
    for donor in [rounds - 1, rounds // 2]:
        alike = [layout["breakups"][donor * blocks + index - blocks * (index // blocks)] for index in range(len(whole))]
        done = progress(case, case.stints, alike, layout["factors"], time_s)
        if done["fails"] == 0 and done["work_s"] >= base["work_s"] * (1 - EVEN_ROUNDS_COST):
            even = {**layout, "stints": case.stints, "breakups": alike, "whole": alike, "capped": False}
            return cut_at_cap(even, case.gain, time_s, at_rest())
    return layout


def progress(case: Case, stints: list, breakups: list, factors: list[float], time_s: float) -> dict:
    """Return how many steps fail and how much bare work gets done in time by somebody with these shares of the numbers. [s]"""
    ones = [1.0] * len(stints)
    went = live_through(stints, breakups, factors, ones, case.gain, time_s, at_rest())
    work_s = 0.0
    for index, steps in enumerate(went["done"]):
        work_s = work_s + steps * stints[index]["seconds"]
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
