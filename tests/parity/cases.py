"""Seeded random cases for the engine: ordinary ones, odd ones, and some that must be refused.

`cases(rng, count, functions)` yields mappings with `call`, the name of a public function, `arguments`, in the order in which the phone takes
them (keyword-only ones after the others), and the name of the workout's `shape`, None where there is no workout. Each generator in
`GENERATORS` makes shape and arguments of one function.
"""

from parity.plans import any_workout, following, made_plan, own_for, parts_judged, side_by_side, taps
from parity.shapes import drawn
from parity.workouts import any_of, settings_for

HUGE = [1e6, 1e9, 2**31, 1e300]
WRONG = [None, -1, 0, "12", "", [], {}, True, *HUGE]  # in the place of a number
SPOILED_SHARE = 0.1  # cases with something wrong in them; chosen
ANY_SHARE = 0.08  # workouts of any size; the others are small and of a named shape; chosen: large ones take most of the time


def cases(rng, count, functions):
    """Yield `count` cases for those of `functions` that have a generator, drawn by weight."""
    names = [name for name in GENERATORS if name in functions]
    weights = [GENERATORS[name][0] for name in names]
    for _ in range(count):
        name = rng.choices(names, weights)[0]
        made_shape, arguments = GENERATORS[name][1](rng)
        yield {"call": name, "shape": made_shape, "arguments": arguments}


def _maximum(rng):
    return any_of(rng, [rng.randint(1, 40), round(rng.uniform(1, 60), 1), rng.choice([1, 2, 3, 4, 8])], [5, 3, 2])


def _recovery(rng, maximum):
    if rng.random() < 0.7:
        return None
    return {"repeat_test": [maximum, rng.randint(0, 1 + int(maximum))] if rng.random() < 0.9 else rng.choice(WRONG)}


def _spoiled(rng, arguments, share=SPOILED_SHARE):
    """The arguments, or the arguments with one of them wrong."""
    if rng.random() < share:
        arguments[rng.randrange(len(arguments))] = rng.choice(WRONG)
    return arguments


def reps_over_sets(rng):
    """Arguments of `reps_over_sets`."""
    maximum = _maximum(rng)
    cap = rng.choice([None, None, rng.randint(1, 30)])
    pace, rest_s = rng.choice([1, 2.5, 3]), rng.choice([0, 20, 60, 180, 600])
    return None, _spoiled(rng, [maximum, pace, rest_s, rng.randint(1, 6), cap, _recovery(rng, maximum)])


def break_up(rng):
    """Arguments of `break_up`."""
    maximum = _maximum(rng)
    reps = rng.choice([rng.randint(1, 40), max(1, int(maximum)), max(1, int(2.5 * maximum))])
    pace, set_up = round(rng.uniform(0.8, 5), 1), rng.choice([0, 2, 4, 7.5])
    held_back = rng.choice([0, 0.05, 0.15, 0.25, 0.6])
    arguments = [maximum, min(reps, 60), pace, set_up, rng.choice([0, 0.4, 1]), held_back, _recovery(rng, maximum)]
    return None, _spoiled(rng, arguments)[: rng.choice([3, 4, 7, 7, 7])]


def judge_break_up(rng):
    """Arguments of `judge_break_up`."""
    maximum = _maximum(rng)
    sets = [rng.randint(1, max(1, int(maximum))) for _ in range(rng.randint(1, 12))]
    rests = [rng.choice([4, 5, 8, 10, 20, 45, 7.5]) for _ in range(len(sets) - 1 if rng.random() < 0.95 else len(sets))]
    pace = round(rng.uniform(0.8, 5), 1)
    arguments = [maximum, sets, rests, pace, rng.choice([0, 3, 4]), rng.choice([0, 0.4, 1]), _recovery(rng, maximum)]
    return None, _spoiled(rng, arguments)[: rng.choice([4, 5, 7])]


def _spoiled_inside(rng, arguments):
    """The arguments, or the arguments with something wrong somewhere in them, the library's entries left alone."""
    if rng.random() < SPOILED_SHARE and any(isinstance(argument, (dict, list)) and argument for argument in arguments):
        place = rng.choice([argument for argument in arguments if isinstance(argument, (dict, list)) and argument])
        for _ in range(rng.randint(0, 5)):
            inner = [place[key] for key in _keys(place) if isinstance(place[key], (dict, list)) and place[key]]
            place = rng.choice(inner) if inner else place
        place[rng.choice(_keys(place))] = rng.choice(WRONG)
    return arguments


def _keys(place):
    """Keys or indices of a dict or list; not those of a workout that lead to the library's entries."""
    if isinstance(place, list):
        return list(range(len(place)))
    return [key for key in sorted(place) if not (key == "movements" and "schema" in place)]


def asked(rng):
    """The name of a shape, a workout and an athlete."""
    return ("any", *any_workout(rng)) if rng.random() < ANY_SHARE else drawn(rng)


def of_athlete(rng):
    """Arguments of whatever takes a workout, an athlete's numbers and settings."""
    name, made, numbers = asked(rng)
    return name, _spoiled_inside(rng, [made, numbers, settings_for(rng, made)])


def questions(rng):
    """Arguments of `questions`: the same in another order."""
    name, (made, numbers, settings) = of_athlete(rng)
    return name, [made, settings, numbers]


def class_table(rng):
    """Arguments of `class_table`."""
    name, made, _numbers = drawn(rng)
    return name, [made, made["options"][0]["key"], rng.choice(["a", "b"])]


def judge(rng):
    """Arguments of `judge`: the plan's own sets or attempts, or others; now and then of a workout in parts."""
    if rng.random() < 0.1:
        return "parts", _spoiled_inside(rng, parts_judged(rng))
    made = made_plan(rng)
    return made["shape"], _spoiled_inside(rng, [made["workout"], made["numbers"], made["settings"], own_for(rng, made["plan"])])


def who_fails(rng):
    """Arguments of `who_fails`: the plan's own sets, or others."""
    made = made_plan(rng)
    return made["shape"], _spoiled_inside(rng, [made["workout"], made["numbers"], made["settings"], own_for(rng, made["plan"])])


def advise(rng):
    """Arguments of `advise`: what every option of a workout brings."""
    name, arguments = side_by_side(rng)
    return name, [*arguments, rng.random() < 0.3]


def replan(rng):
    """Arguments of `replan`: some way into a plan, ahead of it or behind."""
    made = made_plan(rng)
    events, now_s = taps(rng, made["plan"])
    return made["shape"], [made["plan"], *_spoiled_inside(rng, [events, now_s])] if events else [made["plan"], events, now_s]


def learn(rng):
    """Arguments of `learn`: the plan was followed, quicker or slower, failing or not."""
    made = made_plan(rng)
    return made["shape"], [made["numbers"], following(rng, made["plan"])]


# Share of the cases, and the generator. The heavy ones come less often.
GENERATORS = {
    "plan": (8, of_athlete),
    "options": (1.5, of_athlete),
    "advise": (1.5, advise),
    "warm_up": (6, of_athlete),
    "questions": (8, questions),
    "class_table": (0.3, class_table),
    "judge": (14, judge),
    "who_fails": (3, who_fails),
    "replan": (14, replan),
    "learn": (1.5, learn),
    "break_up": (8, break_up),
    "judge_break_up": (14, judge_break_up),
    "reps_over_sets": (12, reps_over_sets),
}
