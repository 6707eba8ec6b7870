"""plan(): a workout, an athlete's numbers and today's settings in, the athlete's plan out.

The order of the work: stints (`stints`), their break-ups for a capacity that leaves the chosen risk of failing (`whole`), what
happens to people who could be this athlete (`draws`), and the report (`report`). Where the cap comes first the workout is planned to
where it will end.
"""

import math

from .checks import choice, mapping, number, whole_number
from .draws import draw_people, fail_share, outcomes
from .errors import EngineError
from .parameters import CAUTION, FAIL_RISK, GAIN_AS_CAPACITY, RECOVERY_SD, STYLES
from .lungs import lungs_of
from .report import report
from .reserve import slow_gain
from .search import trimmed
from .stints import division_of, make_stints, option_of
from .whole import LONGEST_S, Start, at_rest, break_up_all, break_up_stint, live_through


def settings_of(settings) -> dict:
    """Return the settings that planning needs, checked, with defaults filled in."""
    given = mapping("settings_not_a_mapping", settings)
    form = 1.0 if given.get("form") is None else number("form_out_of_range", given.get("form"), 0.5, 1.5)
    seed = 1 if given.get("seed") is None else whole_number("seed_out_of_range", given.get("seed"), 0, 1000000)
    style = "steady" if given.get("style") is None else choice("style_unknown", given.get("style"), STYLES)
    return {"form": form, "seed": seed, "style": style, "option": given.get("option"), "division": given.get("division")}


def cap_of(workout: dict, option: dict) -> float | None:
    """Return the time cap of an option, None without one. [s]"""
    cap_s = workout.get("cap_s") if option.get("cap_s") is None else option.get("cap_s")
    return None if cap_s is None else number("cap_out_of_range", cap_s, 1, 6 * 3600)


def gain_from(numbers: dict) -> float:
    """Return the athlete's own g from the repeat test of any movement, the mean over those tested, or the population's."""
    movements = mapping("numbers_not_a_mapping", numbers.get("movements"))
    gains = []
    for movement in sorted(list(movements.keys())):
        given = mapping("numbers_not_a_mapping", movements[movement])
        if given.get("repeat_test") is not None and given.get("max_unbroken") is not None:
            first = number("max_unbroken_out_of_range", given.get("max_unbroken"), 0, 20000)
            again = number("repeat_test_out_of_range", given.get("repeat_test"), 0, 20000)
            if first >= 1:
                gains.append(slow_gain([min(first, 1000.0), min(again, 1000.0)], 2.0))
    return sum(gains) / len(gains) if len(gains) > 0 else slow_gain(None, 2.0)


def factors_for(stints: list, z: float) -> list[float]:
    """Return the capacity to plan for, one per stint: `z` standard deviations of its doubt below what was given."""
    doubt = GAIN_AS_CAPACITY * RECOVERY_SD
    return [math.exp(-z * math.sqrt(stint["sd"] * stint["sd"] + doubt * doubt)) for stint in stints]


def lay_out(stints: list, factors: list[float], gain: float, cap_s: float | None, hints: list, start: Start) -> dict:
    """Return stints and break-ups planned for these shares of the numbers, up to where the cap or a gate ends it.

    Returns
    -------
    dict : stints, the last one shortened to what goes before the cap; breakups; capped, whether anything was cut off;
    whole, the break-ups before cutting, hints for the next; factors, as given.
    """
    made = break_up_all(stints, factors, gain, hints, start)
    layout = {"stints": stints, "breakups": made["breakups"], "capped": False, "whole": made["breakups"], "factors": factors}
    if cap_s is None:
        return layout
    end = as_given(stints, made["breakups"], gain, cap_s, start)
    if end["finished"] or at_gate(stints, end):
        return layout
    return {**layout, **up_to_cap(stints, made, factors, gain, cap_s, start)}


