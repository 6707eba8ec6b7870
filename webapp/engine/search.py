"""Finds break-ups a tired head can hold. Knows nothing of physiology: it is handed a cost.

The search starts from steady plans with and without a larger opening set, takes for each the shortest rest that is feasible (more rest is
never worse, so it is bracketed and bisected; the first sets of a tier on the next shorter rest where that fits), and descends from the best
of them by small moves. All it evaluated is remembered; among plans near the best, the one easiest to remember wins.
"""

import math

from .known import Place, place_of
from .moves import neighbour_rest, neighbours
from .parameters import SAME_TIME, TWOS_TO_SINGLES
from .tiers import breaks, changed, different_numbers, has_singles, rest_grid, rests_in, smallest, tiers_of
from .units import whole

DESCENTS = 3  # how many starts are improved; chosen: two lose 0.1 % on the grid of the benchmark in the median
LARGEST_STEADY = 0.7  # of the largest set allowed, up to which steady sizes are tried; chosen: none above was ever best ...
FEW_SETS = 3  # ... but where so few of the largest sets do all the work; chosen
OPENINGS = [0.85, 1.0]  # of the largest set allowed; chosen: a third one gained nothing on the benchmark's grid
LITTLE = 12  # pieces of work up to which sizes are tried from the largest down; chosen
DISAPPOINTING = 1.12  # a steady size this much slower than the best so far is not looked at further; chosen
WORTH = 0.0005  # share of the cost that a move must gain to be followed; chosen
PROMISING = 9  # sizes, the best ones, that larger opening and last sets are tried with; chosen: two lose 0.2 % in the median
START = 0.04  # such a start that would cost so much more than the best so far, by its rests, is not looked at further; chosen
ROOM = 0.003  # share of the cost by which a better plan may rest longer in all, its work being slowed less; chosen
REACH = 12  # steps along the grid of rests that a rest may be lengthened to make a move possible; chosen
LEAST_BUDGET = 80  # evaluations; chosen: what a warm start needs to be worth it
WARM_SHARE = 6  # a warm start gets this part of the budget; chosen: it has less to look for
HINT_SHIFTS = 4  # steps by which a hint's rests may be shortened to begin with


class Task:
    """What is searched: `pieces` of work, the largest set allowed with so many still to do, and what a plan costs.

    Attributes
    ----------
    cost : function of a flat plan to seconds, math.inf where the plan cannot be done.
    largest : function of pieces still to do to the largest set allowed. grid_s : rests allowed, rising. [s]
    twos : share of the cost up to which twos are preferred to singles. rough : True where a hint that can be done is good enough.
    descents, promising : how many starts are improved, and of how many sizes more starts are made.
    room : share of the cost by which a better plan may rest longer in all.
    budget : most evaluations. evaluations : made so far. stopped_because : "settled" or "budget".
    """

    def __init__(self, pieces: int, least_rest_s: float, largest, cost, budget: int):
        self.pieces = pieces
        self.largest = largest
        self.cost = cost
        self.grid_s = rest_grid(least_rest_s)
        self.twos = TWOS_TO_SINGLES
        self.room = ROOM
        self.rough = False
        self.descents = DESCENTS
        self.promising = PROMISING
        self.budget = budget
        self.evaluations = 0
        self.stopped_because = "settled"
        self.known = Place()
        self.plans = []
        self.best = math.inf
        self.best_rests_s = 0.0


def most_at(task: Task, left: float) -> float:
    """Return the largest set allowed with so many pieces still to do."""
    return task.largest(left)


def allowed(task: Task, plan: list[float]) -> bool:
    """Is the plan whole: does it fill the work, never grow before its last set, and stay within the largest set allowed?"""
    left: float = task.pieces
    before: float = task.pieces
    for tier in range(0, len(plan) - 1, 3):
        size = plan[tier]
        count = plan[tier + 1]
        if size < 1 or count < 1 or size > before or left < size * count:
            return False
        if size > most_at(task, left) or size > most_at(task, left - size * (count - 1)):
            return False
        before = size
        left = left - size * count
    last = plan[len(plan) - 1]
    return last >= 1 and left == last and last <= most_at(task, left) and not has_lone_set(plan)


