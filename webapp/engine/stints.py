"""A workout and an athlete in, stints out: each block in each round, ready to be planned.

A stint is a mapping, so that a plan can carry its stints along and be made anew from them on the phone. Its work is counted in
steps (one repetition, or a stretch of metres, calories or seconds), grouped in pieces (a mark, a pair of alternating
repetitions) that sets are made of. Keys, besides the block's own:

block, round (both from 1), movement, amount, unit, load_kg, mark_every
until_s : for a rest up to a moment of the workout's clock, None otherwise [s]. parts : sets that paced work is broken into for breath
rest_follows : True where what is left of an interval is rest, so that hurrying costs nothing later
cadence : slowing for breath as a share of the usual seconds; linger_s : what that adds to a step done in sets, time in position [s]
watts, spend, refill, longer, by_speed : power and what it does to W′; see `breath`. breath_sd : doubt in CP where it sets the pace, on its logarithm
kind : "local" planned in sets, "paced" done through at a cadence, "skill" done until a miss, "rest" nothing but time, "gate" cannot be done
step_units, steps, piece_steps : size of a step [block units], steps in all, steps per piece
max_steps, sd : largest unbroken set when fresh, and the standard deviation of its logarithm
critical_s, usual_pace : seconds per unit that can be kept up, None unless long efforts say so [s]; share of the usual pace it is planned at
seconds : per step when fresh [s]. slots, costs : what a step takes, primary first [0–1]. entry : cost of starting a set [steps]
handover : what the depth of its primary group is multiplied by when it is come to; see `handover`
give : a largest set `f` times as large stands for costs `f**give` times smaller; under 1 for long sets, where one recovers on the way
set_up_s, change_s, fail_cost_s, single_wait_s [s]. reset_s : least rest between quick singles, None where it is no lift from the floor [s]. keep : reserve never spent [0–1]. switch_steps : 0 for never. one_sided : bool
below_half : the largest set, in pieces, while more than the maximum is still to come. filled, outside : as in `athlete.capacity`
"""

import math

from .asked import amount_in_all, climbed, entry_of, rounds_of, upcoming_entry
from .athlete import capacity, of_movement, units_per_block_unit
from .breath import breath_of
from .checks import choice, listing, mapping, number, optional
from .endurance import largest_at, pace_for
from .errors import EngineError
from .handover import set_handovers
from .held import hold_of, shares_of, switches_of
from .lungs import power_of
from .parameters import (
    CHANGE_OVER_S,
    FAIL_COST_S,
    FEW_STEPS,
    GATE_TRIES,
    LEAST_GIVE,
    PACED_DEPTH,
    PACED_STEPS,
    QUICK_TIME_CONSTANT_S,
    SENSITIVITY_STEP,
    SINGLE_WAITS_S,
    SMALL_MAX,
)
from .reserve import cost_kept_up, cost_of_singles, cost_per_rep
from .segments import SLOTS
from .units import whole

MOST_STINTS = 240
STEP_SIZES = [1, 2, 5, 10, 20, 25, 50, 100, 200, 500, 1000]
KIND_OF_LIMIT = {"local": "local", "strength": "local", "lungs": "paced", "skill": "skill"}


def make_stints(workout: dict, option: dict, division: str, numbers: dict, form: float, gain: float, lungs: dict) -> list:
    """Return the stints of an option for one athlete, in order.

    Parameters
    ----------
    form : multiplies today's capacity, 1 = usual. [0.5–1.5] gain : the person's g. [0.2–1.6] lungs : cp_w [W], w_prime_j [J].

    Raises
    ------
    EngineError : a workout or a number the engine cannot work with.
    """
    blocks = listing("no_blocks", option.get("blocks"))
    rounds = rounds_of(option)
    if len(blocks) == 0 or len(rounds) == 0:
        raise EngineError("no_blocks", 0)
    if len(blocks) * len(rounds) > MOST_STINTS:
        raise EngineError("too_many_blocks", len(blocks) * len(rounds))
    known = {}
    stints = []
    for index, amount in enumerate(rounds):
        for place in range(len(blocks)):
            stint = stint_of(workout, climbed(option, place, index), place, amount, division, numbers, form, gain, lungs, known)
            stint["round"] = index + 1
            stints.append(stint)
    set_handovers(stints)
    return stints


