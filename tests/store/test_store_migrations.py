"""Files of earlier versions come along; files of later ones are refused, not damaged."""

import sqlite3
from contextlib import closing

import pytest

from webapp.store import database
from webapp.store.migrations import MIGRATIONS, NewerFile, migrate, version


@pytest.fixture
def db():
    with closing(sqlite3.connect(":memory:", isolation_level=None)) as connection:
        yield connection


STEPS = ("CREATE TABLE one (a TEXT) STRICT;\n", "CREATE TABLE two (b TEXT) STRICT;\nINSERT INTO two VALUES ('x');\n")


def test_all_steps_are_taken_and_counted(db):
    migrate(db, STEPS)
    assert version(db) == 2
    assert db.execute("SELECT b FROM two").fetchall() == [("x",)]


def test_an_older_file_keeps_its_rows(db):
    migrate(db, STEPS[:1])
    db.execute("INSERT INTO one VALUES ('kept')")
    migrate(db, STEPS)
    assert db.execute("SELECT a FROM one").fetchall() == [("kept",)]


def test_taking_the_steps_again_is_harmless(db):
    migrate(db, STEPS)
    migrate(db, STEPS)
    assert db.execute("SELECT count(*) FROM two").fetchone() == (1,)


def test_a_step_that_fails_leaves_the_file_as_it_was(db):
    broken = (STEPS[0], "CREATE TABLE two (b TEXT);\nINSERT INTO nowhere VALUES (1);\n")
    with pytest.raises(sqlite3.OperationalError):
        migrate(db, broken)
    assert version(db) == 1
    assert db.execute("SELECT name FROM sqlite_schema WHERE name = 'two'").fetchall() == []


def test_a_newer_file_is_refused_and_untouched(tmp_path):
    path = tmp_path / "later.sqlite3"
    with closing(sqlite3.connect(path)) as later:
        later.execute(f"PRAGMA user_version = {len(MIGRATIONS) + 1}")
    with pytest.raises(NewerFile, match="start the newer version"):
        database.prepare(path)
    with closing(sqlite3.connect(path)) as later:
        assert version(later) == len(MIGRATIONS) + 1
