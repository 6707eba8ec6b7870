"""From a workout to what the form shows: the way back from `webapp.typed`."""

from webapp.engine.units import M_PER_FT
from webapp.measures import KEPT_PLACES, KG_PER_UNIT, M_PER_UNIT, plain_number, pounds
from webapp.typed import DIVISION_KEYS, OWN
from webapp.typed_gym import from_gym
from webapp.wording import clock
from webapp.workouts import parts_of

# What the form asks of each part; a part that says more came from a file.
OF_A_PART = {
    "schema", "title", "shape", "cap_s", "time_s", "interval_s", "interval_count", "rest_after_s", "options", "advice",
}


def holds(workout):
    """Whether the form holds all of a workout: a lane or divisions of a part's own would be lost in it."""
    return all(part.keys() <= OF_A_PART for part in workout.get("parts") or [])


def from_workout(workout, name_of):
    """What the form shows for a workout; `name_of(key)` gives a movement's name in the coach's language."""
    source, lane = workout.get("source") or {}, workout.get("lane") or {}
    options = [option for part in parts_of(workout) for option in part["options"]]
    in_feet = any(" ft" in block.get("as_written", "") for option in options for block in option["blocks"])
    names = {division["key"]: division["name"] for division in workout["divisions"]}
    return {
        "title": workout["title"],
        "divisions": [names.get(key, "") for key in DIVISION_KEYS],
        **_lane_length(lane.get("length_m"), in_feet),
        "lane_turn": "yes" if lane.get("turn") else "",
        "source_text": source.get("text") or "",
        "source_url": source.get("url") or "",
        "ranking": workout.get("ranking", "prescribed_first"),
        "notes": workout.get("notes") or "",
        "gym": from_gym(workout.get("gym")),
        **_typed_parts(workout, name_of),
    }


def _lane_length(length_m, in_feet):
    """In feet beside work in feet, unless it was given in metres: that would come back as a little more or less."""
    feet = plain_number((length_m or 0) / M_PER_FT)
    if in_feet and round(float(feet) * M_PER_FT, KEPT_PLACES) == (length_m or 0):
        return {"lane_length": feet if length_m else "", "lane_unit": "ft"}
    return {"lane_length": _in_unit(length_m, 1), "lane_unit": "m"}


def _typed_parts(workout, name_of):
    """The first part as the work of the whole, the further ones beside it."""
    first, *further = [_typed_part(part, name_of) for part in parts_of(workout)]
    # The title of the only part is the workout's.
    return first | {"part_title": first["part_title"] if further else "", "parts": further}


def _typed_part(part, name_of):
    rest_s = part.get("rest_after_s")
    return {
        "part_title": part["title"],
        "shape": part["shape"],
        "cap": _as_clock(part.get("cap_s")),
        "time": _as_clock(part.get("time_s")),
        "interval": _as_clock(part.get("interval_s")),
        "interval_count": str(part.get("interval_count") or ""),
        "rest_after": "" if rest_s is None else clock(rest_s),
        "options": [_typed_option(part, option, name_of) for option in part["options"]],
    }


def _typed_option(workout, option, name_of):
    advice = {
        item["block"]: item["text"] for item in workout.get("advice", []) if item["option"] == option["key"]
    }
    scheme = option.get("rep_scheme")
    return {
        "key": option["key"],
        "name": option["name"],
        "rounds": "" if scheme else str(option.get("rounds") or 1),
        "rep_scheme": " ".join(map(str, scheme or [])),
        "cap": _as_clock(option.get("cap_s")),
        "tie_break": str(option.get("tie_break_after_block") or ""),
        "blocks": [
            _typed_block(workout, block, name_of) | {"advice": advice.get(number, "")}
            for number, block in enumerate(option["blocks"], start=1)
        ],
    }


def _typed_block(workout, block, name_of):
    written = block.get("as_written", "")
    key = block["movement"]
    unit = "ft" if block["unit"] == "m" and " ft" in written else block["unit"]
    load_unit = "lb" if " lb" in written else "kg"
    kind = "target_m" if "target_m" in block else "height_m"
    height_unit = "in" if " in" in written else "ft" if kind == "target_m" and " ft" in written else "cm"
    entry = (workout.get("movements") or {}).get(key, {})
    is_own = entry.get("family") == OWN
    per_unit_s = entry.get("seconds_per_unit", 0) * M_PER_UNIT.get(unit, 1)
    return {
        "movement": entry["name"] if is_own else name_of(key),
        "choice": OWN if is_own else "",
        "own_seconds": plain_number(per_unit_s) if is_own else "",
        "own_group": entry["primary"] if is_own else "",
        "amount": _in_unit(block.get("amount"), M_PER_UNIT.get(unit, 1)),
        "unit": unit,
        "step": _in_unit(block.get("step"), M_PER_UNIT.get(unit, 1)),
        "mark_every": _in_unit(block.get("mark_every"), M_PER_UNIT.get(unit, 1)),
        **_typed_values(block.get("load_kg"), "load", lambda value: pounds(value) if load_unit == "lb" else value),
        "load_unit": load_unit,
        "load_step": _in_unit(block.get("load_step_kg"), KG_PER_UNIT[load_unit]),
        **_typed_values(block.get(kind), "height", lambda value: value / M_PER_UNIT[height_unit]),
        "height_kind": kind,
        "height_unit": height_unit,
        "implements": str(block.get("implements") or 1),
        "sides": block.get("sides", ""),
        "note": block.get("note", ""),
    }


def _typed_values(value, name, convert):
    of_key = value if isinstance(value, dict) else dict.fromkeys(DIVISION_KEYS, value)
    return {
        f"{name}_{key}": "" if of_key.get(key) is None else plain_number(convert(of_key[key]))
        for key in DIVISION_KEYS
    }


def _as_clock(seconds):
    return clock(seconds) if seconds else ""


def _in_unit(value, factor):
    return "" if value is None else plain_number(value / factor)
