"""People who could be this athlete: their spread is the stated one, and the same seed draws the same people."""

import math
from statistics import NormalDist, fmean

import pytest
from engine_samples import able, block, workout

from webapp.engine import plan
from webapp.engine.draws import STRATA, Dice, draw_people, fail_share, slower_by_breath, spread
from webapp.engine.parameters import CADENCE_SD, DEFAULT_SD, RECOVERY_SD, TESTED_SD

PRINTED = 0.00006  # the table has four places
STINTS = [{"movement": "ring-dip", "sd": TESTED_SD}, {"movement": "row", "sd": DEFAULT_SD}, {"movement": "ring-dip", "sd": TESTED_SD}]
SEEDS = [0, 1, 2, 7, 99, 1000000]


@pytest.mark.parametrize("sizes", STRATA, ids=len)
def test_the_sizes_are_quantiles_of_the_normal_distribution(sizes):
    """Python's statistics.NormalDist at the middles of equally likely parts, scaled to a mean square of one."""
    plain = [NormalDist().inv_cdf(0.5 + (place + 0.5) / (2 * len(sizes))) for place in range(len(sizes))]
    scale = 1 / math.sqrt(fmean(size * size for size in plain))
    assert sizes == pytest.approx([scale * size for size in plain], abs=PRINTED)


@pytest.mark.parametrize("seed", SEEDS)
def test_whatever_the_seed_the_spread_is_the_stated_one(seed):
    """To 0.1 %: every size comes once, only order and sign are drawn."""
    people = draw_people(STINTS, seed, 0.85)
    for numbers, sd in [
        ([math.log(person["factors"][0]) for person in people], TESTED_SD),
        ([math.log(person["factors"][1]) for person in people], DEFAULT_SD),
        ([math.log(person["paces"][1]) for person in people], CADENCE_SD),
        ([math.log(person["gain"] / 0.85) for person in people], RECOVERY_SD),
    ]:
        assert math.sqrt(fmean(number * number for number in numbers)) == pytest.approx(sd, rel=0.001)
        assert fmean(numbers) == pytest.approx(0, abs=1e-9)


def test_people_come_in_opposite_pairs():
    people = draw_people(STINTS, 3, 0.85)
    for one, other in zip(people[::2], people[1::2], strict=True):
        assert one["factors"][0] * other["factors"][0] == pytest.approx(1)


def test_blocks_of_one_movement_share_its_doubt():
    assert all(person["factors"][0] == person["factors"][2] != person["factors"][1] for person in draw_people(STINTS, 5, 0.85))


def test_the_same_seed_draws_the_same_and_another_one_others():
    assert draw_people(STINTS, 7, 0.85) == draw_people(STINTS, 7, 0.85)
    assert draw_people(STINTS, 7, 0.85) != draw_people(STINTS, 8, 0.85)


def test_capacity_and_recovery_are_drawn_apart():
    """Over many seeds the two do not go together: correlation within 3 sigma of none, 40 seeds of 20 independent pairs."""
    products = [fmean(one * other for one, other in zip(spread(dice), spread(dice), strict=True)) for dice in map(Dice, range(40))]
    assert abs(fmean(products)) < 3 / math.sqrt(40 * 20)


def test_the_dice_are_uniform():
    """Mean 1/2 and variance 1/12 of 20 000 throws, to five standard errors."""
    dice = Dice(1)
    throws = [dice.uniform() for _ in range(20000)]
    assert 0 < min(throws) <= max(throws) < 1
    assert fmean(throws) == pytest.approx(0.5, abs=5 * math.sqrt(1 / 12 / 20000))
    assert fmean((throw - 0.5) ** 2 for throw in throws) == pytest.approx(1 / 12, abs=5 * math.sqrt(1 / 180 / 20000))


def test_whoever_fails_once_has_failed():
    assert fail_share([{"fails": [0, 0]}, {"fails": [0, 2]}, {"fails": []}, {"fails": [1, 1]}]) == 0.5


def test_doubt_of_the_breath_slows_a_run_by_as_much_and_a_flywheel_by_a_third():
    """Power goes with the speed of a run, with the cube of a flywheel's (2.80·v³, see `test_lungs`): logarithms, by hand."""
    assert slower_by_breath({"breath_sd": 0.15, "by_speed": False}) == pytest.approx(0.15)
    assert slower_by_breath({"breath_sd": 0.15, "by_speed": True}) == pytest.approx(0.05)
    assert slower_by_breath({"by_speed": False}) == 0


def test_a_known_time_narrows_the_range_of_work_that_ends_by_breath():
    asked = workout([block("row", 500, "m"), block("run", 400, "m")], rounds=3)
    guessed, told = (plan(asked, {"level": "keen"} | more, {}) for more in ({}, {"efforts": [{"kind": "row", "m": 2000, "s": 460}]}))
    [narrows] = guessed["narrow"]
    assert (narrows["movement"], told["narrow"]) == ("row", [])
    width, wide = ((made["score"]["high"] - made["score"]["low"]) / made["score"]["likely"] for made in (told, guessed))
    assert width < wide * (narrows["to_fraction"] + 0.1)


@pytest.mark.parametrize(("blocks", "numbers", "expected"), [
    ([block("row", 1000, "m"), block("burpee", 40), block("row", 1000, "m")], {}, "own_effort"),
    ([block("sit-up", 150)], {}, "own_steady_s"),
    ([block("pull-up", 40)], {}, "own_max_unbroken"),
    ([block("front-squat", 40, load_kg=50)], {}, "own_one_rep_max"),
])
def test_the_number_that_would_narrow_is_named_by_its_kind(blocks, numbers, expected):
    """As it is asked for: nobody has a "number" at rowing."""
    narrows = plan(workout(blocks), {"level": "regular"} | numbers, {})["narrow"][0]
    assert narrows["number"] == {"code": expected}


def test_a_small_number_that_was_told_is_not_asked_for_again():
    """A largest set of two leaves much open, but telling it once more would not narrow that."""
    assert plan(workout([block("pull-up", 12)]), able(pull_up=2), {})["narrow"] == []
