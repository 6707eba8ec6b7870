"""plan(): the contract's shape, what is done in which order, and what it counts."""

import json

import pytest
from engine_samples import SIX_BLOCKS, able, block, blocks_of, option, six_blocks, workout, workout_of
from phones_engine import judge, plan, questions

from webapp.engine.parameters import GROUPS, STYLES

BLOCK_KEYS = {  # the plan as agreed: text, number, list, or None
    "movement": str, "amount": (int, float), "unit": str, "mode": str, "sets": list, "rests_s": list, "seconds_per_unit": (int, float),
    "switch_every": (int, float, type(None)), "round": int, "hold": (str, type(None)), "hold_reason": (dict, type(None)), "cue": (str, type(None)),
    "change_s": (int, float), "set_starts_s": list, "expected_at_cap": (int, float, type(None)), "start_s": (int, float, type(None)),
    "end_s": (int, float, type(None)), "lowest_reserve": (int, float), "fail_risk": (int, float), "limiting_group": str, "reasons": list,
}  # fmt: skip
PLAN_KEYS = {"blocks": list, "score": dict, "reserve_curve": list, "reasons": list, "warnings": list, "filled": list}
SCORE_KEYS = {"kind", "likely", "low", "high", "finishes", "tie_break_s"}
MODES = {"sets", "cadence", "unbroken", "all_out"}
KEEN = {"level": "keen", "inverted_ok": True}


@pytest.fixture(scope="module")
def made():
    """The plan of six blocks without a cap."""
    return plan(six_blocks(), KEEN, {})


@pytest.fixture(scope="module")
def capped():
    """The plan of six blocks of which a cap of eight minutes leaves a part."""
    return plan(six_blocks(cap_s=480), KEEN, {})


def test_the_contract_s_keys_are_there(made, capped):
    for each in (made, capped):
        assert all(isinstance(each[key], kind) for key, kind in PLAN_KEYS.items())
        assert set(each["score"]) >= SCORE_KEYS
        for one in each["blocks"]:
            assert all(isinstance(one[key], kind) for key, kind in BLOCK_KEYS.items()), one["movement"]
            assert one["mode"] in MODES


def test_reasons_and_warnings_are_codes_with_parameters(made):
    said = made["reasons"] + made["warnings"] + [reason for each in made["blocks"] for reason in each["reasons"]]
    assert said
    assert all(isinstance(reason["code"], str) and " " not in reason["code"] for reason in said)


def test_it_is_json(made, capped):
    for each in (made, capped):
        assert json.loads(json.dumps(each, allow_nan=False)) == each


def test_blocks_come_in_order_with_their_change_overs(made):
    assert [each["movement"] for each in made["blocks"]] == [each["movement"] for each in SIX_BLOCKS]
    assert made["blocks"][0]["start_s"] == 0
    for before, after in zip(made["blocks"], made["blocks"][1:], strict=False):
        assert after["start_s"] - before["end_s"] == pytest.approx(after["change_s"])
    assert made["blocks"][-1]["end_s"] == pytest.approx(made["score"]["likely"])


def test_sets_fill_the_work_and_start_one_after_another(made):
    for each in made["blocks"]:
        assert sum(each["sets"]) == pytest.approx(each["amount"])
        assert len(each["rests_s"]) == len(each["sets"]) - 1
        assert each["set_starts_s"] == sorted(each["set_starts_s"])
        assert each["start_s"] <= each["set_starts_s"][0]
        assert each["set_starts_s"][-1] < each["end_s"]


def test_reserves_are_shares_and_the_curve_goes_forward(made):
    times = [point["t_s"] for point in made["reserve_curve"]]
    assert times == sorted(times)
    assert times[-1] == pytest.approx(made["score"]["likely"])
    assert all(0 <= point[group] <= 1 for point in made["reserve_curve"] for group in GROUPS)
    assert all(0 <= each["lowest_reserve"] <= 1 and 0 <= each["fail_risk"] <= 1 for each in made["blocks"])


def test_inverted_work_keeps_something_back(made):
    """Fifteen per cent where falling hurts: inverted, overhead and heavy work, bold included."""
    for style in STYLES:
        hsp = blocks_of(plan(six_blocks(), KEEN, {"style": style}), "handstand-push-up")[0]
        assert hsp["lowest_reserve"] >= 0.15


def test_without_a_cap_the_score_is_a_time_in_its_band(made):
    score = made["score"]
    assert (score["kind"], score["finishes"]) == ("time", True)
    assert 0 < score["low"] <= score["likely"] <= score["high"]


