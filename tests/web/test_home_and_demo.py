"""The front door, and the demo workouts behind it."""

import json
import re
from contextlib import closing

import pytest

from webapp import demo
from webapp.store import database, workouts
from webapp.workouts import checked, completed, read_json

FILES = sorted(demo.FOLDER.glob("*.json"))


@pytest.fixture
def demo_client(app):
    demo.load(app.config["DATABASE"])
    return app.test_client()


def test_an_empty_installation_still_says_what_it_is_for(client):
    page = client.get("/")
    assert page.status_code == 200 and 'href="/new"' in page.text and "/w/" not in page.text


def test_the_demo_workouts_are_one_tap_away(demo_client):
    codes = re.findall(r'href="/w/(\w+)"', demo_client.get("/").text)
    assert len(codes) == len(FILES) == 4
    assert all(demo_client.get(f"/w/{code}").status_code == 200 for code in codes)


def test_loading_the_demo_again_adds_nothing_and_brings_nothing_back(app, demo_client):
    path = app.config["DATABASE"]
    with closing(database.connect(path)) as db:
        first = workouts.demos(db)[0]
        workouts.withdraw(db, first.code, first.revision)
    demo.load(path)
    with closing(database.connect(path)) as db:
        assert len(workouts.demos(db)) == 3


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_demo_workouts_are_sound_named_and_scaled(file):
    workout = completed(checked(read_json(file.read_text("utf-8"))))
    assert [option["key"] for option in workout["options"]] == ["prescribed", "scaled"]
    assert workout["cap_s"] and workout["advice"] and "Lantern Hall" in workout["notes"]


def test_the_demo_shows_every_shape_and_both_unit_systems():
    data = [json.loads(file.read_text("utf-8")) for file in FILES]
    first = [workout["options"][0] for workout in data]
    assert any(option.get("rounds", 1) > 1 for option in first)
    assert any(option.get("rep_scheme") for option in first)
    assert any(len(option["blocks"]) >= 8 for option in first)
    text = json.dumps(data)
    assert " lb" in text and " ft" in text
