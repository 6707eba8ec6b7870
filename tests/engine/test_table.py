"""class_table(): the sheet for people without a phone, by largest set of the movement that decides."""

import json

import pytest
from engine_samples import block, workout

from webapp.engine import class_table
from webapp.engine.parameters import TABLE_ROWS

MADE = workout([block("row", 300, "m"), block("handstand-push-up", 40), block("sit-up", 20)], cap_s=900)


@pytest.fixture(scope="module")
def table():
    """The sheet of forty handstand push-ups after a row."""
    return class_table(MADE, "prescribed", "a")


def test_there_is_a_row_for_every_bracket(table):
    assert [(row["max_low"], row["max_high"]) for row in table] == [(0, 0), (1, 4), (5, 9), (10, 19), (20, 29), (30, None)]
    assert [[row["max_low"], row["max_high"]] for row in table] == TABLE_ROWS


def test_brackets_leave_no_gap(table):
    for before, after in zip(table, table[1:], strict=False):
        assert after["max_low"] == before["max_high"] + 1


def test_all_rows_speak_of_the_movement_that_decides(table):
    assert {(row["movement"], row["block"], row["unit"]) for row in table} == {("handstand-push-up", 2, "reps")}


def test_the_more_one_can_the_larger_the_opening(table):
    openings = [row["sets"][0] for row in table if row["sets"]]
    assert openings == sorted(openings)
    assert openings[0] == 1
    assert openings[-1] > 5


def test_the_more_one_can_the_further_one_gets(table):
    """More counts by the cap, then finishing, then sooner."""
    ranks = [(0, row["expected_at_cap"]) if row["finish_s"] is None else (1, -row["finish_s"]) for row in table]
    assert ranks == sorted(ranks)
    assert all((row["finish_s"] is None) != (row["expected_at_cap"] is None) for row in table)


def test_nobody_with_none_is_told_sets(table):
    assert table[0]["sets"] == []
    assert table[0]["expected_at_cap"] == 30  # 300 m count one for each lane of 10 m


def test_everybody_is_there_at_the_same_time(table):
    """Only the deciding movement differs between rows, and nothing before it tires its muscles."""
    starts = [row["start_s"] for row in table if row["start_s"] is not None]
    assert max(starts) - min(starts) < 0.05 * max(starts)


def test_it_is_json(table):
    assert json.loads(json.dumps(table, allow_nan=False)) == table


def test_metres_have_brackets_of_their_own():
    table = class_table(workout([block("sandbag-carry", 120, "m", load_kg=60)]), "prescribed", "a")
    assert [row["max_low"] for row in table] == [0, 5, 25, 50, 100, 150]
    assert [row["max_high"] for row in table] == [4, 24, 49, 99, 149, None]


def test_where_nothing_is_broken_up_there_is_no_sheet():
    assert class_table(workout([block("row", 1000, "m")]), "prescribed", "a") == []
