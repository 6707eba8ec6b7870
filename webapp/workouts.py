"""Workouts of schema 1: reading, checking, completing with the movements they use.

Forms, demo data and the command line all come through `checked`. It never changes what a coach meant; it
says what is wrong and where.
"""

import json
import math
import re
from urllib.parse import urlsplit

from webapp import movements
from webapp.checks import check_choice, check_number, check_text, is_number
from webapp.engine.asked import climbed
from webapp.engine.planner import SHAPES, part_of
from webapp.gym import check_gym
from webapp.problems import Problems, WorkoutError

SCHEMA = 1
RANKINGS = ("prescribed_first", "separate")
SIDES = ("both", "one", "alternating")
UNITS = ("reps", "m", "cal", "s")
REST = "rest"
KEY = re.compile(r"[a-z0-9-]{1,40}")

# Bounds against slips of the finger, wide enough for any workout of a class. (chosen)
LARGEST_AMOUNT = {"reps": 2000, "m": 50_000, "cal": 2000, "s": 3600}
CAP_S = (30, 4 * 3600)
TIME_S = (30, 3 * 3600)
INTERVAL_S = (10, 3600)
INTERVALS = (1, 120)
REST_BETWEEN_PARTS_S = (0, 3600)
ROUNDS = (1, 50)
STEP = (-500, 500)
LOAD_STEP_KG = (-50, 50)
REPS_OF_ATTEMPT = (1, 20)
LOAD_KG = (0.5, 500)
HEIGHT_M = (0.05, 10)
LANE_M = (1, 400)
MARK_M = (0.1, 1000)
MOST_OPTIONS = 4
MOST_DIVISIONS = 4
MOST_BLOCKS = 20
MOST_BLOCKS_IN_ALL = 120
PARTS = (2, 4)
# What a shape must say beside its blocks.
TIMES = {
    "for_time": {}, "amrap": {"time_s": TIME_S}, "load": {"time_s": TIME_S},
    "intervals": {"interval_s": INTERVAL_S, "interval_count": INTERVALS},
}
TITLE_LENGTH, NAME_LENGTH, NOTE_LENGTH, TEXT_LENGTH = 80, 40, 500, 20_000


def read_json(text):
    """The data in a JSON text; numbers that are none, and nesting without end, are refused."""
    try:
        return json.loads(text, parse_constant=_refuse, parse_float=_finite)
    except (ValueError, RecursionError) as error:
        raise WorkoutError({(): ("not_a_workout", {})}) from error


def checked(workout):
    """The workout itself if it can be used; otherwise WorkoutError with every problem found."""
    problems = Problems()
    if not isinstance(workout, dict) or workout.get("schema") != SCHEMA:
        problems.add((), "not_a_workout")
        problems.raise_if_any()
    try:
        _check(workout, problems)
    except (TypeError, AttributeError, KeyError, OverflowError) as error:
        # A list where a mapping belongs, a number of a thousand digits: only a file made by hand comes here.
        raise WorkoutError({(): ("not_a_workout", {})}) from error
    problems.raise_if_any()
    return workout


def completed(workout):
    """The workout with every movement it uses; entries it brings along, with a coach's changes, stay."""
    used = used_movements(workout)
    brought = workout.get("movements") or {}
    frozen = movements.freeze([key for key in used if key not in brought])
    # Whoever looks only for the names of the options, or for the first work, need not know of parts.
    options = parts_of(workout)[0]["options"]
    return workout | {"options": options, "movements": {key: brought.get(key) or frozen[key] for key in used}}


def parts_of(workout):
    """The parts of a workout, each a workout of its own; one that is in no parts is the only one."""
    if workout.get("parts") is None:
        return [workout]
    whole = {"movements": {}, **workout}
    return [
        part_of(whole, part) | {"title": part.get("title") or "", "advice": part.get("advice") or []}
        for part in workout["parts"]
    ]


