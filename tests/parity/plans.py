"""Plans to judge, to follow and to learn from: a few made once, then varied."""

import copy
import functools
import random

from parity.shapes import SHAPES
from parity.workouts import numbers_for, settings_for, workout

from webapp import quick_engine
from webapp.engine import EngineError

EACH = 4  # plans of every shape; chosen: enough to meet every mode, few enough to make once
PLANS = EACH * (len(SHAPES) + 1)  # and as many of any shape and size


def made_plan(rng):
    """One of the plans, with the workout, numbers and settings it was made for; free to be changed."""
    return copy.deepcopy(_plan(rng.randrange(PLANS)))


def _planned(made, numbers, settings):
    """A plan to begin from, None where there is none: by V8, being sooner; whether both engines make the same is asked by the cases of `plan`."""
    try:
        return quick_engine.plan(made, numbers, settings)
    except EngineError:
        return None


@functools.cache
def _plan(number):
    """The first plan that can be made after seed `number`; one that cannot is a matter for the cases of `plan`."""
    rng = random.Random(number)
    name = [*SHAPES, "any"][number // EACH]
    while True:
        made, numbers = SHAPES[name](rng) if name in SHAPES else any_workout(rng)
        asked = {"workout": made, "numbers": numbers, "settings": settings_for(rng, made)}
        plan = _planned(*asked.values())
        if plan is not None:
            return {"shape": name} | asked | {"plan": plan}


def made_whole(rng):
    """One of the plans that is not in parts."""
    made = made_plan(rng)
    return made_whole(rng) if "parts" in made["plan"] else made


def any_workout(rng):
    """A workout of any shape and size, and an athlete."""
    made = workout(rng)
    return made, numbers_for(rng, made)


def own_blocks(rng, plan):
    """Break-ups of the athlete's own: the plan's with other rests, one set split or moved, some left out."""
    own = [_own_block(rng, block) for block in plan.get("blocks", [])]
    return own[: rng.randint(0, len(own))] if rng.random() < 0.2 else own


def own_for(rng, plan):
    """What of one's own goes with a plan: attempts with other loads and rests, or sets."""
    if "parts" in plan:
        return [own_for(rng, part) for part in plan["parts"]]
    if "attempts" not in plan:
        return own_blocks(rng, plan)
    return [{"load_kg": max(1, one["load_kg"] + rng.choice([0, 0, -2.5, 5])), "rest_s": rng.choice([30, one["rest_s"], 240])} for one in plan["attempts"]]


def parts_judged(rng):
    """Arguments of `judge` for two plans as the parts of one workout, for the athlete of the first."""
    made = [made_whole(rng), made_whole(rng)]
    parts = [{key: value for key, value in each["workout"].items() if key not in ("divisions", "lane")} for each in made]
    option = {**made[0]["settings"], "option": None}
    return [{**made[0]["workout"], "parts": parts}, made[0]["numbers"], option, [own_for(rng, each["plan"]) for each in made]]


def side_by_side(rng):
    """A workout and the plans of those of its options that can be planned, or now and then of none."""
    made = made_whole(rng)
    asked = [{**made["settings"], "option": option["key"]} for option in made["workout"]["options"]]
    answers = [_planned(made["workout"], made["numbers"], settings) for settings in asked]
    ranking = rng.choice(["prescribed_first", "separate", None])
    plans = [answer for answer in answers if answer is not None]
    return made["shape"], [{**made["workout"], "ranking": ranking}, plans if rng.random() < 0.95 else []]


def _own_block(rng, block):
    sets, rests = list(block["sets"]), [max(0, rest_s + rng.choice([0, 0, -2, 3, 10])) for rest_s in block["rests_s"]]
    if rng.random() < 0.15 or not sets:
        return None
    if rng.random() < 0.3 and len(sets) > 1:
        sets[0], sets[-1] = sets[0] + sets[-1], 0
        sets, rests = sets[:-1], rests[:-1]
    elif rng.random() < 0.3 and sets[0] > 1:
        sets, rests = [sets[0] - 1, 1, *sets[1:]], [rng.choice([5, 12]), *rests]
    kept = {"cadence": rng.choice([0.94, 1.0, 1.12]), "lead_s": block["lead_s"]} if rng.random() < 0.5 else {}
    return {"sets": sets, "rests_s": rests, **kept}


def taps(rng, plan):
    """Events up to some moment of the heat, and that moment."""
    pace, events, clock_s = rng.uniform(0.8, 1.4), [], 0.0
    for block in plan.get("blocks", [])[: rng.randint(0, len(plan.get("blocks", [])))]:
        if block["end_s"] is None:
            break
        if rng.random() < 0.4:
            events += _sets_of(rng, block, pace)
        clock_s = block["end_s"] * pace
        events.append({"at_s": clock_s, "kind": "block"})
    last = events[-1]["at_s"] if events else 0.0
    return events, last + rng.choice([0, 0, 1.5, 20])


def _sets_of(rng, block, pace):
    """Taps for the first sets of a block."""
    starts = block["set_starts_s"]
    done = rng.randint(0, len(starts) - 1) if starts else 0
    return [{"at_s": starts[index + 1] * pace, "kind": "set", "reps": block["sets"][index]} for index in range(done)]


def following(rng, plan):
    """A result: when each block was done, and where a repetition failed."""
    pace = rng.uniform(0.75, 1.5)
    ends = [block["end_s"] * pace for block in plan.get("blocks", []) if block["end_s"] is not None]
    ends = sorted(end_s * rng.uniform(0.95, 1.05) for end_s in ends)
    result = {"plan": plan, "ends_s": ends[: rng.randint(0, len(ends))] if rng.random() < 0.3 else ends}
    if ends and rng.random() < 0.4:
        result["failed"] = [rng.randrange(len(plan["blocks"]))]
    return result
