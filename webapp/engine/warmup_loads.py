"""Loads of the warm-up: shares of the working load, rounded to what the gym has, and what the gym calls them.

A load is a mapping: kg, the mass of one implement; label, the names it goes by in a kilogram and in a pound gym. A label is not a
conversion: the "45 lb" bar weighs 20.4 kg and is called 20, so mass and label are kept apart.
"""

import math

from .checks import listing, mapping, number
from .parameters import BAR_LABELS_LB, KETTLEBELL_LABELS_LB, PLATE_LABELS_LB, USUAL_RACK
from .units import KG_PER_LB, rounded, whole

SAME_KG = 1e-6  # two loads this near are one
RACK_KEYS = ["balls_kg", "bars_kg", "boxes_m", "dumbbells_kg", "kettlebells_kg", "plates_kg", "sandbags_kg"]
RACK_OF_KIND = {"barbell": "bars_kg", "dumbbell": "dumbbells_kg", "kettlebell": "kettlebells_kg", "sandbag": "sandbags_kg", "ball": "balls_kg"}


def rack_of(given) -> dict:
    """Return what the gym has: the coach's rack, with a usual one in the place of every list not given; `told` says which were.

    Raises
    ------
    EngineError : rack_bad, for anything but lists of masses and heights above zero.
    """
    told = mapping("rack_bad", given)
    rack = {"told": []}
    for key in RACK_KEYS:
        if told.get(key) is None:
            rack[key] = USUAL_RACK[key]
        else:
            rack[key] = sorted([number("rack_bad", size, 0.05, 400) for size in listing("rack_bad", told.get(key))])
            rack["told"].append(key)
    if told.get("plates_kg") is not None and told.get("bars_kg") is None:
        rack["told"].append("bars_kg")
    return rack


def ramp_load(kind: str, share: float, working_kg: float, rack: dict) -> dict | None:
    """Return the load nearest to a share of the working load, never above it; None where the gym has nothing light enough.

    Parameters
    ----------
    kind : load_kind of the movement. share : of the working load. [0–1] working_kg : of one implement. [kg] rack : from `rack_of`.

    Notes
    -----
    The working load itself is taken as it stands unless the coach said what the gym has: the heat needs it anyway.
    """
    if share > 1 - SAME_KG and RACK_OF_KIND[kind] not in rack["told"]:
        return {"kg": working_kg, "label": load_label(kind, working_kg)}
    target_kg = share * working_kg
    if kind == "barbell":
        return loaded_bar(target_kg, working_kg, rack)
    best_kg = nearest_below(rack[RACK_OF_KIND[kind]], target_kg, working_kg)
    return None if best_kg is None else {"kg": best_kg, "label": load_label(kind, best_kg)}


def nearest_below(sizes: list, target: float, most: float) -> float | None:
    """Return the size nearest to `target` among those not above `most`, the smaller of two as near; None for none."""
    best = None
    for size in sizes:
        if size <= most + SAME_KG and (best is None or abs(size - target) < abs(best - target) - SAME_KG):
            best = size
    return best


def loaded_bar(target_kg: float, working_kg: float, rack: dict) -> dict | None:
    """Return the bar with pairs of plates nearest to `target_kg` and not above `working_kg`; a bar that makes the working load wins a tie."""
    best = None
    best_off = math.inf
    for bar_kg in reversed(rack["bars_kg"]):
        if bar_kg <= working_kg + SAME_KG:
            for plates in plate_choices(bar_kg, target_kg, working_kg, rack["plates_kg"]):
                made_kg = bar_kg + 2 * sum(plates)
                if abs(made_kg - target_kg) < best_off - SAME_KG:
                    best_off = abs(made_kg - target_kg)
                    best = {"kg": made_kg, "label": bar_label(bar_kg, plates)}
    return best


