"""The class table tells of every shape what its score is made of."""

import pytest
from engine_samples import block, option, workout_of

from webapp.engine import class_table
from webapp.engine.table import deciding_movement, told_block

PULL_UPS = block("pull-up", 8)
SCORES = {"finish_s", "expected_at_cap", "rounds", "extra", "interval", "margin_s"}


def table(work=PULL_UPS, **shape):
    """The rows of a workout of one block."""
    return class_table(workout_of([option([work])], **shape), "prescribed", "a")


@pytest.mark.parametrize("shape, told", [
    ({"shape": "for_time"}, {"finish_s"}),
    ({"shape": "for_time", "cap_s": 30}, {"expected_at_cap"}),
    ({"shape": "amrap", "time_s": 240}, {"rounds", "extra"}),
])
def test_a_row_says_what_counts_in_its_shape_and_nothing_else(shape, told):
    row = table(**shape)[2]
    assert {name for name in SCORES if row[name] is not None} == told


def test_more_in_one_go_never_means_less_work_in_the_time():
    rows = table(shape="amrap", time_s=240)
    done = [(row["rounds"], row["extra"]) for row in rows]
    assert done == sorted(done) and done[0] == (0, 0)


def test_intervals_say_which_one_no_longer_fits_or_how_much_is_spare():
    rows = table(shape="intervals", interval_s=60, interval_count=6)
    assert rows[0]["interval"] == 1 and rows[0]["sets"] == []
    assert rows[1]["interval"] == 1 and rows[1]["margin_s"] < 0
    assert rows[-1]["interval"] is None and 0 < rows[-1]["margin_s"] < 60


def test_of_a_ladder_the_first_rung_that_is_broken_up_is_told():
    rows = table(PULL_UPS | {"amount": 2, "step": 2}, shape="amrap", time_s=300)
    told = [row for row in rows[2:] if len(row["sets"]) > 1]
    assert told and all(sum(row["sets"]) == row["amount"] == 2 * row["round"] for row in told)


def test_of_a_ladder_nobody_breaks_up_the_longest_rung_is_told():
    rungs = [{"block": 1, "round": number, "amount": amount, "sets": [amount], "reached": True} for number, amount in enumerate([6, 4, 2], start=1)]
    assert told_block({"blocks": rungs}, {"block": 1})["amount"] == 6
    assert told_block({"blocks": rungs[::-1]}, {"block": 1})["amount"] == 6


def test_attempts_at_one_lift_have_no_table():
    assert table(block("front-squat", 1), shape="load", time_s=600) == []


def test_a_workout_in_parts_is_asked_part_by_part():
    part = {"shape": "for_time", "options": [option([PULL_UPS])]}
    assert deciding_movement(workout_of(part["options"], parts=[part]), "prescribed", "a") is None
