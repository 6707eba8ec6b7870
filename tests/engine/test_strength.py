"""Repetitions at a load against the published relations (`tests/reference/`, section by file)."""

import math

import pytest
from reference_tables import rows

from webapp.engine.strength import FORMULAS, load_fraction, reps_at_load, reps_at_other_load, reps_by

PRINTED = 0.05  # percent: the table is printed to one place
TABLE = rows("load_repetitions.csv")


def by_hand(formula, reps, load):
    """The one-rep max as the formulas are written (from memory, high confidence)."""
    return {
        "epley": load * (1 + reps / 30),
        "brzycki": 36 * load / (37 - reps),
        "lander": 100 * load / (101.3 - 2.67123 * reps),
        "lombardi": load * reps**0.1,
        "mayhew": 100 * load / (52.2 + 41.9 * math.exp(-0.055 * reps)),
        "oconner": load * (1 + 0.025 * reps),
        "wathan": 100 * load / (48.8 + 53.8 * math.exp(-0.075 * reps)),
    }[formula]


@pytest.mark.parametrize("formula", FORMULAS)
@pytest.mark.parametrize("row", TABLE, ids=lambda row: f"{row['reps']:.0f} reps")
def test_every_formula_gives_its_printed_percentage(formula, row):
    assert 100 * load_fraction(formula, row["reps"]) == pytest.approx(row[formula], abs=PRINTED + 1e-9)


@pytest.mark.parametrize("formula", FORMULAS)
def test_every_formula_is_the_one_written_for_the_one_rep_max(formula):
    for reps in (2, 5, 8, 12, 20, 30):
        assert load_fraction(formula, reps) == pytest.approx(60 / by_hand(formula, reps, 60), rel=1e-12)


def test_epley_and_brzycki_agree_exactly_at_ten():
    """1/(1 + 10/30) = (37 − 10)/36 = 3/4."""
    assert load_fraction("epley", 10) == pytest.approx(0.75, rel=1e-15)
    assert load_fraction("brzycki", 10) == pytest.approx(0.75, rel=1e-15)


@pytest.mark.parametrize("formula", FORMULAS)
def test_more_repetitions_are_never_done_with_more(formula):
    loads = [load_fraction(formula, reps) for reps in range(1, 37)]
    assert loads == sorted(loads, reverse=True)


@pytest.mark.parametrize("formula", FORMULAS)
def test_repetitions_and_load_are_each_other_s_inverse(formula):
    for reps in (1.5, 5, 10, 18, 30):
        assert reps_by(formula, load_fraction(formula, reps)) == pytest.approx(reps, abs=1e-6)


@pytest.mark.parametrize("row", [row for row in rows("handbook_chart.csv") if 2 <= row["reps"] <= 10], ids=lambda row: f"{row['reps']:.0f}")
def test_the_handbook_chart_lies_within_the_range(row):
    """To 2.5 % of the load: the chart's own steps are 2 to 3 %."""
    step = 0.025
    loads = [load_fraction(formula, row["reps"]) for formula in FORMULAS]
    assert min(loads) - step <= row["percent_of_1rm"] / 100 <= max(loads) + step


@pytest.mark.parametrize("row", [row for row in rows("handbook_chart.csv") if row["reps"] <= 10], ids=lambda row: f"{row['reps']:.0f}")
def test_the_likely_repetitions_are_the_handbook_s_within_one(row):
    assert reps_at_load(100, row["percent_of_1rm"])["likely"] == pytest.approx(row["reps"], abs=1.05)


@pytest.mark.parametrize("row", [row for row in rows("reps_at_percent.csv") if row["exercise"] == "bench press"], ids=lambda row: str(row["percent_of_1rm"]))
def test_the_range_meets_the_observed_range_in_the_bench_press(row):
    at = reps_at_load(100, row["percent_of_1rm"])
    assert at["low"] <= row["high"]
    assert at["high"] >= row["low"]


def test_the_leg_press_goes_beyond_what_the_relations_say():
    """A limit to be known: people do more in the leg press (13.1 and 19.0 observed) than the formulas, made for barbell lifts, expect."""
    for row in rows("reps_at_percent.csv"):
        if row["exercise"] == "leg press":
            assert reps_at_load(100, row["percent_of_1rm"])["likely"] < row["reps"]


def test_the_answer_is_a_range_with_the_likely_inside():
    for load_kg in range(50, 100, 5):
        at = reps_at_load(100, load_kg)
        assert at["low"] <= at["likely"] <= at["high"]
        assert at["high"] > at["low"]


def test_a_lighter_load_never_allows_fewer():
    for name in ("low", "likely", "high"):
        reps = [reps_at_load(120, load_kg)[name] for load_kg in range(30, 121, 5)]
        assert reps == sorted(reps, reverse=True)


def test_above_the_one_rep_max_nothing_goes():
    assert reps_at_load(80, 80.5)["high"] == 0
    assert reps_at_load(80, 80)["likely"] == pytest.approx(1, abs=0.2)


def test_it_says_where_the_relation_no_longer_holds():
    """Beyond 15 repetitions the formulas part ways (61 to 76 % of the one-rep max, `load_repetitions.csv`)."""
    assert reps_at_load(100, 75)["inside"] is True
    assert reps_at_load(100, 55)["inside"] is False


def test_the_same_load_allows_the_same_set():
    assert reps_at_other_load(12, 40, 40) == pytest.approx(12)


def test_another_load_goes_through_epley_both_ways():
    """12 at 40 kg: 1RM 40·(1 + 12/30) = 56; at 50 kg 30·(56/50 − 1) = 3.6. Hand arithmetic."""
    assert reps_at_other_load(12, 40, 50) == pytest.approx(3.6)
    assert reps_at_other_load(12, 40, 60) == 0
