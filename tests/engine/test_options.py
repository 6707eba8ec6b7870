"""Which option: expected standing, the coach's ranking rule, gates, and just for oneself."""

import pytest
from engine_samples import able, block, option, workout_of

from webapp.engine import advise, options, plan

HARD = option([block("air-squat", 20), block("handstand-push-up", 30)], "prescribed")
EASY = option([block("air-squat", 20), block("push-up", 30)], "scaled")
NO_REP = able(handstand_push_up=0, push_up=25)


def of(*made, cap_s=600, **more):
    return workout_of(list(made), cap_s, **more)


def test_somebody_who_gets_through_takes_as_prescribed():
    told = options(of(HARD, EASY), able(handstand_push_up=20, push_up=40), {})
    assert (told["advice"]["code"], told["advice"]["option"], told["training"], told["third"]) == ("option_prescribed_all", "prescribed", None, [])


def test_who_gets_through_most_is_told_how_much():
    told = options(of(HARD, EASY, cap_s=150), able(handstand_push_up=20, push_up=40), {})
    assert told["advice"]["code"] == "option_prescribed" and 0.75 <= told["advice"]["done_fraction"] < 1


def test_before_a_gate_prescribed_still_ranks_higher_and_scaled_trains_more():
    told = options(of(HARD, EASY, ranking="prescribed_first"), NO_REP, {})
    assert (told["advice"]["code"], told["advice"]["option"], told["advice"]["movement"]) == ("option_prescribed_gate", "prescribed", "handstand-push-up")
    assert (told["training"], told["rule"]) == ("scaled", "ranking_prescribed_first")
    assert told["options"][0]["done_fraction"] == pytest.approx(20 / 50)  # the squats of all repetitions, by hand


@pytest.mark.parametrize(("ranking", "settings", "code", "rule"), [
    ("separate", {}, "option_scaled", "ranking_separate"), ("prescribed_first", {"just_for_me": True}, "option_trains", "ranking_just_for_me"),
    (None, {}, "option_prescribed_gate", "ranking_unsaid"),
])  # fmt: skip
def test_the_ranking_rule_decides(ranking, settings, code, rule):
    told = options(of(HARD, EASY, ranking=ranking), NO_REP, settings)
    assert (told["advice"]["code"], told["rule"]) == (code, rule)
    assert told["advice"]["option"] == ("prescribed" if ranking is None else "scaled")


def test_where_nothing_counts_before_the_gate_scaled_is_the_one_with_a_score():
    first = option([block("handstand-push-up", 30)], "prescribed")
    told = options(of(first, option([block("push-up", 30)], "scaled")), NO_REP, {})
    assert (told["advice"]["code"], told["advice"]["option"], told["advice"]["movement"]) == ("option_nothing_counts", "scaled", "handstand-push-up")


def test_the_cap_may_come_early_and_prescribed_still_ranks():
    told = options(of(option([block("handstand-push-up", 90)], "prescribed"), EASY, cap_s=120), able(handstand_push_up=10, push_up=40), {})
    assert (told["advice"]["code"], told["training"]) == ("option_prescribed_ranks", "scaled")


def test_where_scaled_is_a_gate_too_a_third_option_without_one_is_pointed_out():
    scaled = option([block("air-squat", 20), block("ring-dip", 20)], "scaled")
    third = option([block("air-squat", 20), block("push-up", 20)], "third")
    told = options(of(HARD, scaled, third, ranking="separate"), able(handstand_push_up=0, ring_dip=0, push_up=25), {})
    assert (told["advice"]["option"], told["third"]) == ("third", [])


def test_where_every_option_is_a_gate_an_easier_form_of_similar_dose_is_named():
    """The library's first easier form of a pull-up is the ring row, one and a half for each: 30 for 20, by hand."""
    scaled = option([block("air-squat", 20), block("pull-up", 20)], "scaled")
    told = options(of(HARD, scaled), able(handstand_push_up=0, pull_up=0), {})
    assert told["third"] == [{"movement": "pull-up", "amount": 20, "unit": "reps", "easier": "Ring row", "easier_amount": 30}]
    assert (told["advice"]["code"], told["training"]) == ("option_prescribed_gate", None)
    assert told["options"][1]["done_fraction"] == pytest.approx(20 / 40)


def test_most_rounds_before_a_gate_are_less_than_a_round():
    """Ten squats of a round of fifteen: two thirds, by hand."""
    hard = option([block("air-squat", 10), block("handstand-push-up", 5)], "prescribed")
    asked = {**workout_of([hard, option([block("air-squat", 10), block("push-up", 5)], "scaled")]), "shape": "amrap", "time_s": 300}
    told = options(asked, NO_REP, {})
    assert told["options"][0]["done_fraction"] == pytest.approx(2 / 3)
    assert told["advice"]["code"] == "option_prescribed_gate"


def test_parts_are_taken_together():
    whole = of(HARD, EASY)
    parts = [{"shape": "for_time", "cap_s": 600, "options": [HARD, EASY]}, {"shape": "load", "time_s": 400, "options": [
        option([block("power-clean", 1)], key) for key in ("prescribed", "scaled")]}]  # fmt: skip
    whole["movements"].update(of(option([block("power-clean", 1)]))["movements"])
    told = options({**whole, "parts": parts}, NO_REP, {})
    assert told["options"][0]["done_fraction"] == pytest.approx((20 / 50 + 1) / 2)
    assert told["options"][0]["gate"] == "handstand-push-up"


def test_plans_already_made_are_advised_alike():
    asked = of(HARD, EASY, ranking="separate")
    plans = [plan(asked, NO_REP, {"option": key}) for key in ("prescribed", "scaled")]
    assert advise(asked, plans, False) == options(asked, NO_REP, {})
