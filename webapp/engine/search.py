"""Finds break-ups a tired head can hold. Knows nothing of physiology: it is handed a cost.

A plan is at most three tiers of equal sets with one rest each, sizes not growing, and a last set that may be larger. Written as
a flat list `[size, count, rest, size, count, rest, ..., last]`, sizes in pieces of work, rest in seconds on a fixed grid.

The search starts from steady plans with and without a larger opening set, takes for each the shortest rest that is feasible
(found by bisection, the first sets of a tier on the next shorter rest where that fits), and descends from the best of them by small
moves. All it evaluated is remembered; among plans near the best, the one easiest to remember wins.
"""

import math

from .parameters import REST_STEP_S, SAME_TIME, TWOS_TO_SINGLES, WHOLE_REST_S
from .units import whole

TIERS = 3
DESCENTS = 3  # how many starts are improved; chosen: a fourth gained under 0.1 % on the grid of the benchmark
LONGEST_REST_S = 600
LARGEST_STEADY = 0.7  # of the largest set allowed, up to which steady sizes are tried; chosen: none above was ever best ...
FEW_SETS = 3  # ... but where so few of the largest sets do all the work; chosen
OPENINGS = [0.7, 0.85, 1.0]  # of the largest set allowed
DISAPPOINTING = 1.12  # a steady size this much slower than the best so far is not looked at further; chosen
HINT_SHIFTS = 4  # steps by which a hint's rests may be shortened to begin with


class Task:
    """What is searched: `pieces` of work, the largest set allowed with so many still to do, and what a plan costs.

    Attributes
    ----------
    cost : function of (sets, rests_s) to seconds, math.inf where the plan cannot be done.
    largest : function of pieces still to do to the largest set allowed. grid_s : rests allowed, rising. [s]
    budget : most evaluations. evaluations : made so far. stopped_because : "settled" or "budget".
    """

    def __init__(self, pieces: int, least_rest_s: float, largest, cost, budget: int):
        self.pieces = pieces
        self.largest = largest
        self.cost = cost
        self.grid_s = rest_grid(least_rest_s)
        self.budget = budget
        self.evaluations = 0
        self.stopped_because = "settled"
        self.seen = {}
        self.plans = []


