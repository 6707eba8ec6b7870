"""What slow fatigue is worth: the time that a little more of it, left by one stint, costs all stints to come.

The search of a stint is told a price for the slow fatigue it leaves, `whole.later_of`'s guess at first. With the whole workout broken up, the true
price can be read off it: from the last stint back to the first, each is given a little more and a little less slow fatigue to begin with, its rests
fitted anew, and what that costs, its own later price included, is what the stints before it are charged.
"""

import math

from .one_stint import Later, break_up_stint
from .parameters import SLOW_TIME_CONSTANT_S
from .reserve import Fatigue, twin
from .search import LEAST_BUDGET
from .segments import ALL_SLOTS, SLOTS
from .stint_segment import able_factor, segment_of
from .whole import Start, break_up_all, do_stint, pass_change_over, still_to_come

A_LITTLE = 0.2  # slow fatigue, more and less; chosen: of 0.03 to 0.2 the one that left fewest naive plans quicker
TURNS = 3  # times that the workout is broken up anew; chosen: a fourth gained nothing on the benchmark's grid
SAME_PRICE = 0.2  # share by which a price may differ and count as the same; chosen: 0.05 gained nothing for a quarter more computing
MOST_WEIGHED = 40  # stints up to which this is done; chosen: the time it takes grows with them


def at_worth(stints: list, breakups: list, factors: list[float], gain: float, start: Start) -> list:
    """Return the break-ups of all stints, made anew at the price slow fatigue is worth for as long as that is quicker.

    What it is worth holds for a little more or less of it. Where prices went too far to make anything quicker, ones half-way back are tried, once.
    """
    best = breakups
    if len(stints) > MOST_WEIGHED or len(breakups) == 0:
        return best
    prices = worths(stints, best, factors, gain, start)
    too_far = False
    for _ in range(TURNS):
        same = 0
        while same < len(best) and suits(best[same], prices[same]):
            same = same + 1
        if same == len(best):
            break
        kept = [{**breakup, "kept": index < same} for index, breakup in enumerate(best)]
        other = break_up_all(stints, factors, gain, kept if too_far else kept[:same], start, prices)
        quicker = other[len(other) - 1]["end_s"] < best[len(best) - 1]["end_s"]
        best = other if quicker else best
        if too_far:
            break
        too_far = not quicker
        if quicker:
            prices = worths(stints, best, factors, gain, start)
        else:
            prices = [math.sqrt(prices[index] * breakup["price"]) for index, breakup in enumerate(best)]
    return best


def suits(breakup: dict, price: float) -> bool:
    """Is a break-up as good at this price as at the one it was found with? Unbroken work stays so where fatigue is cheaper. [s]"""
    if len(breakup["sets"]) == 1 and price <= breakup["price"]:
        return True
    return abs(price - breakup["price"]) <= SAME_PRICE * max(price, breakup["price"])


def worths(stints: list, breakups: list, factors: list[float], gain: float, start: Start) -> list[float]:
    """Return what slow fatigue in the primary slot at the end of each stint costs the stints after it. [s for all of it]"""
    states = []
    spans_s = []
    fatigue = twin(start.fatigue)
    clock = start.clock_s
    for index in range(len(breakups)):
        begun = clock
        clock = clock + pass_change_over(fatigue, stints[index], index > 0 or start.changes)
        states.append(twin(fatigue))
        segment = segment_of(stints[index], able_factor(stints[index], factors[index]), 1.0)
        clock = clock + do_stint(fatigue, stints[index], breakups[index], segment, gain, clock).seconds
        spans_s.append(clock - begun)
    worth = [0.0 for slot in ALL_SLOTS]  # of each slot, at the moment looked at: the end, then ever earlier
    prices = [0.0 for stint in stints]
    for back in range(len(breakups)):
        index = len(breakups) - 1 - back
        stint = stints[index]
        if len(stint["slots"]) > 0 and not stint["rest_follows"]:
            prices[index] = worth[stint["slots"][0]]
        worth = [price * math.exp(-spans_s[index] / SLOW_TIME_CONSTANT_S) for price in worth]
        if stint["kind"] == "local":
            later = Later(still_to_come(stints, index, ["local"]), prices[index], LEAST_BUDGET, True)
            worth[stint["slots"][0]] = dearer(states[index], stint, breakups[index], factors[index], gain, later)
        for slot in ALL_SLOTS:
            if SLOTS[slot] == stint["primary"]:
                worth[slot] = worth[slot] * stint.get("handover", 1.0)
    return prices


def dearer(fatigue: Fatigue, stint: dict, breakup: dict, factor: float, gain: float, later: Later) -> float:
    """Return what a stint costs more for slow fatigue it is begun with in its primary slot, its sets kept, its rests fitted. [s for all of it]

    Where it cannot be done at all so tired, the price that later work gives stands.
    """
    slot = stint["slots"][0]
    less = min(A_LITTLE, fatigue.slow[slot])
    costs_s = []
    for change in [-less, A_LITTLE]:
        begun = twin(fatigue)
        begun.slow[slot] = begun.slow[slot] + change
        hints = [breakup["plan"]] if len(breakup["plan"]) > 0 else []
        costs_s.append(break_up_stint(begun, stint, factor, gain, later, hints)["cost_s"])
    if costs_s[1] == math.inf:
        return later.price
    return max(0.0, costs_s[1] - costs_s[0]) / (A_LITTLE + less)
