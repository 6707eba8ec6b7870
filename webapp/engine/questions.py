"""Which numbers to ask an athlete for this workout, and what each is taken for when not given."""

import math

from .asked import division_of, entry_of, option_of, rounds_of
from .athlete import HIGHEST_MAX, asks_for_a_set, body_mass, capacity, load_of, number_asked, of_movement, seconds_per_unit, usual_one_rep_max
from .checks import listing, mapping, number, optional
from .parameters import EFFORT_M, FIVE_KM, HARD_SHARE, LONG_EFFORTS_S, MIXED_PACE, MOST_NEEDED, REPEAT_TEST_FROM, RIEGEL_EXPONENT, SECOND_EFFORT_M, SLOW_GAIN, SMALL_MAX
from .planner import part_of
from .reserve import second_set
from .units import rounded, whole

STEADY_STEP_S = 15


def questions(workout: dict, settings: dict, numbers: dict) -> list:
    """Return the numbers that matter for an option, those that decide it first.

    Parameters
    ----------
    workout, settings, numbers : as in `plan`; of the numbers the level, the body mass and what was already given are used.

    Returns
    -------
    list : mappings with kind ("max_unbroken", "one_rep_max", "steady_s", "effort", "long_effort", "body_mass", "repeat_test",
    "wait_between_singles_s"), movement (None for the body), unit, default (what a plan takes without it), low, high, step, needed (ask it first), maximal
    (finding it takes an all-out effort), m for an effort, s for a long effort (most in that time), beside_m or beside_s for a second effort, the
    distance or time of the one it must agree with, by_single for a largest set, True where the default comes from the heaviest single that was told. [units, kg, s, m]
    """
    today = mapping("settings_not_a_mapping", settings)
    known = mapping("numbers_not_a_mapping", numbers)
    parts = each_part(workout)
    division = division_of(mapping("workout_not_a_mapping", workout), today.get("division"))
    demands = []
    for part in parts:
        add_demands(demands, part, option_of(part, today.get("option")), division, known)
    demands = sorted(demands, key=lambda demand: -demand["hard"])
    made = []
    needed = 0
    for demand in demands:
        question = question_of(demand, known, division)
        if question is None:
            continue
        question["needed"] = demand["heaviest"] or (demand["hard"] > HARD_SHARE and needed < MOST_NEEDED)
        needed = needed + (1 if question["needed"] else 0)
        made.append(question)
    made.extend(sharper(made, demands, known) + long_effort_questions(made, demands, known) + second_efforts(made, known))
    if len([1 for demand in demands if needs_body(demand)]) > 0:
        made.append(asked("body_mass", None, "kg", body_mass({}), 25, 250, 1, False))
    return made


def asked(kind: str, movement, unit: str, otherwise, low: float, high: float, step: float, maximal: bool) -> dict:
    """Return one question, not needed unless its asker says so."""
    return {
        "kind": kind,
        "movement": movement,
        "unit": unit,
        "default": otherwise,
        "low": low,
        "high": high,
        "step": step,
        "needed": False,
        "maximal": maximal,
    }


def each_part(workout: dict) -> list:
    """Return the parts of a workout, each as a workout of its own; one that is not in parts alone."""
    given = mapping("workout_not_a_mapping", workout)
    if given.get("parts") is None:
        return [given]
    return [part_of(given, part) for part in listing("parts_not_a_list", given["parts"])]


def add_demands(demands: list, workout: dict, option: dict, division: str, numbers: dict):
    """Add to `demands` each movement of an option once, with what it is asked for: entry, block, how hard it is, whether the heaviest lift is meant,
    and which number it asks. A heaviest lift stands for itself, unless its single tells the lighter work too."""
    level_only = {"level": numbers.get("level"), "body_mass_kg": numbers.get("body_mass_kg")}
    rounds = rounds_of(option)
    heaviest = workout.get("shape") == "load"
    for block in listing("no_blocks", option.get("blocks")):
        movement = mapping("block_not_a_mapping", block).get("movement")
        if movement == "rest":
            continue
        entry = entry_of(workout, movement)
        amounts = [number("amount_out_of_range", amount if block.get("amount") is None else block.get("amount"), 0.1, 100000) for amount in rounds]
        able = capacity(entry, movement, block, level_only, division)
        asks = "one_rep_max" if heaviest else number_asked(entry, able["load_kg"])
        demand = alike(demands, movement, heaviest, asks)
        if demand is None:
            demand = {"movement": movement, "entry": entry, "block": block, "hard": 0.0, "able": able, "heaviest": heaviest, "asks": asks}
            demands.append(demand)
        elif heaviest and not demand["heaviest"]:
            demand.update({"block": block, "able": able, "heaviest": True})
        demand["hard"] = demand["hard"] + (sum(amounts) / max(1.0, able["max_units"]) if entry["limit"] != "lungs" else 0.2)