def rest_grid(least_rest_s: float) -> list[float]:
    """Return the rests one can count, from `least_rest_s` up: whole seconds to 10 s, then multiples of 5 s. [s]"""
    grid = [second for second in range(WHOLE_REST_S) if second >= least_rest_s - 1e-9]
    for count in range(WHOLE_REST_S // REST_STEP_S, LONGEST_REST_S // REST_STEP_S + 1):
        if count * REST_STEP_S >= least_rest_s - 1e-9:
            grid.append(count * REST_STEP_S)
    return grid


def plan_sets(plan: list) -> list[int]:
    """Return the sets of a flat plan, in pieces."""
    sets = []
    for tier in range(0, len(plan) - 1, 3):
        for _ in range(plan[tier + 1]):
            sets.append(plan[tier])
    sets.append(plan[len(plan) - 1])
    return sets


def plan_rests(plan: list) -> list[float]:
    """Return the rests of a flat plan, one fewer than its sets. [s]"""
    rests = []
    for tier in range(0, len(plan) - 1, 3):
        for _ in range(plan[tier + 1]):
            rests.append(plan[tier + 2])
    return rests


def plan_key(plan: list) -> str:
    """Return a text that names the plan."""
    return ",".join([str(int(number)) for number in plan])


def allowed(task: Task, plan: list) -> bool:
    """Is the plan whole: does it fill the work, never grow before its last set, and stay within the largest set allowed?"""
    left = task.pieces
    before = task.pieces
    for tier in range(0, len(plan) - 1, 3):
        size = plan[tier]
        count = plan[tier + 1]
        if size < 1 or count < 1 or size > before or left < size * count:
            return False
        if size > task.largest(left) or size > task.largest(left - size * (count - 1)):
            return False
        before = size
        left = left - size * count
    last = plan[len(plan) - 1]
    if len(plan) > 4 and plan[len(plan) - 3] == 1 and last > before:  # a lone small set before a larger last one: nobody remembers why
        return False
    return last >= 1 and left == last and last <= task.largest(left)


def cost_of(task: Task, plan: list) -> float:
    """Return what the plan costs, math.inf where it is not allowed or cannot be done; each plan is evaluated once."""
    key = plan_key(plan)
    if key in task.seen:
        return task.seen[key]
    cost = math.inf
    if allowed(task, plan):
        if task.evaluations >= task.budget:
            task.stopped_because = "budget"
            return math.inf
        task.evaluations = task.evaluations + 1
        cost = task.cost(plan_sets(plan), plan_rests(plan))
        if cost < math.inf:
            task.plans.append([cost, plan])
    task.seen[key] = cost
    return cost


def shortest_rest(task: Task, make, low: int, high: int) -> int:
    """Return the least index in low..high whose plan `make(index)` can be done, or -1: more rest is never worse.

    Looked for from `low` upwards in growing strides, then by bisection: what cannot be done is found out early and cheaply.
    """
    stride = 1
    reach = low
    while cost_of(task, make(reach)) == math.inf:
        if reach == high or task.stopped_because == "budget":
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


def start_from(task: Task, opening: int, size: int, last: int, index: int) -> int:
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

    def with_rest(place: int) -> list:
        return tiers_of([opening, 1, grid[place], size, count, grid[place]], last)

    index = shortest_rest(task, with_rest, max(0, index), len(grid) - 1)
    if index < 1 or count < 3:
        return index

    def with_longer_tail(late: int) -> list:
        early = count - late
        return tiers_of([opening, 1, grid[index - 1], size, early, grid[index - 1], size, late, grid[index]], last)

    shortest_rest(task, with_longer_tail, 0, count)
    return index


def tiers_of(tiers: list, last: int) -> list:
    """Return the flat plan of these tiers, empty ones left out, neighbours with the same size and rest joined."""
    plan = []
    for tier in range(0, len(tiers), 3):
        end = len(plan)
        if tiers[tier + 1] < 1:
            continue
        if end > 0 and plan[end - 3] == tiers[tier] and plan[end - 1] == tiers[tier + 2]:
            plan[end - 2] = plan[end - 2] + tiers[tier + 1]
        else:
            plan.extend(tiers[tier : tier + 3])
    plan.append(last)
    return plan


def starts(task: Task):
    """Evaluate the unbroken set, and steady plans of every size until sizes stop being promising."""
    cost_of(task, [task.pieces])
    most = task.largest(task.pieces)
    steady = most if task.pieces <= FEW_SETS * most else max(2, whole(most * LARGEST_STEADY))
    sizes = min(most, steady, task.pieces - 1)
    index = 0
    disappointing = 0
    for size in range(1, sizes + 1):
        before = len(task.plans)
        start_from(task, size, size, 1, max(0, index - 2))  # the last set takes what is left over, up to `size`
        index = max(0, start_from(task, size, size, size, max(0, index - 2)))
        best = min([costed[0] for costed in task.plans] + [math.inf])
        here = min([costed[0] for costed in task.plans[before:]] + [math.inf])
        disappointing = disappointing + 1 if here > best * DISAPPOINTING else 0
        if disappointing >= 2:
            return
        if disappointing == 0:
            more_starts(task, size, most, index)


def two_sets(task: Task):
    """Evaluate all plans of two sets, each with the shortest rest that will do: between unbroken and three sets nothing else leads there."""

    def with_rest(opening: int, place: int) -> list:
        return [opening, 1, task.grid_s[place], task.pieces - opening]

    for opening in range(1, min(task.largest(task.pieces), task.pieces - 1) + 1):
        if allowed(task, with_rest(opening, 0)):
            shortest_rest(task, lambda place: with_rest(opening, place), 0, len(task.grid_s) - 1)


def more_starts(task: Task, size: int, most: int, index: int):
    """Evaluate plans of one steady size with larger opening and last sets."""
    openings = [size]
    for share in OPENINGS:
        opening = min(most, max(size, whole(most * share)))
        if opening not in openings:
            openings.append(opening)
    for opening in openings:
        for extra in range(3):
            start_from(task, opening, size, size * (1 + extra), index - 1)


def refilled(task: Task, plan: list, main: int) -> list:
    """Return plans like this one whose tier at `main` is counted anew so that the work is filled again."""
    last = plan[len(plan) - 1]
    size = plan[main]
    others = last
    for tier in range(0, len(plan) - 1, 3):
        if tier != main:
            others = others + plan[tier] * plan[tier + 1]
    left = task.pieces - others
    if left < 0 or size < 1:
        return []
    count = left // size
    over = left - count * size
    made = [recounted(plan, main, count, last + over)]
    if over > 0:
        if last + over > size:
            made.append(recounted(plan, main, count + 1, last + over - size))
        if main > 0 and plan[1] == 1:
            opened = recounted(plan, main, count, last)
            opened[0] = opened[0] + over
            made.append(opened)
    return made


def recounted(plan: list, main: int, count: int, last: int) -> list:
    """Return the plan with another count in one tier and another last set."""
    tiers = plan[: len(plan) - 1]
    tiers[main + 1] = count
    return tiers_of(tiers, last)


def longest_tier(plan: list) -> int:
    """Return where the tier with the most sets begins."""
    main = 0
    for tier in range(0, len(plan) - 1, 3):
        if plan[tier + 1] > plan[main + 1]:
            main = tier
    return main


def neighbour_rest(task: Task, rest_s: float, steps: int) -> float:
    """Return the rest `steps` along the grid, or the rest itself at its ends. [s]"""
    index = task.grid_s.index(rest_s) + steps
    return task.grid_s[max(0, min(len(task.grid_s) - 1, index))]


def changed(plan: list, place: int, value: float) -> list:
    """Return the plan with one number changed."""
    other = plan[:]
    other[place] = value
    return other


def rest_moves(task: Task, plan: list) -> list:
    """Return the plan with one rest a step shorter or longer, and with one shorter while another is longer."""
    made = []
    for tier in range(0, len(plan) - 1, 3):
        shorter = changed(plan, tier + 2, neighbour_rest(task, plan[tier + 2], -1))
        made.append(shorter)
        made.append(changed(plan, tier + 2, neighbour_rest(task, plan[tier + 2], 1)))
        for other in range(0, len(plan) - 1, 3):
            if other != tier:
                made.append(changed(shorter, other + 2, neighbour_rest(task, plan[other + 2], 1)))
    return made


def size_moves(task: Task, plan: list) -> list:
    """Return the plan with a size one up or down, its rest along with it or not, counts refilled."""
    made = []
    main = longest_tier(plan)
    for tier in range(0, len(plan) - 1, 3):
        for step in [-1, 1]:
            sized = changed(plan, tier, plan[tier] + step)
            made.extend(refilled(task, sized, main))
            for rest_step in [-1, 1]:
                rested = changed(sized, tier + 2, neighbour_rest(task, plan[tier + 2], rest_step))
                made.extend(refilled(task, rested, main))
    return made


def count_moves(task: Task, plan: list) -> list:
    """Return the plan with a count or the last set a little changed, the rest refilled."""
    made = []
    end = len(plan) - 1
    main = longest_tier(plan)
    for step in [-1, 1, -2, 2]:
        if plan[end] + step >= 1:
            made.extend(refilled(task, changed(plan, end, plan[end] + step), main))
    for tier in range(0, end, 3):
        if tier != main:
            for step in [-1, 1]:
                if plan[tier + 1] + step >= 1:
                    made.extend(refilled(task, changed(plan, tier + 1, plan[tier + 1] + step), main))
    return made


def split_moves(task: Task, plan: list) -> list:
    """Return the plan with a tier split in two, with another rest or a larger size on one side."""
    made = []
    if len(plan) > 3 * TIERS - 2:
        return made
    last = plan[len(plan) - 1]
    for tier in range(0, len(plan) - 1, 3):
        size = plan[tier]
        count = plan[tier + 1]
        rest = plan[tier + 2]
        for early in [1, count // 3, count // 2, (2 * count) // 3]:
            if 0 < early and early < count:
                for step in [-1, 1]:
                    other = neighbour_rest(task, rest, step)
                    made.append(split(plan, tier, [size, early, other, size, count - early, rest], last))
                    made.append(split(plan, tier, [size, early, rest, size, count - early, other], last))
                larger = split(plan, tier, [size + 1, early, rest, size, count - early, rest], last)
                if len(larger) > tier + 4:
                    made.extend(refilled(task, larger, tier + 3))
    return made


def split(plan: list, main: int, two: list, last: int) -> list:
    """Return the plan with the tier at `main` replaced by two."""
    return tiers_of([] + plan[:main] + two + plan[main + 3 : len(plan) - 1], last)


def descend(task: Task, plan: list):
    """Follow the first move that is better until none is."""
    best = cost_of(task, plan)
    moves = [rest_moves, size_moves, count_moves, split_moves]
    improved = True
    while improved and len(plan) > 1:
        improved = False
        for move in moves:
            for other in move(task, plan):
                cost = cost_of(task, other)
                if cost < best - 1e-9:
                    best = cost
                    plan = other
                    improved = True
                    break
            if improved:
                break


def by_cost(costed: list):
    """Return the sorting key of a plan and its cost: the cost, then fewest numbers."""
    return (costed[0], len(costed[1]))


def find(task: Task, hints: list) -> list:
    """Return the best plan that is easy to remember, as its sets and rests, or an empty list where none can be done.

    Parameters
    ----------
    task : what is searched. hints : plans to start from besides the steady ones, for example one found for a like task.

    Notes
    -----
    With hints that can be done, only they are improved: a warm start.
    """
    for hint in hints:
        from_hint(task, hint)
    if len(task.plans) == 0:
        starts(task)
    task.plans.sort(key=by_cost)
    promising = task.plans[:DESCENTS]
    if len(promising) > 0 and all([has_singles(costed[1]) for costed in promising]):
        larger = [costed for costed in task.plans if not has_singles(costed[1])]
        promising.extend(larger[:1])
    for costed in promising:
        descend(task, costed[1])
    if cost_of(task, [task.pieces]) == math.inf:
        two_sets(task)
    if len(task.plans) > 0:
        descend(task, min(task.plans, key=by_cost)[1])
    return easiest(task)


def from_hint(task: Task, hint: list):
    """Evaluate a hint with all its rests shifted along the grid, the least shift that can be done."""

    def shifted(steps: int) -> list:
        plan = hint[:]
        for tier in range(0, len(plan) - 1, 3):
            plan[tier + 2] = neighbour_rest(task, max(task.grid_s[0], hint[tier + 2]), steps - HINT_SHIFTS)
        return plan

    cost_of(task, shifted(HINT_SHIFTS))
    shortest_rest(task, shifted, 0, 6 * HINT_SHIFTS)


def trimmed(plan: list, pieces: int) -> list:
    """Return the plan cut down to the first `pieces` of its work, to be a hint for less."""
    tiers = []
    left = pieces - 1
    for tier in range(0, len(plan) - 1, 3):
        count = min(plan[tier + 1], left // plan[tier])
        if count > 0:
            tiers.extend([plan[tier], count, plan[tier + 2]])
            left = left - plan[tier] * count
    return tiers_of(tiers, left + 1)


def different_numbers(plan: list) -> int:
    """Return how many different sizes and rests a plan asks one to remember."""
    numbers = []
    for place in range(len(plan)):
        if place == len(plan) - 1 or place - 3 * (place // 3) != 1:
            name = ("r" if place - 3 * (place // 3) == 2 else "n") + str(int(plan[place]))
            if name not in numbers:
                numbers.append(name)
    return len(numbers)


def breaks(plan: list) -> int:
    """Return how many rests a plan has."""
    count = 0
    for tier in range(0, len(plan) - 1, 3):
        count = count + plan[tier + 1]
    return count


def has_singles(plan: list) -> bool:
    """Does the plan ask for sets of one before its last?"""
    return len(plan) > 1 and plan[len(plan) - 4] == 1


def easiest(task: Task) -> list:
    """Return, of the plans within 1 % of the best, the one with fewest breaks, then fewest numbers, then the quickest.

    Twos are preferred to singles up to 3 %.
    """
    if len(task.plans) == 0:
        return []
    best = min([costed[0] for costed in task.plans])
    near = [costed for costed in task.plans if costed[0] <= best * (1 + SAME_TIME)]
    if all([has_singles(costed[1]) for costed in near]):
        twos = [costed for costed in task.plans if costed[0] <= best * (1 + TWOS_TO_SINGLES) and not has_singles(costed[1])]
        near = twos if len(twos) > 0 else near
    near.sort(key=ease)
    return near[0][1]


def ease(costed: list):
    """Return the sorting key of a plan and its cost by how easy it is to remember."""
    return (breaks(costed[1]), different_numbers(costed[1]), costed[0])
