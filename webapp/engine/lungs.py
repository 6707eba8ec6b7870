"""Critical power and the work above it: what limits whole-body work.

Power above critical power (CP) spends a store of work W′; below CP the store comes back. One currency throughout: mechanical watts, work
that has no lift of its own (running, carries, holds) turned into them at a stated efficiency in the movement library.

What is spent comes back in two parts, as after exhaustion (Chorley et al. 2022, Eur J Appl Physiol 122(3), n 10), the slower the nearer
the power is to CP: dW/dt scaled by (CP − P)/CP. Chosen over the differential form with τ = W′/(CP − P) (Skiba & Clarke 2021, IJSPP 16:1561) because it
is nearer to both sets of held data: root mean square 19 against 20 to 35 percentage points on eleven recoveries (`tests/reference/w_prime_recovery.csv`; its
curve recovers more than those people did), and 11, 11 and 37 % early on the intermittent case of Chidnok et al. 2012, where the
differential form is 26 and 22 % early and never ends. `tests/engine/test_lungs.py` holds all of these figures.
"""

import math

from .athlete import body_mass, level_of
from .checks import listing, mapping, number, optional
from .endurance import work_line
from .parameters import (
    BODY_HEIGHT_M,
    CP_BY_LEVEL_W_PER_KG,
    FAST_SHARE,
    FAST_TIME_CONSTANT_S,
    GRAVITY_M_PER_S2,
    LEAST_CP_SHARE,
    LEAST_SPREAD,
    LUNGS_DEFAULT_SD,
    LUNGS_TESTED_SD,
    RUN_J_PER_KG_M,
    SLOW_AIR_TIME_CONSTANT_S,
    W_PRIME_BY_LEVEL_J_PER_KG,
)


def critical_power(efforts: list) -> dict:
    """Return CP and W′ from all-out efforts, by the straight line of work over time.

    Parameters
    ----------
    efforts : two or more pairs of time to exhaustion [s] and mean power [W], not all of one time.

    Returns
    -------
    dict : cp_w [W], w_prime_j [J].

    Raises
    ------
    EngineError : fewer than two times, or a line that gives no positive CP and W′.

    Notes
    -----
    work = CP·t + W′, least squares on work (Monod & Scherrer 1965; equation from memory, high confidence). Efforts of about 2 to 15 minutes.
    """
    times = [number("effort_out_of_range", effort[0], 1, 20000) for effort in efforts]
    works = [number("effort_out_of_range", effort[1], 1, 5000) * effort[0] for effort in efforts]
    line = work_line(times, works)
    return {"cp_w": line[0], "w_prime_j": line[1]}


def recovered(seconds: float) -> float:
    """Return the share of W′ back after `seconds` [s] of rest from exhaustion (Chorley et al. 2022). [0–1]"""
    fast = FAST_SHARE * (1 - math.exp(-seconds / FAST_TIME_CONSTANT_S))
    return fast + (1 - FAST_SHARE) * (1 - math.exp(-seconds / SLOW_AIR_TIME_CONSTANT_S))


def flywheel_power(metres_per_s: float) -> float:
    """Return the power on a rowing flywheel at a speed [m/s]: 2.80·v³ (constant from memory, high confidence). [W]"""
    return 2.80 * metres_per_s * metres_per_s * metres_per_s


def power_of(entry: dict, load_kg: float | None, numbers: dict, seconds_per_unit: float) -> float:
    """Return the mechanical power of a movement done without a break. [W]

    Parameters
    ----------
    entry : library entry. load_kg : all that is lifted, None for nothing. [kg] numbers : body mass and height are used.
    seconds_per_unit : duration of one of the movement's own units. [s]

    Notes
    -----
    (load·g·load travel + body mass·share·g·body travel) / seconds, travels as shares of body height; machines by their flywheel; running,
    carries and holds by a stated power per kilogram moved.
    """
    mass_kg = body_mass(numbers)
    load = 0.0 if load_kg is None else load_kg
    mechanics = entry.get("mechanics")
    if mechanics is not None:
        height_m = optional("height_out_of_range", numbers.get("height_m"), 1.0, 2.5, BODY_HEIGHT_M)
        newton_shares = load * mechanics["load_travel"] + mass_kg * mechanics["body_share"] * mechanics["body_travel"]
        return newton_shares * GRAVITY_M_PER_S2 * height_m / seconds_per_unit
    energy = entry.get("energy")
    if energy is None:
        return 0.0
    if energy["kind"] == "flywheel" and entry["unit"] == "m":
        return flywheel_power(1 / seconds_per_unit)
    return 0.0 if energy.get("watts_per_kg") is None else energy["watts_per_kg"] * (mass_kg + load) * entry["seconds_per_unit"] / seconds_per_unit


def effort_power(effort: dict, numbers: dict) -> float | None:
    """Return the mean power of a known effort: kind "row" or "run", m, s; None for another kind. [W]"""
    metres = number("effort_out_of_range", effort.get("m"), 50, 100000)
    seconds = number("effort_out_of_range", effort.get("s"), 10, 50000)
    if effort.get("kind") == "row":
        return flywheel_power(metres / seconds)
    if effort.get("kind") == "run":
        return RUN_J_PER_KG_M * body_mass(numbers) * metres / seconds
    return None


def longest_kind(numbers: dict):
    """Return the kind of the longest effort known: efforts of two kinds do not lie on one line, so only one kind is used."""
    kind = None
    longest_s = 0.0
    for effort in listing("effort_out_of_range", numbers.get("efforts")):
        if effort_power(mapping("effort_out_of_range", effort), numbers) is not None and effort["s"] > longest_s:
            kind = effort["kind"]
            longest_s = effort["s"]
    return kind


def lungs_of(numbers: dict) -> dict:
    """Return what is known of an athlete's lungs: cp_w [W], w_prime_j [J], sd (of the logarithm of CP), filled (True from the level alone).

    Two or more efforts of one kind and of different length give both; one gives CP with the level's W′; none leaves the level's preset.
    """
    mass_kg = body_mass(numbers)
    level = level_of(numbers)
    preset = {"cp_w": CP_BY_LEVEL_W_PER_KG[level] * mass_kg, "w_prime_j": W_PRIME_BY_LEVEL_J_PER_KG[level] * mass_kg}
    known = []
    kind = longest_kind(numbers)
    for effort in listing("effort_out_of_range", numbers.get("efforts")):
        if mapping("effort_out_of_range", effort).get("kind") == kind:
            watts = effort_power(effort, numbers)
            if watts is not None:
                known.append([effort["s"], watts])
    if len(known) == 0:
        return {**preset, "sd": LUNGS_DEFAULT_SD, "filled": True}
    times = [effort[0] for effort in known]
    if len(known) >= 2 and max(times) > LEAST_SPREAD * min(times):
        return {**critical_power(known), "sd": LUNGS_TESTED_SD, "filled": False}
    cp_w = max(LEAST_CP_SHARE * known[0][1], known[0][1] - preset["w_prime_j"] / known[0][0])
    return {"cp_w": cp_w, "w_prime_j": preset["w_prime_j"], "sd": LUNGS_TESTED_SD, "filled": False}
