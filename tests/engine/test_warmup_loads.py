"""Ramp loads: shares of the working load, never above it, made of what the gym has, with labels kept apart from masses."""

import random

import pytest

from webapp.engine.errors import EngineError
from webapp.engine.warmup_loads import load_label, rack_of, ramp_load

KG_PER_LB = 0.45359237  # NIST SP 811


@pytest.mark.parametrize("share, expected_kg", [(0.4, 22.5), (0.7, 40), (1.0, 57.5)])
def test_a_barbell_is_a_bar_and_pairs_of_plates(share, expected_kg):
    """By hand from bars of 15 and 20 kg and plates of 1.25 to 20 kg: steps of 2.5 kg, 57.5 kg exactly; 40 % is 23, 70 % is 40.25."""
    rack = rack_of({"bars_kg": [15, 20], "plates_kg": [1.25, 2.5, 5, 10, 15, 20]})
    assert ramp_load("barbell", share, 57.5, rack)["kg"] == pytest.approx(expected_kg)


def test_dumbbells_and_kettlebells_are_the_nearest_there_are():
    """By hand: 60 % of 22.5 is 13.5, nearer to 12 than to 16; 70 % of 24 is 16.8, nearer to 16 than to 20."""
    rack = rack_of({"dumbbells_kg": [8, 12, 16, 22.5, 30], "kettlebells_kg": [8, 12, 16, 20, 24]})
    assert ramp_load("dumbbell", 0.6, 22.5, rack)["kg"] == 12
    assert ramp_load("kettlebell", 0.7, 24, rack)["kg"] == 16


def test_the_working_load_stands_unless_the_coach_said_what_there_is():
    """A usual gym is not asked to prove that it has what the heat needs; a rack that was told is."""
    assert ramp_load("dumbbell", 1.0, 21, rack_of(None))["kg"] == 21
    assert ramp_load("dumbbell", 1.0, 21, rack_of({"dumbbells_kg": [15, 20, 25]}))["kg"] == 20


def test_nothing_light_enough_is_no_load():
    assert ramp_load("dumbbell", 0.5, 10, rack_of({"dumbbells_kg": [15, 20]})) is None
    assert ramp_load("barbell", 0.5, 12, rack_of({"bars_kg": [15, 20]})) is None
    assert ramp_load("kettlebell", 0.5, 12, rack_of({"kettlebells_kg": []})) is None


@pytest.mark.parametrize("kind, mass_kg, label", [
    ("dumbbell", 22.5, {"kg": 22.5, "lb": 50}), ("dumbbell", 50 * KG_PER_LB, {"kg": 22.5, "lb": 50}),
    ("kettlebell", 24, {"kg": 24, "lb": 53}), ("kettlebell", 53 * KG_PER_LB, {"kg": 24, "lb": 53}), ("kettlebell", 32, {"kg": 32, "lb": 70}),
    ("kettlebell", 16, {"kg": 16, "lb": 35}), ("ball", 9, {"kg": 9, "lb": 20}), ("ball", 20 * KG_PER_LB, {"kg": 9, "lb": 20}),
    ("ball", 6, {"kg": 6, "lb": 14}),
])  # fmt: skip
def test_labels_are_what_gyms_call_them(kind, mass_kg, label):
    """Label pairs from the table of common labels beside exact masses (14/6, 20/9, 35/16, 50/22.5, 53/24, 70/32); masses by NIST SP 811."""
    assert load_label(kind, mass_kg) == label


def test_a_pound_bar_keeps_its_mass_and_its_label():
    """45 lb bar and two 45 lb plates: 61.23496995 kg, called 135 lb and 60 kg (135 lb exactly by NIST SP 811)."""
    pound = rack_of({"bars_kg": [45 * KG_PER_LB], "plates_kg": [45 * KG_PER_LB]})
    load = ramp_load("barbell", 1.0, 62, pound)
    assert load["kg"] == pytest.approx(61.23496995)
    assert load["label"] == {"kg": 60, "lb": 135}


@pytest.mark.parametrize("kind, pounds, kg", [("dumbbell", 12, 5.5), ("dumbbell", 8, 3.5), ("kettlebell", 13, 6), ("kettlebell", 70, 32), ("ball", 15, 7)])
def test_what_was_made_in_pounds_is_called_so(kind, pounds, kg):
    """A thing of exactly 12 lb (NIST SP 811) has 12 written on it, though gyms in pounds usually go by fives; kg to the nearest usual label."""
    assert load_label(kind, pounds * KG_PER_LB) == {"kg": kg, "lb": pounds}


@pytest.mark.parametrize("rack", [3, [], {"dumbbells_kg": 5}, {"plates_kg": ["10"]}, {"bars_kg": [-20]}, {"bars_kg": [0]}])
def test_a_bad_rack_is_refused(rack):
    with pytest.raises(EngineError) as error:
        rack_of(rack)
    assert error.value.code == "rack_bad"


def test_random_racks_never_give_more_than_the_working_load_nor_what_is_not_there():
    rng = random.Random(4)
    for _ in range(2000):
        sizes = [rng.choice([1.25, 2.27, 2.5, 4.54, 5, 10, 11.34, 15, 20.41]) for _ in range(rng.randint(0, 5))]
        rack = rack_of({"bars_kg": rng.sample([10, 15, 20, 20.41], rng.randint(1, 3)), "plates_kg": sizes, "dumbbells_kg": sizes})
        working, share = rng.choice([8, 22.5, 30, 43, 61, 100]), rng.choice([0.4, 0.6, 0.7, 0.8, 1.0])
        for kind in ["barbell", "dumbbell"]:
            load = ramp_load(kind, share, working, rack)
            if load is not None:
                assert 0 < load["kg"] <= working + 1e-6
                assert load["label"]["kg"] > 0 and load["label"]["lb"] > 0
                if kind == "dumbbell":
                    assert load["kg"] in sizes
