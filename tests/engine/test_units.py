"""Conversions against the published factors and an outside library, and the one rounding rule."""

import math

import pint
import pytest
from reference_tables import rows

from webapp.engine import parameters, units
from webapp.engine.units import clamp, remainder, rounded, whole

UNITS = pint.UnitRegistry()
EXACT = 1e-12  # relative: the factors are exact by definition, binary fractions are not
OUTSIDE = {"KG_PER_LB": ("pound", "kilogram"), "M_PER_FT": ("foot", "metre"), "M_PER_INCH": ("inch", "metre"), "J_PER_KCAL": ("kilocalorie", "joule")}


@pytest.mark.parametrize("row", rows("unit_factors.csv"), ids=lambda row: row["constant"])
def test_factors_are_the_published_ones(row):
    ours = getattr(parameters if row["constant"].startswith("GRAVITY") else units, row["constant"])
    assert ours == pytest.approx(row["value"], rel=EXACT)


@pytest.mark.parametrize("name", OUTSIDE)
def test_factors_agree_with_pint(name):
    one, in_si = OUTSIDE[name]
    assert getattr(units, name) == pytest.approx(UNITS.Quantity(1, one).to(in_si).magnitude, rel=EXACT)


def test_standard_gravity_agrees_with_pint():
    outside = UNITS.Quantity(1, "standard_gravity").to("m/s**2").magnitude
    assert outside == pytest.approx(parameters.GRAVITY_M_PER_S2, rel=EXACT)


@pytest.mark.parametrize(("value", "nearest"), [(0.5, 1), (1.5, 2), (2.5, 3), (-0.5, 0), (-1.5, -1), (2.4999, 2), (-2.6, -3), (0, 0)])
def test_halves_are_rounded_upwards(value, nearest):
    """Hand arithmetic; Python's own `round` gives 2 for 1.5 and for 2.5."""
    assert whole(value) == nearest
    assert isinstance(whole(value), int)


@pytest.mark.parametrize(("value", "step", "nearest"), [(61.2, 2.5, 60), (61.25, 2.5, 62.5), (17, 5, 15), (17.5, 5, 20), (0.3, 0.1, 0.3)])
def test_multiples_of_a_step(value, step, nearest):
    assert rounded(value, step) == pytest.approx(nearest, rel=EXACT)


@pytest.mark.parametrize(("value", "divisor"), [(48, 10), (47.5, 2.5), (3, 7), (0, 4), (10.5, 0.5)])
def test_remainder_is_what_python_leaves(value, divisor):
    assert remainder(value, divisor) == pytest.approx(math.fmod(value, divisor), abs=1e-9)


def test_clamp_keeps_within_bounds():
    assert [clamp(value, 1, 3) for value in (0, 1, 2, 3, 4)] == [1, 1, 2, 3, 3]


def test_a_label_is_not_a_conversion():
    """Plates of 45 lb stand where plates of 20 kg stand, and are 2 % heavier: 45 lb is 20.41 kg (by pint)."""
    mass_kg = UNITS.Quantity(45, "pound").to("kilogram").magnitude
    assert 45 * units.KG_PER_LB == pytest.approx(mass_kg, rel=EXACT)
    assert 45 * units.KG_PER_LB > 20.4