def at_gate(stints: list, result: dict) -> bool:
    """Did it end at a movement that cannot be done?"""
    begun = len(result["done"])
    return begun < len(stints) and stints[begun]["kind"] == "gate" and (begun == 0 or result["done"][begun - 1] == stints[begun - 1]["steps"])


def as_given(stints: list, breakups: list, gain: float, until_s: float, start: Start) -> dict:
    """Return how the plan goes for the athlete exactly as the numbers say."""
    ones = [1.0] * len(stints)
    return live_through(stints, breakups, ones, ones, gain, until_s, start)


def up_to_cap(stints: list, made: dict, factors: list[float], gain: float, cap_s: float, start: Start) -> dict:
    """Return the layout that gets furthest by the cap: the last stint is planned for just what fits, so it may end on a larger set."""
    end = as_given(stints, made["breakups"], gain, cap_s, start)
    last = max(0, len(end["done"]) - 1)
    low = 1 if len(end["done"]) == 0 else max(1, end["done"][last])
    best = shortened(stints, made["breakups"], last, low)
    if stints[last]["kind"] != "local":
        return best
    high = min(stints[last]["steps"], low + max(3, low // 3))
    while low < high:
        middle = (low + high + 1) // 2
        stint = {**stints[last], "steps": middle}
        breakup = break_up_stint(made["states"][last], stint, factors[last], gain, 0.0, cut_hint(made["breakups"][last], stint))
        breakups = [] + made["breakups"][:last] + [breakup]
        cut = {"stints": [] + stints[:last] + [stint], "breakups": breakups, "capped": True}
        if as_given(cut["stints"], breakups, gain, cap_s, start)["finished"]:
            low = middle
            best = cut
        else:
            high = middle - 1
    return best


def cut_hint(breakup: dict, stint: dict) -> list:
    """Return a break-up's flat plan cut down to what is left of its stint, as a list of hints."""
    if len(breakup["plan"]) == 0:
        return []
    return [trimmed(breakup["plan"], math.ceil(stint["steps"] / stint["piece_steps"] - 1e-9))]


def shortened(stints: list, breakups: list, last: int, steps: int) -> dict:
    """Return the layout cut off after `steps` of the stint `last`, its break-up cut as it stands."""
    sets = []
    left = steps
    for count in breakups[last]["sets"]:
        if left > 0:
            sets.append(min(left, count))
            left = left - count
    breakup = {**breakups[last], "sets": sets, "rests_s": breakups[last]["rests_s"][: max(0, len(sets) - 1)], "plan": []}
    cut = {**stints[last], "steps": steps}
    return {"stints": [] + stints[:last] + [cut], "breakups": [] + breakups[:last] + [breakup], "capped": True}


def candidates(stints: list, style: str, people: list, gain: float, cap_s: float | None) -> list:
    """Return layouts of different caution, each with what happens to `people`; the least caution the style allows is among them.

    The share of people who fail falls with caution, so the ladder of cautions is bisected; each layout starts from the one before.
    """
    found = []
    hints = []
    low = 0
    high = len(CAUTION) - 1
    while low <= high:
        middle = (low + high) // 2
        layout = lay_out(stints, factors_for(stints, CAUTION[middle]), gain, cap_s, hints, at_rest())
        layout["caution"] = CAUTION[middle]
        layout["results"] = outcomes(layout["stints"], layout["breakups"], people, cap_s)
        layout["risk"] = fail_share(layout["results"])
        layout["expected"] = expected(stints, layout["results"])
        found.append(layout)
        hints = layout["whole"]
        if layout["risk"] <= FAIL_RISK[style] + 1e-9:
            high = middle - 1
        else:
            low = middle + 1
    return found


def expected(stints: list, results: list) -> float:
    """Return what a layout costs over the draws: the mean time, with the bare work left undone where it did not get done. [s]"""
    total = 0.0
    for result in results:
        total = total + result["seconds"]
        for index in range(len(stints)):
            done = result["done"][index] if index < len(result["done"]) else 0
            total = total + (stints[index]["steps"] - done) * stints[index]["seconds"]
    return total / len(results)


def chosen(layouts: list, style: str) -> dict:
    """Return the layout with the least expected time among those whose risk the style allows, else the least risky."""
    allowed = [layout for layout in layouts if layout["risk"] <= FAIL_RISK[style] + 1e-9]
    if len(allowed) == 0:
        return min(layouts, key=lambda layout: layout["risk"])
    return min(allowed, key=lambda layout: layout["expected"])


def seconds_per_caution(layouts: list, stints: list, gain: float) -> float:
    """Return how much longer the whole workout takes for a plan one standard deviation more careful, 0 or more. [s]"""
    careful = max(layouts, key=lambda layout: layout["caution"])
    daring = min(layouts, key=lambda layout: layout["caution"])
    if careful["caution"] - daring["caution"] < 0.1:
        return 0.0
    slower = as_given(stints, careful["whole"], gain, LONGEST_S, at_rest())["seconds"]
    quicker = as_given(stints, daring["whole"], gain, LONGEST_S, at_rest())["seconds"]
    return max(0.0, (slower - quicker) / (careful["caution"] - daring["caution"]))


def feel(people: list, stints: list, layout: dict, seconds: float):
    """Give everybody the time they gain or lose by going as they feel: who is a deviation stronger follows a plan that much more daring.

    How strong somebody is counts where the plan spends its time on sets, in place.
    """
    doubt = GAIN_AS_CAPACITY * RECOVERY_SD
    for person in people:
        strength = 0.0
        weight = 0.0
        for index in range(len(layout["breakups"])):
            stint = stints[index]
            rests_s = sum(layout["breakups"][index]["rests_s"])
            deviation = math.sqrt(stint["sd"] * stint["sd"] + doubt * doubt)
            if rests_s > 0:
                strength = strength + rests_s * math.log(person["factors"][index]) / deviation
                weight = weight + rests_s
        person["ahead_s"] = seconds * strength / weight if weight > 0 else 0.0


def plan(workout: dict, numbers: dict, settings: dict) -> dict:
    """Return the athlete's plan.

    Parameters
    ----------
    workout, numbers, settings : as DEVELOPERS.md, "Shapes", has them. Seconds, metres, kilograms.

    Returns
    -------
    dict : blocks, score, reserve_curve, reasons, warnings, filled, and what a re-plan needs; see DEVELOPERS.md, "Shapes".

    Raises
    ------
    EngineError : with a code and the offending value, for anything it cannot plan.
    """
    if mapping("workout_not_a_mapping", workout).get("shape") != "for_time":
        raise EngineError("shape_unknown", workout.get("shape"))
    mapping("numbers_not_a_mapping", numbers)
    wanted = settings_of(settings)
    option = option_of(workout, wanted["option"])
    division = division_of(workout, wanted["division"])
    cap_s = cap_of(workout, option)
    gain = gain_from(numbers)
    stints = make_stints(workout, option, division, numbers, wanted["form"], gain, lungs_of(numbers))
    people = draw_people(stints, wanted["seed"], gain)
    layouts = candidates(stints, wanted["style"], people, gain, cap_s)
    layout = chosen(layouts, wanted["style"])
    feel(people, stints, layout, seconds_per_caution(layouts, stints, gain))
    layout["felt"] = outcomes(layout["stints"], layout["breakups"], people, cap_s)
    likely = as_given(layout["stints"], layout["breakups"], gain, LONGEST_S if cap_s is None else cap_s, at_rest())
    return report(workout, option, stints, layout, whole_result(stints, layout, likely), gain, cap_s, wanted)


def whole_result(stints: list, layout: dict, result: dict) -> dict:
    """Return a result of a shortened layout as one of the whole workout: not finished where the layout was cut."""
    return {**result, "finished": result["finished"] and not layout["capped"]}
