"""Repetitions at a load, from the published relations between load and repetitions to failure.

w is the load, r the repetitions to failure, 1RM the one-rep max. The seven formulas were made for heavy barbell lifts and
2 to about 15 repetitions; they differ among themselves by more than they are wrong, so `reps_at_load` gives a range. Formulas from
memory, checked against each other and the handbook chart in `tests/engine/test_strength.py`.
"""

import math

RELATION_HOLDS_TO_REPS = 15  # beyond, the formulas part ways: at 15 they give 61 to 76 % of 1RM
SHARE_REPS = 30.0  # largest set up to which a load is told from it; chosen
HEAVIEST_SHARE = 0.92  # of the one-rep max, that of three repetitions; chosen
FORMULAS = ["epley", "brzycki", "lander", "lombardi", "mayhew", "oconner", "wathan"]


def load_fraction(formula: str, reps: float) -> float:
    """Return the load that goes for `reps` repetitions (1–36), as a share of the one-rep max. [0–1]"""
    if formula == "epley":
        return 1 / (1 + reps / 30)
    if formula == "brzycki":
        return (37 - reps) / 36
    if formula == "lander":
        return (101.3 - 2.67123 * reps) / 100
    if formula == "lombardi":
        return 1 / math.pow(reps, 0.1)
    if formula == "mayhew":
        return (52.2 + 41.9 * math.exp(-0.055 * reps)) / 100
    if formula == "oconner":
        return 1 / (1 + 0.025 * reps)
    return (48.8 + 53.8 * math.exp(-0.075 * reps)) / 100


def reps_by(formula: str, fraction: float) -> float:
    """Return the repetitions at which `load_fraction` falls to `fraction`, by bisection within 1–36."""
    low = 1.0
    high = 36.0
    for _ in range(50):
        middle = (low + high) / 2
        if load_fraction(formula, middle) > fraction:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def load_share(max_reps: float) -> float:
    """Return the load behind a largest set as a share of the one-rep max: the median of the formulas, within where they mean something. [0–1]

    Beyond SHARE_REPS repetitions they run apart (at 30 they give 19 to 71 %): more repetitions count as so many. At one to three the share
    hides whether one more was near: it is never taken for more than HEAVIEST_SHARE.
    """
    reps = max(1.0, min(SHARE_REPS, max_reps))
    shares = sorted([load_fraction(formula, reps) for formula in FORMULAS])
    return min(HEAVIEST_SHARE, shares[len(shares) // 2])


def reps_at_load(one_rep_max_kg: float, load_kg: float) -> dict:
    """Return how many repetitions to expect at a load.

    Parameters
    ----------
    one_rep_max_kg : > 0. [kg]
    load_kg : > 0. [kg]

    Returns
    -------
    dict : low, likely (median of the formulas), high [repetitions; 0 above the one-rep max]; inside: whether the relations hold there.
    """
    fraction = load_kg / one_rep_max_kg
    if fraction > 1 + 1e-9:
        return {"low": 0.0, "likely": 0.0, "high": 0.0, "inside": True}
    reps = sorted([reps_by(formula, fraction) for formula in FORMULAS])
    likely = reps[len(reps) // 2]
    return {"low": reps[0], "likely": likely, "high": reps[len(reps) - 1], "inside": likely <= RELATION_HOLDS_TO_REPS}


def reps_at_other_load(max_reps: float, known_kg: float, load_kg: float) -> float:
    """Return the largest set at `load_kg` of somebody who does `max_reps` at `known_kg`; both moved masses, > 0. [kg]

    Epley's formula both ways: its one-rep max is w(1 + r/30). Used to carry a level's default from the usual load to the workout's.
    """
    one_rep_max_kg = known_kg * (1 + max_reps / 30)
    return max(0.0, 30 * (one_rep_max_kg / load_kg - 1))
