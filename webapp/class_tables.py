"""What the pages ask the engine about a whole workout: where it is decided, the table by largest set, what keeps it from being planned.

A plan takes a tenth of a second and more, a table seven plans. So each answer is worked out once for each content of a workout, by whoever
asks first; others who ask meanwhile wait for it. `prepare` begins with all of them, so that the class finds them ready.
"""

import hashlib
import json
import logging
from collections import OrderedDict
from concurrent.futures import Future
from queue import SimpleQueue
from threading import Lock, Thread

from webapp import quick_engine as engine
from webapp.engine import EngineError
from webapp.engine.table import decided_in
from webapp.wording import WORDS
from webapp.workouts import parts_of

log = logging.getLogger(__name__)

MOST_KEPT = 512  # answers; one takes a few kB
# Texts for people, and the count of saves: the engine looks at none of them.
NOT_THE_ENGINES = ("title", "notes", "source", "advice", "revision", "ranking")
# Said where the engine falls over instead of refusing: a fault of ours, which the log tells.
FELL_OVER = {"code": "workout_not_a_mapping", "value": None}


class Once:
    """A function of a workout and some keys whose answers are kept."""

    def __init__(self, work):
        self.work = work
        self.answers = OrderedDict()
        self.lock = Lock()

    def __call__(self, workout, *keys):
        key = (_fingerprint(workout), *keys)
        with self.lock:
            mine = key not in self.answers
            answer = self.answers.setdefault(key, Future())
            self.answers.move_to_end(key)
            while len(self.answers) > MOST_KEPT:
                self.answers.popitem(last=False)
        if mine:
            try:
                answer.set_result(self.work(workout, *keys))
            except BaseException as error:
                self.answers.pop(key, None)
                answer.set_exception(error)
        return answer.result()


@Once
def planned(workout, option_key, division_key, level):
    """Of the plan for a level: `decided` (block and movement, or None), `rounds` done in the time, `refused` (code and value, or None)."""
    answer = {"decided": None, "rounds": None, "refused": None}
    try:
        made = engine.plan(workout, {"level": level}, {"option": option_key, "division": division_key})
        option = next(option for option in workout["options"] if option["key"] == option_key)
        rounds = made["score"]["likely"] if made["score"]["kind"] == "rounds" else None
        return answer | {"decided": decided_in(made, option), "rounds": rounds}
    except EngineError as error:
        known = error.code in WORDS
        return answer | {"refused": {"code": error.code, "value": error.value} if known else FELL_OVER}
    except Exception:
        log.exception("no plan for %s, %s, %s", workout.get("title"), option_key, division_key)
        return answer | {"refused": FELL_OVER}


@Once
def rows(workout, option_key, division_key):
    """The engine's rows by largest set; none where it cannot make them."""
    try:
        return engine.class_table(workout, option_key, division_key)
    except EngineError:
        return []
    except Exception:
        log.exception("no class table for %s, %s, %s", workout.get("title"), option_key, division_key)
        return []


def refusal(workout):
    """What keeps the engine from planning a workout, as a code with its value; None if nothing does."""
    found = (planned(*one, "regular")["refused"] for one in _each(workout))
    return next((refused for refused in found if refused), None)


def prepare(workout):
    """Work out every table of a workout beside what the server has to do."""
    for one in _each(workout):
        _waiting.put(one)
    with _starting:
        if not _worker.is_alive():
            _worker.start()


def _each(workout):
    """Every part, option and division of a workout."""
    for part in parts_of(workout):
        for option in part["options"]:
            for division in part["divisions"]:
                yield part, option["key"], division["key"]


def _work():
    while True:
        rows(*_waiting.get())


_waiting = SimpleQueue()
_starting = Lock()
_worker = Thread(target=_work, name="class tables", daemon=True)


def _fingerprint(workout):
    looked_at = {name: value for name, value in workout.items() if name not in NOT_THE_ENGINES}
    return hashlib.sha256(json.dumps(looked_at, sort_keys=True).encode()).digest()
