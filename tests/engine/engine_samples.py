"""Workouts and athletes of our own to plan for, for an invented Lantern Hall winter day."""

import copy

from webapp.movements import library


def block(movement, amount, unit="reps", **more):
    """One block as a workout has it."""
    return {"movement": movement, "amount": amount, "unit": unit, **more}


def option(blocks, key="prescribed", rounds=1, **more):
    """One option."""
    return {"key": key, "name": key.title(), "rounds": rounds, "blocks": blocks, **more}


def workout(blocks, rounds=1, cap_s=None, **more):
    """A workout for time with one option; `more` goes to the option."""
    return workout_of([option(blocks, rounds=rounds, **more)], cap_s)


def workout_of(options, cap_s=None, **more):
    """A workout for time with these options, the movements it uses frozen inside."""
    used = {each["movement"] for one in options for each in one["blocks"]} - {"rest"}
    made = {
        "schema": 1, "title": "Copper Stair", "shape": "for_time", "options": options,
        "divisions": [{"key": "a", "name": "Men"}, {"key": "b", "name": "Women"}],
        "movements": {key: copy.deepcopy(library()[key]) for key in sorted(used)},
        "lane": {"length_m": 10, "turn": True}, **more,
    }  # fmt: skip
    return made if cap_s is None else {**made, "cap_s": cap_s}


def able(level="regular", **largest):
    """An athlete's numbers; keywords are movements (with underscores) and their largest unbroken sets."""
    movements = {name.replace("_", "-"): {"max_unbroken": units} for name, units in largest.items()}
    return {"level": level, "movements": movements}


def blocks_of(plan, movement):
    """The plan's blocks of one movement."""
    return [each for each in plan["blocks"] if each["movement"] == movement]


SIX_BLOCKS = [
    block("row", 400, "m"),
    block("dumbbell-snatch", 24, load_kg={"a": 22.5, "b": 15}, sides="alternating"),
    block("handstand-push-up", 20),
    block("sandbag-carry", 60, "m", mark_every=10, load_kg={"a": 40, "b": 30}),
    block("pull-up", 25),
    block("sit-up", 30),
]


def six_blocks(cap_s=None, **more):
    """A workout of six different blocks."""
    return workout(copy.deepcopy(SIX_BLOCKS), cap_s=cap_s, tie_break_after_block=4, **more)


def as_own(made):
    """A plan's sets and rests, its waits and the cadence it keeps, handed back as an athlete's own."""
    cadences = [stint["cadence"] for stint in made["basis"]["stints"]]
    return [
        {"sets": each["sets"], "rests_s": each["rests_s"], "lead_s": each["lead_s"], "cadence": cadence}
        for each, cadence in zip(made["blocks"], cadences, strict=True)
    ]
