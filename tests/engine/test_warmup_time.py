"""The warm-up and the time there is: plenty, little, hardly any, a late athlete, a heat that slips, an early call."""

import pytest
from engine_samples import able, block, workout

from webapp.engine import warm_up

MINUTE_S = 60


def squat_day():
    """Front squats and pull-ups, five rounds."""
    return workout([block("front-squat", 9, load_kg={"a": 60, "b": 40}), block("pull-up", 12)], rounds=5), able("keen", pull_up=14)


def codes(items):
    return [item["code"] for item in items]


def test_forty_minutes_start_later():
    result = warm_up(*squat_day(), {"warm_up_min": 40})
    assert result["starts_s"] <= 25 * MINUTE_S
    assert "start_later" in codes(result["reasons"])


@pytest.mark.parametrize("minutes, warning", [(3, "warm_up_too_short"), (4, "warm_up_emergency"), (7.9, "warm_up_emergency"), (8, None)])
def test_few_minutes_bring_a_caution(minutes, warning):
    found = set(codes(warm_up(*squat_day(), {"warm_up_min": minutes})["warnings"])) & {"warm_up_too_short", "warm_up_emergency"}
    assert found == ({warning} if warning else set())


def test_no_time_at_all_is_said_without_steps():
    result = warm_up(*squat_day(), {"warm_up_min": 0})
    assert result["steps"] == [] and "warm_up_too_short" in codes(result["warnings"])


def test_late_athletes_get_a_shorter_one_that_still_fits():
    full = warm_up(*squat_day(), {})
    late = warm_up(*squat_day(), {"late_by_s": 400})
    assert late["starts_s"] <= full["starts_s"] - 400
    assert late["checks"]["limiting_rehearsed"] and late["checks"]["heaviest_rehearsed"]


def test_a_heat_that_slips_beyond_a_quarter_of_an_hour_brings_three_minutes_again():
    """Re-warm beyond 15 min (Silva et al. 2018; West et al. 2013)."""
    full = warm_up(*squat_day(), {})
    little = warm_up(*squat_day(), {"slipped_by_s": 900})
    much = warm_up(*squat_day(), {"slipped_by_s": 1200})
    assert len(little["steps"]) == len(full["steps"]) + 1 and little["steps"][-1]["code"] == "keep_warm"
    waiting = [index for index, step in enumerate(much["steps"]) if step["code"] == "keep_warm"][0]
    assert sum(step["seconds"] for step in much["steps"][waiting + 1 :]) == 3 * MINUTE_S
    assert much["steps"][waiting]["at_s"] == much["ends_s"] + 1200 and much["ends_s"] == full["ends_s"]


def test_called_early_goes_to_the_essentials_at_once():
    result = warm_up(*squat_day(), {"called_early": 200})
    assert result["starts_s"] == pytest.approx(200, abs=5)
    assert {step["phase"] for step in result["steps"]} <= {"get_warm", "loosen", "build", "settle"}
    assert result["checks"]["limiting_rehearsed"] and result["checks"]["heaviest_rehearsed"]
