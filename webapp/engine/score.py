"""What a workout counts, and the score to expect with its band."""

import math

from .held import marks_of

BAND = 0.10  # share of draws beyond each end of the band


def count_of(stint: dict, steps: int, workout: dict) -> int:
    """Return what `steps` of a stint count: repetitions, calories or seconds; of a distance the marks passed.

    Without marks a distance counts one for each lane length.
    """
    units = min(stint["amount"], steps * stint["step_units"])
    if stint["kind"] == "rest":
        return 0
    if stint["unit"] == "m":
        return int(math.floor(units / marks_of(stint, workout)[0] + 1e-9))
    return int(math.floor(units + 1e-9))


def counted(stints: list, done: list, workout: dict) -> int:
    """Return the count of a workout of which `done` steps were done, one value per stint begun."""
    total = 0
    for index in range(len(done)):
        total = total + count_of(stints[index], done[index], workout)
    return total


def full_count(stints: list, workout: dict) -> int:
    """Return the count of the whole workout."""
    return counted(stints, [stint["steps"] for stint in stints], workout)


def rounds_done(stints: list, blocks: int, count: int, workout: dict) -> list[int]:
    """Return whole rounds of `blocks` stints each that a count stands for, and the count beyond them."""
    rounds = 0
    left = count
    for round_index in range(len(stints) // blocks):
        one = full_count(stints[round_index * blocks : (round_index + 1) * blocks], workout)
        if one > left or one == 0:
            break
        left = left - one
        rounds = rounds + 1
    return [rounds, left]


def carried_on(result: dict, stints: list, planned: list, course: dict, cap_s: float | None) -> dict:
    """Return the result of somebody quicker than a plan made to end at the cap, who goes on: at the pace of its last block to the end of that, then into
    the blocks after it as much slower than their bare work as the whole plan is."""
    last = len(planned) - 1
    cut = last + 1 < len(stints) or planned[last]["steps"] < stints[last]["steps"]
    if cap_s is None or not result["finished"] or not cut or last >= len(course["stints"]):
        return result
    block_s = course["stints"][last]["end_s"] - course["stints"][last]["start_s"]
    bare_s = sum([stint["steps"] * stint["seconds"] for stint in planned])
    slower = course["stints"][last]["end_s"] / max(1.0, bare_s)
    paces = [stint["seconds"] * slower for stint in stints]
    paces[last] = block_s / max(1, planned[last]["steps"])
    return {**result, "finished": False, "done": gone_on(stints, result["done"], paces, cap_s - result["seconds"])}


def gone_on(stints: list, done: list, paces: list[float], left_s: float) -> list:
    """Return the steps of each stint begun by somebody who, after those done, goes on for `left_s` [s] at these `paces` [s a step], up to a gate."""
    made = done[:]
    index = len(made) - 1
    while index < len(stints) and stints[index]["kind"] != "gate":
        stint = stints[index]
        if index == len(made):
            made.append(0)
            left_s = left_s - stint["change_s"] - (stint["amount"] if stint["kind"] == "rest" else 0.0)
        more = min(stint["steps"] - made[index], max(0, int(math.floor(left_s / max(0.1, paces[index])))))
        made[index] = made[index] + more
        left_s = left_s - more * paces[index]
        if made[index] < stint["steps"]:
            break
        index = index + 1
    return made


def score_of(workout: dict, stints: list, likely: dict, results: list, tie_break_s: float | None) -> dict:
    """Return the score: kind, likely, low, high, finishes, finish_chance, tie_break_s, and what the ends of the band are.

    Parameters
    ----------
    stints : the whole workout. likely : how it goes as given. results : how it goes for each of the drawn people.

    Returns
    -------
    dict : for kind "time" seconds, low the quicker end, high None where that end does not finish, `high_count` its count;
    for kind "count" counts, low the lesser end, `high_s` the time where the better end finishes.
    """
    whole = full_count(stints, workout)
    ranked = sorted([rank_of(stints, result, workout) for result in results])
    edge = int(math.floor(len(ranked) * BAND))
    best = ranked[edge]
    worst = ranked[len(ranked) - 1 - edge]
    finishes = likely["finished"]
    made = {
        "kind": "time" if finishes else "count",
        "finishes": finishes,
        "finish_chance": len([1 for result in results if result["finished"]]) / len(results),
        "tie_break_s": tie_break_s,
        "count_in_all": whole,
    }
    count = counted(stints, likely["done"], workout)
    if finishes:
        seconds = likely["seconds"]
        slow_s = max(seconds, worst[1]) if worst[0] == 0 else None
        return {**made, "likely": seconds, "low": min(seconds, best[1]), "high": slow_s, "high_count": None if worst[0] == 0 else -worst[1]}
    quick_s = best[1] if best[0] == 0 else None
    high = whole if quick_s is not None else max(count, -best[1])
    low = count if worst[0] == 0 else min(count, -worst[1])
    return {**made, "likely": count, "low": low, "high": high, "high_s": quick_s}


def rank_of(stints: list, result: dict, workout: dict):
    """Return a key that sorts better results first: those who finish (0) by time, then by count, the more the better."""
    if result["finished"]:
        return (0, result["seconds"])
    return (1, -counted(stints, result["done"], workout))
