"""judge(): an athlete's own plan through the same simulation."""

import copy
import json

import pytest
from engine_samples import able, as_own, block, six_blocks, workout
from phones_engine import break_up, judge, judge_break_up, plan

from webapp.engine import EngineError

KEEN = {"level": "keen", "inverted_ok": True}
SAME = 1e-6  # relative: the plan's own numbers went through JSON's units and back


@pytest.mark.parametrize("style", ["steady", "even", "bold"])
@pytest.mark.parametrize("rounds", [1, 2])
def test_the_plan_s_own_blocks_take_the_plan_s_times(style, rounds):
    asked = six_blocks(rounds=rounds)
    made = plan(asked, KEEN, {"style": style})
    went = judge(asked, KEEN, {"style": style}, as_own(made))
    assert (went["finishes"], went["fails"]) == (True, None)
    assert went["time_s"] == pytest.approx(made["score"]["likely"], rel=SAME)
    for ours, theirs in zip(made["blocks"], went["blocks"], strict=True):
        assert theirs["start_s"] == pytest.approx(ours["start_s"], abs=0.001)
        assert theirs["lowest_reserve"] == pytest.approx(ours["lowest_reserve"], abs=0.001)
    assert len(went["reserve_curve"]) == len(made["reserve_curve"])


def test_break_up_s_own_sets_take_its_time():
    for largest in (5, 12, 30):
        made = break_up(largest, 50, 2.6)
        went = judge_break_up(largest, made["sets"], made["rests_s"], 2.6)
        assert went["time_s"] == pytest.approx(made["time_s"], rel=1e-12)
        assert went["lowest_reserve"] == pytest.approx(made["lowest_reserve"], rel=1e-12)
        assert went["fails_at_rep"] is None


@pytest.mark.parametrize("largest", [3, 8, 15, 30])
def test_it_fails_at_the_first_repetition_beyond_the_largest_set(largest):
    went = judge_break_up(largest, [largest + 3, 2], [60], 2.6)
    assert (went["fails_at_rep"], went["time_s"], went["lowest_reserve"]) == (largest + 1, None, 0.0)


def test_where_it_fails_is_told_as_an_athlete_counts():
    asked = workout([block("sit-up", 10), block("handstand-push-up", 12)])
    went = judge(asked, able(handstand_push_up=8), {}, [None, {"sets": [12], "rests_s": []}])
    assert (went["finishes"], went["time_s"]) == (False, None)
    assert (went["fails"]["block"], went["fails"]["rep"]) == (2, 9)
    assert (went["fails"]["done"], went["fails"]["unit"]) == (8, "reps")
    assert went["count"] == 10 + 8


def test_of_a_distance_what_is_done_before_it_fails_is_told_in_metres():
    """A largest carry of 40 m, asked to go 80 m: it ends after those 40 and what the easiest hold gives, and no repetition is meant."""
    asked = workout([block("sandbag-carry", 80, "m", load_kg=50)])
    went = judge(asked, able(sandbag_carry=40), {}, [{"sets": [80], "rests_s": []}])
    assert 40 <= went["fails"]["done"] <= 50 and went["fails"]["unit"] == "m"


def test_longer_rests_take_longer_and_leave_more():
    asked, numbers = workout([block("handstand-push-up", 30)]), able(handstand_push_up=14)
    went = [judge(asked, numbers, {}, [{"sets": [5] * 6, "rests_s": [rest_s] * 5}]) for rest_s in (25, 35, 50)]
    assert [each["time_s"] for each in went] == sorted(each["time_s"] for each in went)
    assert [each["lowest_reserve"] for each in went] == sorted(each["lowest_reserve"] for each in went)


def test_nobody_s_own_plan_beats_ours_by_much_and_keeps_as_much():
    """Every plan of equal sets and one rest, for one block, with no more risk than the plan's: 3 % is what ease may cost."""
    asked, numbers = workout([block("handstand-push-up", 36)]), able(handstand_push_up=14)
    made = plan(asked, numbers, {"style": "even"})
    floor = made["blocks"][0]["lowest_reserve"]
    for size in (2, 3, 4, 6):
        for rest_s in range(5, 61, 5):
            went = judge(asked, numbers, {}, [{"sets": [size] * (36 // size), "rests_s": [rest_s] * (36 // size - 1)}])
            if went["finishes"] and went["lowest_reserve"] >= floor + 0.02:
                assert went["time_s"] >= made["score"]["likely"] * 0.97, (size, rest_s)


def test_what_the_cap_cuts_off_is_counted_up_to_it():
    asked = workout([block("sit-up", 20), block("air-squat", 40)], cap_s=60)
    went = judge(asked, KEEN, {}, [None, None])
    assert went["time_s"] is None
    assert 20 < went["count"] < went["count_in_all"] == 60


@pytest.mark.parametrize(
    ("mine", "code"),
    [
        ([{"sets": [5, 5], "rests_s": [20]}], "sets_do_not_fill"), ([{"sets": [6, 6], "rests_s": []}], "rests_do_not_fit"),
        ([{"sets": [12, 0], "rests_s": [20]}], "sets_do_not_fill"), ([{"sets": [6, 6], "rests_s": [-1]}], "rest_out_of_range"),
        ([None, None, None], "too_many_blocks"), ("six and six", "own_blocks_not_a_list"),
    ],
)  # fmt: skip
def test_what_is_no_plan_is_refused(mine, code):
    with pytest.raises(EngineError) as error:
        judge(workout([block("handstand-push-up", 12), block("sit-up", 5)]), able(handstand_push_up=8), {}, mine)
    assert error.value.code == code


def test_nothing_is_changed_and_it_is_json():
    given = [six_blocks(), copy.deepcopy(KEEN), {}, [None, {"sets": [12, 12], "rests_s": [20]}]]
    kept = copy.deepcopy(given)
    json.dumps(judge(*given), allow_nan=False)
    assert given == kept


def test_a_slower_cadence_of_one_s_own_counts_below_critical_power():
    """Five push-ups at 1.25 of the usual 1.3 s for somebody with thirty. By hand: each lasts 0.325 s longer, 1.625 s in all, and costs a quarter more
    (POSITION_COST 1); being deeper they are themselves slower, by 5·1.3·0.4·0.32³ = 0.08 s at the very most."""
    asked = workout([block("push-up", 5)])
    numbers = {"level": "expert", "movements": {"push-up": {"max_unbroken": 30, "seconds_per_unit": 1.3}}}
    usual, slow = (judge(asked, numbers, {}, [{"sets": [5], "rests_s": [], "cadence": cadence}]) for cadence in (1.0, 1.25))
    stint = plan(asked, numbers, {})["basis"]["stints"][0]
    assert stint["spend"] == 0  # at or below critical power
    assert 1.625 < slow["time_s"] - usual["time_s"] < 1.625 + 0.085
    assert 1 - slow["lowest_reserve"] == pytest.approx(1.25 * (1 - usual["lowest_reserve"]), rel=0.01)


def test_a_quicker_cadence_than_usual_is_not_believed_in_sets():
    asked = workout([block("push-up", 5)])
    usual, quick = (judge(asked, KEEN, {}, [{"sets": [5], "rests_s": [], "cadence": cadence}]) for cadence in (1.0, 0.8))
    assert quick == usual
