"""Rounds held evenly: the same few even sets and one rest in every round, what a tired head holds best."""

MOST_PARTS = 4  # even sets of a block in one round; chosen
ROUND_RESTS_S = [5, 10, 15, 20, 25, 30]  # between them, tried; chosen


def climbs(option: dict) -> bool:
    """Does the amount of any block change from round to round?"""
    return len([1 for block in option["blocks"] if block.get("step") is not None]) > 0


def repeated(one: list, count: int) -> list:
    """Return so many break-ups, round after round like `one`."""
    return [one[index - len(one) * (index // len(one))] for index in range(count)]


def even_breakups(stint: dict) -> list:
    """Return the stint's work in one to four even sets that the half rule allows, each with several rests."""
    made = []
    pieces = stint["steps"] // stint["piece_steps"]
    for parts in range(1, min(MOST_PARTS, pieces) + 1):
        size = -(-pieces // parts)
        if size > stint["below_half"] and stint["steps"] * 2 > stint["max_steps"]:
            continue
        sets = [size * stint["piece_steps"]] * ((pieces - 1) // size)
        sets.append(stint["steps"] - sum(sets))
        rests_s = [rest_s for rest_s in ROUND_RESTS_S if rest_s >= max(stint["set_up_s"], stint["single_wait_s"])]
        for rest_s in rests_s if len(sets) > 1 else [0]:
            made.append({"sets": sets, "rests_s": [rest_s] * (len(sets) - 1), "lead_s": 0.0, "plan": []})
    return made


def best_round(stints: list, start: list, most: float, measure) -> list:
    """Return a round, one block after another given the even sets and the rest that measure most, `start` where none measures more than `most`.

    `measure` : function of a round's break-ups to a number. Of those that measure the same the fewest sets and the shortest rest are taken.
    """
    best = start
    for place in range(len(start)):
        for breakup in even_breakups(stints[place]) if stints[place]["kind"] == "local" else []:
            other = best[:]
            other[place] = breakup
            found = measure(other)
            if found > most:
                most = found
                best = other
    return best
