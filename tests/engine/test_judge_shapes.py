"""judge() for intervals, heaviest lifts and workouts in parts."""

import json

import pytest
from engine_samples import able, block, workout

from webapp.engine import EngineError, judge, plan

KEEN = {"level": "keen", "movements": {"power-clean": {"one_rep_max_kg": 100}}}
LOAD = {**workout([block("power-clean", 1)]), "shape": "load", "time_s": 480}


def intervals(blocks, interval_s=60, interval_count=10):
    return {**workout(blocks), "shape": "intervals", "interval_s": interval_s, "interval_count": interval_count}


def own(made):
    cadences = [stint["cadence"] for stint in made["basis"]["stints"] if stint["block"] > 0]
    return [
        {"sets": each["sets"], "rests_s": each["rests_s"], "lead_s": each["lead_s"], "cadence": cadence}
        for each, cadence in zip(made["blocks"], cadences, strict=False)
    ]


@pytest.mark.parametrize(("reps", "count"), [(6, 10), (4, 8), (9, 6)])
def test_the_plan_s_own_intervals_keep_the_plan_s_margins(reps, count):
    asked, numbers = intervals([block("pull-up", reps)], interval_count=count), able(pull_up=14)
    made = plan(asked, numbers, {})
    went = judge(asked, numbers, {}, own(made))
    assert [one["interval"] for one in went["intervals"]] == [one["interval"] for one in made["intervals"]]
    for ours, theirs in zip(made["intervals"], went["intervals"], strict=True):
        assert theirs["margin_s"] == pytest.approx(ours["margin_s"], abs=0.001)
    assert went["finishes"] == made["score"]["finishes"]
    assert went["count"] == made["score"]["likely"]
    assert went["count_in_all"] == made["score"]["count_in_all"] == reps * count


def test_margin_is_what_rests_leave_of_the_interval():
    """Ten swings in two sets with five seconds more between them: five seconds less margin, by hand."""
    asked = intervals([block("kettlebell-swing", 10, load_kg={"a": 16, "b": 12})], interval_count=1)
    short, long = [judge(asked, KEEN, {}, [{"sets": [5, 5], "rests_s": [rest_s]}]) for rest_s in (5, 10)]
    assert short["margin_s"] - long["margin_s"] == pytest.approx(5, abs=0.3)  # the second set may be a little quicker, rested
    assert short["finishes"] and short["breaks"] is None


def test_the_first_interval_that_breaks_is_named_and_counts_up_to_its_end():
    asked = intervals([block("pull-up", 6)], interval_s=60, interval_count=10)
    went = judge(asked, able(pull_up=20), {}, [{"sets": [6], "rests_s": []}] * 3 + [{"sets": [2, 2, 2], "rests_s": [40, 40]}])
    assert (went["breaks"], went["finishes"]) == (4, False)
    assert went["intervals"][-1]["margin_s"] < 0 <= min(one["margin_s"] for one in went["intervals"][:-1])
    assert 18 <= went["count"] < 24
    assert went["margin_s"] == went["intervals"][-1]["margin_s"]


def test_a_failing_repetition_breaks_its_interval():
    went = judge(intervals([block("pull-up", 9)]), able(pull_up=8), {}, [{"sets": [9], "rests_s": []}])
    assert (went["fails"]["round"], went["fails"]["rep"], went["breaks"]) == (1, 9, 1)


def test_fewer_intervals_than_asked_do_not_finish():
    went = judge(intervals([block("pull-up", 2)]), able(pull_up=20), {}, [{"sets": [2], "rests_s": []}] * 3)
    assert (went["breaks"], went["finishes"], went["count"]) == (None, False, 6)


def test_attempts_of_the_plan_keep_its_chances():
    made = plan(LOAD, KEEN, {})
    went = judge(LOAD, KEEN, {}, [{"load_kg": one["load_kg"], "rest_s": one["rest_s"]} for one in made["attempts"]])
    assert [one["chance_fraction"] for one in went["attempts"]] == [one["chance_fraction"] for one in made["attempts"]]
    assert [one["at_s"] for one in went["attempts"]] == pytest.approx([one["at_s"] for one in made["attempts"]])
    assert (went["likely"], went["low"], went["high"]) == tuple(made["score"][name] for name in ("likely", "low", "high"))


def test_heavier_goes_more_seldom_and_what_is_too_late_not_at_all():
    """In 480 s with 25 s and a rep each: the third attempt begins after two rests of 240 s, beyond the end, by hand."""
    went = judge(LOAD, KEEN, {}, [{"load_kg": load_kg, "rest_s": 240} for load_kg in (90, 102.5, 95)])
    chances = [one["chance_fraction"] for one in went["attempts"]]
    assert chances[0] > 0.9 > 0.5 > chances[1] > 0 == chances[2]
    assert [one["fits"] for one in went["attempts"]] == [True, True, False]
    assert went["likely"] == 90


def test_half_of_the_lifters_lift_their_own_maximum():
    """The day's maximum is drawn about the athlete's: half of the days are at least as good, the median of any symmetric draw."""
    went = judge(LOAD, KEEN, {}, [{"load_kg": 100, "rest_s": 0}])
    assert went["attempts"][0]["chance_fraction"] == pytest.approx(0.5, abs=0.08)


def test_less_than_a_minute_before_an_attempt_is_told():
    went = judge(LOAD, KEEN, {}, [{"load_kg": 80, "rest_s": 30}, {"load_kg": 85, "rest_s": 90}, {"load_kg": 90, "rest_s": 0}])
    assert [one["rested"] for one in went["attempts"]] == [True, False, True]


@pytest.mark.parametrize(
    ("mine", "code"),
    [
        ([], "sets_out_of_range"), ([{"load_kg": 60, "rest_s": 60}] * 30, "sets_out_of_range"), ([{"load_kg": 0, "rest_s": 60}], "load_out_of_range"),
        ([{"load_kg": 60, "rest_s": -1}], "rest_out_of_range"), ([None], "load_out_of_range"),
    ],
)  # fmt: skip
def test_what_are_no_attempts_is_refused(mine, code):
    with pytest.raises(EngineError) as error:
        judge(LOAD, KEEN, {}, mine)
    assert error.value.code == code


def test_more_intervals_than_there_are_are_refused():
    with pytest.raises(EngineError) as error:
        judge(intervals([block("pull-up", 2)], interval_count=2), KEEN, {}, [None] * 3)
    assert error.value.code == "too_many_blocks"


def test_parts_are_judged_each_as_a_workout_of_its_own():
    first = {"shape": "for_time", "options": workout([block("push-up", 20)])["options"]}
    second = {"shape": "load", "time_s": 480, "options": LOAD["options"]}
    whole = {**workout([block("push-up", 20), block("power-clean", 1)]), "parts": [first, second]}
    mine = [[{"sets": [10, 10], "rests_s": [15]}], [{"load_kg": 90, "rest_s": 0}]]
    went = judge(whole, KEEN, {}, mine)
    assert len(went["parts"]) == 2
    assert went["parts"][0] == judge({**whole, "parts": None, **first}, KEEN, {}, mine[0])
    assert went["parts"][1] == judge(LOAD, KEEN, {}, mine[1])
    json.dumps(went, allow_nan=False)
