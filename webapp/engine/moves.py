"""Small moves from one break-up to its neighbours: a rest, a size, a count a step up or down, a tier split in two.

Each answers with the flat plans it leads to; whether they are allowed is the search's business.
"""

from .tiers import TIERS, changed, longest_tier, recounted, split


def refilled(pieces: int, plan: list, main: int) -> list:
    """Return plans like this one whose tier at `main` is counted anew so that the work is filled again."""
    last = plan[len(plan) - 1]
    size = plan[main]
    others = last
    for tier in range(0, len(plan) - 1, 3):
        if tier != main:
            others = others + plan[tier] * plan[tier + 1]
    left = pieces - others
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


def neighbour_rest(grid_s: list, rest_s: float, steps: int) -> float:
    """Return the rest `steps` along the grid, or the rest itself at its ends. [s]"""
    index = grid_s.index(rest_s) + steps
    return grid_s[max(0, min(len(grid_s) - 1, index))]


def rest_moves(pieces: int, grid_s: list, plan: list) -> list:
    """Return the plan with one rest a step shorter or longer, and with one shorter while another is longer."""
    made = []
    for tier in range(0, len(plan) - 1, 3):
        shorter = changed(plan, tier + 2, neighbour_rest(grid_s, plan[tier + 2], -1))
        made.append(shorter)
        made.append(changed(plan, tier + 2, neighbour_rest(grid_s, plan[tier + 2], 1)))
        for other in range(0, len(plan) - 1, 3):
            if other != tier:
                made.append(changed(shorter, other + 2, neighbour_rest(grid_s, plan[other + 2], 1)))
    return made


def size_moves(pieces: int, grid_s: list, plan: list) -> list:
    """Return the plan with a size one up or down, its rest along with it or not, counts refilled."""
    made = []
    main = longest_tier(plan)
    for tier in range(0, len(plan) - 1, 3):
        for step in [-1, 1]:
            sized = changed(plan, tier, plan[tier] + step)
            made.extend(refilled(pieces, sized, main))
            for rest_step in [-1, 1]:
                rested = changed(sized, tier + 2, neighbour_rest(grid_s, plan[tier + 2], rest_step))
                made.extend(refilled(pieces, rested, main))
    return made


def count_moves(pieces: int, grid_s: list, plan: list) -> list:
    """Return the plan with a count or the last set a little changed, the rest refilled."""
    made = []
    end = len(plan) - 1
    main = longest_tier(plan)
    for step in [-1, 1, -2, 2]:
        if plan[end] + step >= 1:
            made.extend(refilled(pieces, changed(plan, end, plan[end] + step), main))
    for tier in range(0, end, 3):
        if tier != main:
            for step in [-1, 1]:
                if plan[tier + 1] + step >= 1:
                    made.extend(refilled(pieces, changed(plan, tier + 1, plan[tier + 1] + step), main))
    return made


def split_moves(pieces: int, grid_s: list, plan: list) -> list:
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
                    other = neighbour_rest(grid_s, rest, step)
                    made.append(split(plan, tier, [size, early, other, size, count - early, rest], last))
                    made.append(split(plan, tier, [size, early, rest, size, count - early, other], last))
                larger = split(plan, tier, [size + 1, early, rest, size, count - early, rest], last)
                if len(larger) > tier + 4:
                    made.extend(refilled(pieces, larger, tier + 3))
    return made
