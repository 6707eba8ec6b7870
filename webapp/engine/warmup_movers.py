"""Who warms up for what: the movements of the workout, each with the ladder of drills this athlete should climb today.

A mover is a mapping, one for each different movement of the option, in the order of the workout:

movement, entry, block : key, library entry, the block it is taken from (the heaviest, where it comes more than once); stint as in `stints`
max_units : largest unbroken set in the movement's own unit, 0 for none. unit_s : seconds of one such unit [s]
demand : the work asked over the largest set, all rounds together. limiting, heaviest : whether it is the one
care : why drills are put in its place or kept light: "none", "sore", "upright", "no_wall", "no_bar"
ladder : rungs from the lowest on; burst : a rung or None; partner : a rung or None. one_rep_max_kg : as given, or None
ramp_reps : the most reps in build and bursts together

A rung is one drill: name, amount, unit, share (of the working load, None for none), full (the movement itself), low (on a lower box).
"""

from .athlete import of_movement, units_per_block_unit
from .checks import choice, listing, mapping, number, optional
from .errors import EngineError
from .parameters import (
    BAR_MOVEMENTS,
    EASIER_HOLD_S,
    EASIER_REPS,
    HANGING,
    LIMITING_DOSE_MOST,
    LIMITING_DOSE_SHARE,
    LONGEST_HOLD_S,
    OVERHEAD_POSITIONS,
    RAMP_DOSES,
    RAMP_REPS,
    REPEAT_REPS,
    SLIP_FOR_REPEAT_S,
    SORE_SHARE,
    TOO_HEAVY_SHARE,
    TOO_HEAVY_UNKNOWN,
    WALL_MOVEMENTS,
)
from .units import clamp, rounded
from .warmup_gentle import in_steps

MOST_DRILL_REPS = 8  # of a drill without a load; chosen
LONGEST_WORK_S = 30.0  # s of one drill; chosen
STRETCH_SHARE = 3  # a travelled or held drill takes at most a third of the longest one; chosen
HEAVY_SHARE = 0.5  # of the capacity per unit: a movement counts as loading what is sore from here on, its groups taken together; chosen


def movers_of(workout: dict, option: dict, stints: list, numbers: dict, today: dict) -> list:
    """Return the movers of an option; `today` is what `warmup_day.day_of` read from the settings.

    Raises
    ------
    EngineError : no_work, where the option asks for nothing but rest.
    """
    movers = []
    for stint in stints:
        if stint["kind"] != "rest":
            add_mover(movers, workout, option["blocks"][stint["block"] - 1], stint)
    if len(movers) == 0:
        raise EngineError("no_work", 0)
    mark_limiting(movers)
    mark_heaviest(movers)
    for mover in movers:
        climb(mover, numbers, today)
    return movers


def add_mover(movers: list, workout: dict, block: dict, stint: dict):
    """Add a stint's movement, or its work to the mover that is already there."""
    entry = mapping("movement_unknown", workout["movements"].get(stint["movement"]))
    check_texts(entry)
    asked = stint["amount"] / (stint["max_steps"] * stint["step_units"])
    for mover in movers:
        if mover["movement"] == stint["movement"]:
            mover["demand"] = mover["demand"] + asked
            if outweighs(stint["load_kg"], mover["stint"]["load_kg"]):
                take_stint(mover, block, stint)
            return
    mover = {
        "movement": stint["movement"], "entry": entry, "demand": asked, "limiting": False, "heaviest": False, "care": "none",
        "ladder": [], "burst": None, "partner": None, "one_rep_max_kg": None, "ramp_reps": RAMP_REPS,
    }  # fmt: skip
    take_stint(mover, block, stint)
    movers.append(mover)


def take_stint(mover: dict, block: dict, stint: dict):
    """Set the block a mover warms up for, in place."""
    own_units = stint["step_units"] * units_per_block_unit(mover["entry"], stint["unit"])
    mover["block"] = block
    mover["stint"] = stint
    mover["max_units"] = 0.0 if stint["kind"] == "gate" else stint["max_steps"] * own_units
    mover["unit_s"] = stint["seconds"] / own_units


