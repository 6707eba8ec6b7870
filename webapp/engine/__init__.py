"""The computation: a fatigue-and-recovery model of the muscle groups, and a planner on top of it.

Standard library only; no clock, no files, no global random: the phone runs this very source. Reading order: `parameters`, `units`,
`reserve`, `strength`, `simulate`, `search`, `breakups`, `athlete`, `stints`, `whole`, `draws`, `planner`; `warmup`.

>>> break_up(20, 50, 2.6)["sets"][0] < 10
True

One exception, `EngineError`, a subclass of ValueError with a code and the offending value.
"""

from .breakups import break_up, judge_break_up, reps_over_sets
from .errors import EngineError
from .judge import judge
from .learn import learn
from .options import advise, options
from .planner import plan
from .questions import questions
from .replan import replan
from .table import class_table
from .warmup import warm_up
from .who_fails import who_fails

__all__ = [
    "EngineError",
    "advise",
    "break_up",
    "class_table",
    "judge",
    "judge_break_up",
    "learn",
    "options",
    "plan",
    "questions",
    "replan",
    "reps_over_sets",
    "warm_up",
    "who_fails",
]
