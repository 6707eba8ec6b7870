"""What holds for whole plans whatever the workout: seeded random workouts and athletes, properties rather than values."""

import copy
import math
import random
from statistics import NormalDist

import pytest
from engine_samples import able, block, workout
from expectations import case_of, expected_of, planned
from phones_engine import judge, plan

from webapp.engine.parameters import FAIL_RISK, STYLES, TESTED_SD
from webapp.movements import library

pytestmark = pytest.mark.slow
EASE = 1.02  # two searches that end within this are the same: ease may cost 1 % on either side
TO_THE_LAST = 1e-9
LOCAL = ["handstand-push-up", "push-up", "ring-dip", "pull-up", "ring-row", "toes-to-bar", "hanging-knee-raise", "wall-throw", "thruster"]
BARBELL = ["strict-press", "push-press", "power-clean", "deadlift", "front-squat"]


def drawn(rng, most_blocks=2):
    """A small workout of movements done in sets, and an athlete who knows all the numbers."""
    keys = rng.sample(LOCAL, rng.randint(1, most_blocks))
    blocks = [block(key, rng.randint(6, 24), load_kg=library()[key]["typical_load_kg"]) for key in keys]
    return workout(blocks, rounds=rng.choice([1, 1, 2])), able("keen", **{key.replace("-", "_"): rng.randint(5, 30) for key in keys})


def own(made, **more):
    """The plan's sets and rests as the athlete's own."""
    return [{"sets": each["sets"], "rests_s": each["rests_s"], "lead_s": each["lead_s"], **more} for each in made["blocks"]]


def stronger(numbers, key):
    """The numbers with one more repetition in one movement."""
    made = copy.deepcopy(numbers)
    made["movements"][key]["max_unbroken"] += 1
    return made


def test_a_larger_maximum_is_never_slower():
    """One more repetition in one movement: the plan made for it, and exactly the same sets and rests done with it."""
    rng = random.Random(41)
    for _ in range(14):
        asked, numbers = drawn(rng)
        more = stronger(numbers, rng.choice(sorted(numbers["movements"])))
        one = plan(asked, numbers, {"style": "even"})
        same, better = (judge(asked, given, {}, own(one)) for given in (numbers, more))
        assert better["time_s"] <= same["time_s"] + TO_THE_LAST, (asked["options"], numbers, more)
        assert better["lowest_reserve"] >= same["lowest_reserve"] - TO_THE_LAST
        assert plan(asked, more, {"style": "even"})["score"]["likely"] <= one["score"]["likely"] * EASE, (asked["options"], numbers, more)


def test_more_rest_never_fails_sooner_in_a_whole_workout():
    """Every rest of a plan pushed until it fails, then one of them longer."""
    rng = random.Random(42)
    for _ in range(40):
        asked, numbers = drawn(rng)
        mine = []
        for amount in [each["amount"] for _ in range(asked["options"][0]["rounds"]) for each in asked["options"][0]["blocks"]]:
            first = rng.randint(1, amount)
            mine.append({"sets": [first, amount - first] if amount > first else [amount], "rests_s": [rng.choice([5, 20, 60])] if amount > first else []})
        longer = copy.deepcopy(mine)
        broken = [one for one in longer if one["rests_s"]]
        if broken:
            rng.choice(broken)["rests_s"][0] += rng.choice([1, 10])
        less, more = (judge(asked, numbers, {}, given) for given in (mine, longer))
        at = [(went["fails"]["round"], went["fails"]["block"], went["fails"]["rep"]) if went["fails"] else (99, 0, 0) for went in (less, more)]
        assert at[1] >= at[0], (asked["options"], numbers, mine, longer)


@pytest.mark.parametrize("movement", BARBELL)
def test_heavier_is_never_faster(movement):
    """The same lifter, one load after another: the plan, and the same sets and rests."""
    best_kg = 1.6 * library()[movement]["typical_load_kg"]["a"]
    numbers = {"level": "keen", "movements": {movement: {"one_rep_max_kg": best_kg}}}
    times, sets = [], {"sets": [4, 4, 4, 3], "rests_s": [20, 20, 20]}
    went = []
    for share in (0.4, 0.5, 0.6, 0.7, 0.8):
        asked = workout([block(movement, 15, load_kg=round(share * best_kg, 1))])
        times.append(plan(asked, numbers, {"style": "even"})["score"]["likely"])
        went.append(judge(asked, numbers, {}, [sets]))
    assert all(heavier >= lighter / EASE for lighter, heavier in zip(times, times[1:], strict=False)), times
    assert times[-1] > times[0]
    reps = [each["fails"]["rep"] if each["fails"] else 99 for each in went]
    assert reps == sorted(reps, reverse=True)
    held = [each["time_s"] for each in went if each["time_s"] is not None]
    assert all(heavier >= lighter - TO_THE_LAST for lighter, heavier in zip(held, held[1:], strict=False))


