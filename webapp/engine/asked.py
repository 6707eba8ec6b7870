"""What a workout asks for: its option, division, rounds, what climbs from round to round, its movements."""

from .checks import choice, listing, mapping, number, optional, whole_number
from .entries import check_entry
from .errors import EngineError
from .parameters import LANE_M


def option_of(workout: dict, key) -> dict:
    """Return the option with this key, the first for None."""
    options = listing("options_not_a_list", mapping("workout_not_a_mapping", workout).get("options"))
    if len(options) == 0:
        raise EngineError("no_options", 0)
    for option in options:
        one = mapping("option_not_a_mapping", option)
        if key is None or one.get("key") == key:
            return one
    raise EngineError("option_unknown", key)


def division_of(workout: dict, key) -> str:
    """Return the division's key, the first for None."""
    divisions = listing("divisions_not_a_list", workout.get("divisions"))
    if len(divisions) == 0:
        return "a" if key is None else choice("division_unknown", key, [key])
    keys = [mapping("division_unknown", division).get("key") for division in divisions]
    for one in keys:
        if not isinstance(one, str):
            raise EngineError("division_unknown", 0)
    return choice("division_unknown", key, keys)


def rounds_of(option: dict) -> list:
    """Return what each round asks of a block without an amount of its own: a number per round, None without a rep scheme."""
    scheme = option.get("rep_scheme")
    if scheme is not None:
        return [number("amount_out_of_range", amount, 1, 10000) for amount in listing("amount_out_of_range", scheme)]
    count = 1 if option.get("rounds") is None else whole_number("rounds_out_of_range", option.get("rounds"), 1, 200)
    return [None] * count


def climbed(option: dict, place: int, rounds_before: int) -> dict:
    """Return the option with one block's amount and load moved on by its steps, for ladders and rising loads."""
    block = mapping("block_not_a_mapping", option["blocks"][place])
    step = block.get("step")
    load_step = block.get("load_step_kg")
    if (step is None and load_step is None) or rounds_before == 0:
        return option
    moved = {**block}
    if step is not None and block.get("amount") is not None:
        moved["amount"] = max(1, number("amount_out_of_range", block["amount"], 0.1, 100000) + number("amount_out_of_range", step, -1000, 1000) * rounds_before)
    if load_step is not None and block.get("load_kg") is not None:
        moved["load_kg"] = heavier(block["load_kg"], number("load_out_of_range", load_step, -100, 100) * rounds_before)
    blocks = option["blocks"][:]
    blocks[place] = moved
    return {**option, "blocks": blocks}


def heavier(load_kg, more_kg: float):
    """Return a load, one for all or one per division (None where that has none), made heavier. [kg]"""
    if not isinstance(load_kg, dict):
        return max(0.5, number("load_out_of_range", load_kg, 0, 1000) + more_kg)
    loads = {}
    for division in sorted(list(load_kg.keys())):
        loads[division] = None if load_kg[division] is None else heavier(load_kg[division], more_kg)
    return loads


def amount_in_all(option: dict, place: int, amount: float) -> float:
    """Return what a block asks for in all its rounds, a ladder's steps left out. [block units]"""
    if option["blocks"][place].get("amount") is not None:
        return amount * len(rounds_of(option))
    return sum(rounds_of(option))


def entry_of(workout: dict, movement) -> dict:
    """Return the library entry that a workout carries for a movement."""
    movements = mapping("movement_unknown", workout.get("movements"))
    if not isinstance(movement, str) or movements.get(movement) is None:
        raise EngineError("movement_unknown", movement)
    check_entry(movements[movement])
    return movements[movement]


def upcoming_entry(workout: dict, option: dict, place: int) -> dict | None:
    """Return the library entry of the block after `place`, the first one again after the last of several rounds, None for none."""
    blocks = option["blocks"]
    following = place + 1
    if following == len(blocks):
        following = 0 if len(rounds_of(option)) > 1 else -1
    if following < 0 or not isinstance(blocks[following], dict):
        return None
    movement = blocks[following].get("movement")
    return None if movement == "rest" else entry_of(workout, movement)


def lane_length(workout: dict) -> float:
    """Return the length of the lane, a usual one where none is given. [m]"""
    return optional("lane_out_of_range", mapping("lane_out_of_range", workout.get("lane")).get("length_m"), 0.1, 1000, LANE_M)
