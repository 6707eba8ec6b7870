"""Small workouts of every shape there is, by name, each with an athlete: cheap to plan, so that thousands go through both engines.

`SHAPES` has for every name a function of a random generator that gives a workout and numbers; `IS` what such a workout must have about it.
"""

import copy

from parity.workouts import DIVISIONS, any_of, block, load, numbers_for
from webapp.movements import library

SMALL = {"reps": [3, 5, 8, 12, 20], "m": [10, 20, 40], "cal": [5, 10], "s": [20, 45]}
LOADED = ["power-clean", "strict-press", "thruster", "deadlift", "push-press", "kettlebell-swing", "dumbbell-snatch"]
GATES = ["handstand-push-up", "pull-up", "ring-muscle-up", "toes-to-bar", "rope-climb"]
SKILLS = ["double-under", "handstand-walk", "rope-single"]
ONE_SIDED = ["sandbag-carry", "overhead-lunge", "farmer-carry"]
BREATH = ["row", "run", "bike", "burpee", "box-jump"]


def small_block(rng, movements=None, unit=None):
    """A block of little work, of one of these movements if any are named."""
    made = block(rng)
    while made["movement"] == "rest":
        made = block(rng)
    if movements is not None:
        key = rng.choice(movements)
        made = {"movement": key, "amount": 1, "unit": unit or library()[key]["unit"]}
        if library()[key]["load_kind"] and rng.random() < 0.8:
            made |= load(rng, library()[key])
    made.pop("step", None)
    made["amount"] = rng.choice(SMALL[made["unit"]])
    return made


def small_workout(rng, blocks, rounds=1, **more):
    """A workout of these blocks with one option, for time unless `more` says otherwise, and an athlete."""
    option = {"key": "prescribed", "name": "Prescribed", "rounds": rounds, "blocks": blocks}
    if "rep_scheme" in more:
        del option["rounds"]
        option["rep_scheme"] = more.pop("rep_scheme")
    used = {each["movement"] for each in blocks} - {"rest"}
    made = {
        "schema": 1, "title": "Drawn", "shape": "for_time", "divisions": copy.deepcopy(DIVISIONS), "options": [option],
        "movements": {key: copy.deepcopy(library()[key]) for key in sorted(used)}, "revision": 1, **more,
    }  # fmt: skip
    return made, numbers_for(rng, made)


def some_blocks(rng, most=2):
    """One block or a few."""
    return [small_block(rng) for _ in range(rng.randint(1, most))]


def without_cap(rng):
    return small_workout(rng, some_blocks(rng, 3))


def with_cap(rng):
    return small_workout(rng, some_blocks(rng, 3), cap_s=rng.choice([20, 60, 120, 240]))


def chipper(rng):
    return small_workout(rng, [small_block(rng) for _ in range(rng.randint(5, 7))])


def rep_scheme(rng):
    blocks = [small_block(rng, LOADED + GATES, "reps") | {"amount": None} for _ in range(rng.randint(1, 2))]
    return small_workout(rng, blocks, rep_scheme=rng.choice([[9, 6, 3], [12, 9], [3, 6, 9], [5, 5, 5]]))


def ladder_up(rng):
    stepped = [{**each, "amount": 2, "step": rng.randint(1, 3)} for each in some_blocks(rng)]
    if rng.random() < 0.5:
        return small_workout(rng, stepped, rounds=4)
    return small_workout(rng, stepped, shape="amrap", time_s=rng.choice([60, 120, 180]))


def ladder_down(rng):
    return small_workout(rng, [{**each, "amount": 9, "step": rng.choice([-1, -2, -3])} for each in some_blocks(rng)], rounds=4)


def most_rounds(rng):
    return small_workout(rng, some_blocks(rng), shape="amrap", time_s=rng.choice([40, 90, 180, 240]))


def intervals(rng):
    return small_workout(rng, some_blocks(rng), shape="intervals", interval_s=rng.choice([30, 60, 90]), interval_count=rng.choice([1, 3, 5]))


def heaviest_lift(rng):
    return small_workout(rng, [small_block(rng, LOADED[:5]) | {"amount": rng.randint(1, 3)}], shape="load", time_s=rng.choice([120, 300, 600]))


