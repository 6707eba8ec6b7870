"""The phones' engine on the server says what the engine says."""

import threading

import pytest
from sample_workout import small_workout

from webapp import engine, quick_engine
from webapp.engine import EngineError
from webapp.workouts import completed

REGULAR = {"level": "regular"}


@pytest.fixture(scope="module")
def workout():
    return completed(small_workout())


def same(one, other):
    """Numbers to nine digits, everything else exactly."""
    if isinstance(one, dict):
        return one.keys() == other.keys() and all(same(one[key], other[key]) for key in one)
    if isinstance(one, list):
        return len(one) == len(other) and all(map(same, one, other))
    return one == (pytest.approx(other, rel=1e-9, abs=1e-9) if isinstance(one, float) else other)


def test_the_same_plan_and_table(workout):
    assert same(quick_engine.plan(workout, REGULAR, {}), engine.plan(workout, REGULAR, {}))
    assert same(quick_engine.class_table(workout, "prescribed", "a"), engine.class_table(workout, "prescribed", "a"))


def test_the_same_refusal(workout):
    with pytest.raises(EngineError) as refused:
        quick_engine.plan(workout, REGULAR, {"option": "none such"})
    with pytest.raises(EngineError) as expected:
        engine.plan(workout, REGULAR, {"option": "none such"})
    assert (refused.value.code, refused.value.value) == (expected.value.code, expected.value.value)


def test_texts_of_any_kind_arrive(workout):
    with pytest.raises(EngineError) as refused:
        quick_engine.plan(workout, REGULAR, {"option": "Größe `${1}` \u2028 </script> \"'\\"})
    assert refused.value.value == "Größe `${1}` \u2028 </script> \"'\\"


def test_several_ask_at_once(workout):
    answers = []
    threads = [threading.Thread(target=lambda: answers.append(quick_engine.plan(workout, REGULAR, {}))) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(answers) == 4 and all(answer == answers[0] for answer in answers)
