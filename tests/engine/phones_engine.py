"""The engine's doors as the phones have them, asked in V8: the same answers, several times as soon.

For what holds of whole answers, over many workouts. The parity test holds the two engines together, in thousands of cases; the tests of the
engine's own parts, of what JSON cannot say and of time taken ask `webapp.engine` itself.
"""

import inspect

from webapp import engine, quick_engine


def _door(name):
    """One of the engine's functions, called as its Python twin is."""
    takes = inspect.signature(getattr(engine, name))

    def ask(*given, **more):
        bound = takes.bind(*given, **more)
        bound.apply_defaults()
        return quick_engine.ask(name, *bound.arguments.values())

    return ask


plan, judge, learn, questions = _door("plan"), _door("judge"), _door("learn"), _door("questions")
break_up, judge_break_up, reps_over_sets = _door("break_up"), _door("judge_break_up"), _door("reps_over_sets")
