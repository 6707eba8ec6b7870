"""Work that lasts: two all-out efforts on a straight line say what can be kept up; or the athlete says how long."""

import math

import pytest
from engine_samples import able, block, blocks_of, workout
from phones_engine import learn, plan, questions
from reference_tables import rows

from webapp.engine import EngineError
from webapp.engine.endurance import largest_at, line_of_efforts, pace_for
from webapp.engine.parameters import LONG_EFFORTS_S, LONGEST_SET_UNITS, MIXED_PACE
from webapp.engine.reserve import Effort, cost_kept_up, fresh, perform, recover

EFFORTS = [[50, 75], [100, 180]]
HUNDRED = workout([block("sit-up", 100)])
GAIN = 0.85


def sitting(efforts=EFFORTS, seconds=1.5, **more):
    """Numbers of somebody who gave long efforts of sit-ups."""
    return {"level": "regular", "movements": {"sit-up": {"long_efforts": efforts, "seconds_per_unit": seconds, **more}}}


def planned(numbers, made=HUNDRED):
    return plan(made, numbers, {"style": "even"})


@pytest.mark.parametrize("row", rows("critical_power_results.csv"), ids=lambda row: f"athlete {row['athlete']:.0f}")
def test_the_line_is_that_of_the_published_critical_power_fits(row):
    """Work in kilojoules as the units done."""
    trials = [[each["time_s"] * each["power_w"] / 1000, each["time_s"]] for each in rows("critical_power_fits.csv") if each["athlete"] == row["athlete"]]
    line = line_of_efforts({"long_efforts": trials})
    assert line["rate"] * 1000 == pytest.approx(row["cp_w"], abs=0.0005)  # three decimals
    assert line["store"] * 1000 == pytest.approx(row["w_prime_j"], abs=0.05)  # one decimal


def test_two_efforts_are_met_exactly():
    """By hand: 50 more in 105 s are 0.476 a second; 50 − 75 · 0.476 = 14.29 from the store. At 1.5 s each 14.29/(1 − 1.5 · 0.476) = 50 go."""
    line = line_of_efforts({"long_efforts": EFFORTS})
    assert (line["rate"], line["store"]) == pytest.approx((50 / 105, 50 - 75 * 50 / 105), rel=1e-12)
    assert (largest_at(line, 1.5), largest_at(line, 1.8)) == pytest.approx((50, 100), rel=1e-9)
    assert largest_at(line, 2.2) == LONGEST_SET_UNITS


def test_the_pace_is_even_along_the_line():
    """A hundred all out take 180 s, 1.8 s each; what goes in one go at the usual pace keeps it."""
    line = line_of_efforts({"long_efforts": EFFORTS})
    assert pace_for(line, 100, 1.5) == pytest.approx(1.8 * MIXED_PACE, rel=1e-9)
    assert pace_for(line, 40, 1.5) == 1.5
    assert pace_for(line, 100, 2.5) == 2.5


@pytest.mark.parametrize("seconds", [0.8, 2.1, 4.0])
def test_the_cost_behind_a_rate_goes_on_for_good_and_a_tenth_more_does_not(seconds):
    """An hour of repetitions at that rate, one by one."""
    gone = []
    for share in (1.0, 1.1):
        fatigue, effort, done = fresh(1), Effort([0], [share * cost_kept_up(seconds, GAIN)], 0.5 * seconds, 0.0), 0
        while done * seconds < 3600:
            result = perform(fatigue, effort, 1, GAIN)
            if result[0] == 0:
                break
            recover(fatigue, [0], seconds - result[1])
            done += 1
        gone.append(done * seconds)
    assert gone[0] >= 3600 > gone[1]


def test_a_hundred_take_what_they_took_alone_and_a_little_more():
    """180 s all out; a largest set of 50 alone makes the plan half as long again, and slower than the athlete was."""
    told, guessed = planned(sitting()), planned({"level": "regular", "movements": {"sit-up": {"max_unbroken": 50, "seconds_per_unit": 1.5}}})
    assert 180 <= told["score"]["likely"] <= 1.15 * 180
    assert guessed["score"]["likely"] > 1.3 * told["score"]["likely"]


def test_the_block_says_that_the_pace_can_be_kept_up():
    first = planned(sitting())["blocks"][0]
    assert first["mode"] == "unbroken"
    assert first["seconds_per_unit"] == pytest.approx(1.8 * MIXED_PACE, rel=1e-9)
    assert [each["share_fraction"] for each in first["reasons"] if each["code"] == "pace_kept_up"] == [pytest.approx(1.5 / (1.8 * MIXED_PACE))]


def test_rounds_share_one_pace_and_metres_do_too():
    four = planned(sitting(), workout([block("sit-up", 25), block("ring-dip", 3)], rounds=4))
    assert [each["seconds_per_unit"] for each in blocks_of(four, "sit-up")] == pytest.approx([1.8 * MIXED_PACE] * 4, rel=1e-9)
    carried = {"movements": {"farmer-carry": {"long_efforts": [[100, 70], [200, 160]], "seconds_per_unit": 0.7}}}
    made = planned(carried, workout([block("farmer-carry", 200, "m", mark_every=20, load_kg={"a": 24, "b": 16})]))
    assert 160 <= made["score"]["likely"] <= 1.2 * 160


def test_a_better_second_effort_is_never_slower():
    times = [planned(sitting([[50, 75], [100, seconds]]))["score"]["likely"] for seconds in (160, 180, 220, 300)]
    assert times == sorted(times)


