"""Heavy and light movements of one group share lost strength, not a share of repetitions. Numbers by hand from the load–repetition formulas."""

import math

import pytest
from engine_samples import able, block, workout

from webapp.engine import plan, replan
from webapp.engine.handover import hand_over
from webapp.engine.parameters import HANDOVER_LEAST, HANDOVER_MOST
from webapp.engine.prepare import Case, stints_of
from webapp.engine.reserve import Fatigue
from webapp.engine.segments import SLOTS, any_set
from webapp.engine.strength import HEAVIEST_SHARE, load_share
from webapp.engine.stint_segment import segment_of
from webapp.engine.whole import at_rest, live_through

PUSH = SLOTS.index("push")
printed = 0.0005  # shares to three places


def stints(blocks, rounds=1, **largest):
    case = Case(workout(blocks, rounds=rounds), able(**largest), {})
    return stints_of(case, case.option)


def light_and_heavy(light=30, heavy=4):
    """Push-ups, then a heavy bench press."""
    return stints([block("push-up", 20), block("bench-press", 3, load_kg=70)], push_up=light, bench_press=heavy)


def heavy_and_light(light=30, heavy=4):
    return stints([block("bench-press", 3, load_kg=70), block("push-up", 20)], push_up=light, bench_press=heavy)


def pushed_to(depth):
    """A state with the pressing muscles at that depth."""
    fatigue = at_rest().fatigue
    fatigue.quick[PUSH], fatigue.slow[PUSH] = 0.6 * depth, 0.4 * depth
    return fatigue


def reps_left(stint, fatigue):
    """How many of a stint's repetitions go at once in that state."""
    return any_set(fatigue, segment_of(stint, 1.0, 1.0), 100, 0.85, 1.0, 0)[0]


# Medians of the seven formulas, by hand from training figures printed for r = 5, 10, 15 (Epley, Brzycki, Lander, Lombardi, Mayhew,
# O'Conner, Wathan): 85.7 88.9 87.9 85.1 84.0 88.9 85.8, 75.0 75.0 74.6 79.4 76.4 80.0 74.2, 66.7 61.1 61.2 76.3 70.6 72.7 66.3 %.
@pytest.mark.parametrize("reps, share", [(5, 0.858), (10, 0.750), (15, 0.667)])
def test_the_share_behind_a_largest_set_is_the_median_of_the_formulas(reps, share):
    assert load_share(reps) == pytest.approx(share, abs=printed)


def test_the_share_stays_where_the_formulas_mean_something():
    assert load_share(30) == load_share(400)
    assert load_share(1) == load_share(2) == HEAVIEST_SHARE
    assert all(load_share(reps) >= load_share(reps + 1) for reps in range(1, 60))


def test_depth_is_converted_by_the_strength_that_is_lost():
    """Largest sets of 10 and 5 lose 25.0 and 14.2 % at failure: (0.250/0.142)^(2/3) = e^(2/3 · ln 1.761) = e^0.377 = 1.458."""
    made = stints([block("push-up", 8), block("bench-press", 5, load_kg=70)], push_up=10, bench_press=5)
    assert [stint["handover"] for stint in made] == pytest.approx([1, 1.458], abs=0.002)


def test_one_movement_alone_is_as_it_was():
    assert {stint["handover"] for stint in stints([block("ring-dip", 10)], rounds=4, ring_dip=12)} == {1.0}


def test_equal_largest_sets_hand_over_as_they_are():
    made = stints([block("ring-dip", 10), block("handstand-push-up", 10)], rounds=2, ring_dip=12, handstand_push_up=12)
    assert {stint["handover"] for stint in made} == {1.0}


def test_there_and_back_changes_nothing():
    made = stints([block("push-up", 10), block("ring-dip", 5)], rounds=2, push_up=25, ring_dip=9)
    assert made[1]["handover"] > 1
    assert made[1]["handover"] * made[2]["handover"] == pytest.approx(1, rel=1e-12)