def used_movements(workout):
    """Keys of the movements in all options, each once, in the order they come."""
    options = [option for part in parts_of(workout) for option in part["options"]]
    keys = [block["movement"] for option in options for block in option["blocks"]]
    return list(dict.fromkeys(key for key in keys if key != REST))


def texts(workout):
    """Every text of a workout that a catalogue may hold: names, notes, advice, the library's texts."""
    yield from (division["name"] for division in workout["divisions"])
    for part in parts_of(workout):
        for option in part["options"]:
            yield option["name"]
            yield from (block["note"] for block in option["blocks"] if block.get("note"))
        yield from (advice["text"] for advice in part.get("advice", []))
    if workout.get("notes"):
        yield workout["notes"]
    for entry in workout.get("movements", {}).values():
        yield from movements.texts(entry)


def rounds_of(workout, option):
    """How many rounds there are; None where they go on to the end of the time."""
    if workout["shape"] == "for_time":
        return len(option.get("rep_scheme") or []) or option.get("rounds") or 1
    return {"amrap": None, "load": 1, "intervals": workout.get("interval_count")}[workout["shape"]]


def round_amounts(option, block, rounds):
    """The amount of a block in each of so many rounds, as the engine climbs a ladder."""
    scheme = option.get("rep_scheme")
    if scheme and block.get("amount") is None:
        return list(scheme)
    return [climbed({"blocks": [block]}, 0, index)["blocks"][0]["amount"] for index in range(rounds)]


def each_value(value):
    """The numbers of a value that may be one for all or one for each division."""
    return list(value.values()) if isinstance(value, dict) else [] if value is None else [value]


def _check(workout, problems):
    check_text(problems, ("title",), workout.get("title"), TITLE_LENGTH, needed=True)
    check_choice(problems, ("ranking",), workout.get("ranking", RANKINGS[0]), RANKINGS)
    check_text(problems, ("notes",), workout.get("notes"), TEXT_LENGTH)
    _check_named(problems, ("divisions",), workout["divisions"])
    lane = workout.get("lane") or {}
    check_number(problems, ("lane", "length_m"), lane.get("length_m"), LANE_M)
    _check_source(problems, workout.get("source") or {})
    check_gym(problems, workout.get("gym"))
    if workout.get("parts") is None:
        _check_work(problems, (), workout)
    else:
        _check_parts(problems, workout)


def _check_parts(problems, workout):
    """Each part is checked as a workout; all must offer the same options, or nobody could stay with one."""
    fewest, most = PARTS
    if not fewest <= len(workout["parts"]) <= most:
        problems.add(("parts",), "number_of_parts", low=fewest, high=most)
    if not all(isinstance(part, dict) and "options" in part and "parts" not in part for part in workout["parts"]):
        problems.add((), "not_a_workout")
        return
    parts = parts_of(workout)
    for index, (given, part) in enumerate(zip(workout["parts"], parts)):
        check_text(problems, ("parts", index, "title"), part["title"], TITLE_LENGTH)
        check_number(problems, ("parts", index, "rest_after_s"), given.get("rest_after_s"), REST_BETWEEN_PARTS_S, whole=True)
        _check_work(problems, ("parts", index), part)
        if [option["key"] for option in part["options"]] != [option["key"] for option in parts[0]["options"]]:
            problems.add(("parts", index, "options"), "parts_differ")


def _check_work(problems, path, workout):
    shape = workout.get("shape")
    check_choice(problems, (*path, "shape"), shape, SHAPES)
    check_number(problems, (*path, "cap_s"), workout.get("cap_s"), CAP_S, whole=True)
    for name, bounds in TIMES.get(shape, {}).items():
        check_number(problems, (*path, name), workout.get(name), bounds, whole=True, needed=True)
    if shape in SHAPES:
        _check_options(problems, path, workout)
    _check_advice(problems, path, workout)


def _check_advice(problems, path, workout):
    """Advice is wrong at the block it is for: there a coach gives it."""
    keys = [option["key"] for option in workout["options"]]
    for index, advice in enumerate(workout.get("advice", [])):
        place = ("advice", index, "text")
        if advice.get("option") in keys and is_number(advice.get("block")):
            place = ("options", keys.index(advice["option"]), "blocks", advice["block"] - 1, "advice")
        check_text(problems, (*path, *place), advice["text"], NOTE_LENGTH)