def alike(demands: list, movement: str, heaviest: bool, asks: str) -> dict | None:
    """Return the demand that one more block of a movement only adds to, None where it asks a number of its own."""
    for demand in demands:
        if demand["movement"] == movement and (demand["heaviest"] == heaviest or demand["asks"] == asks):
            return demand
    return None


def question_of(demand: dict, numbers: dict, division: str) -> dict | None:
    """Return the question a movement asks, None where it asks nothing."""
    entry = demand["entry"]
    if entry["ask"] == "effort":
        return effort_question(demand, numbers)
    if not asks_for_a_set(entry):
        return None
    if demand["asks"] == "one_rep_max":
        return one_rep_max_question(demand, numbers, load_of(demand["block"], numbers, division), division)
    return steady_question(demand) if demand["asks"] == "steady_s" else largest_set_question(demand, numbers, division)


def largest_set_question(demand: dict, numbers: dict, division: str) -> dict:
    """Return the question for the largest unbroken set, in the movement's own unit; where a heaviest single is told, what is taken without an
    answer comes from it, and `by_single` says so."""
    entry = demand["entry"]
    scale = 1.0 if demand["block"]["unit"] == entry["unit"] else entry["other_units"][demand["block"]["unit"]]
    single_kg = of_movement(numbers, demand["movement"]).get("one_rep_max_kg")
    by_single = single_kg is not None and demand["able"]["load_kg"] is not None
    able = demand["able"]
    if by_single:
        single = {**numbers, "movements": {demand["movement"]: {"one_rep_max_kg": single_kg}}}
        able = capacity(entry, demand["movement"], demand["block"], single, division)
    step = 1 if entry["unit"] == "reps" else 5
    if entry["unit"] == "m" and entry["max_by_level"]["expert"] <= 60:
        step = 1
    if entry["unit"] == "reps" and entry["max_by_level"]["expert"] > 150:
        step = 10
    most = 10 * entry["max_by_level"]["expert"]
    question = asked("max_unbroken", demand["movement"], entry["unit"], min(most, whole(able["max_units"] * scale)), 0, most, step, True)
    question["by_single"] = by_single
    return question


def steady_question(demand: dict) -> dict:
    """Return the question how long one could go on at a steady pace."""
    usual_s = demand["able"]["max_units"] * demand["able"]["seconds_per_unit"]
    return asked("steady_s", demand["movement"], "s", rounded(max(STEADY_STEP_S, usual_s), STEADY_STEP_S), 10, 3600, STEADY_STEP_S, True)


def long_effort_questions(asked_of: list, demands: list, numbers: dict) -> list:
    """Return, for the first movement whose lasting is needed, the questions for the most in two given times: together they say what can be
    kept up. Of the second only what goes with the first is in its range: more work, at a lower rate."""
    movements = [question["movement"] for question in asked_of if question["kind"] == "steady_s" and question["needed"]]
    if len(movements) == 0:
        return []
    demand = demands[[demand["movement"] for demand in demands].index(movements[0])]
    entry = demand["entry"]
    made = []
    for seconds in LONG_EFFORTS_S:
        question = asked("long_effort", demand["movement"], entry["unit"], None, 1, 10 * entry["max_by_level"]["expert"], 1, True)
        question["s"] = seconds
        made.append(question)
    first_s = LONG_EFFORTS_S[0]
    for effort in listing("effort_out_of_range", of_movement(numbers, movements[0]).get("long_efforts")):
        told = listing("effort_out_of_range", effort)
        if len(told) == 2 and told[1] == first_s:
            units = number("effort_out_of_range", told[0], 1, 100000)
            made[1].update({"low": math.floor(units) + 1, "high": math.ceil(units * LONG_EFFORTS_S[1] / first_s) - 1, "beside_s": first_s})
    return made


