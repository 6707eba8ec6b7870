"""Workouts of every other shape than for time, invented, and a way to put them into a running server's store."""

from contextlib import closing

from webapp.store import database, workouts
from webapp.workouts import checked, completed

BELL = {"a": 24, "b": 16}
BAR = {"a": 35, "b": 25}


def _reps(movement, amount, **more):
    return {"movement": movement, "amount": amount, "unit": "reps", **more}


def _option(*blocks, **more):
    return {"key": "prescribed", "name": "As prescribed", "blocks": list(blocks), **more}


def _workout(title, shape, option, **more):
    return {
        "schema": 1, "title": title, "shape": shape, "divisions": [{"key": "a", "name": "Men"}, {"key": "b", "name": "Women"}],
        "options": [option], "lane": {"length_m": 10, "turn": True}, "source": {"text": "", "url": None}, "ranking": "prescribed_first",
        "advice": [], "notes": "", **more,
    }  # fmt: skip


ROUNDS = _workout("Slow Lantern", "amrap", _option(_reps("pull-up", 4), _reps("push-up", 9), _reps("air-squat", 14)), time_s=600)
LADDER = _workout("Frost Stair", "amrap", _option(_reps("burpee", 2, step=2), _reps("thruster", 2, step=2, load_kg=BAR)), time_s=420)
FITS = _workout("Tower Bell", "intervals", _option(_reps("kettlebell-swing", 8, load_kg=BELL)), interval_s=60, interval_count=10)
BREAKS = _workout("Cold Bell", "intervals", _option(_reps("pull-up", 6)), interval_s=60, interval_count=10)
SCHEME = _workout("Three Landings", "for_time", _option(_reps("thruster", None, load_kg=BAR), _reps("pull-up", None), rep_scheme=[17, 11, 5]), cap_s=840)
LOAD = _workout("Iron Thaw", "load", _option(_reps("power-clean", 1)), time_s=480)
PARTS = {
    **_workout("Two Lamps", "amrap", _option(_reps("push-up", 8), _reps("air-squat", 12)), time_s=300),
    "parts": [
        {"title": "First lamp", "shape": "amrap", "time_s": 300, "options": [_option(_reps("push-up", 8), _reps("air-squat", 12))], "rest_after_s": 180},
        {"title": "Second lamp", "shape": "load", "time_s": 360, "options": [_option(_reps("power-clean", 1))]},
    ],
}
ALL = {"rounds": ROUNDS, "ladder": LADDER, "fits": FITS, "breaks": BREAKS, "scheme": SCHEME, "load": LOAD, "parts": PARTS}


ONE_PULL = _workout("One Pull", "for_time", _option({"movement": "row", "amount": 500, "unit": "m"}))   # nothing to break up by hand
GATES = {
    **_workout("Locked Doors", "for_time", _option(_reps("air-squat", 20), _reps("ring-muscle-up", 10)), cap_s=480),
    "options": [
        _option(_reps("air-squat", 20), _reps("ring-muscle-up", 10)),
        {"key": "scaled", "name": "Scaled", "blocks": [_reps("air-squat", 20), _reps("pull-up", 20)]},
    ],
}


def publish(data, workout):
    """Put a workout before the class, in the store at `data`; return its path."""
    with closing(database.connect(data)) as db:
        stored, _secret = workouts.create(db, completed(checked(workout)))
        workouts.publish(db, stored.code, stored.revision)
    return f"/w/{stored.code}"