def has_lone_set(plan: list[float]) -> bool:
    """Is there, after the opening, a single set of its own whose follower is not smaller? Nobody remembers why it should be there."""
    for tier in range(3, len(plan) - 1, 3):
        follower = plan[tier + 3] if tier + 3 < len(plan) else 0
        if plan[tier + 1] == 1 and follower >= plan[tier]:
            return True
    return False


def cost_of(task: Task, plan: list[float]) -> float:
    """Return what the plan costs, math.inf where it is not allowed or cannot be done; each plan is evaluated once."""
    if not allowed(task, plan):
        return math.inf
    place = place_of(task.known, plan)
    if place.cost_s >= 0:
        return place.cost_s
    if task.evaluations >= task.budget:
        task.stopped_because = "budget"
        return math.inf
    task.evaluations = task.evaluations + 1
    cost: float = task.cost(plan)
    place.cost_s = cost
    if cost < math.inf:
        task.plans.append([cost, plan])
    if cost < task.best:
        task.best = cost
        task.best_rests_s = rests_in(plan)
    return cost


def most_rest(task: Task, share: float) -> float:
    """Return how long a plan may rest in all to cost at most `share` more than the best so far. [s]"""
    return task.best_rests_s + task.best * (share + task.room)


def shortest_rest(task: Task, make, low: int, high: int, rests_s: float) -> int:
    """Return the least index in low..high whose plan `make(index)` can be done with at most `rests_s` of rest in all [s], or -1: more rest is never worse.

    Looked for from `low` upwards in growing strides, then by bisection: what cannot be done is found out early and cheaply.
    """
    stride = 1
    reach = low
    while cost_of(task, make(reach)) == math.inf:
        if reach == high or task.stopped_because == "budget" or rests_in(make(reach)) > rests_s:
            return -1
        low = reach + 1
        reach = min(high, reach + stride)
        stride = stride * 2
    while low < reach:
        middle = (low + reach) // 2
        if cost_of(task, make(middle)) == math.inf:
            low = middle + 1
        else:
            reach = middle
    return low


def start_from(task: Task, opening: int, size: int, last: int, index: int, share: float) -> int:
    """Evaluate the steady plans `opening`, then `size` ..., then `last`, each with the shortest rest that will do.

    Returns
    -------
    int : the index of that rest on the grid, looked for from `index` upwards; -1 for none.
    """
    count = (task.pieces - opening - last) // size
    last = task.pieces - opening - count * size
    if count < 1 or last < 1 or opening < size:
        return -1
    grid = task.grid_s
    rests_s = most_rest(task, share)

    def with_rest(place: int) -> list:
        return tiers_of([opening, 1, grid[place], size, count, grid[place]], last)

    index = shortest_rest(task, with_rest, max(0, index), len(grid) - 1, rests_s)
    if index < 1 or count < 3:
        return index

    def with_longer_tail(late: int) -> list:
        early = count - late
        return tiers_of([opening, 1, grid[index - 1], size, early, grid[index - 1], size, late, grid[index]], last)

    shortest_rest(task, with_longer_tail, 0, count, math.inf)
    return index


def starts(task: Task):
    """Evaluate the unbroken set, steady plans of every size until sizes stop being promising, and of the best of them some with larger ends."""
    cost_of(task, [task.pieces])
    found = steady_plans(task)
    found.sort(key=lambda one: one[0])
    for one in found[: task.promising]:
        more_starts(task, one[1], one[2])