def one_rep_max_question(demand: dict, numbers: dict, load_kg: float | None, division: str) -> dict:
    """Return the question for the heaviest single; without a load to lift it is what is usual for the level and the body mass."""
    entry = demand["entry"]
    usual_kg = usual_one_rep_max(entry, numbers, division)
    if load_kg is not None and (usual_kg is None or numbers.get("body_mass_kg") is None):
        usual_kg = load_kg * (1 + demand["able"]["max_units"] / 30)
    return asked("one_rep_max", demand["movement"], "kg", None if usual_kg is None else rounded(usual_kg, 2.5), 5, 400, 2.5, True)


def effort_question(demand: dict, numbers: dict) -> dict | None:
    """Return the question for a best time over a usual distance, None where the movement has none."""
    distance_m = EFFORT_M.get(demand["movement"])
    if distance_m is None:
        return None
    pace = seconds_per_unit(demand["entry"], demand["movement"], {}, {"level": numbers.get("level")}, demand["entry"]["unit"], 1.0)
    alone_s = pace["seconds"] / MIXED_PACE * FIVE_KM * math.pow(distance_m / FIVE_KM, RIEGEL_EXPONENT)
    question = asked("effort", demand["movement"], "s", rounded(alone_s, 5), distance_m / 8, distance_m * 2, 5, True)
    question["m"] = distance_m
    return question


def second_efforts(made: list, numbers: dict) -> list:
    """Return, for each movement whose usual distance has a time, the question for a time over another: one effort alone leaves W′ to the level.

    Only times that give a CP and a W′ with the first are in its range: quicker over less, and with more work over more; of a flywheel, whose work
    goes with m³/s², seconds between those as m and as m^1.5.
    """
    more = []
    for question in made:
        for effort in listing("effort_out_of_range", numbers.get("efforts")) if question["kind"] == "effort" else []:
            told = mapping("effort_out_of_range", effort)
            if told.get("kind") != question["movement"] or told.get("m") != question["m"]:
                continue
            told_s = number("effort_out_of_range", told.get("s"), 10, 50000)
            share = SECOND_EFFORT_M[question["movement"]] / question["m"]
            ends_s = [told_s * share, told_s * math.pow(share, 1.5)]
            second = asked("effort", question["movement"], "s", None, math.ceil(min(ends_s) + 1), math.floor(max(ends_s) - 1), 5, True)
            second["m"] = SECOND_EFFORT_M[question["movement"]]
            second["beside_m"] = question["m"]
            more.append(second)
    return more


def sharper(made: list, demands: list, numbers: dict) -> list:
    """Return the questions that sharpen the plan of the hardest movement: recovery, or the wait between singles."""
    if len(made) == 0 or made[0]["kind"] != "max_unbroken":
        return []
    first = made[0]
    given = mapping("numbers_not_a_mapping", mapping("numbers_not_a_mapping", numbers.get("movements")).get(first["movement"]))
    most = optional("max_unbroken_out_of_range", given.get("max_unbroken"), 0, HIGHEST_MAX, first["default"])
    if first["unit"] == "reps" and 1 <= most and most <= SMALL_MAX:
        return [asked("wait_between_singles_s", first["movement"], "s", None, 1, 300, 5, False)]
    if first["unit"] != "reps" or most < REPEAT_TEST_FROM:
        return []
    again = second_set(min(most, 1000), demands[0]["entry"]["seconds_per_unit"], SLOW_GAIN)
    return [asked("repeat_test", first["movement"], "reps", whole(again), 0, whole(most), 1, True)]  # the second set is never the larger


def needs_body(demand: dict) -> bool:
    """Does the body mass move this movement's numbers?"""
    block = demand["block"]
    by_load = demand["heaviest"] or block.get("load_kg") is not None
    by_body = demand["entry"].get("one_rep_max_of_body") is not None
    return by_load and by_body or block.get("load_of_body") is not None
