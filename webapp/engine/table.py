"""The sheet that also serves people without a phone: by largest unbroken set of the deciding movement, how to break it up."""

from .asked import option_of
from .athlete import asks_for_a_set
from .parameters import TABLE_ROWS
from .planner import plan


def deciding_movement(workout: dict, option_key: str, division_key: str) -> dict | None:
    """Return movement and block number that decide the option for a regular athlete, None where nothing is broken up.

    Nothing is in attempts at one lift; a workout in parts is asked part by part (`planner.part_of`).
    """
    return decided_in(plan(workout, {"level": "regular"}, {"option": option_key, "division": division_key}), option_of(workout, option_key))


def decided_in(made: dict, option: dict) -> dict | None:
    """Return movement and block number that decide a plan made for an option: the first gate, else where most time is lost; None for none."""
    if made.get("deciding") is None and len(made.get("blocks", [])) == 0:
        return None
    gates = [block for block in made["blocks"] if len(block["reasons"]) > 0 and block["reasons"][0]["code"] == "gate"]
    if len(gates) > 0:
        return {"movement": gates[0]["movement"], "block": gates[0]["block"]}
    if made["deciding"] is None:
        return None
    index = made["deciding"]["block"]
    return {"movement": option["blocks"][index - 1]["movement"], "block": index}


def class_table(workout: dict, option_key: str, division_key: str) -> list:
    """Return one row per bracket of the largest unbroken set of the deciding movement, for a regular athlete otherwise.

    Returns
    -------
    list : mappings with movement, block, max_low, max_high (None for the last), unit, and what `row_of` says of the plan.
    An empty list where nothing decides, or the movement is not asked for by its largest set.
    """
    where = deciding_movement(workout, option_key, division_key)
    if where is None:
        return []
    movement = where["movement"]
    entry = workout["movements"][movement]
    if not asks_for_a_set(entry):
        return []
    scale = rows_scale(entry)
    rows = []
    for bracket in TABLE_ROWS:
        typical = bracket[0] if bracket[1] is None else (bracket[0] + bracket[1]) // 2
        numbers = {"level": "regular", "movements": {movement: {"max_unbroken": typical * scale}}}
        made = plan(workout, numbers, {"option": option_key, "division": division_key})
        high = None if bracket[1] is None else (bracket[1] + 1) * scale - 1
        rows.append({**where, "unit": entry["unit"], "max_low": bracket[0] * scale, "max_high": high, **row_of(made, where)})
    return rows


def rows_scale(entry: dict) -> int:
    """Return by how much the brackets grow for work in metres, seconds or calories: their largest sets are larger."""
    return 1 if entry["unit"] == "reps" else 5


def row_of(made: dict, where: dict) -> dict:
    """Return what the sheet says of one plan.

    Returns
    -------
    dict : sets, rest_s (most usual rest, None for none) [s], start_s (when to be there) [s], round and amount of the block in the round that is
    told; None where it does not apply: finish_s [s], expected_at_cap (count of the workout), rounds and extra (count beyond them), interval
    (the first that does not fit) and margin_s (of the tightest interval, negative where it does not fit) [s].
    """
    block = told_block(made, where)
    score = made["score"]
    kind = score["kind"]
    margins_s = [one["margin_s"] for one in made.get("intervals", [])]
    broken = [one["interval"] for one in made.get("intervals", []) if one["margin_s"] < 0]
    if made.get("intervals") is not None and len(margins_s) == 0:
        broken = [1]
    return {
        "sets": block["sets"],
        "rest_s": most_usual(block["rests_s"]),
        "start_s": block["start_s"],
        "round": block["round"],
        "amount": block["amount"],
        "expected_at_cap": score["likely"] if kind == "count" else None,
        "finish_s": score["likely"] if kind == "time" else None,
        "rounds": score["likely"] if kind == "rounds" else None,
        "extra": score["likely_extra"] if kind == "rounds" else None,
        "interval": broken[0] if len(broken) > 0 else None,
        "margin_s": min(margins_s) if len(margins_s) > 0 else None,
    }


def told_block(made: dict, where: dict) -> dict:
    """Return the deciding block in the round the sheet tells of: the first, but of a ladder the first that has to be broken up, or the largest where none
    has. Where nobody gets as far as that block: one without sets.
    """
    rounds = [block for block in made["blocks"] if block["block"] == where["block"]]
    if len(rounds) == 0:
        return {"sets": [], "rests_s": [], "start_s": None, "round": 1, "amount": None}
    if len([1 for block in rounds if block["amount"] != rounds[0]["amount"]]) == 0:
        return rounds[0]
    told = rounds[0]
    for block in rounds:
        if block["reached"] and len(told["sets"]) < 2 and (len(block["sets"]) > 1 or block["amount"] > told["amount"]):
            told = block
    return told


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