def steady_plans(task: Task) -> list:
    """Evaluate plans of one size each; return the least cost of each size tried, the size, and where its rest is on the grid."""
    found = []
    most = most_at(task, task.pieces)
    steady = most if task.pieces <= FEW_SETS * most else max(2, whole(most * LARGEST_STEADY))
    sizes = min(most, steady, (task.pieces - 1) // 2)  # a larger one is never done twice
    index = 0
    disappointing = 0
    downwards = task.pieces <= LITTLE  # few sets do it, large ones are near the best
    for place in range(sizes):
        size = sizes - place if downwards else place + 1
        before = len(task.plans)
        index = 0 if downwards else index
        start_from(task, size, size, 1, max(0, index - 2), DISAPPOINTING - 1)  # the last set takes what is left over, up to `size`
        index = max(0, start_from(task, size, size, size, max(0, index - 2), DISAPPOINTING - 1))
        here = min([costed[0] for costed in task.plans[before:]] + [math.inf])
        found.append([here, size, index])
        disappointing = disappointing + 1 if here > task.best * DISAPPOINTING else 0
        if disappointing >= 2:
            break
    return found


def two_sets(task: Task):
    """Evaluate all plans of two sets, each with the shortest rest that will do: between unbroken and three sets nothing else leads there."""

    def with_rest(opening: int, place: int) -> list:
        return [opening, 1, task.grid_s[place], task.pieces - opening]

    for opening in range(1, min(most_at(task, task.pieces), task.pieces - 1) + 1):
        if allowed(task, with_rest(opening, 0)):
            shortest_rest(task, lambda place: with_rest(opening, place), 0, len(task.grid_s) - 1, most_rest(task, DISAPPOINTING - 1))


def more_starts(task: Task, size: int, index: int):
    """Evaluate plans of one steady size with larger opening and last sets."""
    most = most_at(task, task.pieces)
    openings = [size]
    for share in OPENINGS:
        opening = min(most, max(size, whole(most * share)))
        if opening not in openings:
            openings.append(opening)
    for opening in openings:
        for extra in range(3):
            start_from(task, opening, size, size * (1 + extra), index - 1, START)


def from_hint(task: Task, hint: list):
    """Evaluate a hint with all its rests shifted along the grid, the least shift that can be done."""

    def shifted(steps: int) -> list:
        plan = hint[:]
        for tier in range(0, len(plan) - 1, 3):
            plan[tier + 2] = neighbour_rest(task.grid_s, max(task.grid_s[0], hint[tier + 2]), steps - HINT_SHIFTS)
        return plan

    cost_of(task, shifted(HINT_SHIFTS))
    shortest_rest(task, shifted, 0, 6 * HINT_SHIFTS, math.inf)


def settled(task: Task, plan: list[float], tier: int, rests_s: float) -> list[float]:
    """Return the plan with the rest of one tier as short as is good, an empty list where none does with at most `rests_s` of rest in all. [s]"""
    grid = task.grid_s
    longest_s = plan[tier + 2] + (rests_s - rests_in(plan)) / plan[tier + 1]
    bad = -1
    good = min(grid.index(plan[tier + 2]) + REACH, len(grid) - 1)
    while good >= 0 and grid[good] > longest_s:
        good = good - 1
    best = math.inf if good < 0 else cost_of(task, changed(plan, tier + 2, grid[good]))
    if best == math.inf:
        return []
    stride = 1
    while bad < 0 and good > 0:
        place = max(0, good - stride)
        cost = cost_of(task, changed(plan, tier + 2, grid[place]))
        if cost < best:
            best = cost
            good = place
            stride = stride * 2
        else:
            bad = place
    while good - bad > 1:
        middle = (good + bad) // 2
        cost = cost_of(task, changed(plan, tier + 2, grid[middle]))
        if cost <= best:
            best = cost
            good = middle
        else:
            bad = middle
    return changed(plan, tier + 2, grid[good])


def descend(task: Task, plan: list[float], kinds: str, least: int) -> list[float]:
    """Follow moves of these kinds that are better, sets but the last of `least` or more, going round among them, and return where none is."""
    here = plan
    best = cost_of(task, plan)
    rests_s = rests_in(plan) + task.room * best
    moves = neighbours(task.pieces, task.grid_s, plan, kinds)
    place = 0
    tried = 0
    while tried < len(moves):
        move = moves[place]
        place = place + 1 if place + 1 < len(moves) else 0
        tried = tried + 1
        if move[1] >= len(move[0]) - 1 or smallest(move[0]) < least or not allowed(task, move[0]):
            continue
        other = settled(task, move[0], move[1], rests_s)
        cost = math.inf if len(other) == 0 else cost_of(task, other)
        if cost < best * (1 - WORTH):
            here = other
            best = cost
            rests_s = rests_in(other) + task.room * best
            moves = neighbours(task.pieces, task.grid_s, other, kinds)
            place = min(place, max(0, len(moves) - 1))
            tried = 0
    return here


def by_cost(costed: list):
    """Return the sorting key of a plan and its cost: the cost, then fewest numbers."""
    return (costed[0], len(costed[1]))


def cheapest(task: Task, least: int) -> list[float]:
    """Return the best plan found whose sets but the last are of `least` or more, the one of fewest numbers of equals; an empty list for none."""
    best = []
    cost = math.inf
    for costed in task.plans:
        plan: list[float] = costed[1]
        near: float = costed[0]
        if near < cost or near == cost and len(plan) < len(best):
            if len(plan) == 1 or smallest(plan) >= least:
                best = plan
                cost = near
    return best


def find(task: Task, hints: list) -> list[float]:
    """Return the best plan that is easy to remember, as its sets and rests, or an empty list where none can be done.

    Parameters
    ----------
    task : what is searched. hints : plans to start from besides the steady ones, for example one found for a like task.

    Notes
    -----
    With hints that can be done, only they are improved, their tiers kept: a warm start.
    """
    for hint in hints:
        from_hint(task, hint)
    if task.rough and len(task.plans) > 0:
        return easiest(task)
    cold = len([1 for costed in task.plans if len(costed[1]) > 1]) == 0  # no small step leads from one set to several
    kinds = "all" if cold else "tiers"
    ends = []
    if cold:
        starts(task)
        if task.rough and len(task.plans) > 0:
            return easiest(task)
        for costed in sorted(task.plans, key=by_cost)[: task.descents]:
            ends.append(descend(task, costed[1], kinds, 1))
    else:
        task.budget = min(task.budget, max(LEAST_BUDGET, task.budget // WARM_SHARE))
        ends.append(descend(task, cheapest(task, 1), kinds, 1))
    if cold and (cost_of(task, [task.pieces]) == math.inf or len(cheapest(task, 1)) == 1):
        two_sets(task)
    best = cheapest(task, 1)
    if has_singles(best):
        larger = cheapest(task, 2)
        if len(larger) > 0:
            descend(task, larger, kinds, 2)
        best = cheapest(task, 1)
    if len(best) > 0:
        if not any([end == best for end in ends]):  # moves from where one ended lead nowhere
            descend(task, best, kinds, 1)
        descend(task, easiest(task), "rests", 1)
    return easiest(task)


def easiest(task: Task) -> list:
    """Return, of the plans within 1 % of the best, the one with fewest breaks, then fewest numbers, then the quickest.

    Twos are preferred to singles up to the share that the task says.
    """
    if len(task.plans) == 0:
        return []
    best = min([costed[0] for costed in task.plans])
    near = [costed for costed in task.plans if costed[0] <= best * (1 + SAME_TIME)]
    if all([has_singles(costed[1]) for costed in near]):
        twos = [costed for costed in task.plans if costed[0] <= best * (1 + task.twos) and not has_singles(costed[1])]
        near = twos if len(twos) > 0 else near
    near.sort(key=ease)
    return near[0][1]


def ease(costed: list):
    """Return the sorting key of a plan and its cost by how easy it is to remember."""
    return (breaks(costed[1]), different_numbers(costed[1]), costed[0])
