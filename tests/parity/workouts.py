"""Random workouts from the movement library, and athletes to do them."""

import copy

from webapp.movements import library

LEVELS = ["new", "regular", "keen", "expert"]
USUAL = {
    "reps": [3, 5, 8, 10, 15, 20, 30, 50],
    "m": [10, 20, 40, 60, 100, 250],
    "cal": [5, 10, 15, 30],
    "s": [20, 45, 90, 180],
}
BODY = {"level": LEVELS, "body_mass_kg": [55, 70.5, 98], "height_m": [1.6, 1.85], "age": [19, 44], "inverted_ok": [True, False]}
DIVISIONS = [{"key": "a", "name": "Men"}, {"key": "b", "name": "Women"}]


def any_of(rng, values, weights=None):
    """One of some values, by weight."""
    return rng.choices(values, weights)[0]


def workout(rng, blocks=(1, 1, 1, 2, 2, 3)):
    """A workout with one or two options, most often done for time."""
    options = [option(rng, key, rng.choice(blocks)) for key in ["prescribed", "scaled"][: rng.choice([1, 1, 2])]]
    used = {block["movement"] for each in options for block in each["blocks"]} - {"rest"}
    made = {
        "schema": 1, "title": "Drawn", "divisions": copy.deepcopy(DIVISIONS), "options": options,
        "movements": {key: copy.deepcopy(library()[key]) for key in sorted(used)}, "revision": 1,
    }  # fmt: skip
    made |= shape(rng)
    if rng.random() < 0.05:
        made["team"] = rng.choice([2, 3])
    if rng.random() < 0.5:
        made["lane"] = {"length_m": rng.choice([7.5, 10, 15]), "turn": rng.random() < 0.5}
    return made


def shape(rng):
    """How a workout is scored, and the times that go with it."""
    kind = any_of(rng, ["for_time", "amrap", "intervals", "load"], [6, 2, 2, 1])
    if kind == "for_time":
        return {"shape": kind} | ({"cap_s": rng.choice([120, 300, 480, 720, 1200])} if rng.random() < 0.6 else {})
    if kind == "intervals":
        return {"shape": kind, "interval_s": rng.choice([30, 60, 90, 180]), "interval_count": rng.choice([1, 3, 6, 10])}
    return {"shape": kind, "time_s": rng.choice([60, 240, 480, 720])}


def option(rng, key, blocks):
    """An option of some blocks in one or several rounds."""
    scheme = [21, 15, 9, 6][rng.randint(0, 2) :] if rng.random() < 0.15 else None
    made = {"key": key, "name": key.title(), "blocks": [block(rng, scheme) for _ in range(blocks)]}
    if scheme:
        made["rep_scheme"] = [amount - rng.randint(0, 2) for amount in scheme]
    else:
        made["rounds"] = rng.choice([1, 1, 1, 2, 3])
    if rng.random() < 0.3:
        made["tie_break_after_block"] = rng.randint(1, len(made["blocks"]))
    if rng.random() < 0.1:
        made["cap_s"] = rng.choice([200, 600])
    return made


def block(rng, scheme=None):
    """One block: a movement with its load, marks and sides, or a rest."""
    if rng.random() < 0.05:
        return {"movement": "rest", "amount": rng.choice([15, 60, 120]), "unit": "s"}
    key = rng.choice(sorted(library()))
    entry = library()[key]
    unit = rng.choice(entry["units"])
    made = {"movement": key, "amount": rng.choice(USUAL[unit]), "unit": unit}
    if scheme and unit == "reps":
        made["amount"] = None
    if unit == "m" and rng.random() < 0.4:
        made["mark_every"] = rng.choice([2, 3, 5, 7.5])
    if entry["load_kind"] and rng.random() < 0.8:
        made |= load(rng, entry)
    if entry["sides"] != "both" and rng.random() < 0.3:
        made["sides"] = rng.choice(["both", "one", "alternating"])
    if rng.random() < 0.05:
        made["step"] = rng.choice([1, 2, 3])
    if rng.random() < 0.1:
        made["implements"] = rng.choice([1, 2])
    return made


def load(rng, entry):
    """A load near the usual one, for one division, for each, or as a share of the body."""
    usual = max((entry["typical_load_kg"] or {"a": 20}).values())
    heavy = round(usual * rng.choice([0.5, 0.8, 1, 1.25, 2, 4]), 1)
    if rng.random() < 0.1:
        return {"load_of_body": rng.choice([0.25, 0.5, 1])}
    return {"load_kg": rng.choice([heavy, {"a": heavy, "b": heavy / 2}, {"a": heavy}])}


def numbers_for(rng, made):
    """What an athlete gives: from nothing at all to everything, zero and far too much."""
    given = {key: rng.choice(values) for key, values in BODY.items() if rng.random() < 0.5}
    if rng.random() < 0.3:
        effort = {"kind": rng.choice(["row", "run", "bike"]), "m": rng.choice([500, 2000, 5000]), "s": rng.randint(100, 1600)}
        given["efforts"] = [effort]
    if rng.random() < 0.2:
        given["sore"] = [rng.choice(["push", "pull", "legs"])]
    movements = {key: of_movement(rng, entry) for key, entry in made["movements"].items() if rng.random() < 0.7}
    return given | {"movements": movements} if rng.random() < 0.9 else given


def of_movement(rng, entry):
    """Numbers for one movement."""
    usual = entry["max_by_level"][rng.choice(LEVELS)] if entry["max_by_level"] else 20
    drawn_max = [usual, rng.randint(0, 30), round(rng.uniform(0, 60), 1), 0, 20000, None]
    drawn = {
        "max_unbroken": any_of(rng, drawn_max, [4, 4, 2, 1, 0.2, 1]),
        "seconds_per_unit": any_of(rng, [None, round(entry["seconds_per_unit"] * rng.uniform(0.7, 1.5), 2)], [2, 1]),
        "repeat_test": any_of(rng, [None, rng.randint(0, 20)], [9, 1]),  # finding a person's recovery takes as long as ten plans' costs
        "one_rep_max_kg": any_of(rng, [None, rng.randint(20, 150)], [2, 1]),
        "steady_s": any_of(rng, [None, rng.randint(30, 600)], [4, 1]),
        "long_efforts": any_of(rng, [None, [[rng.randint(20, 60), 60], [rng.randint(50, 200), 200]]], [4, 1]),
        "wait_between_singles_s": any_of(rng, [None, rng.choice([10, 30, 60])], [4, 1]),
    }
    return {key: value for key, value in drawn.items() if rng.random() < 0.7}


def settings_for(rng, made):
    """Today's settings, all optional."""
    drawn = {
        "option": rng.choice([None, made["options"][-1]["key"]]),
        "division": rng.choice([None, "a", "b", "b", "none such"] if rng.random() < 0.1 else [None, "a", "b"]),
        "style": rng.choice(["steady", "even", "bold", None]),
        "form": rng.choice([1.0, 0.9, 1.1, None]),
        "seed": rng.choice([1, 7, rng.randint(0, 1000), None]),
        "warm_up_min": rng.choice([None, 0, 5, 12, 25, 60]),
        "room_c": rng.choice([None, 4, 20, 33]),
        "humidity_percent": rng.choice([None, 30, 85]),
        "lane_shared_by": rng.choice([1, 2]),
        "largest_sets": {key: rng.choice([1, 2.5, 12]) for key in sorted(made["movements"])[:2]},
        "heat_start": rng.choice([None, "2026-11-28T10:40:00+01:00"]),
    }
    return {key: value for key, value in drawn.items() if rng.random() < 0.6}