def outweighs(load_kg: float | None, than_kg: float | None) -> bool:
    """Is the first load more than the second, None being none?"""
    return load_kg is not None and (than_kg is None or load_kg > than_kg)


def mark_limiting(movers: list):
    """Mark the movement that will stop this athlete: a gate, else the one asked most of for what they can, breath last."""
    best = movers[0]
    for mover in movers:
        if limits_more(mover, best):
            best = mover
    best["limiting"] = True


def limits_more(mover: dict, other: dict) -> bool:
    """Does `mover` limit the athlete more than `other`, the earlier one?"""
    rank = limit_rank(mover)
    if rank != limit_rank(other):
        return rank > limit_rank(other)
    return mover["demand"] > other["demand"] * (1 + 1e-9)


def limit_rank(mover: dict) -> int:
    """Return 2 for a movement that cannot be done once, 0 for one limited by breath, 1 for all others."""
    if mover["stint"]["kind"] == "gate":
        return 2
    return 0 if mover["stint"]["kind"] == "paced" else 1


def mark_heaviest(movers: list):
    """Mark the movement with the heaviest load, all implements together, if any has one."""
    best = None
    for mover in movers:
        if mover["stint"]["load_kg"] is not None and mover["stint"]["load_kg"] > 0 and mover["entry"]["load_kind"] is not None:
            if best is None or carried_kg(mover) > carried_kg(best) + 1e-9:
                best = mover
    if best is not None:
        best["heaviest"] = True


def carried_kg(mover: dict) -> float:
    """Return the load of all implements of a mover together. [kg]"""
    count = mover["block"].get("implements")
    each_kg = mover["stint"]["load_kg"]
    return each_kg * (mover["entry"]["implements"] if count is None else number("implements_out_of_range", count, 1, 2))


