"""The sheet that also serves people without a phone: by largest unbroken set of the deciding movement, how to break it up."""

from .parameters import TABLE_ROWS
from .planner import plan
from .stints import option_of


def deciding_movement(workout: dict, option_key: str, division_key: str) -> dict | None:
    """Return movement and block number that decide the option for a regular athlete, None where nothing is broken up."""
    made = plan(workout, {"level": "regular"}, {"option": option_key, "division": division_key})
    gates = [block for block in made["blocks"] if len(block["reasons"]) > 0 and block["reasons"][0]["code"] == "gate"]
    if len(gates) > 0:
        return {"movement": gates[0]["movement"], "block": gates[0]["block"]}
    if made["deciding"] is None:
        return None
    index = made["deciding"]["block"]
    return {"movement": option_of(workout, option_key)["blocks"][index - 1]["movement"], "block": index}


def class_table(workout: dict, option_key: str, division_key: str) -> list:
    """Return one row per bracket of the largest unbroken set of the deciding movement, for a regular athlete otherwise.

    Returns
    -------
    list : mappings with movement, block, max_low, max_high (None for the last), unit, sets of the block's first round, rest_s (most
    usual rest, None for none) [s], start_s (when to be there) [s], expected_at_cap (count of the workout, None when finished), finish_s [s].
    An empty list where nothing decides, or the movement is not asked for by its largest set.
    """
    where = deciding_movement(workout, option_key, division_key)
    if where is None:
        return []
    movement = where["movement"]
    entry = workout["movements"][movement]
    rows = []
    for bracket in TABLE_ROWS:
        typical = bracket[0] if bracket[1] is None else (bracket[0] + bracket[1]) // 2
        numbers = {"level": "regular", "movements": {movement: {"max_unbroken": typical * rows_scale(entry)}}}
        made = plan(workout, numbers, {"option": option_key, "division": division_key})
        rows.append(row_of(made, where, bracket, rows_scale(entry), entry["unit"]))
    return rows


def rows_scale(entry: dict) -> int:
    """Return by how much the brackets grow for work in metres, seconds or calories: their largest sets are larger."""
    return 1 if entry["unit"] == "reps" else 5


def row_of(made: dict, where: dict, bracket: list, scale: int, unit: str) -> dict:
    """Return the row of one bracket from the plan made for its middle."""
    block = made["blocks"][0]
    for other in made["blocks"]:
        if other["block"] == where["block"] and other["round"] == 1:
            block = other
    finishes = made["score"]["finishes"]
    return {
        "movement": where["movement"],
        "block": where["block"],
        "unit": unit,
        "max_low": bracket[0] * scale,
        "max_high": None if bracket[1] is None else (bracket[1] + 1) * scale - 1,
        "sets": block["sets"],
        "rest_s": most_usual(block["rests_s"]),
        "start_s": block["start_s"],
        "expected_at_cap": None if finishes else made["score"]["likely"],
        "finish_s": made["score"]["likely"] if finishes else None,
    }


def most_usual(rests_s: list[float]) -> float | None:
    """Return the rest that comes most often, the shorter of two, None for none. [s]"""
    best = None
    most = 0
    for rest_s in sorted(rests_s):
        count = rests_s.count(rest_s)
        if count > most:
            most = count
            best = rest_s
    return best
