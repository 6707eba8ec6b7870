"""Every outside figure is a file that exists, is named with its source, and flags how well we know it."""

import re

import pytest
from reference_tables import FOLDER, rows

README = (FOLDER / "README.md").read_text("utf-8")
NAMED = sorted(set(re.findall(r"`([a-z0-9_]+\.csv)`", README)))
FLAGS = {"READ", "CITED", "MEM-high", "CALC"}
COMPUTED = ["small_truth.csv", "single_block_optimum.csv", "whole_workout_best.csv"]  # by this code, not published


def test_every_file_named_exists_and_every_file_is_named():
    assert {path.name for path in FOLDER.glob("*.csv")} == set(NAMED)


@pytest.mark.parametrize("name", [name for name in NAMED if name not in COMPUTED])
def test_every_row_says_how_well_it_is_known(name):
    table = rows(name)
    assert table
    assert {row["flag"] for row in table} <= FLAGS


@pytest.mark.parametrize("name", COMPUTED)
def test_the_regression_values_carry_their_date(name):
    assert all(re.fullmatch(r"\d{4}-\d{2}-\d{2}", row["computed_on"]) for row in rows(name))
