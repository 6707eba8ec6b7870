"""Sets joined at the end of planning: breaks that do not earn their time go."""

import pytest
from benchmarks.server_speed import SIX_BLOCKS, numbers
from engine_samples import block, workout
from phones_engine import judge, plan

from webapp.engine.joined import fewer_sets

KEEN = {"level": "keen", "inverted_ok": True}


@pytest.mark.parametrize(
    ("flat", "fewer"),
    [
        ([12], []),
        ([7, 1, 10, 5], [[12]]),
        ([3, 1, 4, 1, 7, 10, 2], [[12], [3, 1, 4, 1, 6, 10, 3]]),
        ([5, 1, 6, 4, 1, 8, 3], [[12], [5, 1, 6, 7]]),
    ],
)
def test_one_set_or_the_last_two_in_one(flat, fewer):
    """Counted by hand: the same work each time, fewer sets."""
    assert fewer_sets(flat) == fewer


def test_a_break_is_kept_only_where_it_earns_its_time():
    """Thrusters and pull-ups, 21-15-9: the last nine thrusters were cut in eight and one, five seconds slower at the same lowest strength, on 2026-11-26."""
    scheme = workout([block("thruster", None, load_kg=40), block("pull-up", None)])
    scheme["options"][0]["rep_scheme"] = [21, 15, 9]
    made = plan(scheme, KEEN, {"style": "even"})
    sets = [one["sets"] for one in made["blocks"]]
    assert sets[4] == [9]
    broken = [{"sets": one["sets"], "rests_s": one["rests_s"]} for one in made["blocks"]]
    broken[4] = {"sets": [8, 1], "rests_s": [10]}
    assert judge(scheme, KEEN, {}, broken)["time_s"] > made["score"]["likely"]


def test_what_is_left_by_the_cap_is_used():
    """Six blocks under a cap: 144 steps, 136 before the end was filled up (regression, computed on 2026-11-26)."""
    assert plan(SIX_BLOCKS, numbers(17), {"style": "even"})["score"]["likely"] >= 140


def test_paced_work_that_comes_in_sets_stays_in_sets():
    """Nobody is seen to fail in it, so that joining would always pay: the breaks are there because its group would be empty on the way."""
    made = plan(workout([block("air-squat", 40), block("row", 1000, "m")]), {"level": "new"}, {"style": "bold"})
    assert [reason["code"] for reason in made["blocks"][1]["reasons"]][:1] == ["paced_in_sets"]
    assert len(made["blocks"][1]["sets"]) > 1
