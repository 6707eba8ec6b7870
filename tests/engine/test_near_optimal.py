"""Memorable break-ups of one movement against the best there is, over 204 cases (`tests/reference/single_block_optimum.csv`), and against naive ones."""

import statistics

import pytest
from benchmarks.optimum import MANNERS, naive_sets, naive_time, ours
from reference_tables import rows

pytestmark = pytest.mark.slow
GOAL_IN_THE_MEDIAN = 0.02
FOUND_AT_WORST = 0.08  # found 2026-11-25: 7.7 %; the goal, 4 %, is not reached where sets are of one and two: DEVELOPERS.md, "Benchmarks"
NAIVE_EVERY = 5  # cases


@pytest.fixture(scope="module")
def cases():
    """Every case: largest set, amount, manner, the best time [s], ours [s]."""
    found = []
    for row in rows("single_block_optimum.csv"):
        most, amount, manner = int(row["largest"]), int(row["reps"]), MANNERS[int(row["manner"])]
        found.append((most, amount, manner, row["best_s"], ours(most, amount, manner)))
    return found


def test_nearly_as_quick_as_the_best_with_free_rests(cases):
    assert len(cases) == 204
    excess = [our_s / best_s - 1 for _, _, _, best_s, our_s in cases]
    assert min(excess) > -0.005  # the reference stands on a grid of fatigue and of half seconds
    assert statistics.median(excess) <= GOAL_IN_THE_MEDIAN
    assert max(excess) <= FOUND_AT_WORST


def test_never_slower_than_five_naive_plans(cases):
    """To failure then singles, equal halves, constant fives, every repetition single, even thirds: each with the least one rest that holds."""
    for most, amount, manner, _, our_s in cases[::NAIVE_EVERY]:
        for name, sets in naive_sets(most, amount).items():
            assert our_s <= naive_time(most, sets, manner) * 1.01 + 1e-6, (most, amount, manner, name)  # 1 %: the rule of fewest breaks
