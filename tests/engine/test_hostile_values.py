"""Seeded fuzz: one value anywhere in a good workout, numbers, settings, own plan, taps or result replaced; every door refuses with a code or answers.

A plan that goes in again (`replan`, `learn`, `advise`) is the engine's own and stays whole.
"""

import copy
import json
import random

import pytest
from engine_samples import block, option, workout_of

from webapp.engine import EngineError, advise, class_table, judge, learn, options, plan, questions, replan, warm_up

HOSTILE = [None, "", "x", -1, 0, 1e9, float("nan"), float("inf"), [], {}, True]
CHANGES = {"class_table": 12, "options": 25}  # a door, where it is not USUAL_CHANGES: one that plans often is asked less
USUAL_CHANGES = 40  # with 1,000 to 1,500 a door, four seeds on 2026-11-25, what ended otherwise has been mended


def good_workouts():
    """A workout of each shape, with all that a block can say somewhere."""
    carry = block("sandbag-carry", 20, "m", mark_every=10, load_kg={"a": 40, "b": 30}, sides="one")
    press = block("handstand-push-up", 4, note="low")
    jumps = block("box-jump", 5, height_m={"a": 0.6, "b": 0.5})
    lift = block("deadlift", 6, load_kg={"a": 80, "b": 60}, load_step_kg=5, step=1)
    rowing = block("row", 150, "m")
    timed = workout_of([option([carry, press, jumps], tie_break_after_block=1), option([rowing], "scaled")], 300, ranking="separate")
    schemed = workout_of([{**option([{**lift, "amount": None, "step": None}, block("rest", 20, "s")]), "rep_scheme": [4, 2]}])
    rounds = {**workout_of([option([lift, rowing])]), "shape": "amrap", "time_s": 90}
    intervals = {**workout_of([option([block("burpee", 4)])]), "shape": "intervals", "interval_s": 60, "interval_count": 3}
    heaviest = {**workout_of([option([block("power-clean", 1, load_kg={"a": 60, "b": 40})])]), "shape": "load", "time_s": 240}
    parts = {**schemed, "parts": [{"shape": "for_time", "options": intervals["options"], "movements": intervals["movements"]}, rounds]}
    return [timed, schemed, rounds, intervals, heaviest, parts]


WORKOUTS = good_workouts()
NUMBERS = {
    "body_mass_kg": 70, "height_m": 1.75, "level": "keen", "age": 34, "sore": ["shoulder"], "strain_prone": ["calf"], "inverted_ok": True,
    "efforts": [{"kind": "row", "m": 500, "s": 105}, {"kind": "row", "m": 2000, "s": 470}],
    "movements": {
        "handstand-push-up": {"max_unbroken": 9, "seconds_per_unit": 2.4, "repeat_test": 6, "wait_between_singles_s": None},
        "deadlift": {"one_rep_max_kg": 140}, "sandbag-carry": {"steady_s": 80}, "burpee": {"long_efforts": [[20, 60], [36, 120]]},
    },
}  # fmt: skip
SETTINGS = {
    "option": None, "division": "a", "style": "even", "form": 1.0, "seed": 1, "heat_start": "2026-11-28T10:40:00+01:00", "warm_up_min": 15, "room_c": 20,
    "humidity_percent": 50, "rack": {"kettlebells_kg": [8, 12], "bars_kg": [20], "plates_kg": [5, 10]}, "machines": ["row"], "lane_shared_by": 1,
    "late_by_s": 0, "slipped_by_s": 0, "called_early": None, "wall_free": True, "bar_free": True,
}  # fmt: skip
OWN = [{"sets": [20], "rests_s": [], "cadence": 1.0, "lead_s": 0}, {"sets": [2, 2], "rests_s": [10], "cadence": 1.1, "lead_s": 5}, None]
EVENTS = [{"kind": "set", "reps": 10, "at_s": 12}, {"kind": "block", "at_s": 25}]
FOLLOWED = plan(WORKOUTS[0], NUMBERS, SETTINGS)
RESULT = {"plan": 0, "ends_s": [30, 60], "failed": [1]}  # the plan itself is put in at the door
WHOLE, IN_PARTS = ([plan(each, NUMBERS, SETTINGS)] for each in (WORKOUTS[0], WORKOUTS[-1]))

DOORS = {  # name: the door, and for each argument the good ones, taken in turn
    "plan": (plan, [WORKOUTS, [NUMBERS], [SETTINGS]]),
    "judge": (judge, [WORKOUTS[:1], [NUMBERS], [SETTINGS], [OWN]]),
    "judge in one go": (judge, [WORKOUTS, [NUMBERS], [SETTINGS], [[]]]),
    "options": (options, [WORKOUTS, [NUMBERS], [SETTINGS]]),
    "questions": (questions, [WORKOUTS, [SETTINGS], [NUMBERS]]),
    "warm_up": (warm_up, [WORKOUTS, [NUMBERS], [SETTINGS]]),
    "class_table": (class_table, [WORKOUTS, ["prescribed"], ["a"]]),
    "advise": (lambda asked: advise(asked, IN_PARTS if isinstance(asked, dict) and asked.get("parts") else WHOLE, False), [[WORKOUTS[0], WORKOUTS[-1]]]),
    "replan": (lambda events, now_s: replan(FOLLOWED, events, now_s), [[EVENTS], [30]]),
    "learn": (lambda numbers, result: learn(numbers, {**result, "plan": FOLLOWED} if isinstance(result, dict) else result)["changes"], [[NUMBERS], [RESULT]]),
}


def changed(rng, value):
    """A copy of `value` with one thing in it, however deep, replaced or left out."""
    if not isinstance(value, (dict, list)) or len(value) == 0 or rng.random() < 0.03:
        return rng.choice(HOSTILE)
    made = copy.copy(value)
    place = rng.choice(sorted(made) if isinstance(made, dict) else range(len(made)))
    if rng.random() < 0.03:
        del made[place]
    else:
        made[place] = changed(rng, made[place])
    return made


def assert_refused_or_answered(door, arguments):
    """The door gives JSON, or refuses with a code."""
    try:
        answer = door(*arguments)
    except EngineError as error:
        assert error.code.replace("_", "").isalnum(), error.code
    else:
        json.dumps(answer, allow_nan=False)


def hostile_calls(name, seed, count):
    """Arguments for a door, one of them with one thing changed."""
    rng = random.Random(seed)
    for turn in range(count):
        arguments = [good[turn % len(good)] for good in DOORS[name][1]]
        place = rng.randrange(len(arguments))
        arguments[place] = changed(rng, arguments[place])
        yield arguments


@pytest.mark.parametrize("name", DOORS)
def test_one_hostile_value_anywhere(name):
    for arguments in hostile_calls(name, 17, CHANGES.get(name, USUAL_CHANGES)):
        assert_refused_or_answered(DOORS[name][0], arguments)
