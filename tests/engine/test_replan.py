"""replan(): the rest of the plan, made anew from what was tapped."""

import copy
import json

import pytest
from engine_samples import block, six_blocks, workout

from webapp.engine import EngineError, plan, replan

KEEN = {"level": "keen", "inverted_ok": True}
SAME_TIME = 0.02  # two searches that end within this are the same


@pytest.fixture(scope="module")
def made():
    """The plan that is followed."""
    return plan(six_blocks(), KEEN, {})


@pytest.fixture(scope="module")
def capped():
    """The same with a cap that comes first."""
    return plan(six_blocks(cap_s=600), KEEN, {})


def on_time(made, blocks, slower=1.0):
    """Taps at the ends of the first blocks, each as planned or slower by a factor."""
    return [{"kind": "block", "at_s": each["end_s"] * slower} for each in made["blocks"][:blocks]]


def after(made, blocks, slower=1.0):
    """The re-plan right after the last tap."""
    taps = on_time(made, blocks, slower)
    return replan(made, taps, taps[-1]["at_s"] if taps else 0.0)


@pytest.mark.parametrize("blocks", range(6))
def test_on_schedule_nothing_much_changes(made, blocks):
    went = after(made, blocks)
    assert went["behind_s"] == pytest.approx(0, abs=1e-6)
    assert went["form"] == pytest.approx(1.0)
    assert went["score"]["kind"] == "time"
    assert went["score"]["likely"] == pytest.approx(made["score"]["likely"], rel=SAME_TIME)
    assert [each["block"] for each in went["blocks"]] == [each["block"] for each in made["blocks"][blocks:]]


def test_what_is_left_is_filled(made):
    for each, planned in zip(after(made, 2)["blocks"], made["blocks"][2:], strict=True):
        assert sum(each["sets"]) == pytest.approx(planned["amount"])
        assert len(each["rests_s"]) == len(each["sets"]) - 1


@pytest.mark.parametrize("blocks", [1, 3, 5])
def test_behind_means_later_and_slower_form(made, blocks):
    went = [after(made, blocks, slower) for slower in (0.9, 1.0, 1.1, 1.25)]
    assert [each["score"]["likely"] for each in went] == sorted(each["score"]["likely"] for each in went)
    assert [each["behind_s"] for each in went] == sorted(each["behind_s"] for each in went)
    assert [each["form"] for each in went] == sorted((each["form"] for each in went), reverse=True)
    assert went[0]["behind_s"] < 0 < went[-1]["behind_s"]


def test_the_form_is_doubted_at_first(made):
    """The same share behind says more after five blocks than after one."""
    assert after(made, 5, 1.2)["form"] < after(made, 1, 1.2)["form"] < 1


def test_a_set_tapped_leaves_the_rest_of_the_block(made):
    """Four handstand push-ups done of twenty: sixteen to come."""
    taps = on_time(made, 2)
    taps.append({"kind": "set", "reps": 4, "at_s": taps[-1]["at_s"] + 25})
    went = replan(made, taps, taps[-1]["at_s"])
    assert went["blocks"][0]["movement"] == "handstand-push-up"
    assert sum(went["blocks"][0]["sets"]) == 16


def test_waiting_helps_the_muscles_and_costs_the_time(made):
    taps = on_time(made, 2)
    now, later = (replan(made, taps, taps[-1]["at_s"] + wait_s) for wait_s in (0, 60))
    assert now["score"]["likely"] < later["score"]["likely"] < now["score"]["likely"] + 60.5
    assert later["reserve_curve"][0]["push"] >= now["reserve_curve"][0]["push"]


def test_all_done_is_the_time_of_the_last_tap(made):
    taps = on_time(made, 6, 1.1)
    went = replan(made, taps, taps[-1]["at_s"] + 5)
    assert (went["blocks"], went["score"]) == ([], {"kind": "time", "likely": taps[-1]["at_s"]})


def test_where_the_cap_comes_first_it_counts(capped):
    assert capped["score"]["kind"] == "count"
    reached = len([each for each in capped["blocks"] if each["reached"]])
    went = after(capped, reached - 1)
    late = after(capped, reached - 1, 1.1)
    assert went["score"]["kind"] == late["score"]["kind"] == "count"
    assert went["score"]["likely"] == pytest.approx(capped["score"]["likely"], abs=2)
    assert late["score"]["likely"] <= went["score"]["likely"]


def test_it_works_for_rounds_and_rests():
    made = plan(workout([block("pull-up", 8), block("rest", 30, "s"), block("push-up", 12)], rounds=3), KEEN, {})
    went = after(made, 4)
    assert [(each["round"], each["movement"]) for each in went["blocks"]] == [(each["round"], each["movement"]) for each in made["blocks"][4:]]
    assert went["score"]["likely"] <= made["score"]["likely"] * 1.01
    assert went["score"]["likely"] == pytest.approx(made["score"]["likely"], rel=0.05)  # eight of fifteen may go in one at the end, or in two


def test_the_plan_is_not_changed_and_survives_being_kept(made):
    """The phone keeps plans as JSON."""
    kept = copy.deepcopy(made)
    taps = on_time(made, 3, 1.05)
    went = replan(made, taps, taps[-1]["at_s"])
    assert made == kept
    assert replan(json.loads(json.dumps(made)), taps, taps[-1]["at_s"]) == went
    json.dumps(went, allow_nan=False)


@pytest.mark.parametrize(
    ("taps", "now_s", "code"),
    [
        ([{"kind": "block", "at_s": 50}, {"kind": "block", "at_s": 40}], 60, "event_out_of_order"), ([{"kind": "block", "at_s": 50}], 40, "event_out_of_order"),
        ([{"kind": "jump", "at_s": 50}], 60, "event_unknown"), ([{"kind": "block", "at_s": 10 + place} for place in range(7)], 60, "event_beyond_workout"),
        ([], -1, "time_out_of_range"), ("none", 10, "events_not_a_list"),
    ],
)  # fmt: skip
def test_taps_that_cannot_be_are_refused(made, taps, now_s, code):
    with pytest.raises(EngineError) as error:
        replan(made, taps, now_s)
    assert error.value.code == code
