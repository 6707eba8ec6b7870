"""Lifts from the floor: touch-and-go sets against quick singles. Directions are common practice, no source."""

import copy
import math

import pytest
from engine_samples import able, block, workout

from webapp.engine import plan
from webapp.engine.lifts import or_quick_singles, style_of_lift
from webapp.engine.tiers import plan_rests, plan_sets
from webapp.movements import library

FLOOR_LIFTS = [key for key, entry in library().items() if entry["quick_singles"]]
STINT = {"kind": "local", "reset_s": 2, "set_up_s": 3, "piece_steps": 1, "step_units": 1, "max_steps": 8, "steps": 6, "seconds": 2.5}
TWO_SETS = [3, 1, 20, 3]


def lifted(reps, largest, movement="power-clean"):
    """The block of so many lifts from the floor by somebody with that largest set."""
    made = plan(workout([block(movement, reps, load_kg=60)]), able(**{movement.replace("-", "_"): largest}), {"style": "even"})
    return made["blocks"][0]


def codes(made):
    return [reason["code"] for reason in made["reasons"]]


def costing(single_s, larger_s):
    """A cost by hand: every set of one, and every larger set, costs so much, and the rests what they last."""
    return lambda plan: sum(single_s if size == 1 else larger_s for size in plan_sets(plan)) + sum(plan_rests(plan))


def compared(cost):
    """What is taken of two touch-and-go sets of three and six singles, by that cost."""
    return plan_sets(or_quick_singles(TWO_SETS, STINT, cost, cost, 1000))


@pytest.mark.parametrize("movement", FLOOR_LIFTS)
def test_many_heavy_lifts_go_mostly_as_quick_singles(movement):
    made = lifted(30, 8, movement)
    assert made["style_of_lift"] in ("singles", "singles_after_sets")
    assert made["sets"].count(1) > len(made["sets"]) / 2


@pytest.mark.parametrize("movement", FLOOR_LIFTS)
def test_light_lifts_are_touch_and_go(movement):
    made = lifted(30, 40, movement)
    assert made["style_of_lift"] == "touch_and_go"
    assert "quick_singles" not in codes(made)


def test_the_reason_says_how_often_a_single_comes():
    """Seconds of a repetition and the rest after it, by hand: 3.0 s (library) and the rest that most singles have."""
    made = lifted(30, 8)
    told = [reason for reason in made["reasons"] if reason["code"].startswith("quick_singles")]
    rests = sorted(made["rests_s"])
    assert [reason["every_s"] for reason in told] == [library()["power-clean"]["seconds_per_unit"] + rests[len(rests) // 2]]


def test_no_rest_between_singles_is_below_the_reset():
    for movement in FLOOR_LIFTS:
        assert min(lifted(20, 6, movement)["rests_s"]) >= library()[movement]["reset_s"]


def test_with_up_to_three_in_one_go_singles_are_planned_for_that_reason_alone():
    made = lifted(12, 2)
    assert made["style_of_lift"] == "singles"
    assert "singles_small_max" in codes(made) and "quick_singles" not in codes(made)


def test_whichever_costs_less_is_taken():
    """Six singles at 2 s each and five rests of 2 s: 22 s. Two sets of 15 s with 20 s: 50 s, or of 0.5 s: 21 s."""
    assert compared(costing(2, 15)) == [1] * 6
    assert compared(costing(2, 0.5)) == [3, 3]


def test_singles_that_gain_less_than_three_per_cent_are_left():
    """Bare work of 6 · 2.5 s and 5 · 2 s is 25 s. Singles cost 6 · 15 + 5 · 2 = 100 s, sets 2 · 41 + 20 = 102 s, or 2 · 42 + 20 = 104 s."""
    assert compared(costing(15, 41)) == [3, 3]
    assert compared(costing(15, 42)) == [1] * 6


def test_singles_that_cannot_be_done_are_left():
    def cost(plan):
        return math.inf if len(plan_sets(plan)) > 2 else 100.0

    assert compared(cost) == [3, 3]


def test_work_that_is_no_lift_from_the_floor_has_no_style():
    made = plan(workout([block("ring-dip", 20)]), able(ring_dip=10), {})
    assert made["blocks"][0]["style_of_lift"] is None
    assert style_of_lift({**STINT, "reset_s": None}, [1, 1]) is None


def test_a_workout_frozen_before_resets_were_known_is_planned_in_sets():
    old = workout([block("power-clean", 20, load_kg=60)])
    old["movements"] = copy.deepcopy(old["movements"])
    del old["movements"]["power-clean"]["reset_s"]
    assert plan(old, able(power_clean=8), {})["blocks"][0]["style_of_lift"] is None