def _check_options(problems, path, workout):
    options, place = workout["options"], (*path, "options")
    if not options:
        problems.add(place, "no_options")
    if len(options) > MOST_OPTIONS:
        problems.add(place, "too_many_options", limit=MOST_OPTIONS)
    _check_named(problems, place, options)
    if not all(KEY.fullmatch(str(item["key"])) for item in [*options, *workout["divisions"]]):
        problems.add((), "not_a_workout")
    for index, option in enumerate(options):
        _check_option(problems, (*place, index), option, workout)


def _check_option(problems, path, option, workout):
    blocks = option["blocks"]
    check_number(problems, (*path, "rounds"), option.get("rounds"), ROUNDS, whole=True)
    check_number(problems, (*path, "cap_s"), option.get("cap_s"), CAP_S, whole=True)
    _check_rounds(problems, path, option, workout)
    if workout["shape"] == "load":
        _check_lift(problems, path, option, workout)
    if not blocks:
        problems.add((*path, "blocks"), "no_blocks")
    elif len(blocks) > MOST_BLOCKS:
        problems.add((*path, "blocks"), "too_many_blocks", limit=MOST_BLOCKS)
    elif all(block["movement"] == REST for block in blocks):
        problems.add((*path, "blocks"), "only_rest")
    tie = option.get("tie_break_after_block")
    if tie is not None and tie not in range(1, len(blocks) + 1):
        problems.add((*path, "tie_break_after_block"), "tie_break_beyond")
    for index, block in enumerate(blocks):
        _check_block(problems, (*path, "blocks", index), block, option, workout)


def _check_rounds(problems, path, option, workout):
    scheme = option.get("rep_scheme")
    if scheme and workout["shape"] != "for_time":
        problems.add((*path, "rep_scheme"), "scheme_for_time_only")
    if scheme and option.get("rounds") not in (None, 1):
        problems.add((*path, "rounds"), "rounds_or_scheme")
    for amount in scheme or []:
        check_number(problems, (*path, "rep_scheme"), amount, (1, LARGEST_AMOUNT["reps"]), whole=True)
    rounds = rounds_of(workout, option)
    if is_number(rounds) and rounds * len(option["blocks"]) > MOST_BLOCKS_IN_ALL:
        place = (*path[:-2], "interval_count") if workout["shape"] == "intervals" else (*path, "rounds")
        problems.add(place, "too_much_work", limit=MOST_BLOCKS_IN_ALL)


def _check_lift(problems, path, option, workout):
    """A heaviest lift is one movement of which a heaviest single can be known."""
    if len(option["blocks"]) > 1:
        problems.add((*path, "blocks"), "one_lift_only")
    for index, block in enumerate(option["blocks"]):
        place = (*path, "blocks", index)
        entry = _entry(block["movement"], workout)
        if entry is not None and entry.get("one_rep_max_of_body") is None:
            problems.add((*place, "movement"), "no_heavy_single")
        check_number(problems, (*place, "amount"), block.get("amount"), REPS_OF_ATTEMPT)


def _check_block(problems, path, block, option, workout):
    entry = _entry(block["movement"], workout)
    if entry is None:
        problems.add((*path, "movement"), "unknown_movement", value=block["movement"])
    unit = block.get("unit")
    if unit not in UNITS:
        problems.add((*path, "unit"), "unknown_choice")
    elif entry and unit not in entry["units"]:
        problems.add((*path, "unit"), "wrong_unit", movement=entry["name"])
    else:
        _check_amount(problems, path, block, option)
    _check_ladder(problems, path, block, option, workout)
    check_choice(problems, (*path, "sides"), block.get("sides", "both"), SIDES)
    check_choice(problems, (*path, "implements"), block.get("implements", 1), (1, 2))
    for name, bounds in (("load_kg", LOAD_KG), ("height_m", HEIGHT_M), ("target_m", HEIGHT_M)):
        _check_per_division(problems, (*path, name), block.get(name), bounds, workout)
    for name in ("note", "as_written"):
        check_text(problems, (*path, name), block.get(name), NOTE_LENGTH)


