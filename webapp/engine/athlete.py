"""What is known of an athlete at a movement: given, carried over from another number, or filled from the level.

`capacity` answers for one block; whatever was not given is marked `filled` and trusted less.
"""

import math

from .checks import choice, mapping, number, optional
from .endurance import largest_at, line_of_efforts
from .errors import EngineError
from .parameters import (
    BODY_MASS_KG,
    DEFAULT_SD,
    FIVE_KM,
    LEVEL_PACE,
    LEVELS,
    LONG_SET_S,
    MIXED_PACE,
    RIEGEL_EXPONENT,
    SMALL_MAX,
    SMALL_MAX_SD,
    TESTED_SD,
)
from .strength import reps_at_load, reps_at_other_load

HIGHEST_MAX = 20000


def level_of(numbers: dict) -> str:
    """Return the athlete's level, "regular" when not given."""
    level = numbers.get("level")
    return "regular" if level is None else choice("level_unknown", level, LEVELS)


def body_mass(numbers: dict) -> float:
    """Return the athlete's body mass, a usual one when not given. [kg]"""
    return optional("body_mass_out_of_range", numbers.get("body_mass_kg"), 25, 300, BODY_MASS_KG)


def of_movement(numbers: dict, movement: str) -> dict:
    """Return what was given for one movement."""
    return mapping("numbers_not_a_mapping", mapping("numbers_not_a_mapping", numbers.get("movements")).get(movement))


def in_division(value, division: str):
    """Return a value that may be given per division; None where this division has none."""
    return value.get(division) if isinstance(value, dict) else value


def typical_load(entry: dict, division: str) -> float | None:
    """Return the usual load for the division, the mean of all where the division has none of its own. [kg]"""
    loads = entry.get("typical_load_kg")
    if loads is None:
        return None
    if loads.get(division) is not None:
        return loads[division]
    values = [loads[key] for key in sorted(list(loads.keys()))]
    return sum(values) / len(values)


def load_of(block: dict, numbers: dict, division: str) -> float | None:
    """Return what one implement of the block weighs for this division, None where the block has no load. [kg]"""
    share = in_division(block.get("load_of_body"), division)
    if share is not None:
        return number("load_out_of_range", share, 0, 5) * body_mass(numbers)
    load = in_division(block.get("load_kg"), division)
    return None if load is None else number("load_out_of_range", load, 0, 1000)


def units_per_block_unit(entry: dict, given) -> float:
    """Return how many of the movement's own units one of the block's stands for."""
    unit = choice("unit_unknown", given, [given])
    if unit == entry["unit"]:
        return 1.0
    others = entry.get("other_units")
    if others is None or others.get(unit) is None:
        raise EngineError("unit_unknown", unit)
    return others[unit]


def moved_mass(entry: dict, load_kg: float, numbers: dict) -> float:
    """Return load plus the share of the body that moves with it. [kg]"""
    mechanics = entry.get("mechanics")
    return load_kg + (0.0 if mechanics is None else mechanics["body_share"] * body_mass(numbers))


def capacity(entry: dict, movement: str, block: dict, numbers: dict, division: str) -> dict:
    """Return what the athlete can do of a block's movement at its load, in the block's units.

    Returns
    -------
    dict : max_units, largest unbroken set when fresh, 0 for none [block units]; sd, standard deviation of its logarithm;
    seconds_per_unit, usual and fresh [s]; filled, names of the numbers taken from the level; outside, True where the load lies where
    the relation between loads and repetitions no longer holds; load_kg [kg] or None; line, what long efforts say, or None: rate [block
    units/s] and store [block units].

    Raises
    ------
    EngineError : a number outside its range.
    """
    given = of_movement(numbers, movement)
    load_kg = load_of(block, numbers, division)
    scale = units_per_block_unit(entry, block.get("unit"))
    pace = seconds_per_unit(entry, movement, given, numbers, block["unit"], scale)
    line = line_of_efforts(given) if entry["limit"] == "local" else None
    known = lasting_set(entry, given, line, pace["seconds"] / scale)
    if known is None:
        known = largest_set(entry, given, load_kg, numbers, division)
    filled = []
    if known["filled"] and asks_for_a_set(entry):
        filled.append(number_asked(entry, load_kg))
    if pace["filled"] and entry["ask"] == "effort":
        filled.append("effort")
    return {
        "max_units": known["max_units"] / scale,
        "sd": known["sd"],
        "seconds_per_unit": pace["seconds"],
        "filled": filled,
        "outside": known["outside"],
        "load_kg": load_kg,
        "line": None if line is None else {"rate": line["rate"] / scale, "store": line["store"] / scale},
    }


def asks_for_a_set(entry: dict) -> bool:
    """Is the athlete asked for a largest set or a one-rep max of this movement?"""
    return entry["ask"] == "max_unbroken" or entry["ask"] == "one_rep_max"


def number_asked(entry: dict, load_kg: float | None) -> str:
    """Return which number tells the largest set of such a movement at a load: the heaviest single, how long one goes on, or the set itself."""
    if entry["ask"] == "one_rep_max" and load_kg is not None:
        return "one_rep_max"
    return "steady_s" if lasts(entry) else "max_unbroken"


def lasts(entry: dict) -> bool:
    """Does a usual largest set last so long that one knows how long rather than how many? Holds are counted in seconds anyway."""
    return entry["limit"] == "local" and entry["unit"] != "s" and entry["max_by_level"]["regular"] * entry["seconds_per_unit"] > LONG_SET_S