def limiting_dose(max_units: float) -> int:
    """Return the reps a round of a limiting skill: min(4, max(1, floor(M/4))), chosen."""
    return int(clamp(max_units // LIMITING_DOSE_SHARE, 1, LIMITING_DOSE_MOST))


def climb(mover: dict, numbers: dict, today: dict):
    """Set a mover's care, ladder, burst and partner drill."""
    mover["care"] = care_of(mover, numbers, today)
    mover["one_rep_max_kg"] = one_rep_max_of(mover, numbers)
    mover["ramp_reps"] = RAMP_REPS - (REPEAT_REPS if today["slipped_s"] > SLIP_FOR_REPEAT_S else 0)
    entry = mover["entry"]
    ladder = rungs(mover, "build", mover["max_units"], False)
    bursts = rungs(mover, "burst", mover["max_units"], False)
    partnered = rungs(mover, "build", mover["max_units"], True)
    if mover["care"] == "none":
        mover["ladder"] = lower_first(ladder, mover, today)
        mover["burst"] = within_a_set(bursts[len(bursts) - 1], mover, today) if len(bursts) > 0 else None
        mover["partner"] = partnered[0] if len(partnered) > 0 else None
    elif mover["care"] == "sore":
        mover["ladder"] = [easier_rung(entry)] if HANGING in entry["loosen"] else spared(ladder, entry)
    elif mover["care"] == "upright":
        mover["ladder"] = rungs(mover, "build", 0, False)
    else:
        mover["ladder"] = [easier_rung(entry)]
    if len(mover["ladder"]) == 0:
        mover["ladder"] = [easier_rung(entry)]


def within_a_set(rung: dict, mover: dict, today: dict) -> dict:
    """Return a burst no longer than the largest set the athlete means to do: a rhythm that the heat will not have needs no rehearsal."""
    largest = today["largest_sets"].get(mover["movement"])
    if largest is None or rung["unit"] != "reps" or mover["block"].get("unit") != "reps" or largest >= rung["amount"]:
        return rung
    return {**rung, "amount": max(1, int(largest // 1))}


def care_of(mover: dict, numbers: dict, today: dict) -> str:
    """Return why a movement's own drills are not for this athlete in this room today, "none" where they are."""
    entry = mover["entry"]
    if is_sore_for(entry, today["sore"]):
        return "sore"
    if entry["inverted"] and numbers.get("inverted_ok") is False:
        return "upright"
    if not today["wall_free"] and needs(entry, mover["movement"], WALL_MOVEMENTS, ["wall", "wall target"]):
        return "no_wall"
    if not today["bar_free"] and needs(entry, mover["movement"], BAR_MOVEMENTS, ["pull-up bar"]):
        return "no_bar"
    return "none"


def is_sore_for(entry: dict, sore: list) -> bool:
    """Does a movement load what is sore: its groups taken together, or a shoulder held overhead?"""
    if "overhead" in sore and len([1 for position in OVERHEAD_POSITIONS if position in entry["loosen"]]) > 0:
        return True
    return sum([entry["shares"][group] for group in sorted(list(entry["shares"].keys())) if group in sore]) >= HEAVY_SHARE - 1e-9


def needs(entry: dict, movement: str, movements: list, equipment: list) -> bool:
    """Is the movement one of these, or does it ask for a piece of this equipment?"""
    own = listing("equipment_not_a_list", entry.get("equipment"))
    return movement in movements or len([piece for piece in equipment if piece in own]) > 0


def rungs(mover: dict, phase: str, max_units: float, partner: bool) -> list:
    """Return the rungs of a phase for somebody with this largest set, lowest first."""
    found = []
    for drill in mover["entry"]["drills"]:
        if drill["phase"] == phase and drill["partner"] == partner and covers_max(drill, max_units):
            found.append(rung_of(drill, mover))
    return found


def check_texts(entry: dict):
    """Raise EngineError unless an entry's drills, positions and equipment are lists of such."""
    for name in ["drills", "loosen", "equipment"]:
        if entry.get(name) is None:
            raise EngineError("movement_bad", 0)
    for drill in listing("drill_bad", entry.get("drills")):
        check_drill(drill)
    for name in ["loosen", "equipment"]:
        for text in listing("movement_bad", entry.get(name)):
            choice("movement_bad", text, [text])


def check_drill(drill):
    """Raise EngineError unless a drill is one, as a workout brings it."""
    mapping("drill_bad", drill)
    for key in ["name", "phase", "unit"]:
        if not isinstance(drill.get(key), str):
            raise EngineError("drill_bad", 0)
    if drill["unit"] not in ["reps", "m", "cal", "s"] or not isinstance(drill.get("partner"), bool):
        raise EngineError("drill_bad", 0)
    number("drill_bad", drill.get("amount"), 0.1, 5000)
    number("drill_bad", drill.get("from_max"), 0, 100000)
    optional("drill_bad", drill.get("to_max"), 0, 100000, 0.0)
    optional("drill_bad", drill.get("load_share"), 0, 1, 0.0)


def covers_max(drill: dict, max_units: float) -> bool:
    """Is the drill meant for this largest set? Bounds are whole and inclusive: 7.5 belongs to 7."""
    return drill["from_max"] <= max_units and (drill["to_max"] is None or max_units < drill["to_max"] + 1)


def rung_of(drill: dict, mover: dict) -> dict:
    """Return a drill as a rung, its amount within the doses."""
    entry = mover["entry"]
    unit = drill["unit"]
    share = drill["load_share"]
    amount = drill["amount"]
    full = drill["name"] == entry["name"] and (share is None or share > 1 - 1e-9)
    if unit == "reps" and share is not None:
        amount = dosed(amount, share)
    if unit == "reps" and share is None and amount > MOST_DRILL_REPS:
        unit = "s"  # skipping and hopping go by the clock: nobody counts them, and they are no ramp
        amount = in_steps(amount * mover["unit_s"])
    if unit == "s":
        amount = min(amount, LONGEST_HOLD_S)
    if unit == entry["unit"]:
        amount = short_enough(amount, unit, mover)
    if full and mover["limiting"] and unit == "reps" and share is None and mover["stint"]["kind"] != "paced":
        amount = limiting_dose(mover["max_units"]) if drill["phase"] == "build" else min(amount, limiting_dose(mover["max_units"]))
    return {"name": drill["name"], "amount": amount, "unit": unit, "share": ceiling_share(mover, share), "full": full, "low": False}


def short_enough(amount: float, unit: str, mover: dict) -> float:
    """Return an amount in the movement's own unit that lasts no longer than a drill should, and is a short stretch of the longest one."""
    if amount * mover["unit_s"] > LONGEST_WORK_S:
        amount = max(1, rounded(LONGEST_WORK_S / mover["unit_s"], 10 if unit == "m" and amount > 20 else 1))
    if unit != "reps" and mover["stint"]["kind"] != "paced" and mover["max_units"] >= 1:
        amount = min(amount, max(1, mover["max_units"] // STRETCH_SHARE))
    return amount


def dosed(amount: float, share: float) -> float:
    """Return the reps of a ramp set at this share of the working load, within its doses."""
    for dose in RAMP_DOSES:
        if share <= dose[0] + 1e-9:
            return clamp(amount, dose[1], dose[2])
    return amount


def ceiling_share(mover: dict, share: float | None) -> float | None:
    """Return a rung's share of the working load, kept to what one can lift where the working load is more than the one-rep max."""
    if share is None or mover["stint"]["kind"] != "gate" or mover["stint"]["load_kg"] is None:
        return share
    heaviest_kg = mover["one_rep_max_kg"]
    if heaviest_kg is None or mover["stint"]["load_kg"] <= 0:
        return min(share, TOO_HEAVY_UNKNOWN)
    return min(share, TOO_HEAVY_SHARE * heaviest_kg / mover["stint"]["load_kg"])


def one_rep_max_of(mover: dict, numbers: dict) -> float | None:
    """Return the one-rep max the athlete gave for a mover. [kg]"""
    given = of_movement(numbers, mover["movement"]).get("one_rep_max_kg")
    return None if given is None else number("one_rep_max_out_of_range", given, 1, 600)


def spared(ladder: list, entry: dict) -> list:
    """Return what is left of a ladder for a sore part: its lowest rung, and never more than a light load."""
    if len(ladder) == 0 or ladder[0]["full"]:
        return [easier_rung(entry)]
    lowest = ladder[0]
    share = lowest["share"]
    return [{**lowest, "share": None if share is None else min(share, SORE_SHARE), "amount": min(lowest["amount"], EASIER_REPS)}]


def lower_first(ladder: list, mover: dict, today: dict) -> list:
    """Return the ladder with the first rung on a lower box, twice for people prone to strains."""
    boxed = "box" in listing("equipment_not_a_list", mover["entry"].get("equipment"))
    if not boxed or len(ladder) == 0:
        return ladder
    low = {**ladder[0], "low": True, "full": False}
    rest = ladder if ladder[0]["full"] else ladder[1:]
    return ([low, low] if today["strain_prone"] else [low]) + rest


def easier_rung(entry: dict) -> dict:
    """Return the first easier form that needs neither wall nor bar, as a rung; general moves where the library has none."""
    for form in listing("easier_not_a_list", entry.get("easier")):
        movement = mapping("easier_bad", form).get("movement")
        if movement is not None and movement not in BAR_MOVEMENTS and movement not in WALL_MOVEMENTS:
            held = movement == "plank"
            return {
                "name": form.get("name"), "amount": EASIER_HOLD_S if held else EASIER_REPS, "unit": "s" if held else "reps",
                "share": None, "full": False, "low": False,
            }  # fmt: skip
    return {"name": None, "amount": EASIER_HOLD_S, "unit": "s", "share": None, "full": False, "low": False}
