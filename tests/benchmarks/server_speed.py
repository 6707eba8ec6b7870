"""How long the server takes: a plan for six blocks by the Python engine and by the phones' engine in V8, and a class of two hundred."""

import multiprocessing
import os
import statistics
import time
from concurrent.futures import ProcessPoolExecutor

from webapp import engine, movements, quick_engine

RUNS = 15
CLASS = 200
BLOCKS = [
    {"movement": "row", "amount": 500, "unit": "m"},
    {"movement": "ring-dip", "amount": 40, "unit": "reps"},
    {"movement": "sandbag-carry", "amount": 80, "unit": "m", "mark_every": 10, "load_kg": {"a": 40, "b": 30}},
    {"movement": "push-up", "amount": 30, "unit": "reps"},
    {"movement": "overhead-lunge", "amount": 40, "unit": "m", "mark_every": 5, "load_kg": {"a": 15, "b": 10}},
    {"movement": "handstand-walk", "amount": 20, "unit": "m", "mark_every": 2},
]
SIX_BLOCKS = {
    "schema": 1, "title": "Six blocks", "shape": "for_time", "cap_s": 900, "lane": {"length_m": 10},
    "divisions": [{"key": "a", "name": "Men"}, {"key": "b", "name": "Women"}],
    "options": [{"key": "prescribed", "name": "As prescribed", "rounds": 1, "tie_break_after_block": 1, "blocks": BLOCKS}],
    "movements": movements.freeze([block["movement"] for block in BLOCKS]),
}  # fmt: skip


def numbers(athlete):
    """A class's athletes: the same spread of numbers at every run."""
    level = ("new", "regular", "keen", "expert")[athlete % 4]
    return {"level": level, "movements": {"ring-dip": {"max_unbroken": 4 + athlete % 23}, "push-up": {"max_unbroken": 12 + athlete % 37}}}


def planned(athlete):
    """The plan of one of the class; what it takes is all that matters."""
    quick_engine.plan(SIX_BLOCKS, numbers(athlete), {"style": "even"})


def main():
    """Print the median plan for each style by both engines, and the class on all processors, V8 started anew in each."""
    for style in ("steady", "even", "bold"):
        for name, asked in (("Python", engine), ("V8", quick_engine)):
            times = []
            for _ in range(RUNS):
                start = time.perf_counter()
                asked.plan(SIX_BLOCKS, numbers(10), {"style": style})
                times.append(1000 * (time.perf_counter() - start))
            print(f"plan, six blocks, {style}, {name}: median {statistics.median(times):.0f} ms, least {min(times):.0f} ms")
    spawned = multiprocessing.get_context("spawn")  # V8 does not live through a fork
    with ProcessPoolExecutor(mp_context=spawned) as processors:
        list(processors.map(planned, range(4 * os.cpu_count())))
        start = time.perf_counter()
        list(processors.map(planned, range(CLASS), chunksize=5))
        print(f"a class of {CLASS} on {os.cpu_count()} processors: {time.perf_counter() - start:.1f} s")
