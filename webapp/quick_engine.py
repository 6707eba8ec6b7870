"""The engine as the phones have it, run on the server by V8: the same answers as `webapp.engine`, several times as fast.

What a coach sees worked out beforehand is so what the phones of the class will say, to the last bit, and other requests are answered meanwhile:
Python's lock is let go while V8 computes. The functions take and return what those of `webapp.engine` do.
"""

import json
import re
from functools import lru_cache
from threading import Lock

from py_mini_racer import MiniRacer

from webapp.assets import engine_source
from webapp.engine import EngineError

EXPORTS = re.compile(r"^export \{(.+)\};$", re.MULTILINE)
ASK = """
const ask = (name, given) => {
  try {
    return JSON.stringify({ answer: engine[name](...given) });
  } catch (fault) {
    if (!(fault instanceof engine.EngineError)) throw fault;
    return JSON.stringify({ code: fault.code, value: fault.value });
  }
};
"""
_one_at_a_time = Lock()


def plan(workout, numbers, settings):
    """Return the plan of a workout for one athlete; see `webapp.engine.plan`."""
    return ask("plan", workout, numbers, settings)


def class_table(workout, option_key, division_key):
    """Return the plans by largest set; see `webapp.engine.class_table`."""
    return ask("class_table", workout, option_key, division_key)


def ask(name, *given):
    """Return what one of the engine's functions, by its name, answers; all its arguments in the order of the Python one.

    Raises
    ------
    EngineError : what it refuses.
    """
    with _one_at_a_time:
        answer = json.loads(_running(engine_source()).eval(f"ask({json.dumps(name)}, {json.dumps(given)})"))
    if "code" in answer:
        raise EngineError(answer["code"], answer["value"])
    return answer["answer"]


@lru_cache(maxsize=1)
def _running(source):
    """V8 with this engine in it, begun when first asked."""
    v8 = MiniRacer()
    v8.eval(EXPORTS.sub(r"const engine = { \1 };", source) + ASK)
    return v8
