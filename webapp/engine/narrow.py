"""Which number would narrow the band: how much of the score's spread comes from each."""

import math

from .parameters import EFFORT_M, LUNGS_TESTED_SD, NARROWS, TESTED_SD


def spread_from(logs: list[float], scores: list[float]) -> float:
    """Return the share of the scores' variance that goes along with one number, given by its logarithm for each of the people. [0–1]"""
    count = len(scores)
    mean_log = sum(logs) / count
    mean_score = sum(scores) / count
    both = sum([(logs[place] - mean_log) * (scores[place] - mean_score) for place in range(count)])
    own = sum([(log - mean_log) * (log - mean_log) for log in logs])
    all_of_it = sum([(score - mean_score) * (score - mean_score) for score in scores])
    return both * both / (own * all_of_it) if own > 1e-12 and all_of_it > 1e-12 else 0.0


def narrowing(stints: list, people: list, results: list) -> list:
    """Return the numbers not yet given whose test would narrow the band by a fifth or more, the most telling first.

    Parameters
    ----------
    results : how the plan went for each of the people, as they felt.

    Returns
    -------
    list : mappings with code `test_narrows`, movement, number (a code too: which one to tell), to_fraction: width of the band with the number
    tested, as a share of now's. [0–1]
    """
    scores = []
    for result in results:
        undone_s = 0.0
        for index, steps in enumerate(result["done"]):
            undone_s = undone_s + (stints[index]["steps"] - steps) * stints[index]["seconds"]
        for index in range(len(result["done"]), len(stints)):
            undone_s = undone_s + stints[index]["steps"] * stints[index]["seconds"]
        scores.append(result["seconds"] + undone_s)
    found = []
    seen = []
    for index, stint in enumerate(stints):
        number = number_of(stint)
        if number == "" or number in seen:
            continue
        seen.append(number)
        breath = stint["kind"] == "paced"
        tested = LUNGS_TESTED_SD / stint["breath_sd"] if breath else TESTED_SD / stint["sd"]
        logs = [person["breath"] if breath else math.log(person["factors"][index]) for person in people]
        to_fraction = math.sqrt(1 - spread_from(logs, scores) * (1 - tested * tested))
        if to_fraction <= NARROWS:
            found.append(told_narrows(stint["movement"], "effort" if breath else stint["filled"][0], to_fraction))
    return sorted(found, key=lambda one: one["to_fraction"])


def number_of(stint: dict) -> str:
    """Return what number not yet given a stint hangs on: the largest set of its movement, or the breath, told by one effort for all; an empty text for none."""
    if stint["kind"] == "paced" and EFFORT_M.get(stint["movement"]) is not None and stint["breath_sd"] > LUNGS_TESTED_SD:
        return "breath"
    return stint["movement"] if stint["kind"] == "local" and len(stint["filled"]) > 0 and stint["sd"] > TESTED_SD else ""


def told_narrows(movement: str, number: str, to_fraction: float) -> dict:
    """Return the reason that a number of the athlete's own at a movement would narrow the band; `number` is its kind, as in `questions`."""
    return {"code": "test_narrows", "movement": movement, "number": {"code": "own_" + number}, "to_fraction": to_fraction}
