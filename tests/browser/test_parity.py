"""The server's engine and the phone's give the same answers, whatever they are asked."""

import inspect
import json
import random
from collections import Counter
from functools import cache

import pytest
from parity.answers import ASK_PHONE, HEAR_PHONE, ask_server
from parity.cases import GENERATORS, cases
from parity.compare import differences
from parity.page import engine_page
from parity.shapes import IS, SHAPES
from webapp import engine
from webapp.phone import build_engine

pytestmark = pytest.mark.browser

BATCH = 100
SEEDS = range(51)  # a batch each: at least 5,000 cases
LEAST_OF_A_SHAPE = 100  # cases; and of every door that takes a workout or a plan at least one, together with every shape; chosen
PUBLIC = [name for name in engine.__all__ if inspect.isfunction(getattr(engine, name))]


@pytest.fixture(scope="module")
def phone_engine(browser):
    """The engine on the phone."""
    with engine_page(browser, build_engine()) as page:
        yield page


def test_every_public_function_is_asked():
    """A new door of the engine needs cases of its own."""
    assert set(PUBLIC) <= set(GENERATORS)


@pytest.mark.parametrize("name", SHAPES)
def test_a_shape_is_what_its_name_says(name):
    """Every named generator makes workouts of its shape, whatever the seed."""
    for seed in range(40):
        assert IS[name](*SHAPES[name](random.Random(seed)))


def test_every_shape_is_asked_at_every_door():
    """Thousands of cases, and none of the shapes left out by chance."""
    met = Counter((case["call"], case["shape"]) for seed in SEEDS for case in batch_of(seed))
    assert sum(met.values()) >= 5000
    for name in SHAPES:
        assert sum(count for (_, shape), count in met.items() if shape == name) >= LEAST_OF_A_SHAPE, name
        assert [door for door in ("plan", "judge", "replan", "questions", "warm_up") if (door, name) not in met] == [], name


def test_the_phone_lets_out_what_the_server_does(phone_engine):
    """The same names on both sides."""
    assert sorted(phone_engine.evaluate("() => Object.keys(window.engine)")) == sorted(engine.__all__)


def test_a_slightly_other_formula_is_noticed(browser):
    """The comparison sees a slow time constant of 331 s in the place of 330 s."""
    module = build_engine()
    batch = list(cases(random.Random(1), 5, ["reps_over_sets"]))
    assert "/ 330.0" in module
    with engine_page(browser, module.replace("/ 330.0", "/ 331.0")) as page:
        page.evaluate(ASK_PHONE, batch)
        from_phone = [json.loads(answer) for answer in page.evaluate(HEAR_PHONE)]
    assert any(list(differences(ask_server(case), phone)) for case, phone in zip(batch, from_phone))


@cache
def batch_of(seed):
    """The cases of one seed."""
    return list(cases(random.Random(seed), BATCH, PUBLIC))


def broken(side, answer):
    """An answer that is neither a result nor an error with a code."""
    return [] if answer.keys() & {"result", "code"} else [f"{side}: {answer}"]


@pytest.mark.parametrize("seed", SEEDS)
def test_same_answers(phone_engine, seed):
    """Same decisions exactly, numbers within 1e-9, errors with the same code, input unchanged, nothing that is not JSON."""
    batch = batch_of(seed)
    phone_engine.evaluate(ASK_PHONE, batch)
    from_server = [ask_server(case) for case in batch]
    from_phone = [json.loads(answer) for answer in phone_engine.evaluate(HEAR_PHONE)]
    faults = []
    for index, (case, server, phone) in enumerate(zip(batch, from_server, from_phone)):
        found = broken("server", server) + broken("phone", phone) or list(differences(server, phone))[:3]
        if found:
            faults.append(f"case {index} of seed {seed}, {case['call']}, {case['shape']}:\n  " + "\n  ".join(found))
    assert not faults, "\n".join(faults)
