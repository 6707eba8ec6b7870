"""The same workout typed in kilograms and metres or in pounds and feet is the same workout to the planner: same sets, same rests."""

import random

import pytest

from webapp.as_typed import from_workout
from webapp.engine import plan
from webapp.engine.units import KG_PER_LB, M_PER_FT
from webapp.measures import plain_number, pounds
from webapp.movements import library
from webapp.typed import to_workout
from webapp.workouts import checked, completed

LOADED = ["strict-press", "thruster", "kettlebell-swing", "power-clean", "sandbag-carry"]
ALONE = ["pull-up", "push-up", "ring-dip", "sit-up"]


def found(text):
    """Keys of the movements a typed name may mean."""
    return [key for key, entry in library().items() if text in (key, entry["name"])]


def drawn(rng):
    """A workout whose loads are whole pounds, as a file brings it: 95 lb is 43.09… kg."""
    key, loads = rng.choice(LOADED), {"a": rng.randrange(25, 120, 5) * KG_PER_LB, "b": rng.randrange(15, 80, 5) * KG_PER_LB}
    amount, unit = (rng.randrange(30, 200, 10) * M_PER_FT, "m") if key == "sandbag-carry" else (rng.randint(6, 25), "reps")
    blocks = [{"movement": key, "amount": amount, "unit": unit, "load_kg": loads}, {"movement": rng.choice(ALONE), "amount": 15, "unit": "reps"}]
    return completed(checked({
        "schema": 1, "title": "Brass Pound", "shape": "for_time", "divisions": [{"key": "a", "name": "Men"}, {"key": "b", "name": "Women"}],
        "options": [{"key": "prescribed", "name": "As prescribed", "rounds": 1, "blocks": blocks}],
        "lane": {"length_m": 10, "turn": True}, "source": {"text": "", "url": None}, "ranking": "prescribed_first", "advice": [], "notes": "",
    }))  # fmt: skip


def retyped(workout):
    """What the coach's form makes of it when the same is typed in pounds and feet."""
    typed = from_workout(workout, lambda key: key)
    for block, typed_block in zip(workout["options"][0]["blocks"], typed["options"][0]["blocks"], strict=True):
        if block.get("load_kg"):
            typed_block |= {f"load_{key}": plain_number(pounds(load_kg)) for key, load_kg in block["load_kg"].items()} | {"load_unit": "lb"}
        if block["unit"] == "m":
            typed_block |= {"amount": plain_number(block["amount"] / M_PER_FT), "unit": "ft"}
    return to_workout(typed, found, workout["movements"])


@pytest.mark.parametrize("seed", range(5))
def test_typed_in_either_system_the_plan_is_the_same(app, seed):
    """Loads and lengths come back to eight places; the plan to six digits, its sets, rests and reasons exactly."""
    with app.test_request_context():
        rng = random.Random(seed)
        metric = drawn(rng)
        imperial = retyped(metric)
    numbers, settings = {"level": rng.choice(["regular", "keen"])}, {"division": rng.choice("ab"), "style": rng.choice(["steady", "bold"])}
    one, other = (plan(made, numbers, settings) for made in (metric, imperial))
    assert [(each["sets"], each["rests_s"]) for each in one["blocks"]] == [(each["sets"], each["rests_s"]) for each in other["blocks"]]
    assert one["score"]["likely"] == pytest.approx(other["score"]["likely"], rel=1e-6)
    assert [reason["code"] for reason in one["reasons"]] == [reason["code"] for reason in other["reasons"]]
