"""What a briefing shows, gathered from a workout. Templates only print it.

Texts are the English keys or the coach's own words; the `translated` filter words them.
"""

import json
import math
from functools import lru_cache

from webapp import movements
from webapp.engine import EngineError, plan
from webapp.engine import class_table as engine_table
from webapp.engine.score import count_of
from webapp.engine.table import deciding_movement
from webapp.workouts import REST, completed, round_amounts, used_movements

# Whoever faces more than this many times a largest set spends the workout resting. (chosen)
MOST_TIMES_A_LARGEST_SET = 5


def of(workout):
    """Everything the briefing says: `options`, `movements`, `equipment`, `cautions`, `lane`, `source`, `notes`."""
    workout = completed(workout)
    return {
        "options": [option_briefing(workout, option) for option in workout["options"]],
        "movements": [movement_briefing(workout, key) for key in used_movements(workout)],
        "cautions": _each_once(
            caution for entry in workout["movements"].values() for caution in entry["cautions"]
        ),
        "lane": lane_plan(workout),
        "source": workout.get("source") or {},
        "notes": workout.get("notes", ""),
    }


def summary(workout):
    """What a list of workouts shows of one: the first option in short."""
    option = workout["options"][0]
    return _in_short(workout, option) | {"blocks": _blocks(workout, option)}


def option_briefing(workout, option):
    """One option: its blocks in order, where it is decided, whom it suits, what stands in the lane."""
    return _in_short(workout, option) | {
        "key": option["key"],
        "name": option["name"],
        "tie_break_after_block": option.get("tie_break_after_block"),
        "blocks": _blocks(workout, option),
        "decided": deciding(workout, option),
        "suits": suits(workout, option),
        "equipment": equipment(workout, option),
    }


def movement_briefing(workout, key):
    """One movement: what a good rep is, what is a no-rep, how to hold, what it is taken for."""
    entry = workout["movements"][key]
    shown = ("name", "standards", "measures", "no_reps", "equipment", "holds", "easier", "cautions", "lane", "cue")
    return {"key": key, "confused_with": likeness(entry), **{field: entry[field] for field in shown}}


def deciding(workout, option):
    """The block that stops most people, as the engine finds it for somebody regular, or None."""
    found = _deciding(json.dumps(workout, sort_keys=True), option["key"])
    if found is None:
        return None
    return {**found, "name": workout["movements"][found["movement"]]["name"]}


def suits(workout, option):
    """What somebody should be able to do in one go: for each gate one unit, for the deciding block a fifth."""
    decided = deciding(workout, option)
    needed = {}
    for number, block in enumerate(option["blocks"], start=1):
        entry = workout["movements"].get(block["movement"])
        if entry is None or not (entry["gate"] or (decided and decided["block"] == number)):
            continue
        total = sum(round_amounts(option, block))
        share = math.ceil(total / MOST_TIMES_A_LARGEST_SET) if decided and decided["block"] == number else 1
        least = max(share, block.get("mark_every") or 1)
        at_least = max(least, needed.get(block["movement"], {}).get("at_least", 0))
        needed[block["movement"]] = {
            "movement": block["movement"], "name": entry["name"], "at_least": at_least, "unit": block["unit"],
        }
    return list(needed.values())


def equipment(workout, option):
    """What one lane needs: each thing once, with the loads and heights it comes in."""
    things = {}
    for block in option["blocks"]:
        entry = workout["movements"].get(block["movement"])
        for name in entry["equipment"] if entry else ():
            thing = things.setdefault(name, {"name": name, "count": 1, "loads": [], "heights": []})
            if _is_the_load(entry, name):
                thing["count"] = max(thing["count"], block.get("implements") or entry["implements"] or 1)
                thing["loads"] = _each_once([*thing["loads"], *_values(block.get("load_kg"))])
            elif name == "box":
                thing["heights"] = _each_once([*thing["heights"], *_values(block.get("height_m"))])
    return list(things.values())


def lane_plan(workout):
    """The lane: its length, whether one turns, how each movement wants it."""
    lane = workout.get("lane") or {}
    wishes = _each_once(workout["movements"][key]["lane"] for key in used_movements(workout))
    return {"length_m": lane.get("length_m"), "turn": bool(lane.get("turn")), "wishes": [wish for wish in wishes if wish]}


def class_table(workout, option, division):
    """Rows by largest unbroken set of the deciding movement, for people without a phone; [] where nothing decides.

    Beside the engine's fields, `found_at` is the round and block where the cap finds somebody.
    """
    rows = _class_table(json.dumps(workout, sort_keys=True), option["key"], division["key"])
    counted = lane_counts(workout, option)
    return [row | {"found_at": _place_of(row["expected_at_cap"], counted)} for row in rows]


