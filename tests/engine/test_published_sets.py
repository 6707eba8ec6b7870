"""The reserve model against published tables of sets to failure (`tests/reference/multi_set_reps.csv`).

The studies do not report seconds per repetition: 3.0 s is a chosen value, a usual pace in a laboratory. Between 2 and 3 s the model is within
0.131, at 3.5 s 0.150, at 4 s 0.173 of the first set: slower repetitions would want another fit. The four fitted parameters were fitted in
the model's first form, where a set to failure took whole repetitions only (`first_form`); that fit is repeated here.
"""

import math

import pytest
from reference_tables import rows
from scipy.optimize import minimize

from webapp.engine import parameters, reps_over_sets, reserve
from webapp.engine.reserve import Effort, cost_reaching, fresh, perform, recover, reps_to_failure

SECONDS_PER_REP = 3.0  # chosen, see above
HALF = 0.5  # a "10RM" is a load at which 10 go and 11 do not: mid-way, as `cost_per_rep` takes it
TABLE = rows("multi_set_reps.csv")
FITTED = ["QUICK_TIME_CONSTANT_S", "SLOW_TIME_CONSTANT_S", "SLOW_GAIN", "SLOW_THRESHOLD"]
NEARLY_BEST = 0.02  # of the first set: how much better than the stated parameters the best may be; found 2026-11-25: 0.017
MOST_RMS = 0.14  # of the first set: the tolerance agreed for these tables; the studies differ among themselves by as much


@pytest.fixture(scope="module", autouse=True)
def costs_found_once():
    """Not here: the model's parameters change from test to test."""


def modelled(row, seconds_per_rep=SECONDS_PER_REP):
    """Repetitions of three sets; where the study stopped at a cap, so does the model."""
    largest = row["set1"] if row["cap"] is None else row["cap"] + HALF
    return reps_over_sets(largest, seconds_per_rep, row["rest_s"], 3, cap=row["cap"])


def first_form(row, gain):
    """The same as the parameters were fitted: the count is continuous, the state after a set takes the whole repetitions of it."""
    largest = row["set1"] if row["cap"] is None else row["cap"] + HALF
    effort = Effort([0], [cost_reaching(largest, SECONDS_PER_REP, 0.0, gain)], SECONDS_PER_REP, 0.0)
    fatigue, done = fresh(1), []
    for _ in range(3):
        before = fatigue.quick[0], fatigue.slow[0]
        reps = reps_to_failure(fatigue, effort, gain)
        if row["cap"] is not None and reps >= row["cap"]:
            fatigue.quick[0], fatigue.slow[0] = before
            perform(fatigue, effort, int(row["cap"]), gain)
            reps = row["cap"]
        done.append(reps)
        recover(fatigue, [0], row["rest_s"])
    return done


def rms(seconds_per_rep=SECONDS_PER_REP, model=modelled):
    """Root mean square of (model − observed) over the first set, sets 2 and 3 of all conditions."""
    squares = []
    for row in TABLE:
        done = model(row, seconds_per_rep)
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


def rms_with(monkeypatch, values):
    """The same in the form that was fitted, with other values of the four fitted parameters."""
    gain = values[FITTED.index("SLOW_GAIN")]
    for name, value in zip(FITTED, values, strict=True):
        if name != "SLOW_GAIN":
            monkeypatch.setattr(reserve, name, float(value))
    return rms(model=lambda row, _seconds_per_rep: first_form(row, gain))


def stated():
    """The four parameters as stated."""
    return [getattr(parameters, name) for name in FITTED]


@pytest.mark.parametrize("place", range(4), ids=FITTED)
@pytest.mark.parametrize("factor", [0.8, 0.9, 1.1, 1.2])
def test_no_parameter_alone_fits_much_better(monkeypatch, place, factor):
    values = stated()
    values[place] *= factor
    assert rms_with(monkeypatch, values) > rms_with(monkeypatch, stated()) - NEARLY_BEST / 2


def test_the_fit_repeated_is_hardly_better_than_the_stated_values(monkeypatch):
    """Least squares by an outside optimiser (scipy, Nelder–Mead), started at the stated values."""
    found = minimize(lambda values: rms_with(monkeypatch, values), stated(), method="Nelder-Mead", options={"maxiter": 120})
    assert rms_with(monkeypatch, stated()) - found.fun <= NEARLY_BEST
    assert found.x == pytest.approx(stated(), rel=0.4)  # the valley is flat, but it is this valley