def test_the_heavier_the_lift_the_harder_it_is_hit_within_bounds():
    after = [light_and_heavy(heavy=heavy)[1]["handover"] for heavy in (30, 20, 12, 8, 5, 3, 1)]
    assert after == sorted(after) and after[0] == 1.0 and after[-1] <= HANDOVER_MOST
    assert heavy_and_light(light=60, heavy=1)[1]["handover"] >= HANDOVER_LEAST


def test_failing_a_heavy_lift_does_not_end_push_ups():
    push_ups = heavy_and_light()[1]
    failed = pushed_to(1.0)
    assert reps_left(push_ups, pushed_to(1.0)) == 0  # in shares of repetitions there were none
    hand_over(failed, push_ups)
    assert reps_left(push_ups, failed) >= 5


def test_a_heavy_lift_goes_no_more_where_half_the_push_ups_are_left():
    """A largest set of 4 loses 11 % at failure, one of 30 loses 45 %: half-way through push-ups too much is gone."""
    bench = light_and_heavy()[1]
    tired = pushed_to(0.5)
    hand_over(tired, bench)
    assert reps_left(bench, pushed_to(0.5)) > reps_left(bench, tired) == 0


def test_heavy_after_light_is_hit_harder_than_light_after_heavy():
    """Share of the first block's depth that the second one's largest set is short of, from the same depth."""
    heavy_second = light_and_heavy()[1]
    light_second = heavy_and_light()[1]
    lost = []
    for stint in (heavy_second, light_second):
        tired = pushed_to(0.3)
        hand_over(tired, stint)
        lost.append(1 - reps_left(stint, tired) / stint["max_steps"])
    assert lost[0] > lost[1]


def test_work_without_a_load_to_tell_is_passed_over():
    made = stints([block("air-squat", 20), block("run", 200, "m"), block("front-squat", 5, load_kg=70)], air_squat=60, front_squat=6)
    assert made[1]["handover"] == 1.0 and made[2]["handover"] > 1.5


def test_another_group_is_left_alone_and_both_sides_take_part():
    fatigue = Fatigue([0.1] * 9, [0.2] * 9, 0.0, 0.0)
    hand_over(fatigue, {"primary": "grip", "handover": 2.0})
    assert [round(value, 12) for value in fatigue.quick] == [0.2 if group == "grip" else 0.1 for group in SLOTS]
    assert [round(value, 12) for value in fatigue.slow] == [0.4 if group == "grip" else 0.2 for group in SLOTS]


def test_a_plan_stored_before_is_followed_as_it_was():
    fatigue = pushed_to(0.5)
    hand_over(fatigue, {"primary": "push"})
    assert fatigue.quick[PUSH] + fatigue.slow[PUSH] == 0.5


def test_what_is_planned_can_be_done():
    """The plan's own state and the simulation's pass through the same handovers: nobody exactly as the numbers say fails."""
    made = plan(workout([block("push-up", 12), block("bench-press", 4, load_kg=70)], rounds=3), able(push_up=30, bench_press=6), {"style": "even"})
    basis = made["basis"]
    ones = [1.0] * len(basis["stints"])
    breakups = [{"sets": each["sets"], "rests_s": each["rests_s"], "lead_s": each["lead_s"]} for each in made["blocks"]]
    went = live_through(basis["stints"], breakups, ones, ones, basis["gain"], math.inf, at_rest())
    assert sum(went["fails"]) == 0
    assert went["seconds"] == pytest.approx(made["score"]["likely"], rel=1e-9)


def test_the_rest_of_a_plan_hands_over_too():
    """After push-ups, what is left of a heavy block is planned to take longer than of a light one whose repetitions are made to cost as much."""
    left = []
    for largest in (30, 6):
        made = plan(workout([block("push-up", 15), block("ring-dip", 6)]), able(push_up=30, ring_dip=largest), {"style": "even"})
        basis = made["basis"]
        basis["stints"][1]["costs"] = [0.15 * cost / basis["stints"][1]["costs"][0] for cost in basis["stints"][1]["costs"]]
        now_s = made["blocks"][0]["end_s"]
        left.append(replan(made, [{"kind": "block", "at_s": now_s}], now_s)["score"]["likely"])
    assert left[1] > left[0]
