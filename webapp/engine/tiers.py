"""Break-ups as flat lists: `[size, count, rest, size, count, rest, ..., last]`.

At most three tiers of equal sets with one rest each, sizes not growing, and a last set that may be larger. Sizes are in pieces of work,
rests in seconds on a grid one can count.
"""

from .parameters import REST_STEP_S, WHOLE_REST_S

TIERS = 3
LONGEST_REST_S = 600


def rest_grid(least_rest_s: float) -> list[float]:
    """Return the rests one can count, from `least_rest_s` up: whole seconds to a minute, then multiples of 5 s. [s]"""
    grid = [second for second in range(WHOLE_REST_S) if second >= least_rest_s - 1e-9]
    for count in range(WHOLE_REST_S // REST_STEP_S, LONGEST_REST_S // REST_STEP_S + 1):
        if count * REST_STEP_S >= least_rest_s - 1e-9:
            grid.append(count * REST_STEP_S)
    return grid


def plan_sets(plan: list[float]) -> list[int]:
    """Return the sets of a flat plan, in pieces."""
    sets = []
    for tier in range(0, len(plan) - 1, 3):
        for _ in range(plan[tier + 1]):
            sets.append(plan[tier])
    sets.append(plan[len(plan) - 1])
    return sets


def plan_rests(plan: list[float]) -> list[float]:
    """Return the rests of a flat plan, one fewer than its sets. [s]"""
    rests = []
    for tier in range(0, len(plan) - 1, 3):
        for _ in range(plan[tier + 1]):
            rests.append(plan[tier + 2])
    return rests


def rests_in(plan: list[float]) -> float:
    """Return how long a flat plan rests in all. [s]"""
    total = 0.0
    for tier in range(0, len(plan) - 1, 3):
        total = total + plan[tier + 1] * plan[tier + 2]
    return total


def tiers_of(tiers: list[float], last: int) -> list:
    """Return the flat plan of these tiers, empty ones left out, neighbours with the same size and rest joined."""
    plan = []
    for tier in range(0, len(tiers), 3):
        end = len(plan)
        if tiers[tier + 1] < 1:
            continue
        if end > 0 and plan[end - 3] == tiers[tier] and plan[end - 1] == tiers[tier + 2]:
            plan[end - 2] = plan[end - 2] + tiers[tier + 1]
        else:  # one by one: thousands of plans are made so, and slices took the phone a twentieth of its time
            plan.append(tiers[tier])
            plan.append(tiers[tier + 1])
            plan.append(tiers[tier + 2])
    plan.append(last)
    return plan


def recounted(plan: list[float], main: int, count: int, last: int) -> list:
    """Return the plan with another count in one tier and another last set."""
    tiers = plan[: len(plan) - 1]
    tiers[main + 1] = count
    return tiers_of(tiers, last)


def changed(plan: list[float], place: int, value: float) -> list:
    """Return the plan with one number changed."""
    other = plan[:]
    other[place] = value
    return other


def split(plan: list[float], main: int, two: list, last: int) -> list:
    """Return the plan with the tier at `main` replaced by two."""
    return tiers_of([] + plan[:main] + two + plan[main + 3 : len(plan) - 1], last)


def trimmed(plan: list[float], pieces: int) -> list:
    """Return the plan cut down to the first `pieces` of its work, to be a hint for less."""
    tiers = []
    left = pieces - 1
    for tier in range(0, len(plan) - 1, 3):
        count = min(plan[tier + 1], left // plan[tier])
        if count > 0:
            tiers.extend([plan[tier], count, plan[tier + 2]])
            left = left - plan[tier] * count
    return tiers_of(tiers, left + 1)


def longest_tier(plan: list[float]) -> int:
    """Return where the tier with the most sets begins."""
    main = 0
    for tier in range(0, len(plan) - 1, 3):
        if plan[tier + 1] > plan[main + 1]:
            main = tier
    return main


def different_numbers(plan: list[float]) -> int:
    """Return how many different sizes and rests a plan asks one to remember."""
    numbers = []
    for place in range(len(plan)):
        if place == len(plan) - 1 or place - 3 * (place // 3) != 1:
            name = ("r" if place - 3 * (place // 3) == 2 else "n") + str(int(plan[place]))
            if name not in numbers:
                numbers.append(name)
    return len(numbers)


def breaks(plan: list[float]) -> int:
    """Return how many rests a plan has."""
    count = 0
    for tier in range(0, len(plan) - 1, 3):
        count = count + plan[tier + 1]
    return count


def has_singles(plan: list[float]) -> bool:
    """Does the plan ask for sets of one before its last?"""
    return len(plan) > 1 and smallest(plan) == 1


def smallest(plan: list[float]) -> int:
    """Return the smallest set of a plan of several, its last left out: sizes do not grow before it."""
    return plan[len(plan) - 4]
