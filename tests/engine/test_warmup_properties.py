"""What holds for every warm-up, over thousands of seeded workouts, athletes, minutes, rooms and gyms."""

import random

import pytest
from engine_samples import block, workout

from webapp.engine import warm_up
from webapp.movements import library

pytestmark = pytest.mark.slow
CASES = 2400
CHUNKS = 8
PHASES = ["get_warm", "loosen", "build", "burst", "settle"]
KEYS = {
    "phase", "movement", "name", "code", "amount", "unit", "load_kg", "label", "side", "round", "at_s", "seconds", "cue", "optional",
    "needs_partner", "instead", "piece", "height_m", "to_movement", "holds", "hold",
}  # fmt: skip
AMOUNTS = {"reps": [9, 20, 40], "m": [20, 100, 400], "cal": [10, 25], "s": [30, 90]}
PEOPLE = [{"sore": ["shoulder"]}, {"sore": ["legs"]}, {"strain_prone": ["calf"]}, {"inverted_ok": False}, {"inverted_ok": True}, {"age": 61}, {}, {}]
RACKS = [None, None, {"dumbbells_kg": [5, 10, 22.68]}, {"plates_kg": [2.27, 4.54, 11.34, 20.41], "bars_kg": [20.41]}, {"kettlebells_kg": []}]


def draw(rng):
    """A workout of one to five movements, an athlete, and a day."""
    blocks = []
    for key in rng.sample(sorted(library()), rng.choice([1, 2, 2, 3, 3, 4, 5])):
        entry = library()[key]
        unit = rng.choice(entry["units"])
        usual_kg = (entry["typical_load_kg"] or {}).get("a")
        more = {"load_kg": usual_kg * rng.choice([0.5, 1, 1.25])} if usual_kg else {}
        blocks.append(block(key, rng.choice(AMOUNTS[unit]), unit, **more))
    numbers = {"level": rng.choice(["new", "regular"]), **rng.choice(PEOPLE)}
    numbers["movements"] = {each["movement"]: {"max_unbroken": rng.randint(0, 16)} for each in blocks if rng.random() < 0.8}
    settings = {
        "rack": rng.choice(RACKS), "machines": rng.choice([None, [], ["row"], ["bike", "run"]]), "room_c": rng.choice([None, 3, 20, 29, 36]),
        "humidity_percent": rng.choice([None, 20, 70]), "lane_shared_by": rng.choice([1, 1, 2, 5]), "wall_free": rng.random() < 0.8,
        "bar_free": rng.random() < 0.8, "warm_up_min": rng.choice([None, 4, 5, 6, 8, 10, 12, 15, 18, 22, 25, 40]),
    }  # fmt: skip
    return workout(blocks, rounds=rng.choice([1, 3])), numbers, settings


def required(made):
    return [step for step in made["steps"] if not step["optional"]]


def check_times(made):
    """No step without time, extras on the clock of the next step, everything adds up."""
    at_s = made["starts_s"]
    for step in made["steps"]:
        assert step["seconds"] > 0
        assert step["at_s"] == pytest.approx(at_s)
        at_s -= 0 if step["optional"] else step["seconds"]
    assert at_s == pytest.approx(made["ends_s"])


def check_bounds(made, minutes):
    assert made["starts_s"] <= 60 * min(25, 25 if minutes is None else minutes) + 1e-9
    assert 120 <= made["ends_s"] <= 600  # window of 2-10 min: Silva et al. 2018
    if minutes is None or minutes >= 25:
        assert made["starts_s"] >= 8 * 60 and made["ends_s"] == 300


def check_steps(made, asked):
    order = [PHASES.index(step["phase"]) for step in made["steps"]]
    assert order == sorted(order)
    working = {each["movement"]: each.get("load_kg") for each in asked["options"][0]["blocks"]}
    for step in made["steps"]:
        assert set(step) == KEYS
        assert (step["name"] is None) != (step["code"] is None)
        assert (step["load_kg"] is None) == (step["label"] is None)
        if step["load_kg"] is not None and step["movement"] in working:
            assert 0 < step["load_kg"] <= working[step["movement"]] + 1e-9
        if step["unit"] == "s" and step["phase"] != "get_warm":
            assert step["amount"] <= 30  # no static stretch of 60 s: Behm et al. 2016
        assert not step["needs_partner"] or (step["optional"] and step["instead"])


def check_keeps(made):
    """The three keeps, at most 15 reps of a movement, and the reserve model's limits."""
    checks = made["checks"]
    assert checks["easy_s"] >= 30 and checks["limiting_rehearsed"] and checks["heaviest_rehearsed"]
    assert all(reps <= 15 for reps in checks["reps_per_movement"].values())
    assert min(checks["reserve_at_start"].values()) >= 0.95
    assert checks["passes"] and checks["tired"] == []
    assert "warm_up_tires" not in [warning["code"] for warning in made["warnings"]]


@pytest.mark.parametrize("chunk", range(CHUNKS))
def test_every_warm_up_keeps_its_promises(chunk):
    rng = random.Random(1000 + chunk)
    for _ in range(CASES // CHUNKS):
        asked, numbers, settings = draw(rng)
        made = warm_up(asked, numbers, settings)
        check_times(made)
        check_bounds(made, settings["warm_up_min"])
        check_steps(made, asked)
        check_keeps(made)


def test_more_minutes_never_bring_fewer_essentials_nor_easy_seconds_below_the_keep():
    """From four minutes on the keeps stay; and what is rehearsed at few minutes is rehearsed at more."""
    rng = random.Random(7)
    for _ in range(40):
        asked, numbers, settings = draw(rng)
        before = None
        for minutes in [4, 5, 6, 8, 11, 15, 20, 25]:
            made = warm_up(asked, numbers, {**settings, "warm_up_min": minutes})
            rehearsed = {step["movement"] for step in required(made) if step["phase"] in ("build", "burst") and step["amount"]}
            if before is not None:
                assert made["starts_s"] >= before["starts_s"] - 1e-9
                assert made["checks"]["level"] <= before["checks"]["level"]
                assert made["checks"]["limiting_rehearsed"] >= before["checks"]["limiting_rehearsed"]
                assert made["checks"]["heaviest_rehearsed"] >= before["checks"]["heaviest_rehearsed"]
                assert len(rehearsed) >= before["rehearsed"]
            before = {**made, "rehearsed": len(rehearsed)}


def test_hotter_rooms_never_have_more_easy_minutes():
    """Racinais et al. 2017: limit whole-body heating in the heat."""
    rng = random.Random(8)
    for _ in range(40):
        asked, numbers, settings = draw(rng)
        easy = [warm_up(asked, numbers, {**settings, "room_c": room_c, "humidity_percent": 60, "warm_up_min": None})["checks"]["easy_s"]
                for room_c in [20, 28, 32, 38]]  # fmt: skip
        assert easy == sorted(easy, reverse=True) and easy[-1] < easy[0]