def test_a_cap_that_leaves_time_changes_nothing(made):
    roomy = plan(six_blocks(cap_s=2 * made["score"]["high"]), KEEN, {})
    assert roomy["blocks"] == made["blocks"]
    assert roomy["score"]["likely"] == made["score"]["likely"]


def test_where_the_cap_comes_first_the_score_is_a_count(capped):
    score = capped["score"]
    assert (score["kind"], score["finishes"]) == ("count", False)
    assert score["low"] <= score["likely"] <= score["high"]
    assert score["likely"] == sum(each["count_at_cap"] for each in capped["blocks"])
    assert all(each["end_s"] is None or each["end_s"] <= 480 + 1e-6 for each in capped["blocks"])
    assert {"be_there_by", "decided_at"} <= {reason["code"] for reason in capped["reasons"]}


def test_blocks_beyond_the_cap_say_so(capped):
    late = [each for each in capped["blocks"] if not each["reached"]]
    assert late
    assert all((each["sets"], each["start_s"], each["expected_at_cap"]) == ([], None, 0) for each in late)
    assert all([reason["code"] for reason in each["reasons"]] == ["not_reached"] for each in late)


@pytest.mark.parametrize("cap_s", [60, 120, 240, 360, 480, 600])
def test_more_time_never_counts_less(cap_s):
    """To one count: the last block is planned anew for what fits."""
    less, more = (plan(six_blocks(cap_s=seconds), KEEN, {})["score"]["likely"] for seconds in (cap_s, cap_s + 60))
    assert more >= less - 1


def test_distances_count_their_marks():
    """A mark every 2 m: 48 m is 24 counts; without marks one for each lane of 10 m."""
    marked = plan(workout([block("farmer-carry", 48, "m", mark_every=2, load_kg=10)], cap_s=900), KEEN, {})
    plain = plan(workout([block("farmer-carry", 48, "m", load_kg=10)], cap_s=900), KEEN, {})
    assert (marked["score"]["count_in_all"], plain["score"]["count_in_all"]) == (24, 4)


def test_sets_of_a_marked_distance_are_whole_marks():
    carry = plan(workout([block("farmer-carry", 120, "m", mark_every=12, load_kg=24)]), able(farmer_carry=50), {})["blocks"][0]
    assert len(carry["sets"]) > 1
    assert all(metres % 12 == pytest.approx(0) for metres in carry["sets"])


def test_alternating_work_keeps_to_pairs():
    lunge = plan(workout([block("walking-lunge", 100)]), able(walking_lunge=40), {})["blocks"][0]
    assert len(lunge["sets"]) > 1
    assert all(steps % 2 == 0 for steps in lunge["sets"])


def test_the_tie_break_is_the_end_of_its_block(made):
    """After block 4 (see `six_blocks`)."""
    assert made["score"]["tie_break_s"] == made["blocks"][3]["end_s"]
    assert plan(six_blocks(cap_s=200), KEEN, {})["score"]["tie_break_s"] is None


def test_rounds_repeat_the_blocks():
    made = plan(workout([block("pull-up", 8), block("air-squat", 15)], rounds=4), KEEN, {})
    assert [(each["round"], each["movement"]) for each in made["blocks"]] == [(turn, name) for turn in (1, 2, 3, 4) for name in ("pull-up", "air-squat")]
    assert made["score"]["count_in_all"] == 4 * 23


def test_a_rep_scheme_gives_the_round_s_number():
    made = plan(workout([block("thruster", None, load_kg=30), block("pull-up", None), block("sit-up", 10)], rep_scheme=[18, 12, 6]), KEEN, {})
    assert [each["amount"] for each in made["blocks"]] == [18, 18, 10, 12, 12, 10, 6, 6, 10]


def test_twenty_blocks_go():
    chipper = [block(name, 10 + place) for place, name in enumerate(["push-up", "air-squat", "sit-up", "pull-up"] * 5)]
    made = plan(workout(chipper), KEEN, {})
    assert len(made["blocks"]) == 20
    assert made["score"]["finishes"]


def test_a_rest_is_nothing_but_time():
    made = plan(workout([block("push-up", 15), block("rest", 60, "s"), block("push-up", 15)]), KEEN, {})
    pause = made["blocks"][1]
    assert pause["end_s"] - pause["start_s"] == pytest.approx(60)
    assert pause["count_at_cap"] == 0
    sets = [{"sets": each["sets"], "rests_s": each["rests_s"]} for each in made["blocks"]]
    rested, straight = (judge(workout(blocks), KEEN, {}, own)["blocks"][-1] for blocks, own in (
        ([block("push-up", 15), block("rest", 60, "s"), block("push-up", 15)], sets), ([block("push-up", 15)] * 2, [sets[0], sets[2]])
    ))  # fmt: skip
    assert rested["lowest_reserve"] > straight["lowest_reserve"]


