"""Seeded draws over the doubt in the numbers: how often a plan fails, what time to expect, the 10–90 % band.

The same seed gives the same draws on server and phone: a small generator of our own on whole numbers below 2^53.
"""

import math

from .parameters import CADENCE_SD, RECOVERY_SD
from .whole import LONGEST_S, at_rest, live_through

DRAWS = 40  # in pairs z, −z; chosen: twice as many moved the band's ends by under 0.5 %
MOST_AHEAD = 0.5  # on the logarithm of time; chosen: beyond, the ladder of cautions says nothing
MODULUS = 2147483647  # Park & Miller 1988, "minimal standard" generator with the multiplier 48271
MULTIPLIER = 48271


class Dice:
    """A stream of standard normal numbers."""

    def __init__(self, seed: int):
        self.state = 1 + (abs(seed) * 7919 + 104729) % (MODULUS - 1)

    def uniform(self) -> float:
        """Return the next number in 0–1, ends left out."""
        self.state = self.state * MULTIPLIER % MODULUS
        return self.state / MODULUS

    def normal(self) -> float:
        """Return the next standard normal number, as twelve uniform ones less six: no sine, the same to the last bit everywhere."""
        total = -6.0
        for _ in range(12):
            total = total + self.uniform()
        return total


def movements_of(stints: list) -> list:
    """Return the movements of the stints, each once, in order."""
    movements = []
    for stint in stints:
        if stint["movement"] not in movements:
            movements.append(stint["movement"])
    return movements


def draw_people(stints: list, seed: int, gain: float) -> list:
    """Return people who could be this athlete: capacity and pace per movement, and g, each log-normal around what is believed."""
    dice = Dice(seed)
    movements = movements_of(stints)
    people = []
    for _ in range(DRAWS // 2):
        capacity = [dice.normal() for movement in movements]
        pace = [dice.normal() for movement in movements]
        recovery = dice.normal()
        for sign in [1.0, -1.0]:
            people.append(
                {
                    "factors": [math.exp(sign * capacity[movements.index(stint["movement"])] * stint["sd"]) for stint in stints],
                    "paces": [math.exp(sign * pace[movements.index(stint["movement"])] * CADENCE_SD) for stint in stints],
                    "gain": gain * math.exp(sign * recovery * RECOVERY_SD),
                    "ahead": 0.0,
                }
            )
    return people


def outcomes(stints: list, breakups: list, people: list, cap_s: float | None) -> list:
    """Return how the plan goes for each of the people, up to the cap; who goes as they feel lives through it e^ahead times as fast."""
    until_s = LONGEST_S if cap_s is None else cap_s
    results = []
    for person in people:
        faster = math.exp(max(-MOST_AHEAD, min(MOST_AHEAD, person["ahead"])))
        result = live_through(stints, breakups, person["factors"], person["paces"], person["gain"], until_s * faster, at_rest())
        result["seconds"] = result["seconds"] / faster
        results.append(result)
    return results


def fail_share(results: list) -> float:
    """Return the share of people with any failed step. [0–1]"""
    return len([1 for result in results if sum(result["fails"]) > 0]) / len(results)


def fail_share_of(results: list, index: int) -> float:
    """Return the share of people with a failed step in one stint. [0–1]"""
    return len([1 for result in results if index < len(result["fails"]) and result["fails"][index] > 0]) / len(results)
