"""Which number would narrow the band: how much of the score's spread comes from each."""

import math

from .parameters import NARROWS, TESTED_SD


def spread_from(people: list, index: int, scores: list[float]) -> float:
    """Return the share of the scores' variance that goes along with one stint's capacity. [0–1]"""
    logs = [math.log(person["factors"][index]) for person in people]
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
    list : mappings with code `test_narrows`, movement, to_fraction: width of the band with the number tested, as a share of now's. [0–1]
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
        if stint["kind"] != "local" or stint["movement"] in seen or stint["sd"] <= TESTED_SD:
            continue
        seen.append(stint["movement"])
        tested = TESTED_SD / stint["sd"]
        to_fraction = math.sqrt(1 - spread_from(people, index, scores) * (1 - tested * tested))
        if to_fraction <= NARROWS:
            found.append({"code": "test_narrows", "movement": stint["movement"], "to_fraction": to_fraction})
    return sorted(found, key=lambda one: one["to_fraction"])
