"""The reserve model against published tables of sets to failure (`tests/reference/multi_set_reps.csv`).

The studies do not report seconds per repetition: 3.0 s is a chosen value, a usual pace in a laboratory. Between 2 and 3 s the model is within
0.131, at 3.5 s 0.150, at 4 s 0.173 of the first set: slower repetitions would want another fit. That the stated parameters are nearly the best
does not hold, see `test_open_faults.py`.
"""

import math

import pytest
from reference_tables import rows

from webapp.engine import reps_over_sets

SECONDS_PER_REP = 3.0  # chosen, see above
HALF = 0.5  # a "10RM" is a load at which 10 go and 11 do not: mid-way, as `cost_per_rep` takes it
TABLE = rows("multi_set_reps.csv")
MOST_RMS = 0.14  # of the first set: the tolerance agreed for these tables; the studies differ among themselves by as much


@pytest.fixture(scope="module", autouse=True)
def costs_found_once():
    """Not here: the model's parameters change from test to test."""


def modelled(row, seconds_per_rep=SECONDS_PER_REP):
    """Repetitions of three sets; where the study stopped at a cap, so does the model."""
    largest = row["set1"] if row["cap"] is None else row["cap"] + HALF
    return reps_over_sets(largest, seconds_per_rep, row["rest_s"], 3, cap=row["cap"])


def rms(seconds_per_rep=SECONDS_PER_REP):
    """Root mean square of (model − observed) over the first set, sets 2 and 3 of all conditions."""
    squares = []
    for row in TABLE:
        done = modelled(row, seconds_per_rep)
        squares += [((done[index] - row[f"set{index + 1}"]) / row["set1"]) ** 2 for index in (1, 2)]
    return math.sqrt(math.fsum(squares) / len(squares))


def test_sets_two_and_three_of_seven_conditions_are_met():
    assert len(TABLE) == 7
    assert rms() <= MOST_RMS


@pytest.mark.parametrize("seconds_per_rep", [2.0, 2.5])
def test_quicker_repetitions_are_met_as_well(seconds_per_rep):
    assert rms(seconds_per_rep) <= MOST_RMS


@pytest.mark.parametrize("row", TABLE, ids=lambda row: f"{row['exercise']} {row['rest_s']:.0f}s")
def test_the_first_set_is_the_one_given_and_later_sets_get_fewer(row):
    done = modelled(row)
    assert done[0] == pytest.approx(row["set1"] if row["cap"] is None else row["cap"], abs=1e-6)
    assert done[0] > done[1] > done[2]
    assert row["set1"] > row["set2"] > row["set3"]  # as in the study


@pytest.mark.parametrize("exercise", ["knee extension", "barbell curl"])
def test_longer_rests_leave_more_repetitions(exercise):
    short, long = (row for row in TABLE if row["exercise"] == exercise)
    assert short["rest_s"] < long["rest_s"]
    for index in (1, 2):
        share_short = modelled(short)[index] / short["set1"]
        assert modelled(long)[index] / long["set1"] > share_short
        assert long[f"set{index + 1}"] / long["set1"] > short[f"set{index + 1}"] / short["set1"]  # as in the study