def stint_of(
    workout: dict, option: dict, place: int, round_amount, division: str, numbers: dict, form: float, gain: float, lungs: dict, known: dict
) -> dict:
    """Return the stint of one block (`place` from 0) in one round, its round not yet set; `known` remembers costs already found."""
    block = mapping("block_not_a_mapping", option["blocks"][place])
    movement = choice("movement_unknown", block.get("movement"), [block.get("movement")])
    amount = round_amount if block.get("amount") is None else block.get("amount")
    number("amount_out_of_range", amount, 0.1, 100000)
    unit = choice("unit_unknown", block.get("unit"), [block.get("unit")])
    stint = {"block": place + 1, "movement": movement, "amount": amount, "unit": unit}
    stint.update({"cadence": 1.0, "linger_s": 0.0, "parts": 1, "until_s": None, "rest_follows": False})
    if movement == "rest":
        return {**stint, **rest_stint(amount)}
    entry = entry_of(workout, movement)
    upcoming = upcoming_entry(workout, option, place)
    able = capacity(entry, movement, block, numbers, division)
    keep_pace(stint, able, amount_in_all(option, place, amount), form)
    stint["load_kg"] = able["load_kg"]
    stint["mark_every"] = optional("mark_out_of_range", block.get("mark_every"), 0.05, 1000, None)
    stint["filled"] = able["filled"]
    stint["outside"] = able["outside"]
    stint["primary"] = entry["primary"]
    stint["limit"] = entry["limit"]
    stint["keep"] = entry["keep_reserve"]
    stint["sd"] = able["sd"]
    stint["tries"] = 0 if entry["inverted"] and numbers.get("inverted_ok") is not True else GATE_TRIES
    hold_of(stint, entry, upcoming)
    stint["kind"] = kind_of(entry, able["max_units"])
    work_in_steps(stint, entry, able, form)
    times_of(stint, entry, of_movement(numbers, movement))
    costs_of(stint, entry, block, gain, known)
    switches_of(stint, entry, block, workout)
    breath_in(stint, entry, block, numbers, lungs)
    return stint


def keep_pace(stint: dict, able: dict, in_all: float, form: float):
    """Set the pace of work that long efforts are known of, and what goes in one go at it, in place; `critical_s` is None without them."""
    line = able["line"]
    stint["critical_s"] = None
    stint["usual_pace"] = 1.0
    if line is None:
        return
    usual_s = able["seconds_per_unit"]
    able["seconds_per_unit"] = pace_for(line, in_all, usual_s)
    able["max_units"] = largest_at(line, able["seconds_per_unit"])
    stint["critical_s"] = 1 / (line["rate"] * form)
    stint["usual_pace"] = usual_s / able["seconds_per_unit"]


def rest_stint(amount: float) -> dict:
    """Return what a stint of nothing but time carries."""
    return {
        "kind": "rest", "load_kg": None, "mark_every": None, "filled": [], "outside": False, "primary": "trunk", "limit": "rest", "keep": 0.0,
        "sd": 0.0, "step_units": amount, "steps": 0, "piece_steps": 1, "max_steps": 1.0, "seconds": amount, "critical_s": None, "usual_pace": 1.0, "slots": [], "costs": [],
        "entry": 0.0, "reset_s": None, "set_up_s": 0.0, "change_s": 0.0, "fail_cost_s": 0.0, "single_wait_s": 0.0, "switch_steps": 0,
        "one_sided": False, "below_half": 1, "tries": 0, "give": 1.0, "watts": 0.0, "spend": 0.0, "refill": 1.0, "longer": 0.0, "by_speed": False, "breath_sd": 0.0, "cadence": 1.0, "linger_s": 0.0, "parts": 1, "until_s": None, "rest_follows": False, "hold": None, "hold_reason": None,
    }  # fmt: skip


def kind_of(entry: dict, max_units: float) -> str:
    """Return how a stint is planned; a movement (or a load) one cannot do once is a gate."""
    if max_units < 1 and entry["limit"] != "lungs":
        return "gate"
    return KIND_OF_LIMIT[entry["limit"]]


