"""Which option: every option's plan side by side, and which promises most. It advises; the athlete chooses."""

import math

from .asked import entry_of
from .checks import listing, mapping, optional
from .errors import EngineError
from .parameters import MUCH_DONE
from .planner import part_of, plan
from .score import full_count


def options(workout: dict, numbers: dict, settings: dict) -> dict:
    """Return every option's expected standing for an athlete, with advice.

    Parameters
    ----------
    workout, numbers, settings : as in `plan`; the settings' option is left aside. `just_for_me` in the settings: no ranking counts.

    Returns
    -------
    dict : as `advise` has it.
    """
    given = listing("options_not_a_list", first_part(workout).get("options"))
    keys = [mapping("option_not_a_mapping", option).get("key") for option in given]
    if len(keys) == 0:
        raise EngineError("no_options", 0)
    wanted = mapping("settings_not_a_mapping", settings)
    return advise(workout, [plan(workout, numbers, {**wanted, "option": key}) for key in keys], wanted.get("just_for_me") is True)


def first_part(workout) -> dict:
    """Return the workout, the first part of one in parts."""
    given = mapping("workout_not_a_mapping", workout)
    parts = listing("parts_not_a_list", given.get("parts"))
    return given if len(parts) == 0 else mapping("part_not_a_mapping", parts[0])


def advise(workout: dict, plans: list, just_for_me: bool) -> dict:
    """Return what every option promises and which to take, from plans already made, one for each option in the workout's order.

    Returns
    -------
    dict : options, one mapping each with option, score (None for parts), gate (movement that cannot be done there, None for none),
    counts (does anything count), done_fraction (share of its work done [0–1]); rule, the ranking that holds: `ranking_just_for_me`,
    `ranking_separate`, `ranking_prescribed_first`, `ranking_unsaid`; advice, a mapping with code, option, movement, done_fraction;
    training, the option that trains most where that is another one, else None; third, where every option is a gate: for each block
    that cannot be done in the last option an easier form of similar dose.

    Notes
    -----
    Ranking "prescribed_first", taken where nothing is said, puts everybody on the first option above everybody on another; with "separate" each
    option has a ranking of its own, where the share done is the best guess at a place. Just for oneself the better training is what counts:
    the hardest option one gets most of done, without standing before a gate.
    """
    if len(listing("options_not_a_list", plans)) == 0:
        raise EngineError("no_options", 0)
    asked = mapping("workout_not_a_mapping", workout)
    made = [standing(asked, mapping("plan_not_a_plan", one)) for one in plans]
    rule = rule_of(first_part(asked).get("ranking") if asked.get("ranking") is None else asked.get("ranking"), just_for_me)
    best = best_of(made)
    counsel = advice(made, rule, best)
    gated = [one for one in made if one["gate"] is not None]
    return {
        "options": made,
        "rule": rule,
        "advice": counsel,
        "training": best["option"] if best["gate"] is None and best["option"] != counsel["option"] else None,
        "third": third_way(workout, plans[len(plans) - 1]) if len(gated) == len(made) else [],
    }


def rule_of(ranking, just_for_me: bool) -> str:
    """Return the rule by which options are compared."""
    if just_for_me:
        return "ranking_just_for_me"
    if ranking == "separate":
        return "ranking_separate"
    return "ranking_prescribed_first" if ranking == "prescribed_first" else "ranking_unsaid"


def standing(workout: dict, made: dict) -> dict:
    """Return what an option's plan promises; a workout in parts what its parts promise together."""
    if made.get("parts") is not None:
        parts = [standing(part_of(workout, part), made["parts"][index]) for index, part in enumerate(parts_of(workout, made))]
        gates = [part["gate"] for part in parts if part["gate"] is not None]
        return {
            "option": parts[0]["option"],
            "score": None,
            "gate": gates[0] if len(gates) > 0 else None,
            "counts": len([1 for part in parts if part["counts"]]) > 0,
            "done_fraction": sum([part["done_fraction"] for part in parts]) / len(parts),
        }
    score = made["score"]
    gates = gates_of(made)
    gate = gates[0]["movement"] if len(gates) > 0 else None
    counts = score["likely_count"] > 0 if score["kind"] == "rounds" else score["likely"] > 0
    return {"option": made["option"], "score": score, "gate": gate, "counts": counts, "done_fraction": done_fraction(workout, made, gate)}


