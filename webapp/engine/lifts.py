"""A lift from the floor: touch-and-go sets held against quick singles (drop, step in, pull again).

A quick single is a set of one: it pays the cost of starting each time and rests in between, at the least the movement's reset time. The bar
falls about as long as it would have been lowered, so a rep is taken to last as long either way (chosen).
"""

from .parameters import SMALL_MAX, TWOS_TO_SINGLES
from .search import Task, find
from .tiers import has_singles


def may_drop(stint: dict) -> bool:
    """Is the stint a lift whose every repetition may be dropped and pulled anew? Up to three in one go singles are planned anyway."""
    return stint.get("reset_s") is not None and stint["piece_steps"] == 1 and stint["step_units"] == 1 and stint["max_steps"] > SMALL_MAX


def or_quick_singles(plan: list, stint: dict, first_look, bill, budget: int) -> list:
    """Return the flat plan, or one of quick singles in its place where that costs less.

    Parameters
    ----------
    first_look, bill : functions of a flat plan to what a search compares [s]: a quick one to search by, and the one that counts.
    Singles must be better by TWOS_TO_SINGLES, as everywhere.
    budget : most evaluations.

    Notes
    -----
    Touch-and-go sets first and singles then is in the space of the usual search.
    """
    if not may_drop(stint) or len(plan) == 1:
        return plan
    if has_singles(plan) and stint["reset_s"] >= stint["set_up_s"]:
        return plan  # the usual search has had all of them before it, and took some
    worth = bill(plan) * (1 - TWOS_TO_SINGLES)
    if stint["steps"] * stint["seconds"] + (stint["steps"] - 1) * stint["reset_s"] >= worth:
        return plan

    def one(left: int) -> int:
        return 1

    singles = find(Task(stint["steps"], stint["reset_s"], one, first_look, budget), [])
    return plan if len(singles) == 0 or bill(singles) >= worth else singles


def singles_in(sets: list[int]) -> int:
    """Return how many sets of one there are before the last set."""
    return len([1 for size in sets[: len(sets) - 1] if size == 1])


def style_of_lift(stint: dict, sets: list[int]) -> str | None:
    """Return how a lift from the floor is done: "touch_and_go", "singles", or "singles_after_sets"; None for other work."""
    if stint["kind"] != "local" or stint.get("reset_s") is None:
        return None
    if len(sets) > 0 and max(sets) == 1:
        return "singles"
    return "singles_after_sets" if 2 * singles_in(sets) > len(sets) else "touch_and_go"


def lift_reasons(stint: dict, breakup: dict) -> list:
    """Return that quick singles are planned, and how often one comes; nothing for touch-and-go sets."""
    style = style_of_lift(stint, breakup["sets"])
    if style is None or style == "touch_and_go" or len(breakup["rests_s"]) == 0 or stint["max_steps"] <= SMALL_MAX:
        return []
    usual_s = breakup["rests_s"][len(breakup["rests_s"]) // 2]
    return [{"code": "quick_singles" if style == "singles" else "quick_singles_after_sets", "every_s": stint["seconds"] + usual_s}]