def lane_counts(workout, option):
    """Running count at the end of each block and at each mark, in the order a judge meets them."""
    rows, count = [], 0
    rounds = len(option.get("rep_scheme") or []) or option.get("rounds") or 1
    for number in range(rounds):
        for index, block in enumerate(option["blocks"]):
            if block["movement"] == REST:
                continue
            amount = round_amounts(option, block)[number]
            counted = counts(workout, block, amount)
            rows.append({
                "round": number + 1, "block": index + 1, "amount": amount, "unit": block["unit"],
                "name": workout["movements"][block["movement"]]["name"],
                "marks": [count + step for step in range(1, counted)] if block["unit"] == "m" else [],
                "count": count + counted,
                "tie_break": option.get("tie_break_after_block") == index + 1 and number == rounds - 1,
            })
            count += counted
    return rows


def _place_of(count, rows):
    """The row of the lane sheet where this count is reached; None where there is no count."""
    return None if count is None else next((row for row in rows if row["count"] > count), rows[-1])


def counts(workout, block, amount):
    """What an amount of a block counts: marks of a distance, else the amount itself."""
    stint = {
        "kind": "", "unit": block["unit"], "amount": amount, "step_units": amount, "mark_every": block.get("mark_every"),
    }
    return count_of(stint, 1, workout)


def refusal(workout):
    """What keeps the engine from planning a workout, as a code with its value; None if nothing does."""
    for option in workout["options"]:
        try:
            plan(workout, {}, {"option": option["key"], "division": workout["divisions"][0]["key"]})
        except EngineError as error:
            return {"code": error.code, "value": error.value}
    return None


# A plan takes a tenth of a second and more, a table several plans; the same workout is asked for by the whole class.
@lru_cache(maxsize=256)
def _deciding(workout_json, option_key):
    workout = json.loads(workout_json)
    try:
        return deciding_movement(workout, option_key, workout["divisions"][0]["key"])
    except EngineError:
        return None


@lru_cache(maxsize=64)
def _class_table(workout_json, option_key, division_key):
    try:
        return engine_table(json.loads(workout_json), option_key, division_key)
    except EngineError:
        return []


def likeness(entry):
    """The movement it is taken for, by name, and the one difference."""
    likeness = entry["confused_with"]
    if not likeness:
        return None
    known = movements.library().get(likeness["movement"])
    return {"name": known["name"] if known else likeness["movement"], "difference": likeness["difference"]}


def _in_short(workout, option):
    return {
        "rounds": option.get("rounds") or 1,
        "rep_scheme": option.get("rep_scheme"),
        "cap_s": option.get("cap_s") or workout.get("cap_s"),
    }


def _blocks(workout, option):
    return [_block(workout, option, number, block) for number, block in enumerate(option["blocks"], start=1)]


def _block(workout, option, number, block):
    entry = workout["movements"].get(block["movement"])
    amounts = round_amounts(option, block)
    mark = block.get("mark_every")
    return {
        "number": number,
        "movement": block["movement"],
        "name": entry["name"] if entry else block["movement"],
        "amounts": amounts,
        "amount": block.get("amount"),
        "total": sum(amounts),
        "unit": block["unit"],
        "loads": _per_division(workout, block.get("load_kg")),
        "heights": _per_division(workout, block.get("height_m")),
        "targets": _per_division(workout, block.get("target_m")),
        "implements": block.get("implements") or 1,
        "sides": block.get("sides") or (entry["sides"] if entry else "both"),
        "mark_every": mark,
        "counts": counts(workout, block, amounts[0]) if block["unit"] == "m" else None,
        "as_written": block.get("as_written", ""),
        "note": block.get("note", ""),
        "tie_break": option.get("tie_break_after_block") == number,
        "confused_with": likeness(entry) if entry else None,
        "advice": [
            advice["text"] for advice in workout.get("advice", [])
            if advice.get("option") == option["key"] and advice.get("block") == number
        ],
    }


def _per_division(workout, value):
    """[{division, name, value}] whether one number stands for all or each division has its own."""
    if value is None:
        return []
    of_key = value if isinstance(value, dict) else {division["key"]: value for division in workout["divisions"]}
    return [
        {"division": division["key"], "name": division["name"], "value": of_key[division["key"]]}
        for division in workout["divisions"] if of_key.get(division["key"]) is not None
    ]


def _values(value):
    if value is None:
        return []
    return list(value.values()) if isinstance(value, dict) else [value]


def _is_the_load(entry, name):
    """Whether a piece of equipment is the thing that is lifted."""
    return bool(entry["load_kind"]) and entry["load_kind"] in name.lower()


def _each_once(items):
    return list(dict.fromkeys(items))
