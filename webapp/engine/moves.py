"""Small moves from one break-up to its neighbours: a rest, a size, a count a step up or down, a tier split in two.

Each answers with pairs: a flat plan, and where the tier begins whose rest is then to be made as short as will do. Whether a plan is allowed
is the search's business. Which moves there are, and how far they go, was measured: those that led to a better plan once in 200 tries or less are left out.
"""

from .tiers import TIERS, changed, longest_tier, recounted, tiers_of

REST_STEPS = [-1, 1, -3]  # along the grid of rests
SHIFTS = [1, -1, 3, -3]  # sets that go from one tier to its neighbour
FAR_SHIFT = 2  # and this part of the larger tier, where many sets are left; chosen
LAST_STEPS = [-1, 1, -2, 2]


def refilled(pieces: int, plan: list[float], main: int) -> list:
    """Return plans like this one whose tier at `main` is counted anew so that the work is filled again; none where there is no such tier."""
    if main >= len(plan) - 1 or plan[main] < 1:
        return []
    last = plan[len(plan) - 1]
    size = plan[main]
    others = last
    for tier in range(0, len(plan) - 1, 3):
        if tier != main:
            others = others + plan[tier] * plan[tier + 1]
    left = pieces - others
    if left < 0:
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


def neighbour_rest(grid_s: list[float], rest_s: float, steps: int) -> float:
    """Return the rest `steps` along the grid, or the last one at its ends. [s]"""
    index = grid_s.index(rest_s) + steps
    return grid_s[max(0, min(len(grid_s) - 1, index))]


def rest_moves(pieces: int, grid_s: list[float], plan: list[float]) -> list:
    """Return plans with one rest shorter or longer, another to be settled, or this one where longer rests may be better."""
    made = []
    for tier in range(0, len(plan) - 1, 3):
        for steps in REST_STEPS:
            other = changed(plan, tier + 2, neighbour_rest(grid_s, plan[tier + 2], steps))
            made.extend([[other, settle] for settle in range(0, len(plan) - 1, 3) if settle != tier or steps == 1])
    return made


def size_moves(pieces: int, grid_s: list[float], plan: list[float], mains: list) -> list:
    """Return plans with one size a step up or down, each of the tiers `mains` refilled in turn."""
    made = []
    for tier in range(0, len(plan) - 1, 3):
        for step in [-1, 1]:
            sized = changed(plan, tier, plan[tier] + step)
            for main in mains:
                made.extend([[other, tier] for other in refilled(pieces, sized, main)])
    return made


def count_moves(pieces: int, grid_s: list[float], plan: list[float]) -> list:
    """Return plans with sets moved from one tier to the next, or another last set."""
    made = []
    end = len(plan) - 1
    for tier in range(0, end - 3, 3):
        far = max(plan[tier + 1], plan[tier + 4]) // FAR_SHIFT
        for step in SHIFTS if far <= 3 else SHIFTS + [far, -far]:
            moved = changed(plan, tier + 1, plan[tier + 1] + step)
            if plan[tier] == plan[tier + 3]:
                moved[tier + 4] = plan[tier + 4] - step
                made.extend([[moved, tier], [moved, tier + 3]])
            elif plan[tier + 1] + step > 0 and abs(step) == 1:
                made.extend([[other, tier] for other in refilled(pieces, moved, tier + 3)])
    main = longest_tier(plan)
    for step in LAST_STEPS:
        if end > 0 and plan[end] + step > 0:
            made.extend([[other, main] for other in refilled(pieces, changed(plan, end, plan[end] + step), main)])
    return made


def split_moves(pieces: int, grid_s: list[float], plan: list[float]) -> list:
    """Return plans with a tier split in two, with another rest or another size on one side."""
    made = []
    end = len(plan) - 1
    if end > 3 * (TIERS - 1):
        return made
    for tier in range(0, end, 3):
        size = plan[tier]
        count = plan[tier + 1]
        rest = plan[tier + 2]
        places = [1]
        for place in [count // 3, (2 * count) // 3, count - 1]:
            if place > places[len(places) - 1]:
                places.append(place)
        for early in places:
            if early < count:
                for steps in [-2, 2]:
                    other = neighbour_rest(grid_s, rest, steps)
                    made.append([halved(plan, tier, [size, early, rest, size, count - early, other]), tier])
                    made.append([halved(plan, tier, [size, early, other, size, count - early, rest]), tier + 3])
                smaller = halved(plan, tier, [size, early, rest, size - 1, count - early, rest])
                larger = halved(plan, tier, [size + 1, early, rest, size, count - early, rest])
                made.extend([[other, tier + 3] for other in refilled(pieces, smaller, tier + 3)])
                made.extend([[other, tier] for other in refilled(pieces, larger, tier + 3)])
    return made


def halved(plan: list[float], tier: int, two: list) -> list:
    """Return the plan with a tier replaced by two."""
    return tiers_of([] + plan[:tier] + two + plan[tier + 3 : len(plan) - 1], plan[len(plan) - 1])


def neighbours(pieces: int, grid_s: list[float], plan: list[float], kinds: str) -> list:
    """Return moves from a plan, the most promising first: "rests" alone, those that keep its "tiers", or "all"."""
    made = rest_moves(pieces, grid_s, plan)
    if kinds == "rests":
        return made
    made = made + count_moves(pieces, grid_s, plan)
    if kinds == "tiers":
        return made + size_moves(pieces, grid_s, plan, [longest_tier(plan)])
    return made + size_moves(pieces, grid_s, plan, [tier for tier in range(0, len(plan) - 1, 3)]) + split_moves(pieces, grid_s, plan)