def test_how_long_one_could_go_on_is_a_largest_set_at_the_usual_pace():
    """100 s at 2.0 s each: fifty."""
    said = planned({"level": "regular", "movements": {"sit-up": {"steady_s": 100, "seconds_per_unit": 2.0}}})
    assert said["blocks"] == planned({"level": "regular", "movements": {"sit-up": {"max_unbroken": 50, "seconds_per_unit": 2.0}}})["blocks"]
    assert said["filled"] == []


def test_one_effort_alone_says_nothing_and_two_that_contradict_are_refused():
    assert planned(sitting([[50, 75]], max_unbroken=40))["blocks"] == planned(sitting([], max_unbroken=40))["blocks"]
    for efforts in ([[100, 75], [50, 180]], [[50, 75], [52, 75]], [[30, 75], [100, 180]], [[50], [100, 180]], [[50, 75], [0, 180]], "many"):
        with pytest.raises(EngineError):
            planned(sitting(efforts))


@pytest.mark.parametrize("given", [{"steady_s": bad} for bad in (0, -1, 1e9, math.nan, "x", True)] + [{"long_efforts": [[10, 10], [99999, 19999]]}])
def test_absurd_numbers_are_refused(given):
    with pytest.raises(EngineError):
        planned({"movements": {"sit-up": given}})


@pytest.mark.parametrize("seconds", [None, 0.1, 600])
def test_hardly_any_rate_and_hardly_any_pace_end_in_a_plan(seconds):
    made = planned(sitting([[50, 60], [50.001, 20000]], seconds), workout([block("sit-up", 20)], cap_s=600))
    assert made["score"]["likely"] is not None


def test_a_hold_has_no_pace_to_tell():
    with pytest.raises(EngineError):
        plan(workout([block("plank", 120, "s")]), {"movements": {"plank": {"long_efforts": [[60, 60], [120, 120]]}}}, {})


def test_the_time_is_asked_for_where_a_set_lasts():
    kinds = {each["movement"]: each["kind"] for each in questions(workout([block("sit-up", 80), block("push-up", 20), block("plank", 60, "s")]), {}, {}) if each["movement"]}
    assert kinds == {"sit-up": "long_effort", "push-up": "max_unbroken", "plank": "max_unbroken"}  # the last question of each movement


def test_two_long_efforts_sharpen_it():
    asked = questions(HUNDRED, {}, {"level": "regular"})
    assert [each["kind"] for each in asked] == ["steady_s", "long_effort", "long_effort"]
    assert asked[0]["default"] == pytest.approx(50 * 2.2, abs=7.5)  # the usual 50 at 2.2 s each (library), in quarters of a minute
    assert [each["s"] for each in asked[1:]] == LONG_EFFORTS_S
    assert [each["needed"] for each in asked] == [True, False, False]


@pytest.mark.parametrize("given", [{"steady_s": 150}, {"long_efforts": EFFORTS}])
def test_a_heat_moves_what_was_given(given):
    numbers = {"level": "regular", "movements": {"sit-up": {"seconds_per_unit": 1.5, **given}}}
    made = planned(numbers)
    ends_s = [1.3 * each["end_s"] for each in made["blocks"]]
    after = learn(numbers, {"plan": made, "ends_s": ends_s})
    factor = after["changes"][0]["factor"]
    told = after["numbers"]["movements"]["sit-up"]
    assert "max_unbroken" not in told
    if "steady_s" in given:
        assert told["steady_s"] == pytest.approx(150 * factor) and factor < 1
    else:
        assert told["long_efforts"] == [[pytest.approx(units * factor), seconds] for units, seconds in EFFORTS]


def test_other_movements_are_as_they_were():
    assert planned({**able(push_up=20), "level": "keen"}, workout([block("push-up", 40)]))["blocks"][0]["seconds_per_unit"] == pytest.approx(1.3 * 0.93)


def test_of_several_movements_the_first_that_lasts_and_is_needed_is_sharpened():
    asked = questions(workout([block("ring-dip", 40), block("sit-up", 80), block("air-squat", 60)]), {}, {"level": "regular"})
    assert [(each["movement"], each["s"]) for each in asked if each["kind"] == "long_effort"] == [("sit-up", seconds) for seconds in LONG_EFFORTS_S]
    easy = questions(workout([block("ring-dip", 40), block("sit-up", 5)]), {}, {"level": "regular"})
    assert [each for each in easy if each["kind"] == "long_effort"] == []


@pytest.mark.parametrize("first", [1, 2, 30, 61])
def test_every_second_effort_in_its_range_agrees_with_the_first(first):
    """More than in the shorter time, and less than the same rate would make: else the line has no rate or no store, and there is no plan."""
    numbers = sitting([[first, LONG_EFFORTS_S[0]]])
    second = questions(HUNDRED, {}, numbers)[2]
    assert (second["s"], second["beside_s"]) == (LONG_EFFORTS_S[1], LONG_EFFORTS_S[0])
    for most in (second["low"], second["high"]):
        assert planned(sitting([[first, LONG_EFFORTS_S[0]], [most, LONG_EFFORTS_S[1]]]))["score"]["likely"] is not None
    for beyond in (second["low"] - 1, second["high"] + 1):
        with pytest.raises(EngineError):
            planned(sitting([[first, LONG_EFFORTS_S[0]], [beyond, LONG_EFFORTS_S[1]]]))
