"""Whole workouts to hold the planner against: fourteen of our own, each for three athletes. Shared groups, rounds, caps, rests, breath."""

import copy

from webapp.movements import library

LEAST_SET = 4  # reps; below, people do singles, and there is nothing to plan


def _reps(movement, amount, **more):
    return {"movement": movement, "amount": amount, "unit": "reps", **more}


def _metres(movement, amount, **more):
    return {"movement": movement, "amount": amount, "unit": "m", **more}


REST = {"movement": "rest", "amount": 60, "unit": "s"}
WORKOUTS = {  # blocks, rounds, cap [s]; invented
    "two presses": ([_reps("strict-press", 15, load_kg=30), _reps("handstand-push-up", 20)], 1, None),
    "pull thrice": ([_reps("ring-row", 15), _reps("pull-up", 18), _reps("toes-to-bar", 15)], 1, None),
    "rounds of two": ([_reps("push-up", 15), _reps("pull-up", 10)], 3, None),
    "bar and rings": ([_reps("ring-dip", 15), _reps("chest-to-bar-pull-up", 12), _reps("push-up", 25)], 1, None),
    "legs all along": ([_reps("wall-throw", 25, load_kg=9), _reps("thruster", 15, load_kg=30), _reps("goblet-squat", 20)], 1, None),
    "row between": ([_reps("handstand-push-up", 12), _metres("row", 250), _reps("handstand-push-up", 12)], 1, None),
    "rest between": ([_reps("pull-up", 16), REST, _reps("pull-up", 16)], 1, None),
    "small chipper": ([_reps("push-press", 12, load_kg=35), _reps("toes-to-bar", 12), _reps("kettlebell-swing", 20, load_kg=20), _reps("push-up", 20)], 1, None),
    "carry then press": ([_metres("sandbag-carry", 40, load_kg=40, mark_every=10), _reps("handstand-push-up", 18)], 1, None),
    "five rounds of few": ([_reps("strict-press", 5, load_kg=35), _reps("pull-up", 5)], 5, None),
    "capped presses": ([_reps("push-up", 20), _reps("handstand-push-up", 40)], 1, 150),
    "capped rounds": ([_reps("pull-up", 8), _reps("ring-dip", 8)], 4, 180),
    "swing and pull": ([_reps("deadlift", 15, load_kg=60), _reps("pull-up", 15), _reps("kettlebell-swing", 25, load_kg=20)], 1, None),
    "six pieces": ([_reps("ring-row", 10), _reps("push-up", 12), _reps("wall-throw", 15, load_kg=9), _reps("pull-up", 10), _reps("ring-dip", 8), _reps("sit-up", 20)], 1, None),
}
ATHLETES = ["regular", "keen", "expert"]


def workout_of(name):
    """The workout as the engine takes it."""
    blocks, rounds, cap_s = WORKOUTS[name]
    used = sorted({each["movement"] for each in blocks} - {"rest"})
    made = {
        "schema": 1, "title": name.title(), "shape": "for_time", "divisions": [{"key": "a", "name": "All"}],
        "options": [{"key": "prescribed", "name": "Prescribed", "rounds": rounds, "blocks": copy.deepcopy(blocks)}],
        "movements": {key: copy.deepcopy(library()[key]) for key in used},
    }  # fmt: skip
    return made if cap_s is None else {**made, "cap_s": cap_s}


def numbers_of(name, level):
    """An athlete of this level who knows the largest sets of what is not loaded."""
    known = {}
    for each in WORKOUTS[name][0]:
        entry = None if each["movement"] == "rest" else library()[each["movement"]]
        if entry is not None and entry["limit"] == "local" and not entry["load_kind"]:
            known[each["movement"]] = {"max_unbroken": max(LEAST_SET, entry["max_by_level"][level])}
    return {"level": level, "movements": known}


def cases():
    """Name and level of every case."""
    return [(name, level) for name in WORKOUTS for level in ATHLETES]
