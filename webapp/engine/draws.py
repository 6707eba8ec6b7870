"""Seeded draws over the doubt in the numbers: how often a plan fails, what time to expect, the 10–90 % band.

The same seed gives the same draws on server and phone: a small generator of our own on whole numbers below 2^53.
"""

import math

from .parameters import CADENCE_SD, RECOVERY_SD
from .whole import LONGEST_S, at_rest, live_through

STRATA = [  # sizes of a standard normal number in equally likely parts, scaled to a mean square of 1: half of the first 24 people, and of 16 more
    [0.0536, 0.1615, 0.2712, 0.3841, 0.5019, 0.6266, 0.7614, 0.9109, 1.0827, 1.2918, 1.5752, 2.0913],
    [0.0816, 0.2468, 0.4185, 0.6026, 0.8079, 1.0509, 1.3714, 1.9382],
]
HARD_SHARE_OF_COST = 0.6  # of the primary slot's cost; chosen
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


def spread(dice: Dice) -> list[float]:
    """Return one standard normal number per pair of people: of each of STRATA every size once, order and sign drawn.

    Plain draws of so few people are off by a sixth in their spread: at seed 1 a plan "failing 5 %" failed 11 % in truth.
    """
    numbers = []
    for sizes in STRATA:
        left = sizes[:]
        while len(left) > 0:
            size = left.pop(int(dice.uniform() * len(left)))
            numbers.append(size if dice.uniform() < 0.5 else -size)
    return numbers


def movements_of(stints: list) -> list:
    """Return the movements of the stints, each once, in order."""
    movements = []
    for stint in stints:
        if stint["movement"] not in movements:
            movements.append(stint["movement"])
    return movements


def draw_people(stints: list, seed: int, gain: float) -> list:
    """Return people who could be this athlete, in pairs z, −z: capacity and pace per movement, g and CP, each log-normal around what is believed.

    `breath` is how far the logarithm of CP is off, in standard deviations.
    """
    dice = Dice(seed)
    movements = movements_of(stints)
    capacities = [spread(dice) for movement in movements]
    paces = [spread(dice) for movement in movements]
    recoveries = spread(dice)
    breaths = spread(dice)
    people = []
    for pair in range(len(recoveries)):
        capacity = [numbers[pair] for numbers in capacities]
        pace = [numbers[pair] for numbers in paces]
        recovery = recoveries[pair]
        for sign in [1.0, -1.0]:
            people.append(
                {
                    "factors": [math.exp(sign * capacity[movements.index(stint["movement"])] * stint["sd"]) for stint in stints],
                    "paces": [pace_of(stint, sign * pace[movements.index(stint["movement"])], sign * breaths[pair]) for stint in stints],
                    "breath": sign * breaths[pair],
                    "gain": gain * math.exp(sign * recovery * RECOVERY_SD),
                    "ahead": 0.0,
                }
            )
    return people


def pace_of(stint: dict, cadence: float, breath: float) -> float:
    """Return the seconds of a stint as a multiple of the usual, for a cadence and a CP so many standard deviations off."""
    return math.exp(cadence * CADENCE_SD - breath * slower_by_breath(stint))


def slower_by_breath(stint: dict) -> float:
    """Return by how much paced work slows, on the logarithm of its seconds, for a CP one standard deviation lower: power goes with the speed, a flywheel's
    with its cube."""
    doubt = stint.get("breath_sd", 0.0)  # plans stored before it was known lack it
    return doubt / 3 if stint.get("by_speed", False) else doubt


def lean(stints: list) -> list:
    """Return the stints with only the slots that could stop somebody: those that lead in some stint, and those loaded nearly as hard.

    Draws are many, and the light shares never decide them; the plan itself is made and shown with all.
    """
    leading = [stint["slots"][0] for stint in stints if len(stint["slots"]) > 0]
    made = []
    for stint in stints:
        slots = []
        costs = []
        for position in range(len(stint["slots"])):
            hard = stint["costs"][position] >= HARD_SHARE_OF_COST * stint["costs"][0]
            if position == 0 or hard or stint["slots"][position] in leading:
                slots.append(stint["slots"][position])
                costs.append(stint["costs"][position])
        made.append({**stint, "slots": slots, "costs": costs})
    return made


def outcomes(stints: list, breakups: list, people: list, cap_s: float | None, most_fail: int) -> list:
    """Return how the plan goes for each of the people, up to the cap, and no further once more than `most_fail` have failed.

    Who goes as they feel lives through it e^ahead times as fast.
    """
    until_s = LONGEST_S if cap_s is None else cap_s
    few_slots = lean(stints)
    results = []
    failed = 0
    for person in people:
        faster = math.exp(max(-MOST_AHEAD, min(MOST_AHEAD, person["ahead"])))
        result = live_through(few_slots, breakups, person["factors"], person["paces"], person["gain"], until_s * faster, at_rest())
        result["seconds"] = result["seconds"] / faster
        results.append(result)
        failed = failed + (1 if sum(result["fails"]) > 0 else 0)
        if failed > most_fail:
            break
    return results


def weakest_first(people: list) -> list:
    """Return the people, first those with least of what they have least of: they fail first."""
    return sorted(people, key=lambda person: min(person["factors"]))


def tried_on(results: list) -> dict:
    """Return how many people went through a plan, and how many of them failed a step."""
    return {"people": len(results), "fail": len([1 for result in results if sum(result["fails"]) > 0])}


def fail_share(results: list) -> float:
    """Return the share of people with any failed step. [0–1]"""
    went = tried_on(results)
    return went["fail"] / went["people"]


def fail_share_of(results: list, index: int) -> float:
    """Return the share of people with a failed step in one stint. [0–1]"""
    return len([1 for result in results if index < len(result["fails"]) and result["fails"][index] > 0]) / len(results)
