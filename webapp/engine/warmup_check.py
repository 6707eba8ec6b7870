"""The sequence run through the reserve model: how rested every group is at the start, and how deep it gets on the way."""

import math

from .held import sides_of
from .parameters import (
    DRILL_EFFORT,
    EASIER_UNIT_MOST,
    EASY_EFFORT,
    GROUPS,
    MACHINE_SHARES,
    NO_REP_EFFORT,
    PACED_DEPTH,
    QUICK_TIME_CONSTANT_S,
    RAMP_REPS,
    WARM_UP_ENTRY_SHARE,
    WARM_UP_LOWEST_FROM,
    WARM_UP_LOWEST_RESERVE,
    WARM_UP_RESERVE_AT_START,
)
from .reserve import Effort, Fatigue, fresh, perform, recover
from .segments import ALL_SLOTS, SLOTS
from .warmup_build import mover_named

EASY_CHUNK_S = 10.0  # s, of easy work taken as one repetition of the model; chosen
MOST_CHUNKS = 60
OF_OTHER_UNIT = 0.1  # of the capacity: a drill that is counted in another unit than its movement; chosen


def run_through_model(steps: list, ends_s: float, movers: list, limiting: dict, gain: float) -> dict:
    """Return what a sequence does to the athlete.

    Returns
    -------
    dict : reserve_at_start, of each group; lowest_reserve, of the limiting group on the way; limiting_group; reps_per_movement, of
    build and bursts; tired, groups beyond the limits of the warm-up; passes, whether all limits are kept.
    """
    fatigue = fresh(len(SLOTS))
    group = limiting["entry"]["primary"]
    lowest = 1.0
    for step in steps:
        if not step["optional"]:
            lowest = min(lowest, do_step(fatigue, step, movers, group, gain))
    recover(fatigue, ALL_SLOTS, ends_s)
    reserve = {}
    for name in GROUPS:
        reserve[name] = 1 - max([depth_of(fatigue, slot) for slot in range(len(SLOTS)) if SLOTS[slot] == name])
    reps = reps_per_movement(steps)
    tired = [name for name in GROUPS if reserve[name] < WARM_UP_RESERVE_AT_START]
    if lowest < WARM_UP_LOWEST_RESERVE and limiting["max_units"] >= WARM_UP_LOWEST_FROM and group not in tired:
        tired.append(group)
    within = len([1 for movement in sorted(list(reps.keys())) if reps[movement] > RAMP_REPS]) == 0
    return {
        "reserve_at_start": reserve, "lowest_reserve": lowest, "limiting_group": group, "limiting_movement": limiting["movement"],
        "reps_per_movement": reps, "tired": tired, "passes": len(tired) == 0 and within,
    }  # fmt: skip


def depth_of(fatigue: Fatigue, slot: int) -> float:
    """Return the depth of a slot. [0-1]"""
    return fatigue.quick[slot] + fatigue.slow[slot]


def do_step(fatigue: Fatigue, step: dict, movers: list, group: str, gain: float) -> float:
    """Do a step and let the rest of its time pass, in place; return the lowest reserve of `group` met in it."""
    mover = mover_named(step["movement"], movers)
    left_s = step["seconds"]
    lowest = 1 - deepest_of(fatigue, group)
    if step["phase"] == "get_warm":
        return min(lowest, do_work(fatigue, [easy_effort(step, group)], easy_chunks(step), left_s, group, gain))
    if mover is None or step["amount"] is None or (step["phase"] != "build" and step["phase"] != "burst"):
        recover(fatigue, ALL_SLOTS, left_s)
        return lowest
    efforts = [drill_effort(step, mover)]
    if step["side"] == "both" and mover["stint"]["one_sided"]:
        efforts.append(Effort(sides_of(efforts[0].slots), efforts[0].costs, efforts[0].seconds, efforts[0].entry))
    return min(lowest, do_work(fatigue, efforts, drill_reps(step, mover), left_s, group, gain))