def lasting_set(entry: dict, given: dict, line: dict | None, seconds: float) -> dict | None:
    """Return the largest set of work that lasts, at the usual `seconds` per unit: by long efforts, or by how long one could go on; else None."""
    units = None
    if line is not None:
        units = largest_at(line, seconds)
    elif given.get("steady_s") is not None and entry["limit"] == "local":
        units = number("steady_out_of_range", given.get("steady_s"), 1, 4 * 3600) / seconds
    return None if units is None else {"max_units": units, "sd": TESTED_SD, "filled": False, "outside": False}


def largest_set(entry: dict, given: dict, load_kg: float | None, numbers: dict, division: str) -> dict:
    """Return the largest set at the block's load in the movement's own unit, how sure it is, and whence."""
    told = given.get("max_unbroken")
    if told is not None:
        units = number("max_unbroken_out_of_range", told, 0, HIGHEST_MAX)
        small = entry["unit"] == "reps" and units <= SMALL_MAX
        return {"max_units": units, "sd": SMALL_MAX_SD if small else TESTED_SD, "filled": False, "outside": False}
    heaviest = given.get("one_rep_max_kg")
    if heaviest is not None and load_kg is not None and load_kg > 0:
        number("one_rep_max_out_of_range", heaviest, 1, 600)
        return set_at_load(heaviest, load_kg, TESTED_SD, False)
    return default_set(entry, load_kg, numbers, division)


def default_set(entry: dict, load_kg: float | None, numbers: dict, division: str) -> dict:
    """Return the largest set that the level stands for, carried to the block's load."""
    level = level_of(numbers)
    usual_kg = typical_load(entry, division)
    best_kg = usual_one_rep_max(entry, numbers, division)
    if best_kg is not None and load_kg is not None and load_kg > 0 and numbers.get("body_mass_kg") is not None:
        return set_at_load(best_kg, load_kg, DEFAULT_SD, True)
    units = entry["max_by_level"][level]
    if load_kg is not None and usual_kg is not None and load_kg > 0 and units > 0:
        units = reps_at_other_load(units, moved_mass(entry, usual_kg, numbers), moved_mass(entry, load_kg, numbers))
    return {"max_units": units, "sd": DEFAULT_SD, "filled": True, "outside": False}


def usual_one_rep_max(entry: dict, numbers: dict, division: str) -> float | None:
    """Return the one-rep max usual at the level and the body mass, less by as much as the division usually lifts less; None where none is known. [kg]"""
    shares = entry.get("one_rep_max_of_body")
    if shares is None:
        return None
    usual_kg = typical_load(entry, division)
    lighter = 1.0 if usual_kg is None else usual_kg / heaviest_typical(entry)
    return shares[level_of(numbers)] * body_mass(numbers) * lighter


def heaviest_typical(entry: dict) -> float:
    """Return the usual load of the heaviest division. [kg]"""
    loads = entry["typical_load_kg"]
    return max([loads[key] for key in sorted(list(loads.keys()))])


def set_at_load(one_rep_max_kg: float, load_kg: float, sd: float, filled: bool) -> dict:
    """Return the largest set at a load from a one-rep max; the formulas' own spread widens the doubt."""
    reps = reps_at_load(one_rep_max_kg, load_kg)
    spread = 0.0
    if reps["low"] > 0:
        spread = math.log(reps["high"] / reps["low"]) / 2.56  # low to high taken for a 10–90 % band
    return {"max_units": reps["likely"], "sd": math.sqrt(sd * sd + spread * spread), "filled": filled, "outside": not reps["inside"]}


def seconds_per_unit(entry: dict, movement: str, given: dict, numbers: dict, unit: str, scale: float) -> dict:
    """Return the usual seconds per unit when fresh, in the block's unit: given, from the longest known effort, or from the level. [s]"""
    told = given.get("seconds_per_unit")
    if told is not None:
        return {"seconds": number("seconds_out_of_range", told, 0.1, 600) * scale, "filled": False}
    efforts = numbers.get("efforts")
    longest_m = 0.0
    pace_s = 0.0
    for effort in [] if efforts is None else efforts:
        if effort.get("kind") == movement:
            metres = number("effort_out_of_range", effort.get("m"), 50, 100000)
            seconds = number("effort_out_of_range", effort.get("s"), 10, 50000)
            if metres > longest_m:
                longest_m = metres
                pace_s = mixed_pace(metres, seconds)
    if longest_m > 0:
        return {"seconds": pace_s * scale * metres_per_unit(entry), "filled": False}
    return {"seconds": entry["seconds_per_unit"] * scale * LEVEL_PACE[level_of(numbers)], "filled": True}


def metres_per_unit(entry: dict) -> float:
    """Return how many metres the movement's own unit stands for: 1 for metres, else by its `other_units`."""
    if entry["unit"] == "m":
        return 1.0
    others = entry.get("other_units")
    if others is None or others.get("m") is None:
        raise EngineError("effort_out_of_range", entry["unit"])
    return 1.0 / others["m"]


def mixed_pace(metres: float, seconds: float) -> float:
    """Return the seconds per metre to plan inside a workout, from one time alone over one distance.

    Riegel 1981: T2 = T1·(D2/D1)^1.06 carries the time to five kilometres (the effort a whole workout resembles); MIXED_PACE slows it
    for what surrounds it.
    """
    at_five_km = seconds * math.pow(FIVE_KM / metres, RIEGEL_EXPONENT)
    return at_five_km / FIVE_KM * MIXED_PACE
