"""A movement's library entry as a workout brings it: whatever planning reads of it is checked here, so that nothing else need doubt it.

What the warm-up alone reads (drills, positions, equipment) is checked there; see `warmup_movers`.
"""

from .checks import choice, listing, mapping, number, optional
from .errors import EngineError
from .parameters import GROUPS, LEVELS

UNITS = ["reps", "m", "cal", "s"]
LIMITS = ["local", "lungs", "skill", "strength"]
SIDES = ["both", "one", "alternating"]
NUMBERS_ASKED = ["max_unbroken", "one_rep_max", "effort"]
LOAD_KINDS = ["barbell", "dumbbell", "kettlebell", "sandbag", "ball"]
BOUNDS = {  # of numbers that an entry must have
    "seconds_per_unit": [0.01, 600], "set_up_s": [0, 600], "entry_units": [0, 1000], "implements": [1, 100], "keep_reserve": [0, 1],
}  # fmt: skip


def check_entry(given):
    """Raise EngineError (`movement_bad`) unless an entry has what a plan needs."""
    entry = mapping("movement_bad", given)
    one_of(entry.get("unit"), UNITS)
    one_of(entry.get("limit"), LIMITS)
    one_of(entry.get("primary"), GROUPS)
    one_of(entry.get("sides"), SIDES)
    if entry.get("ask") is not None:
        one_of(entry.get("ask"), NUMBERS_ASKED)
    if entry.get("load_kind") is not None:
        one_of(entry.get("load_kind"), LOAD_KINDS)
    if not isinstance(entry.get("inverted"), bool) or not isinstance(entry.get("name"), str) or not isinstance(entry.get("cue"), str):
        raise EngineError("movement_bad", 0)
    for name in sorted(list(BOUNDS.keys())):
        number("movement_bad", entry.get(name), BOUNDS[name][0], BOUNDS[name][1])
    for name in ["change_s", "fail_cost_s", "reset_s"]:
        optional("movement_bad", entry.get(name), 0, 600, 0.0)
    check_shares(entry.get("shares"), entry.get("primary"))
    check_each(entry.get("other_units"), 0.001, 10000)
    check_levels(entry.get("max_by_level"))
    check_loads(entry)
    check_holds(entry)
    check_power(entry)


def one_of(value, choices: list):
    """Raise EngineError unless `value` is one of these texts."""
    if value is None:
        raise EngineError("movement_bad", 0)
    choice("movement_bad", value, choices)


def check_each(given, low: float, high: float):
    """Raise EngineError unless all values of a mapping, if there is one, are numbers within low..high."""
    values = mapping("movement_bad", given)
    for key in sorted(list(values.keys())):
        number("movement_bad", values[key], low, high)


def check_shares(given, primary):
    """Raise EngineError unless shares of groups are shares, the primary one's above none."""
    check_each(given, 0, 1)
    number("movement_bad", mapping("movement_bad", given).get(primary), 0.001, 1)


def check_levels(given):
    """Raise EngineError unless there is a number for each level, an expert's above none."""
    values = mapping("movement_bad", given)
    for level in LEVELS:
        number("movement_bad", values.get(level), 0, 100000)
    number("movement_bad", values.get("expert"), 0.1, 100000)


def check_loads(entry: dict):
    """Raise EngineError unless usual loads and one-rep maxima are masses; a usual one-rep max goes with a usual load."""
    loads = entry.get("typical_load_kg")
    if loads is not None:
        check_each(loads, 0.1, 1000)
        if len(loads) == 0:
            raise EngineError("movement_bad", 0)
    shares = entry.get("one_rep_max_of_body")
    if shares is not None:
        check_levels(shares)
        if loads is None:
            raise EngineError("movement_bad", 0)


def check_holds(entry: dict):
    """Raise EngineError unless each hold has a key and shares, maybe none of its own."""
    for given in listing("movement_bad", entry.get("holds")):
        hold = mapping("movement_bad", given)
        if not isinstance(hold.get("key"), str) or hold.get("shares") is None:
            raise EngineError("movement_bad", 0)
        if len(mapping("movement_bad", hold.get("shares"))) > 0:
            check_shares(hold.get("shares"), entry.get("primary"))
    if entry.get("holds") is None:
        raise EngineError("movement_bad", 0)


def check_power(entry: dict):
    """Raise EngineError unless what gives the power of the work are numbers."""
    if entry.get("mechanics") is not None:
        mechanics = mapping("movement_bad", entry.get("mechanics"))
        for name in ["load_travel", "body_travel", "body_share"]:
            number("movement_bad", mechanics.get(name), 0, 10)
    if entry.get("energy") is not None:
        energy = mapping("movement_bad", entry.get("energy"))
        if not isinstance(energy.get("kind"), str):
            raise EngineError("movement_bad", 0)
        optional("movement_bad", energy.get("watts_per_kg"), 0, 1000, 0.0)
