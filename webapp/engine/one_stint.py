"""One stint broken up: how long to wait before it, in which sets, and whether a lift goes as quick singles.

The search looks at the primary slot alone, which is quick; where another slot gives out before it, it looks at all of them together.
"""

import math

from .breath import rest
from .lifts import or_quick_singles
from .parameters import SMALL_MAX, TWOS_FROM, TWOS_FROM_SHARE
from .quick import Alone
from .reserve import Fatigue, twin
from .search import LEAST_BUDGET, Task, find
from .segments import Segment, any_set
from .stint_segment import able_factor, ceiling_of, segment_of, steps_of
from .tiers import plan_rests, plan_sets
from .together import Together
from .walk import Walk

LONGEST_LEAD_S = 300
LEAD_STEP_S = 5.0  # s, by which a wait before the first set is lengthened; chosen
TIRED = 0.1  # quick fatigue of the primary slot above which a longer wait is tried at all; chosen: what a wait is good for
MOST_WAITS = 6  # times that a wait is lengthened; chosen
STINT_DESCENTS = 1  # starts that are improved; chosen: more gained nothing in whole workouts, where each stint is searched for several times
STINT_PROMISING = 2  # sizes that more starts are made of; chosen likewise
ROOM_BEYOND_TIME = 0.3  # share of the cost by which work that spends W′, or whose fatigue has a price, may rest longer and yet cost less; chosen
BUDGET_PER_STINT = 1500  # evaluations; chosen: above what the largest case of the benchmark takes


class Later:
    """What is still to come of a stint's primary group: steps of its own kind, and the price of slow fatigue left, for all of it [s].

    `budget` is how many evaluations the search may make; `rough` says that a hint, its rests fitted, is good enough.
    """

    def __init__(self, steps: float, price: float, budget: int, rough: bool = False):
        self.rough = rough
        self.steps = steps
        self.price = price
        self.budget = budget


class Begun:
    """A stint about to be begun by somebody: `segment` and `ceiling` for their capacity, the largest set allowed, `least_rest_s` between sets."""

    def __init__(self, stint: dict, factor: float, gain: float, later: Later):
        self.stint = stint
        self.gain = gain
        self.later = later
        self.segment = segment_of(stint, able_factor(stint, factor), 1.0)
        self.ceiling = ceiling_of(stint, able_factor(stint, factor))
        self.piece: int = stint["piece_steps"]
        self.largest: float = stint["max_steps"]
        self.below_half: int = stint["below_half"]
        self.pieces = math.ceil(stint["steps"] / self.piece - 1e-9)
        self.least_rest_s = max(stint["set_up_s"], stint["single_wait_s"])

    def largest_set(self, left: float) -> float:
        """Return the largest set allowed with so many pieces still to do: below half while more than the maximum is to come."""
        if self.largest <= SMALL_MAX:
            return 1
        return self.below_half if left * self.piece + self.later.steps > self.largest else left

    def walk(self, way) -> Walk:
        """Return the break-ups of the stint, done this way."""
        return Walk(way, self.stint["steps"], self.piece)


def lead_rest(fatigue: Fatigue, segment: Segment, steps: int, gain: float, ceiling: float) -> float:
    """Return how long to wait until a set of `steps` goes at all, in steps of 5 s. [s]"""
    lead_s = 0.0
    while lead_s < LONGEST_LEAD_S:
        rested = twin(fatigue)
        rest(rested, segment.slots, lead_s)
        if any_set(rested, segment, steps, gain, ceiling, 0)[0] == steps:
            return lead_s
        lead_s = lead_s + 5.0
    return lead_s


def break_up_stint(fatigue: Fatigue, stint: dict, factor: float, gain: float, later: Later, hints: list) -> dict:
    """Return the break-up of one stint begun in this state, for a capacity of `factor`.

    Parameters
    ----------
    fatigue : state after the change-over; not changed. later : what is still to come of the same group, and what fatigue costs there.
    hints : flat plans to start from.

    Notes
    -----
    Where few sets are left and the group comes tired, a longer wait before the first may save a set, so it is lengthened for as long as that is better.
    """
    begun = Begun(stint, factor, gain, later)
    lead = stint["slots"][0]
    best = after_wait(fatigue, begun, lead_rest(fatigue, begun.segment, min(begun.piece, stint["steps"]), gain, begun.ceiling), hints)
    if later.rough or fatigue.quick[lead] <= TIRED or later.budget <= LEAST_BUDGET:
        return best
    for _ in range(MOST_WAITS):
        if len(best["sets"]) == 1:
            break
        other = after_wait(fatigue, begun, best["lead_s"] + LEAD_STEP_S, [best["plan"]])
        if other["cost_s"] >= best["cost_s"] - 1e-6:
            break
        best = other
    return best


def after_wait(fatigue: Fatigue, begun: Begun, lead_s: float, hints: list) -> dict:
    """Return the break-up after a wait of `lead_s` [s], with what it costs: cost_s, wait included [s]."""
    rested = twin(fatigue)
    rest(rested, begun.segment.slots, lead_s)
    walk = begun.walk(Alone(rested, begun.segment, begun.gain, begun.ceiling, begun.later.price))
    together = begun.walk(Together(rested, begun.segment, begun.gain, begun.ceiling, begun.later.price))
    plan = searched(begun, walk, begun.later.budget, hints)
    if len(plan) == 0 or together.bill(plan) == math.inf:  # another slot gives out before the primary one
        walk = together
        plan = searched(begun, walk, LEAST_BUDGET, [plan] if len(plan) > 0 else hints)
    if len(plan) == 0:
        plan = [1, begun.pieces - 1, LONGEST_LEAD_S, 1] if begun.pieces > 1 else [1]
    done = or_quick_singles(plan, begun.stint, lambda other: walk.bill(other), lambda other: together.bill(other), begun.later.budget)
    cost_s = lead_s + together.bill(done)
    return {"sets": steps_of(begun.stint, plan_sets(done)), "rests_s": plan_rests(done), "lead_s": lead_s, "plan": plan, "cost_s": cost_s}


def searched(begun: Begun, walk: Walk, budget: int, hints: list) -> list:
    """Return the best flat plan found with so many evaluations, an empty list for none."""
    task = Task(begun.pieces, begun.least_rest_s, lambda left: begun.largest_set(left), lambda plan: walk.bill(plan), budget)
    task.descents = STINT_DESCENTS
    task.promising = STINT_PROMISING
    task.rough = begun.later.rough
    if begun.stint["spend"] > 0 or begun.later.price > 0:
        task.room = ROOM_BEYOND_TIME
    if begun.stint["max_steps"] >= TWOS_FROM:
        task.twos = TWOS_FROM_SHARE
    return find(task, hints)