def plate_choices(bar_kg: float, target_kg: float, most_kg: float, plates_kg: list) -> list:
    """Return the plates of one side that come nearest to the target from below, and from above within `most_kg`."""
    below = filled_side((target_kg - bar_kg) / 2, plates_kg)
    choices = [below]
    if len(plates_kg) > 0:
        above = filled_side(sum(below) + min(plates_kg), plates_kg)
        if bar_kg + 2 * sum(above) <= most_kg + SAME_KG:
            choices.append(above)
    return choices


def filled_side(room_kg: float, plates_kg: list) -> list:
    """Return plates, largest first, that fill `room_kg` on one side as far as they go. [kg]"""
    chosen = []
    left_kg = room_kg
    for plate_kg in reversed(plates_kg):
        while plate_kg <= left_kg + SAME_KG:
            chosen.append(plate_kg)
            left_kg = left_kg - plate_kg
    return chosen


def bar_label(bar_kg: float, plates: list) -> dict:
    """Return what a loaded bar is called: the labels of its pieces added up, as lifters do."""
    label = {"kg": label_kg(bar_kg), "lb": piece_label_lb(bar_kg, BAR_LABELS_LB)}
    for plate_kg in plates:
        label["kg"] = label["kg"] + 2 * label_kg(plate_kg)
        label["lb"] = label["lb"] + 2 * piece_label_lb(plate_kg, PLATE_LABELS_LB)
    return label


def piece_label_lb(mass_kg: float, pairs: list) -> float:
    """Return what a pound gym calls the piece that a kilogram gym calls so: by the table of pairs [kg, lb], else the nearest 2.5 lb."""
    if is_of_pounds(mass_kg):
        return rounded(mass_kg / KG_PER_LB, 0.5)
    for pair in pairs:
        if abs(pair[0] - label_kg(mass_kg)) < SAME_KG:
            return pair[1]
    return max(2.5, rounded(mass_kg / KG_PER_LB, 2.5))


def load_label(kind: str, mass_kg: float) -> dict:
    """Return what one implement of this mass is called: {"kg", "lb"}."""
    name_kg = label_kg(mass_kg)
    if kind == "kettlebell" or kind == "ball":
        name_kg = mass_kg if is_multiple(mass_kg, 0.5) else whole(mass_kg)
    return {"kg": name_kg, "lb": label_lb(kind, name_kg, mass_kg)}


def label_lb(kind: str, name_kg: float, mass_kg: float) -> float:
    """Return the pound label: what it is in pounds where it was made so, the usual one of a kettlebell's kilogram label, else the nearest there is."""
    if is_of_pounds(mass_kg):
        return rounded(mass_kg / KG_PER_LB, 0.5)
    if kind == "kettlebell":
        for pair in KETTLEBELL_LABELS_LB:
            if abs(pair[0] - name_kg) < SAME_KG:
                return pair[1]
        return max(1, whole(mass_kg / KG_PER_LB))
    if kind == "ball":
        return max(2, rounded(mass_kg / KG_PER_LB, 2))
    if kind == "barbell":
        return rounded(mass_kg / KG_PER_LB, 5)
    return max(1, rounded(mass_kg / KG_PER_LB, 5 if mass_kg > 2 else 1))


def is_of_pounds(mass_kg: float) -> bool:
    """Was a thing of this mass made in pounds? No mass in quarter kilograms comes so near to half a pound."""
    return is_multiple(mass_kg / KG_PER_LB, 0.5)


def label_kg(mass_kg: float) -> float:
    """Return the kilogram label of a mass: itself where it is one, else the nearest 2.5 kg within 3 %, else the nearest half kilogram."""
    if is_multiple(mass_kg, 0.25):
        return mass_kg
    usual_kg = rounded(mass_kg, 2.5)
    if abs(usual_kg - mass_kg) <= 0.03 * mass_kg:
        return usual_kg
    return max(0.5, rounded(mass_kg, 0.5))


def is_multiple(value: float, step: float) -> bool:
    """Is `value` a whole multiple of `step`?"""
    return abs(rounded(value, step) - value) < SAME_KG
