"""The checks that everything in a workout passes: texts, choices, numbers. Each notes what is wrong at its path."""

import math

SHOWN_LENGTH = 40


def check_text(problems, path, value, limit, *, needed=False):
    """A text, not too long; a missing one only where it may be."""
    if value is None or (isinstance(value, str) and not value.strip()):
        if needed:
            problems.add(path, "missing")
    elif not isinstance(value, str):
        problems.add((), "not_a_workout")
    elif len(value) > limit:
        problems.add(path, "too_long", limit=limit)


def check_choice(problems, path, value, choices):
    """One of a list."""
    if value not in choices:
        problems.add(path, "unknown_choice")


def check_number(problems, path, value, bounds, *, whole=False, needed=False):
    """A number within bounds."""
    if value is None:
        if needed:
            problems.add(path, "missing")
        return
    low, high = bounds
    if not is_number(value):
        problems.add(path, "not_a_number", value=str(value)[:SHOWN_LENGTH])
    elif not low <= value <= high:
        problems.add(path, "out_of_range", low=low, high=high)
    elif whole and value != int(value):
        problems.add(path, "not_whole")


def is_number(value):
    """Whether one can count with it."""
    return isinstance(value, (int, float)) and not isinstance(value, bool) and math.isfinite(value)