def test_no_rest_is_waited_for_after_the_last_work():
    """Three rounds that end with a minute of rest are two minutes of rest, hand arithmetic: the clock stops with the last step-up."""
    round_of = [block("push-up", 15), block("step-up", 10)]
    made = plan(workout([*round_of, block("rest", 60, "s")], rounds=3, tie_break_after_block=3), KEEN, {})
    last = made["blocks"][-1]
    assert (last["movement"], last["round"], len(made["blocks"])) == ("step-up", 3, 8)
    assert last["end_s"] == pytest.approx(made["score"]["likely"], abs=0.5)


def test_loads_are_the_division_s():
    pressing = workout([block("strict-press", 20, load_kg={"a": 40, "b": 25})])
    heavy, light = (plan(pressing, {"movements": {"strict-press": {"one_rep_max_kg": 60}}}, {"division": key}) for key in ("a", "b"))
    assert (heavy["blocks"][0]["load_kg"], light["blocks"][0]["load_kg"]) == (40, 25)
    assert heavy["score"]["likely"] > light["score"]["likely"]


def test_a_share_of_the_body_is_a_load():
    lifted = workout([block("deadlift", 10, load_of_body=0.75)])
    assert plan(lifted, {"body_mass_kg": 80}, {})["blocks"][0]["load_kg"] == 60


def test_a_load_above_the_one_rep_max_is_a_gate():
    made = plan(workout([block("sit-up", 10), block("deadlift", 10, load_kg=140)], cap_s=600), {"movements": {"deadlift": {"one_rep_max_kg": 120}}}, {})
    assert made["score"]["likely"] == 10
    assert made["blocks"][1]["reasons"][0]["code"] == "gate"


def test_one_hurries_to_a_gate_by_its_round_and_not_to_what_comes_first():
    heavier = workout([block("deadlift", 5, load_kg=100, load_step_kg=20), block("box-jump", 5)], rounds=3)
    numbers = {"level": "keen", "movements": {"deadlift": {"one_rep_max_kg": 110}}}
    hurries = [reason for reason in plan(heavier, numbers, {})["reasons"] if reason["code"].startswith("hurry")]
    assert [(one["code"], one.get("round")) for one in hurries] == [("hurry_to_gate_in_round", 2)]
    first = plan(workout([block("deadlift", 5, load_kg=120), block("box-jump", 5)]), numbers, {})
    assert first["blocks"][0]["reasons"][0]["code"] == "gate"
    assert not [reason for reason in first["reasons"] if reason["code"].startswith("hurry")]


@pytest.mark.parametrize("style", ["steady", "even", "bold"])
@pytest.mark.parametrize("cap_s", [200, 300, 400, 1200])
def test_where_the_plan_stops_before_the_cap_the_time_left_is_told(style, cap_s):
    """From fifteen seconds on; nothing is said to somebody who finishes."""
    made = plan(workout([block("air-squat", 40), block("handstand-push-up", 20), block("strict-press", 20, load_kg=40)], cap_s=cap_s), KEEN, {"style": style})
    at_s = max(one["end_s"] for one in made["blocks"] if one["end_s"] is not None)
    told = [(reason["at_s"], reason["left_s"]) for reason in made["reasons"] if reason["code"] == "stops_early"]
    assert told == ([(at_s, cap_s - at_s)] if not made["score"]["finishes"] and cap_s - at_s >= 15 else [])


def test_each_option_is_planned_by_its_key():
    both = workout_of([option([block("pull-up", 30)]), option([block("ring-row", 30)], key="scaled", cap_s=300)])
    assert plan(both, {}, {"option": "scaled"})["blocks"][0]["movement"] == "ring-row"
    assert plan(both, {}, {})["option"] == "prescribed"


def test_what_was_not_given_is_named():
    """By the number that `questions` asks: of sit-ups, how long one could go on."""
    made = plan(six_blocks(), able(pull_up=12), {})
    guessed = {(each["movement"], each["number"]) for each in made["filled"]}
    assert ("pull-up", "max_unbroken") not in guessed
    assert {("sit-up", "steady_s"), ("row", "effort"), ("sandbag-carry", "max_unbroken")} <= guessed
    assert guessed <= {(each["movement"], each["kind"]) for each in questions(six_blocks(), {}, able())}
    warned = {(each["movement"], each["number"]) for each in made["warnings"] if each["code"] == "number_guessed"}
    assert warned == guessed
