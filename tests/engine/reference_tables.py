"""The published figures of `tests/reference/` as rows."""

import csv
from pathlib import Path

FOLDER = Path(__file__).resolve().parent.parent / "reference"


def rows(name: str) -> list[dict]:
    """Every row of one file, numbers as numbers, empty cells as None."""
    with (FOLDER / name).open(encoding="utf-8", newline="") as file:
        return [{key: value_of(text) for key, text in row.items()} for row in csv.DictReader(file)]


def value_of(text: str):
    """The number a cell holds, or its text."""
    try:
        return float(text)
    except ValueError:
        return text or None