def work_in_steps(stint: dict, entry: dict, able: dict, form: float):
    """Set steps, pieces and the largest set of a stint."""
    amount = stint["amount"]
    mark = stint["mark_every"]
    unit = stint["unit"]
    max_units = max(1.0, able["max_units"] * form)
    step = step_size(amount, mark, unit, max_units, stint["kind"] == "paced")
    stint["step_units"] = step
    stint["steps"] = max(1, whole(amount / step))
    stint["max_steps"] = max_units / step
    stint["seconds"] = able["seconds_per_unit"] * step
    pieces = 1 if mark is None else max(1, whole(mark / step))
    if unit == "reps" and entry["sides"] == "alternating" and max_units >= 8:
        pieces = 2
    half = half_steps(stint["max_steps"])
    if stint["kind"] == "local" and stint["steps"] > stint["max_steps"]:
        while pieces > half and pieces > 1:
            pieces = pieces // 2 if pieces - 2 * (pieces // 2) == 0 else 1
    stint["piece_steps"] = pieces
    stint["below_half"] = max(1, half // pieces)


def half_steps(max_steps: float) -> int:
    """Return the largest set while more than the maximum is still to come, in steps: below half, common practice, no source."""
    return max(1, math.ceil(max_steps / 2 - 1e-9) - 1)


def step_size(amount: float, mark, unit: str, max_units: float, paced: bool) -> float:
    """Return the size of a step: small against the work and the largest set, and a whole part of a mark. [block units]"""
    if unit == "reps" and amount <= 3 * FEW_STEPS:
        return 1
    wanted = max(1.0, min(amount, max_units) / FEW_STEPS, amount / (5 * FEW_STEPS))
    if paced:
        wanted = max(1.0, amount / PACED_STEPS)
    if mark is not None:
        return mark / max(1, whole(mark / wanted))
    best = min(STEP_SIZES[0], amount)
    for size in STEP_SIZES:
        if size <= wanted:
            best = size
    return best


def times_of(stint: dict, entry: dict, given: dict):
    """Set the times around a stint's sets."""
    stint["entry"] = entry["entry_units"] / stint["step_units"]
    stint["set_up_s"] = entry["set_up_s"]
    stint["change_s"] = CHANGE_OVER_S if entry["change_s"] is None else entry["change_s"]
    stint["fail_cost_s"] = FAIL_COST_S if entry["fail_cost_s"] is None else entry["fail_cost_s"]
    stint["reset_s"] = entry.get("reset_s")  # workouts frozen before it was known lack it
    stint["single_wait_s"] = 0.0
    if stint["unit"] == "reps" and stint["max_steps"] <= SMALL_MAX:
        usual_s = SINGLE_WAITS_S[int(stint["max_steps"]) - 1]
        stint["single_wait_s"] = optional("wait_out_of_range", given.get("wait_between_singles_s"), 1, 600, usual_s)


def known_cost(max_steps: float, stint: dict, gain: float, known: dict) -> float:
    """Return the cost behind a largest set, found once for each that is asked for."""
    name = "/".join([stint["movement"], str(int(max_steps * 1000)), str(int(stint["seconds"] * 1000))])
    if known.get(name) is None:
        known[name] = cost_per_rep(max(1.0, max_steps), stint["seconds"], stint["entry"], gain)
    return known[name]


def cost_of_step(stint: dict, entry: dict, gain: float, known: dict) -> float:
    """Return what a step takes of the primary group [0–1], and set how that moves with the largest set (`give`), in place."""
    if stint["kind"] == "paced":
        stint["give"] = 0.0  # what ends by breath does not get harder by a smaller largest set
        return PACED_DEPTH * (math.exp(stint["seconds"] / QUICK_TIME_CONSTANT_S) - 1)
    stint["give"] = 1.0
    if stint["kind"] == "local" and stint["critical_s"] is not None:
        return cost_kept_up(stint["critical_s"] * stint["step_units"], gain)
    max_steps = stint["max_steps"]
    if stint["kind"] == "skill":  # a skill ends by a miss: what it takes of the muscles is what it takes of an expert's
        max_steps = max(max_steps, entry["max_by_level"]["expert"] / stint["step_units"])
    cost = known_cost(max_steps, stint, gain, known)
    fewer = max(1.0, SENSITIVITY_STEP * max_steps)
    if fewer < max_steps:
        stint["give"] = max(LEAST_GIVE, math.log(known_cost(fewer, stint, gain, known) / cost) / math.log(max_steps / fewer))
    if stint["single_wait_s"] > 0:  # how soon the next single goes says more than a largest set of one to three
        cost = min(cost, cost_of_singles(stint["single_wait_s"], stint["seconds"], stint["entry"], gain))
    return cost


def costs_of(stint: dict, entry: dict, block: dict, gain: float, known: dict):
    """Set the slots a stint loads and what a step takes of each, both hands unless the work is one-sided."""
    cost = cost_of_step(stint, entry, gain, known)
    stint["one_sided"] = block.get("sides") == "one" or (block.get("sides") is None and entry["sides"] == "one")
    slots = []
    costs = []
    shares = shares_of(entry, stint["hold"])
    groups = [entry["primary"]] + [group for group in sorted(list(shares.keys())) if group != entry["primary"]]
    for group in groups:
        for slot in range(len(SLOTS)):
            second_side = slot > 0 and SLOTS[slot - 1] == group
            if SLOTS[slot] == group and shares[group] > 0 and not (stint["one_sided"] and second_side):
                slots.append(slot)
                costs.append(cost * shares[group])
    stint["slots"] = slots
    stint["costs"] = costs


def breath_in(stint: dict, entry: dict, block: dict, numbers: dict, lungs: dict):
    """Set the power of the work and what it does to W′."""
    count = optional("implements_out_of_range", block.get("implements"), 0, 100, entry["implements"])
    load_kg = None if stint["load_kg"] is None else stint["load_kg"] * (1 if count is None else count)
    per_unit_s = stint["seconds"] / (stint["step_units"] * units_per_block_unit(entry, stint["unit"]))
    stint["watts"] = power_of(entry, load_kg, numbers, per_unit_s)
    breath = breath_of(stint["watts"], lungs)
    stint["spend"] = breath.spend
    stint["refill"] = breath.refill
    stint["longer"] = breath.longer
    energy = entry.get("energy")
    stint["by_speed"] = energy is not None and energy["kind"] == "flywheel" and entry["unit"] == "m"
    stint["breath_sd"] = lungs["sd"] if stint["kind"] == "paced" else 0.0


