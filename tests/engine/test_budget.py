"""Every search has a stated budget, keeps it whatever it is asked, and says why it stopped."""

import pytest
from engine_samples import able, block, workout

from webapp.engine import EngineError, break_up, breakups, lifts, one_stint, plan
from webapp.engine.breakups import SEARCH_BUDGET
from webapp.engine.one_stint import BUDGET_PER_STINT
from webapp.engine.search import LEAST_BUDGET

pytestmark = pytest.mark.slow
HOSTILE = {
    "ten thousand of one": ([block("push-up", 10000)], 1, None, able(push_up=30)),
    "ten thousand for three": ([block("handstand-push-up", 10000)], 1, None, able(handstand_push_up=3)),
    "a tenth of a second": ([block("pull-up", 200)], 1, None, {"movements": {"pull-up": {"max_unbroken": 20, "seconds_per_unit": 0.1}}}),
    "a cap of one second": ([block("push-up", 50), block("pull-up", 50)], 1, 1, able(push_up=30, pull_up=12)),
    "forty rounds": ([block("pull-up", 5)], 40, None, able(pull_up=8)),
    "many blocks": ([block("push-up", 30), block("ring-dip", 30), block("pull-up", 30)] * 3, 1, None, able(push_up=9, ring_dip=7, pull_up=6)),
    "all gates": ([block("pull-up", 10), block("handstand-push-up", 10)], 3, 300, able(pull_up=0, handstand_push_up=0)),
    "more than anybody's largest set": ([block("pull-up", 10)], 1, None, able(pull_up=20000)),
}


@pytest.fixture
def tasks(monkeypatch):
    """Every search made from here on."""
    made = []
    for module in (one_stint, lifts, breakups):
        search = module.find
        monkeypatch.setattr(module, "find", lambda task, hints, search=search: made.append(task) or search(task, hints))
    return made


def assert_kept(tasks, most):
    """No search went beyond its budget, none had more than stated, and each says why it stopped."""
    assert all(task.evaluations <= task.budget <= most for task in tasks)
    assert {task.stopped_because for task in tasks} <= {"settled", "budget"}
    assert all(task.evaluations == task.budget for task in tasks if task.stopped_because == "budget")


@pytest.mark.parametrize("name", HOSTILE)
def test_a_plan_keeps_its_budget(tasks, name):
    blocks, rounds, cap_s, numbers = HOSTILE[name]
    asked = workout(blocks, rounds=rounds, cap_s=cap_s)
    try:
        made = plan(asked, numbers, {})
    except EngineError as error:
        assert error.code in ("amount_out_of_range", "max_unbroken_out_of_range", "seconds_out_of_range")
        made = None
    assert_kept(tasks, max(BUDGET_PER_STINT, LEAST_BUDGET))
    if made is not None:
        assert made["score"]["likely"] >= 0
        assert made["score"]["kind"] == "count" or made["score"]["finishes"]


@pytest.mark.parametrize(("largest", "reps", "seconds"), [(1, 1000, 0.1), (3, 1000, 2.0), (7, 1000, 2.6), (1000, 1000, 0.1)])
def test_a_break_up_keeps_its_budget(tasks, largest, reps, seconds):
    try:
        break_up(largest, reps, seconds)
    except EngineError as error:
        assert error.code == "nothing_fits"
    assert_kept(tasks, SEARCH_BUDGET)
    assert len(tasks) == 1


def test_all_gates_end_at_the_first():
    blocks, rounds, cap_s, numbers = HOSTILE["all gates"]
    made = plan(workout(blocks, rounds=rounds, cap_s=cap_s), numbers, {})
    assert (made["score"]["kind"], made["score"]["likely"]) == ("count", 0)
