"""How far memorable plans are from the best there is, over a fixed grid of athletes and amounts, and how they compare with five naive plans."""

import math
import statistics

from webapp.engine import break_up, judge_break_up

from .exact import time_of

MAXIMA = (5, 6, 7, 8, 10, 12, 14, 16, 18, 20, 23, 26, 30, 35, 40, 50, 60)
AMOUNTS = (20, 35, 50, 75)
MANNERS = (
    {"seconds": 2.6, "set_up_s": 4.0, "entry": 0.4, "held_back": 0.15},
    {"seconds": 1.6, "set_up_s": 4.0, "entry": 0.2, "held_back": 0.05},
    {"seconds": 2.0, "set_up_s": 3.0, "entry": 0.3, "held_back": 0.25},
)
COUNTABLE_S = [*range(3, 10), *range(10, 200, 5)]


def cases():
    """Every case of the grid: 17 maxima, 4 amounts, 3 manners."""
    return [(most, amount, manner) for most in MAXIMA for amount in AMOUNTS for manner in MANNERS]


def ours(most, amount, manner):
    """Our plan's time. [s]"""
    found = break_up(
        most, amount, manner["seconds"], set_up_s=manner["set_up_s"], entry_reps=manner["entry"], held_back=manner["held_back"]
    )
    return found["time_s"]


def naive_sets(most, amount):
    """Five ways people go about it without a plan: sets each, before any rest is chosen."""
    fives = [5] * (amount // 5) + ([amount % 5] if amount % 5 else [])
    third = max(1, most // 3)
    thirds = [third] * (amount // third) + ([amount % third] if amount % third else [])
    half = max(1, amount // 2)
    return {
        "to failure, then singles": [min(most, amount)] + [1] * max(0, amount - most),
        "equal halves": [half, amount - half],
        "constant fives": fives,
        "every rep single": [1] * amount,
        "even thirds of the maximum": thirds,
    }


def naive_time(most, sets, manner):
    """The least time of these sets with one rest for all, whole seconds, that holds; inf where none does. [s]"""
    for rest_s in range(math.ceil(manner["set_up_s"]), 400):
        found = judge_break_up(
            most, sets, [rest_s] * (len(sets) - 1), manner["seconds"], set_up_s=manner["set_up_s"], entry_reps=manner["entry"]
        )
        if found["time_s"] is not None and found["lowest_reserve"] >= manner["held_back"] - 1e-9:
            return found["time_s"]
    return math.inf


def excess(most, amount, manner, rests_s):
    """Our plan's time over the reference's, as a share."""
    return ours(most, amount, manner) / time_of(most, amount, **manner, rests_s=rests_s) - 1


def main():
    """Print the table: excess over the best plan with free rests, over the best on countable rests, and cases where a naive plan was quicker."""
    print("largest set: excess over free rests, over countable rests (median, worst) in %; naive plans that were quicker")
    all_free, all_countable = [], []
    for most in MAXIMA:
        mine = [case for case in cases() if case[0] == most]
        free = [100 * excess(*case, None) for case in mine]
        countable = [100 * excess(*case, COUNTABLE_S) for case in mine]
        quicker = sum(
            naive_time(most, sets, manner) < ours(most, amount, manner) - 1e-6
            for _, amount, manner in mine for sets in naive_sets(most, amount).values()
        )  # fmt: skip
        print(f"{most:4}: {statistics.median(free):5.1f} {max(free):5.1f}   {statistics.median(countable):5.1f} {max(countable):5.1f}   {quicker}", flush=True)
        all_free += free
        all_countable += countable
    print(f" all: {statistics.median(all_free):5.1f} {max(all_free):5.1f}   {statistics.median(all_countable):5.1f} {max(all_countable):5.1f}")