def rising_loads(rng):
    loaded = small_block(rng, LOADED) | {"load_kg": rng.choice([20, {"a": 30, "b": 20}]), "load_step_kg": rng.choice([2.5, 5, 10])}
    return small_workout(rng, [loaded, *some_blocks(rng, 1)], rounds=3)


def parts(rng):
    one, numbers = rng.choice([without_cap, most_rounds, intervals])(rng)
    other, more_numbers = rng.choice([with_cap, heaviest_lift, rep_scheme])(rng)
    kept = {key: value for key, value in one.items() if key not in ("movements", "divisions", "schema")}
    after = {key: value for key, value in other.items() if key not in ("movements", "divisions", "schema")}
    whole = {**one, "movements": {**one["movements"], **other["movements"]}, "parts": [{**kept, "rest_after_s": 60}, after]}
    movements = {**more_numbers.get("movements", {}), **numbers.get("movements", {})}
    return whole, {**numbers, "movements": movements}


def rest_between(rng):
    waiting = {"movement": "rest", "amount": rng.choice([10, 45, 90]), "unit": "s"}
    return small_workout(rng, [*some_blocks(rng), waiting, small_block(rng)], rounds=rng.choice([1, 2]))


def gate(rng):
    made, numbers = small_workout(rng, [*some_blocks(rng), small_block(rng, GATES, "reps")], cap_s=300)
    nothing = {made["options"][0]["blocks"][-1]["movement"]: {"max_unbroken": 0}}
    return made, {**numbers, "movements": {**numbers.get("movements", {}), **nothing}}


def skill(rng):
    return small_workout(rng, [*some_blocks(rng), small_block(rng, SKILLS)])


def one_sided(rng):
    carried = small_block(rng, ONE_SIDED) | {"sides": "one", "amount": rng.choice([20, 40, 60])}
    return small_workout(rng, [carried | ({"mark_every": rng.choice([2.5, 5, 10])} if rng.random() < 0.7 else {}), small_block(rng)])


def breath(rng):
    return small_workout(rng, [small_block(rng, BREATH), *some_blocks(rng, 1)], rounds=rng.choice([1, 3]))


SHAPES = {
    "without cap": without_cap, "with cap": with_cap, "chipper": chipper, "rep scheme": rep_scheme, "ladder up": ladder_up,
    "ladder down": ladder_down, "most rounds": most_rounds, "intervals": intervals, "heaviest lift": heaviest_lift,
    "rising loads": rising_loads, "parts": parts, "rest between": rest_between, "gate": gate, "skill": skill, "one-sided": one_sided,
    "breath": breath,
}  # fmt: skip


def _any_block(holds):
    return lambda made, numbers: any(holds(each, made) for each in made["options"][0]["blocks"])


IS = {
    "without cap": lambda made, numbers: made["shape"] == "for_time" and "cap_s" not in made,
    "with cap": lambda made, numbers: made["shape"] == "for_time" and made["cap_s"] > 0,
    "chipper": lambda made, numbers: len(made["options"][0]["blocks"]) >= 5,
    "rep scheme": lambda made, numbers: len(made["options"][0]["rep_scheme"]) > 1,
    "ladder up": _any_block(lambda each, made: each.get("step", 0) > 0),
    "ladder down": _any_block(lambda each, made: each.get("step", 0) < 0),
    "most rounds": lambda made, numbers: made["shape"] == "amrap",
    "intervals": lambda made, numbers: made["shape"] == "intervals",
    "heaviest lift": lambda made, numbers: made["shape"] == "load",
    "rising loads": _any_block(lambda each, made: each.get("load_step_kg", 0) > 0),
    "parts": lambda made, numbers: len(made["parts"]) == 2,
    "rest between": _any_block(lambda each, made: each["movement"] == "rest"),
    "gate": lambda made, numbers: any(given.get("max_unbroken") == 0 for given in numbers["movements"].values()),
    "skill": _any_block(lambda each, made: each["movement"] != "rest" and made["movements"][each["movement"]]["limit"] == "skill"),
    "one-sided": _any_block(lambda each, made: each.get("sides") == "one"),
    "breath": _any_block(lambda each, made: each["movement"] != "rest" and made["movements"][each["movement"]]["limit"] == "lungs"),
}


def drawn(rng):
    """The name of a shape, a workout of it and an athlete."""
    name = any_of(rng, list(SHAPES))
    return name, *SHAPES[name](rng)
