"""Which option: every option's plan side by side, and which promises most. It advises; the athlete chooses."""

from .checks import listing, mapping
from .errors import EngineError
from .parameters import MUCH_DONE
from .planner import plan


def options(workout: dict, numbers: dict, settings: dict) -> dict:
    """Return every option's expected standing for an athlete, with advice.

    Parameters
    ----------
    workout, numbers, settings : as in `plan`; the settings' option is left aside.

    Returns
    -------
    dict : options, one mapping each with option, score, gate (movement that cannot be done there, None for none); advice, a mapping with
    code and option: `option_prescribed`, `option_prescribed_ranks` (it counts above every scaled score, but scaled trains more),
    `option_scaled`, `option_only`.

    Notes
    -----
    Ranking "prescribed_first", taken where nothing is said, puts everybody on the first option above everybody on another; with "separate" each
    option has a ranking of its own.
    """
    given = listing("options_not_a_list", mapping("workout_not_a_mapping", workout).get("options"))
    keys = [mapping("option_not_a_mapping", option).get("key") for option in given]
    if len(keys) == 0:
        raise EngineError("no_options", 0)
    made = [standing(plan(workout, numbers, {**settings, "option": key})) for key in keys]
    return {"options": made, "advice": advice(made, workout.get("ranking"))}


def standing(made: dict) -> dict:
    """Return what an option's plan promises."""
    gates = [reason["movement"] for reason in made["reasons"] if reason["code"] == "hurry_to_gate"]
    return {"option": made["option"], "score": made["score"], "gate": gates[0] if len(gates) > 0 else None}


def much_done(one: dict) -> bool:
    """Does the athlete get through the option, or through most of what it counts?"""
    score = one["score"]
    if score["finishes"] or score.get("count_in_all") is None:
        return True
    return score["likely"] >= MUCH_DONE * score["count_in_all"] and one["gate"] is None


def advice(made: list, ranking) -> dict:
    """Return which option promises most."""
    first = made[0]
    if len(made) == 1:
        return {"code": "option_only", "option": first["option"]}
    if much_done(first):
        return {"code": "option_prescribed", "option": first["option"]}
    if ranking == "separate":
        return {"code": "option_scaled", "option": made[1]["option"]}
    return {"code": "option_prescribed_ranks", "option": first["option"]}
