"""Of people who could be the athlete, how many fail in a plan of the athlete's own."""

import json
import math
from pathlib import Path
from statistics import NormalDist

import pytest
from engine_samples import able, as_own, block, workout
from phones_engine import plan

from webapp.engine import EngineError, who_fails
from webapp.engine.parameters import TESTED_SD
from webapp.workouts import completed

DEMO = Path(__file__).resolve().parents[2] / "demo_data"
FORTY = workout([block("push-up", 40)])
TWENTY = able("keen", push_up=20)


def own(sets, rest_s):
    """Own blocks of one block, with one rest."""
    return [{"sets": sets, "rests_s": [rest_s] * (len(sets) - 1)}]


@pytest.mark.parametrize("style", ["steady", "bold"])
@pytest.mark.parametrize("name", ["2-tin-kettle", "4-long-corridor"])
def test_the_plans_own_blocks_fail_as_the_plan_says(name, style):
    """The same people, the same sets, the same clock: of a plan that gets through all the work without a cap the two agree."""
    asked = completed(json.loads((DEMO / f"{name}.json").read_text(encoding="utf-8")))
    asked.pop("cap_s", None)
    for each in asked["options"]:
        each.pop("cap_s", None)
    made = plan(asked, {"level": "keen"}, {"style": style})
    assert who_fails(asked, {"level": "keen"}, {"style": style}, as_own(made)) == made["tried_on"]


def test_all_fail_what_nobody_can_and_nobody_fails_single_ones():
    """Forty in one go with a largest set of twenty, give or take a tenth or two; singles with half a minute between."""
    assert who_fails(FORTY, TWENTY, {}, own([40], 0)) == {"people": 20, "fail": 20}
    assert who_fails(FORTY, TWENTY, {}, own([1] * 40, 30)) == {"people": 20, "fail": 0}


@pytest.mark.parametrize("asked", [15, 17, 19, 20, 21, 22, 24, 27])
def test_as_many_fail_in_one_set_as_the_normal_distribution_says(asked):
    """Python's statistics.NormalDist: the logarithm of the largest set, 20 and half the way to 21, give or take what a tested number is. To three of twenty:
    half a repetition is up to 1.6 people, and ten of twelve sizes are drawn, 1.2."""
    fewer = NormalDist(math.log(20.5), TESTED_SD).cdf(math.log(asked))
    assert who_fails(workout([block("push-up", asked)]), TWENTY, {}, own([asked], 0))["fail"] == pytest.approx(20 * fewer, abs=3)


def test_more_rest_never_makes_more_fail():
    fails = [who_fails(FORTY, TWENTY, {}, own([10, 10, 10, 10], rest_s))["fail"] for rest_s in (5, 20, 45, 90, 180)]
    assert fails == sorted(fails, reverse=True)
    assert fails[0] > fails[-1]


def test_after_the_cap_nobody_fails():
    capped = {**FORTY, "cap_s": 30}
    assert who_fails(capped, TWENTY, {}, own([5, 35], 60)) == {"people": 20, "fail": 0}
    assert who_fails(FORTY, TWENTY, {}, own([5, 35], 60))["fail"] == 20


def test_of_intervals_up_to_the_one_that_breaks():
    """Twelve every minute of somebody with twenty: nobody fails in the first, many in five."""
    minutes = {**workout([block("push-up", 12)]), "shape": "intervals", "interval_count": 5, "interval_s": 60}
    first = who_fails(minutes, TWENTY, {}, own([12], 0))
    assert first == {"people": 20, "fail": 0}
    assert who_fails(minutes, TWENTY, {}, own([12], 0) * 5)["fail"] > 0


@pytest.mark.parametrize(("given", "code"), [(5, "own_blocks_not_a_list"), (own([40], 0) * 2, "too_many_blocks"), (own([39], 0), "sets_do_not_fill")])
def test_what_it_refuses(given, code):
    with pytest.raises(EngineError) as refused:
        who_fails(FORTY, TWENTY, {}, given)
    assert refused.value.code == code


def test_the_heaviest_lift_has_chances_of_its_own():
    with pytest.raises(EngineError) as refused:
        who_fails({**FORTY, "shape": "load"}, TWENTY, {}, [])
    assert refused.value.code == "shape_unknown"