def _check_amount(problems, path, block, option):
    amount, unit = block.get("amount"), block["unit"]
    if amount is None and not (option.get("rep_scheme") and block["movement"] != REST):
        problems.add((*path, "amount"), "missing")
    lowest = 0.1 if unit == "m" else 1
    check_number(problems, (*path, "amount"), amount, (lowest, LARGEST_AMOUNT[unit]), whole=unit != "m")
    mark = block.get("mark_every")
    if mark is None:
        return
    check_number(problems, (*path, "mark_every"), mark, MARK_M)
    if unit != "m":
        problems.add((*path, "mark_every"), "mark_without_distance")
    elif is_number(amount) and is_number(mark) and mark > amount:
        problems.add((*path, "mark_every"), "mark_beyond")


def _check_ladder(problems, path, block, option, workout):
    """What changes from round to round: there must be rounds, something to change, and it must stay in bounds to the last."""
    rounds = rounds_of(workout, option)
    changes = (
        ("step", STEP, [block.get("amount")], (1, LARGEST_AMOUNT.get(block.get("unit"), 0)), "step_too_far"),
        ("load_step_kg", LOAD_STEP_KG, each_value(block.get("load_kg")), LOAD_KG, "load_step_too_far"),
    )
    for name, bounds, firsts, (low, high), too_far in changes:
        change = block.get(name)
        if change is None:
            continue
        check_number(problems, (*path, name), change, bounds, whole=name == "step" and block.get("unit") != "m")
        if rounds == 1:
            problems.add((*path, name), "step_without_rounds")
        elif not firsts or firsts == [None]:
            problems.add((*path, name), "step_from_nothing")
        elif all(map(is_number, (rounds, change, *firsts))):
            lasts = [first + change * (rounds - 1) for first in firsts]
            if not low <= min(lasts) <= max(lasts) <= high:
                problems.add((*path, name), too_far)


def _check_per_division(problems, path, value, bounds, workout):
    """A number for all, or one for each division."""
    if not isinstance(value, dict):
        return check_number(problems, path, value, bounds)
    known = {division["key"] for division in workout["divisions"]}
    for key, number in value.items():
        if key not in known:
            problems.add((*path, key), "unknown_division")
        check_number(problems, (*path, key), number, bounds)


def _check_named(problems, path, items):
    if len(items) > MOST_DIVISIONS:
        problems.add(path, "too_many_options", limit=MOST_DIVISIONS)
    for index, item in enumerate(items):
        check_text(problems, (*path, index, "name"), item["name"], NAME_LENGTH, needed=True)
        earlier = [other["name"] for other in items[:index]] + [other["key"] for other in items[:index]]
        if item["name"] in earlier or item["key"] in earlier:
            problems.add((*path, index, "name"), "same_name_twice")


def _check_source(problems, source):
    check_text(problems, ("source", "text"), source.get("text"), TEXT_LENGTH)
    url = source.get("url")
    if url and not is_https(url):
        problems.add(("source", "url"), "not_https")


def is_https(url):
    """Whether a link may be shown: nothing but https with a host, so that no script hides in it."""
    try:
        parts = urlsplit(url)
        return parts.scheme == "https" and bool(parts.hostname) and len(url) <= NOTE_LENGTH and url.isprintable()
    except ValueError:
        return False


def _entry(key, workout):
    if key == REST:
        return {"name": REST, "units": ["s"]}
    brought = workout.get("movements") or {}
    return brought.get(key) or movements.library().get(key)


def _refuse(name):
    raise ValueError(f"{name} is not a number")


def _finite(text):
    value = float(text)
    if not math.isfinite(value):
        raise ValueError(f"{text} is too large")
    return value
