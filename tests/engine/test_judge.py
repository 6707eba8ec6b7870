"""judge(): an athlete's own break-up goes as the plan says it goes, where it is the plan's."""

import json
from pathlib import Path

import pytest

from webapp.engine import EngineError, judge, plan
from webapp.movements import freeze
from webapp.workouts import completed

DEMO = sorted((Path(__file__).resolve().parents[2] / "demo_data").glob("*.json"))
PERSON = {"level": "keen", "body_mass_kg": 72}


def demo(place):
    return completed(json.loads(DEMO[place].read_text("utf-8")))


def as_own(made):
    """A plan's blocks as an athlete's own: whole where the cap comes first, with the plan's cadence and waits."""
    pairs = zip(made["blocks"], made["basis"]["stints"], strict=False)
    return [{**(block["uncut"] if block["uncut"] else block), "lead_s": block["lead_s"], "cadence": stint["cadence"]} for block, stint in pairs]


@pytest.mark.parametrize("place", range(len(DEMO)))
@pytest.mark.parametrize("level", ["keen", "expert"])
def test_the_plan_judged_takes_what_the_plan_says(place, level):
    """Exact property: both go through one simulation. 1e-5: rests between rounds are found by bisection in one of them."""
    person, settings = PERSON | {"level": level}, {"style": "bold"}
    made = plan(demo(place), person, settings)
    if made["score"]["kind"] == "time":
        verdict = judge(demo(place), person, settings, as_own(made))
        assert verdict["time_s"] == pytest.approx(made["score"]["likely"], rel=1e-5)
        assert verdict["fails"] is None


def test_a_slower_cadence_takes_longer():
    made = plan(demo(1), PERSON, {})
    own = as_own(made)
    slow = [{**block, "cadence": 1.2} for block in own]
    assert judge(demo(1), PERSON, {}, slow)["time_s"] > judge(demo(1), PERSON, {}, own)["time_s"]


def test_what_would_fail_beyond_the_cap_is_no_failure():
    """The second half in one go cannot go well; with the cap before it nobody gets there."""
    workout = demo(2)
    own = as_own(plan(workout, PERSON, {}))[:2]
    assert judge({**workout, "cap_s": None}, PERSON, {}, own)["fails"] is not None
    verdict = judge({**workout, "cap_s": 60}, PERSON, {}, own)
    assert verdict["fails"] is None
    assert not verdict["finishes"]
    assert verdict["reserve_curve"][-1]["t_s"] <= 60


def rounds_of_ten():
    blocks = [{"movement": "push-up", "amount": 10, "unit": "reps"}, {"movement": "air-squat", "amount": 10, "unit": "reps"}]
    options = [{"key": "prescribed", "name": "As prescribed", "blocks": blocks}]
    return {**demo(0), "shape": "amrap", "time_s": 120, "cap_s": None, "options": options, "movements": freeze(["push-up", "air-squat"])}


def test_most_rounds_are_judged_over_as_many_as_are_given():
    able = {"level": "keen", "movements": {"push-up": {"max_unbroken": 60}, "air-squat": {"max_unbroken": 90}}}
    verdict = judge(rounds_of_ten(), able, {}, [None] * 12)
    assert not verdict["finishes"]
    assert verdict["rounds"] * 20 + verdict["extra"] == verdict["count"]
    assert 2 <= verdict["rounds"] <= 4  # 10 push-ups at 1.2 to 1.3 s and 10 squats at 1.4 to 1.5 s with 8 s between: 40 to 45 s a round


@pytest.mark.parametrize("own, code", [
    ({"sets": [12], "rests_s": []}, "sets_do_not_fill"), ({"sets": [6, 7], "rests_s": []}, "rests_do_not_fit"),
    ({"sets": [13], "rests_s": [], "cadence": 9}, "cadence_out_of_range"), ({"sets": [13], "rests_s": [], "lead_s": -1}, "rest_out_of_range"),
])  # fmt: skip
def test_what_cannot_be_judged_is_named(own, code):
    """Tin Kettle opens with 13 swings."""
    with pytest.raises(EngineError) as caught:
        judge(demo(1), PERSON, {}, [own])
    assert caught.value.code == code
