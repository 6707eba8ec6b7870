"""Rows of workouts: secrets only hashed, revisions rising, nobody overwritten unseen."""

import json
from contextlib import closing

import pytest

from webapp.store import database, workouts


@pytest.fixture
def db(tmp_path):
    path = tmp_path / "data.sqlite3"
    database.prepare(path)
    with closing(database.connect(path)) as connection:
        yield connection


@pytest.fixture
def made(db):
    return workouts.create(db, {"title": "Brass Bell"})


def test_codes_and_secrets_are_long_enough(made):
    # At least 64 and 128 bits are asked for; 31 letters are log2(31) = 4.954 bits each, base64 letters 6.
    stored, secret = made
    assert len(stored.code) * 4.954 >= 64
    assert len(secret) * 6 >= 128


def test_the_secret_itself_is_nowhere_in_the_file(db, made):
    _stored, secret = made
    rows = [dict(row) for row in db.execute("SELECT * FROM workouts")]
    assert secret not in json.dumps(rows)


def test_only_the_right_secret_fits(made):
    stored, secret = made
    assert workouts.secret_fits(stored, secret)
    assert not workouts.secret_fits(stored, secret[:-1])
    assert not workouts.secret_fits(stored, "ñ")


def test_a_workout_is_a_draft_until_it_is_published(db, made):
    stored, _ = made
    assert (stored.state, stored.published, stored.revision) == ("draft", None, 1)
    shown = workouts.publish(db, stored.code, 1)
    assert (shown.state, shown.published["title"], shown.published["revision"]) == ("published", "Brass Bell", 2)


def test_a_saved_change_reaches_the_class_only_by_publishing(db, made):
    code = made[0].code
    workouts.publish(db, code, 1)
    saved = workouts.save_draft(db, code, {"title": "Tin Bell"}, 2)
    assert (saved.published["title"], saved.published["revision"]) == ("Brass Bell", 2)
    assert workouts.publish(db, code, 3).published == {"title": "Tin Bell", "revision": 4}


def test_the_later_of_two_saves_is_told(db, made):
    code = made[0].code
    workouts.save_draft(db, code, {"title": "first"}, 1)
    with pytest.raises(workouts.Conflict) as caught:
        workouts.save_draft(db, code, {"title": "second"}, 1)
    assert caught.value.stored.draft["title"] == "first"
    assert workouts.get(db, code).draft["title"] == "first"


def test_a_withdrawn_workout_comes_back_as_it_was_with_a_higher_revision(db, made):
    code = made[0].code
    workouts.publish(db, code, 1)
    assert workouts.withdraw(db, code, 2).state == "withdrawn"
    back = workouts.put_back(db, code, 3)
    assert (back.state, back.published["title"], back.published["revision"]) == ("published", "Brass Bell", 4)


def test_an_unknown_code_is_none(db):
    assert workouts.get(db, "nothing") is None


def test_demos_are_listed_in_order_and_only_while_shown(db):
    for name in ("2-second", "1-first", "3-third"):
        stored, _ = workouts.create(db, {"title": name}, demo=name)
        workouts.publish(db, stored.code, 1)
    workouts.withdraw(db, stored.code, 2)
    assert [stored.demo for stored in workouts.demos(db)] == ["1-first", "2-second"]
    assert workouts.demo_names(db) == {"1-first", "2-second", "3-third"}