def do_work(fatigue: Fatigue, efforts: list, reps: int, seconds: float, group: str, gain: float) -> float:
    """Do `reps` of each effort, then rest until `seconds` [s] have passed, in place; return the lowest reserve of `group`."""
    lowest = 1.0
    left_s = seconds
    for effort in efforts:
        for rep in range(reps):
            one = effort if rep == 0 else Effort(effort.slots, effort.costs, effort.seconds, 0.0)
            before = deepest_of(fatigue, group)
            result = perform(fatigue, one, 1, gain)
            spent = one.costs[position_of(one, group)] * (1 + one.entry) if position_of(one, group) >= 0 else 0.0
            lowest = min(lowest, 1 - before - spent)
            passed_s = min(result[1], max(0.0, left_s))
            recover(fatigue, [slot for slot in ALL_SLOTS if slot not in one.slots], passed_s)
            left_s = left_s - result[1]
    recover(fatigue, ALL_SLOTS, max(0.0, left_s))
    return lowest


def position_of(effort: Effort, group: str) -> int:
    """Return where a group stands among an effort's slots, -1 where it does not."""
    for position in range(len(effort.slots)):
        if SLOTS[effort.slots[position]] == group:
            return position
    return -1


def deepest_of(fatigue: Fatigue, group: str) -> float:
    """Return the greatest depth among the slots of a group."""
    return max([depth_of(fatigue, slot) for slot in ALL_SLOTS if SLOTS[slot] == group])


def easy_chunks(step: dict) -> int:
    """Return how many repetitions of the model easy work is taken as."""
    return max(1, min(MOST_CHUNKS, int(step["seconds"] // EASY_CHUNK_S)))


def easy_effort(step: dict, group: str) -> Effort:
    """Return what a chunk of easy work takes: a share of what a race pace settles at."""
    machine = step["movement"]
    shares = MACHINE_SHARES["run" if machine is None else machine]
    seconds = step["seconds"] / easy_chunks(step)
    cost = EASY_EFFORT * PACED_DEPTH * (math.exp(seconds / QUICK_TIME_CONSTANT_S) - 1)
    slots = [slot for slot in ALL_SLOTS if shares.get(SLOTS[slot], 0.0) > 0]
    return Effort(slots, [cost * shares[SLOTS[slot]] for slot in slots], seconds, 0.0)


def drill_reps(step: dict, mover: dict) -> int:
    """Return how many repetitions of the model a drill is taken as."""
    if step["unit"] == "reps":
        return max(1, int(math.floor(step["amount"])))
    return 4


def drill_effort(step: dict, mover: dict) -> Effort:
    """Return what one repetition of the model takes in a drill.

    The cost of the workout's own repetition, less for an easier form and for a lighter load, see `unit_cost`. For somebody with no rep a
    round of a drill takes a fixed share of the capacity.
    """
    stint = mover["stint"]
    reps = drill_reps(step, mover)
    lead = stint["costs"][0]
    total = NO_REP_EFFORT if mover["max_units"] < 1 else OF_OTHER_UNIT
    if mover["max_units"] >= 1 and step["unit"] == mover["entry"]["unit"]:
        own_units = stint["seconds"] / mover["unit_s"]
        total = step["amount"] * unit_cost(lead / own_units, step, mover)
    costs = [total / reps * cost / lead for cost in stint["costs"]]
    seconds = max(0.3, mover["unit_s"] * step["amount"] / reps) if step["unit"] == mover["entry"]["unit"] else 2.0
    entry = WARM_UP_ENTRY_SHARE * stint["entry"] if step["unit"] == "reps" and mover["max_units"] >= 1 else 0.0
    return Effort(stint["slots"], costs, seconds, entry)


def unit_cost(full: float, step: dict, mover: dict) -> float:
    """Return what one unit of a drill takes, `full` being what the movement at its working load takes. [0-1]

    A lighter load takes less by the square of its share: at 70 % of a load that goes 4 times one does about 15, at 40 % more than 30
    (the load-repetition formulas of `strength`), so that the square still overstates it.
    """
    load_kg = mover["stint"]["load_kg"]
    if step["load_kg"] is not None and load_kg is not None and load_kg > 0:
        return full * min(1.0, step["load_kg"] / load_kg) ** 2
    loaded = load_kg is not None and load_kg > 0
    if step["name"] == mover["entry"]["name"] and not loaded:
        return full
    return min(DRILL_EFFORT * full, EASIER_UNIT_MOST)


def reps_per_movement(steps: list) -> dict:
    """Return the reps of build and bursts by movement; extras that stand for another drill are not counted twice."""
    reps = {}
    for step in steps:
        ramp = step["phase"] == "build" or step["phase"] == "burst"
        if ramp and step["unit"] == "reps" and step["movement"] is not None and not step["optional"]:
            reps[step["movement"]] = reps.get(step["movement"], 0) + step["amount"]
    return reps
