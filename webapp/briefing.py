"""What a briefing shows, gathered from a workout. Templates only print it.

Texts are the English keys or the coach's own words; the `translated` filter words them.
"""

import math

from webapp import class_tables, lane_sheets, movements
from webapp.workouts import completed, each_value, parts_of, round_amounts, rounds_of, used_movements

# Whoever faces more than this many times a largest set spends the workout resting. (chosen)
MOST_TIMES_A_LARGEST_SET = 5
RUNGS_SHOWN = 3  # of a ladder that goes on to the end of the time


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
    part = parts_of(workout)[0]
    option = part["options"][0]
    return _in_short(part, option) | {"blocks": _blocks(part, option)}


def option_briefing(workout, option):
    """One option: its parts, of which most workouts have one, and what stands in the lane for all of them."""
    found = _in_parts(workout, option)
    return {
        "key": option["key"],
        "name": option["name"],
        "parts": [part_briefing(*one) for one in found],
        "equipment": equipment(workout, {"blocks": [block for _, own in found for block in own["blocks"]]}),
    }


def part_briefing(workout, option):
    """One part: its blocks in order, where it is decided, whom it suits."""
    return _in_short(workout, option) | {
        "title": workout["title"],
        "rest_after_s": workout.get("rest_after_s"),
        "blocks": _blocks(workout, option),
        "decided": deciding(workout, option),
        "suits": suits(workout, option),
    }


def movement_briefing(workout, key):
    """One movement: what a good rep is, what is a no-rep, how to hold, what it is taken for."""
    entry = workout["movements"][key]
    shown = ("name", "standards", "measures", "no_reps", "equipment", "holds", "easier", "cautions", "lane", "cue")
    return {"key": key, "confused_with": likeness(entry), **{field: entry[field] for field in shown}}


def deciding(workout, option):
    """The block that stops most people, as the engine finds it for somebody regular, or None."""
    found = _planned(workout, option)["decided"]
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
        total = sum(round_amounts(option, block, _rounds_to_do(workout, option)))
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
                thing["loads"] = _each_once([*thing["loads"], *each_value(block.get("load_kg"))])
            elif name == "box":
                thing["heights"] = _each_once([*thing["heights"], *each_value(block.get("height_m"))])
    return list(things.values())


def lane_plan(workout):
    """The lane: its length, whether one turns, how each movement wants it."""
    lane = workout.get("lane") or {}
    wishes = _each_once(workout["movements"][key]["lane"] for key in used_movements(workout))
    return {"length_m": lane.get("length_m"), "turn": bool(lane.get("turn")), "wishes": [wish for wish in wishes if wish]}


def class_tables_of(workout, option, division):
    """For each part that has one, rows by largest set of the deciding movement, for people without a phone.

    Beside the engine's fields a row has `found_at`, the round and block where the cap finds somebody.
    """
    tables = []
    for part, own in _in_parts(workout, option):
        rows = class_tables.rows(part, own["key"], division["key"])
        if rows:
            counted = lane_sheets.running(part, own) if part["shape"] == "for_time" else []
            told = [row | {"found_at": _place_of(row["expected_at_cap"], counted)} for row in rows]
            tables.append({"rows": told, "part": part_briefing(part, own)})
    return tables


def _place_of(count, rows):
    """The row of the lane sheet where this count is reached; None where there is no such row."""
    return next((row for row in rows if row["count"] > count), rows[-1]) if rows and count is not None else None


def likeness(entry):
    """The movement it is taken for, by name, and the one difference."""
    likeness = entry["confused_with"]
    if not likeness:
        return None
    known = movements.library().get(likeness["movement"])
    return {"name": known["name"] if known else likeness["movement"], "difference": likeness["difference"]}


def _planned(workout, option):
    return class_tables.planned(workout, option["key"], workout["divisions"][0]["key"], "regular")


def _rounds_to_do(workout, option):
    """How many rounds somebody regular does or begins."""
    return rounds_of(workout, option) or (_planned(workout, option)["rounds"] or 0) + 1


def _in_parts(workout, option):
    """Each part of a workout with this option of it."""
    return [
        (part, next(own for own in part["options"] if own["key"] == option["key"])) for part in parts_of(workout)
    ]


def _in_short(workout, option):
    return {
        "shape": workout["shape"],
        "time_s": workout.get("time_s"),
        "interval_s": workout.get("interval_s"),
        "interval_count": workout.get("interval_count"),
        "ladder": any(block.get("step") for block in option["blocks"]),
        "rounds": option.get("rounds") or 1,
        "rep_scheme": option.get("rep_scheme"),
        "cap_s": option.get("cap_s") or workout.get("cap_s"),
    }


def _blocks(workout, option):
    return [_block(workout, option, number, block) for number, block in enumerate(option["blocks"], start=1)]


def _block(workout, option, number, block):
    entry = workout["movements"].get(block["movement"])
    goes_on = rounds_of(workout, option) is None and bool(block.get("step"))
    amounts = round_amounts(option, block, rounds_of(workout, option) or (RUNGS_SHOWN if goes_on else 1))
    mark = block.get("mark_every")
    return {
        "number": number,
        "movement": block["movement"],
        "name": entry["name"] if entry else "Rest",
        "amounts": amounts,
        "amount": block.get("amount"),
        "goes_on": goes_on,
        "unit": block["unit"],
        "load_step_kg": block.get("load_step_kg"),
        "loads": _per_division(workout, block.get("load_kg")),
        "heights": _per_division(workout, block.get("height_m")),
        "targets": _per_division(workout, block.get("target_m")),
        "implements": block.get("implements") or 1,
        "sides": block.get("sides") or (entry["sides"] if entry else "both"),
        "mark_every": mark,
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


def _is_the_load(entry, name):
    """Whether a piece of equipment is the thing that is lifted."""
    return bool(entry["load_kind"]) and entry["load_kind"] in name.lower()


def _each_once(items):
    return list(dict.fromkeys(items))