def test_bolder_risks_no_less_and_is_no_slower_in_expectation():
    """Over all the draws, those who fail included. The tolerance is 1 %, for the rule of fewest breaks; where the ladder of cautions, looked at roughly,
    misleads, it may be more: found 2026-11-25 in 5 of 89 workouts, 5.4 % at most; here in one of twelve."""
    rng = random.Random(43)
    slower = []
    for _ in range(12):
        asked, numbers = drawn(rng)
        layouts = [planned(case_of(asked, numbers, style)) for style in STYLES]
        risks = [layout["risk"] for layout in layouts]
        assert risks == sorted(risks), (asked["options"], numbers)
        assert all(risk <= FAIL_RISK[style] + TO_THE_LAST for risk, style in zip(risks, STYLES, strict=True)), (asked["options"], numbers)
        times = [expected_of(case_of(asked, numbers, STYLES[0]), layout["breakups"]) for layout in layouts]
        slower.append(max(times[1] / times[0], times[2] / times[1]) - 1)
    assert sum(share > 0.01 for share in slower) <= 1, slower
    assert max(slower) <= 0.06, slower


@pytest.mark.parametrize("style", STYLES)
def test_a_plan_holds_for_one_less_wherever_its_style_promises_it(style):
    """Where more people than the style lets fail have a largest set of M − 1 or less, the plan for M holds for M − 1.

    Largest sets are off by the test's 8 %, log-normal: at M = 12 a sixth of all people have 11 or less, at 9 one in fourteen. The plan need not
    hold where fewer have.
    """
    rng = random.Random(45)
    for _ in range(8):
        key, largest = rng.choice(LOCAL), rng.randint(8, 36)
        have_less = NormalDist(0, TESTED_SD).cdf(math.log((largest - 1) / largest))
        if have_less <= FAIL_RISK[style]:
            continue
        asked = workout([block(key, rng.randint(largest, 3 * largest), load_kg=library()[key]["typical_load_kg"])])
        name = key.replace("-", "_")
        made = plan(asked, able("keen", **{name: largest}), {"style": style})
        assert judge(asked, able("keen", **{name: largest - 1}), {}, own(made))["fails"] is None, (key, largest, asked["options"])


def swapped(value):
    """The same with the divisions' keys swapped wherever a number stands for each: loads, heights, usual loads."""
    if isinstance(value, dict):
        if set(value) == {"a", "b"}:
            return {"a": value["b"], "b": value["a"]}
        return {key: swapped(each) for key, each in value.items()}
    return [swapped(each) for each in value] if isinstance(value, list) else value


def test_divisions_can_be_swapped():
    """Keys and loads swapped, the library's usual loads with them: the other division's plan, to the last digit."""
    rng = random.Random(46)
    for _ in range(12):
        key = rng.choice(["strict-press", "thruster", "kettlebell-swing", "dumbbell-snatch", "sandbag-carry"])
        loads = {"a": rng.choice([15, 22.5, 40]), "b": rng.choice([10, 16, 30])}
        before, amount = rng.choice(LOCAL), rng.randint(8, 30)
        settings = {"style": rng.choice(STYLES)}
        asked = workout([block(before, 12), block(key, amount, library()[key]["unit"], load_kg=loads)], cap_s=rng.choice([None, 90]))
        numbers = {"level": rng.choice(["regular", "keen"])}
        one = plan(asked, numbers, {**settings, "division": "a"})
        assert plan(swapped(asked), numbers, {**settings, "division": "b"}) == one, (key, loads, before)
        assert plan(swapped(asked), numbers, {**settings, "division": "a"}) == plan(asked, numbers, {**settings, "division": "b"})


def test_slow_repetitions_are_no_free_rest():
    """The same sets and rests at a slower cadence are never quicker. (What is left may be more: slower work leaves more breath, and breath recovery.)"""
    rng = random.Random(47)
    for _ in range(30):
        asked, numbers = drawn(rng)
        made = plan(asked, numbers, {})
        went = [judge(asked, numbers, {}, own(made, cadence=cadence)) for cadence in (1.0, 1.08, 1.25)]
        for usual, slow in zip(went, went[1:], strict=False):
            if slow["time_s"] is not None:
                assert slow["time_s"] >= usual["time_s"], (asked["options"], numbers)


def test_slower_repetitions_with_the_same_largest_set_never_make_a_quicker_plan():
    rng = random.Random(48)
    for _ in range(12):
        asked, numbers = drawn(rng, 1)
        key = asked["options"][0]["blocks"][0]["movement"]
        usual_s = library()[key]["seconds_per_unit"]
        times = []
        for pace in (1.0, 1.15, 1.4):
            numbers["movements"][key]["seconds_per_unit"] = round(usual_s * pace, 3)
            times.append(plan(asked, numbers, {"style": "even"})["score"]["likely"])
        assert all(slow >= quick / EASE for quick, slow in zip(times, times[1:], strict=False)), (asked["options"], numbers, times)