def parts_of(workout: dict, made: dict) -> list:
    """Return the parts of a workout that a plan in parts was made for."""
    parts = listing("parts_not_a_list", workout.get("parts"))
    if len(parts) == 0 or len(parts) != len(listing("plan_not_a_plan", made["parts"])):
        raise EngineError("plan_not_a_plan", len(parts))
    return parts


def done_fraction(workout: dict, made: dict, gate) -> float:
    """Return what share of an option's work gets done; with most rounds in a time what share of a round before a gate. [0–1]"""
    score = made["score"]
    if score["kind"] == "load":
        return 1.0 if score["likely"] > 0 else 0.0
    if score["kind"] == "rounds":
        in_round = full_count([stint for stint in made["basis"]["stints"] if stint["round"] == 1], workout)
        return 1.0 if gate is None else min(1.0, score["likely_count"] / max(1, in_round))
    if score["finishes"]:
        return 1.0
    return min(1.0, score["likely"] / max(1, score["count_in_all"]))


def much_done(one: dict) -> bool:
    """Does the athlete get through the option, or through most of what it counts?"""
    return one["gate"] is None and one["done_fraction"] >= MUCH_DONE


def best_of(made: list) -> dict:
    """Return the option that gives most to do: the first, as the hardest, one gets most of done; else the one with most of it done."""
    for one in made:
        if much_done(one):
            return one
    best = made[0]
    for one in made:
        if best["gate"] is not None and one["gate"] is None:
            best = one
        elif (best["gate"] is None) == (one["gate"] is None) and one["done_fraction"] > best["done_fraction"] + 1e-9:
            best = one
    return best


def advice(made: list, rule: str, best: dict) -> dict:
    """Return which option promises most by a rule."""
    first = made[0]
    if len(made) == 1:
        return advised("option_only", first)
    if much_done(first):
        return advised("option_prescribed_all" if first["done_fraction"] > 1 - 1e-9 else "option_prescribed", first)
    if rule == "ranking_just_for_me":
        return advised("option_trains", best)
    if rule == "ranking_separate":
        return advised("option_scaled", best)
    if not first["counts"]:
        counting = [one for one in made if one["counts"]]
        return {**advised("option_nothing_counts", counting[0] if len(counting) > 0 else best), "movement": first["gate"]}
    return advised("option_prescribed_ranks" if first["gate"] is None else "option_prescribed_gate", first)


def advised(code: str, one: dict) -> dict:
    """Return a piece of advice."""
    return {"code": code, "option": one["option"], "movement": one["gate"], "done_fraction": one["done_fraction"]}


def third_way(workout: dict, made: dict) -> list:
    """Return an easier form, of similar dose, for every block of an option that the athlete cannot do: the library's first."""
    if made.get("parts") is not None:
        ways = []
        for index, part in enumerate(parts_of(workout, made)):
            ways = ways + third_way(part_of(workout, part), made["parts"][index])
        return ways
    ways = []
    seen = []
    for stint in gates_of(made):
        if stint["movement"] in seen:
            continue
        seen.append(stint["movement"])
        easier = listing("easier_not_a_list", entry_of(workout, stint["movement"]).get("easier"))
        if len(easier) > 0:
            form = mapping("easier_bad", easier[0])
            dose = optional("easier_bad", form.get("dose"), 0, 100, 1.0)
            amount = max(1, int(math.floor(stint["amount"] * dose + 0.5)))
            ways.append({"movement": stint["movement"], "amount": stint["amount"], "unit": stint["unit"], "easier": form["name"], "easier_amount": amount})
    return ways


def gates_of(made: dict) -> list:
    """Return the stints of a plan that cannot be done."""
    return [] if made["score"]["kind"] == "load" else [stint for stint in made["basis"]["stints"] if stint["kind"] == "gate"]
