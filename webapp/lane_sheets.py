"""What a judge counts in a lane, row by row, for each shape of workout."""

from webapp import class_tables
from webapp.engine.score import count_of
from webapp.workouts import REST, parts_of, round_amounts, rounds_of

# Rows for most rounds in a time: a strong athlete's rounds and some to spare, as far as a page goes. (chosen)
SPARE_ROUNDS = 2
LEAST_ROUNDS, MOST_ROUNDS = 5, 20
ATTEMPTS = 6  # rows; nobody makes more than a handful near the maximum


def of(workout, option_key):
    """One sheet for each part: its `title` and `kind`, and what the function of that name makes of it as `rows`, under `columns`."""
    sheets = []
    for part in parts_of(workout):
        kind = KINDS[part["shape"]]
        rows = kind(part, _option(part, option_key))
        sheets.append({"title": part["title"], "kind": kind.__name__, "rows": rows, "columns": _columns(kind, rows)})
    return sheets


def running(workout, option):
    """Running count at the end of each block and at each mark, in the order a judge meets them."""
    rounds = rounds_of(workout, option)
    rows, count = [], 0
    for number in range(rounds):
        for cell in _cells(workout, option, number, rounds):
            counted = cell["count"]
            rows.append(cell | {
                "round": number + 1,
                "marks": [count + step for step in range(1, counted)] if cell["unit"] == "m" else [],
                "count": count + counted,
                "tie_break": option.get("tie_break_after_block") == cell["block"] and number == rounds - 1,
            })
            count += counted
    return rows


def rounds(workout, option):
    """A row for each round that somebody may get through; each block with its count within the round."""
    likely = class_tables.planned(workout, option["key"], workout["divisions"][0]["key"], "expert")["rounds"] or 0
    number = max(LEAST_ROUNDS, min(MOST_ROUNDS, likely + SPARE_ROUNDS))
    return [{"round": index + 1, "cells": _running_within(_cells(workout, option, index, number))} for index in range(number)]


def intervals(workout, option):
    """A row for each interval: when it begins, what is to be done in it."""
    number = workout["interval_count"]
    return [
        {"round": index + 1, "at_s": index * workout["interval_s"], "cells": _running_within(_cells(workout, option, index, number))}
        for index in range(number)
    ]


def attempts(workout, option):
    """Numbers of the attempts to be written down."""
    return list(range(1, ATTEMPTS + 1))


def counts(workout, block, amount):
    """What an amount of a block counts: marks of a distance, else the amount itself."""
    kind = "rest" if block["movement"] == REST else ""
    stint = {"kind": kind, "unit": block["unit"], "amount": amount, "step_units": amount, "mark_every": block.get("mark_every")}
    return count_of(stint, 1, workout)


KINDS = {"for_time": running, "amrap": rounds, "intervals": intervals, "load": attempts}


def _option(workout, option_key):
    return next(option for option in workout["options"] if option["key"] == option_key)


def _cells(workout, option, index, rounds):
    """Each block of work in one round: its number, name, amount, unit and what it counts."""
    for number, block in enumerate(option["blocks"], start=1):
        if block["movement"] != REST:
            amount = round_amounts(option, block, rounds)[index]
            yield {
                "block": number, "name": workout["movements"][block["movement"]]["name"], "amount": amount, "unit": block["unit"],
                "count": counts(workout, block, amount),
            }


def _columns(kind, rows):
    """Of rows that stand under their blocks, each block: its amount is None where it changes from row to row."""
    if kind not in (rounds, intervals):
        return []
    return [
        cell | {"amount": cell["amount"] if len({row["cells"][place]["amount"] for row in rows}) == 1 else None}
        for place, cell in enumerate(rows[0]["cells"])
    ]


def _running_within(cells):
    total, made = 0, []
    for cell in cells:
        total += cell["count"]
        made.append(cell | {"count": total})
    return made
