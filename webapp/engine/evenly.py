"""Rounds held evenly: the same few even sets and one rest in every round, what a tired head holds best."""

FEW_PARTS = 4  # even sets of a block in an interval; chosen
MOST_PARTS = 8  # and in a round of as many as will go, where rests may take their time; chosen
ROUND_RESTS_S = [5, 10, 15, 20, 25, 30, 40, 50, 60]  # between them, tried; chosen


def climbs(option: dict) -> bool:
    """Does the amount of any block change from round to round?"""
    return len([1 for block in option["blocks"] if block.get("step") is not None]) > 0


def repeated(one: list, count: int) -> list:
    """Return so many break-ups, round after round like `one`."""
    return [one[index - len(one) * (index // len(one))] for index in range(count)]


def even_breakups(stint: dict, parts: int) -> list:
    """Return the stint's work in about so many even sets, with ever longer rests; none where the half rule does not allow them."""
    pieces = stint["steps"] // stint["piece_steps"]
    if parts > pieces:
        return []
    size = -(-pieces // parts)
    if size > stint["below_half"] and stint["steps"] * 2 > stint["max_steps"]:
        return []
    sets = [size * stint["piece_steps"]] * ((pieces - 1) // size)
    sets.append(stint["steps"] - sum(sets))
    rests_s = [rest_s for rest_s in ROUND_RESTS_S if rest_s >= max(stint["set_up_s"], stint["single_wait_s"])]
    return [{"sets": sets, "rests_s": [rest_s] * (len(sets) - 1), "lead_s": 0.0, "plan": []} for rest_s in (rests_s if len(sets) > 1 else [0])]


def best_round(stints: list, start: list, most: float, measure) -> list:
    """Return a round, one block after another given the even sets and the rest that measure most, `start` where none measures more than `most`.

    `measure` : function of a round's break-ups to a number. Of those that measure the same the fewest sets and the shortest rest are taken.
    """
    best = start
    for place in range(len(start)):
        for parts in range(1, FEW_PARTS + 1) if stints[place]["kind"] == "local" else []:
            for breakup in even_breakups(stints[place], parts):
                other = with_block(best, place, breakup)
                found = measure(other)
                if found > most:
                    most = found
                    best = other
    return best


def with_block(one: list, place: int, breakup: dict) -> list:
    """Return a round with one block broken up another way."""
    return [] + one[:place] + [breakup] + one[place + 1 :]


def quickest_round(stints: list, start: list, measure) -> list:
    """Return a round with which most gets done, in even sets with the shortest rest that goes; `start` where none goes.

    `measure` : function of a round's break-ups to a number, negative where they do not go. Blocks are looked at in two orders, since what the first
    takes the next must do without: as they come, and the one that rests longest first.
    """
    places = [place for place in range(len(start)) if stints[place]["kind"] == "local"]
    slowest_first = sorted(places, key=lambda place: -sum(start[place]["rests_s"]))
    one = block_by_block(stints, start, slowest_first, measure)
    other = block_by_block(stints, start, places, measure)
    return one[1] if one[0] > other[0] else other[1]


def block_by_block(stints: list, start: list, places: list, measure) -> list:
    """Return what most measures with the blocks at `places` changed one after another, negative where nothing goes, and that round."""
    best = [-1.0, start]
    for place in places:
        for parts in range(1, MOST_PARTS + 1):
            best = with_shortest_rest(best, place, even_breakups(stints[place], parts), measure)
    return best


def with_shortest_rest(best: list, place: int, breakups: list, measure) -> list:
    """Return the better of `best` and its round with the first of these break-ups, whose rests grow, that goes: each as what it measures, and the round."""
    found = best
    low = 0
    high = len(breakups)
    while low < high:
        middle = (low + high) // 2
        one = with_block(best[1], place, breakups[middle])
        measured = measure(one)
        if measured > found[0]:
            found = [measured, one]
        low = middle + 1 if measured < 0 else low
        high = high if measured < 0 else middle
    return found
