"""Transactions, disk full, backup: what was said to be saved is saved, and nothing by halves."""

import sqlite3
import threading
from contextlib import closing

import pytest

from webapp.store import database, settings


@pytest.fixture
def path(tmp_path):
    place = tmp_path / "folder" / "data.sqlite3"
    database.prepare(place)
    return place


@pytest.fixture
def db(path):
    with closing(database.connect(path)) as connection:
        yield connection


def test_a_new_file_is_made_with_its_folder(path):
    assert path.exists()


@pytest.mark.parametrize("pragma, value", [
    ("journal_mode", "wal"), ("synchronous", 2), ("foreign_keys", 1), ("trusted_schema", 0), ("busy_timeout", 5000),
])
def test_every_connection_is_durable_and_strict(db, pragma, value):
    # synchronous 2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous
    assert db.execute(f"PRAGMA {pragma}").fetchone()[0] == value


def test_a_failed_transaction_leaves_nothing(db):
    with pytest.raises(RuntimeError), database.transaction(db):
        db.execute("INSERT INTO settings VALUES ('half', '1')")
        raise RuntimeError
    assert db.execute("SELECT count(*) FROM settings").fetchone()[0] == 0


def test_tables_are_strict(db):
    with pytest.raises(sqlite3.IntegrityError), database.transaction(db):
        db.execute("INSERT INTO workouts VALUES ('c', 'h', 'draft', 'many', NULL, '{}', NULL, 0, 0)")


def test_a_full_disk_is_named_and_loses_nothing(db):
    with database.transaction(db):
        db.execute("INSERT INTO settings VALUES ('before', 'kept')")
    pages = db.execute("PRAGMA page_count").fetchone()[0]
    db.execute(f"PRAGMA max_page_count = {pages}")
    with pytest.raises(database.StoreFull), database.transaction(db):
        db.execute("INSERT INTO settings VALUES ('large', ?)", ("x" * 100_000,))
    assert db.execute("SELECT value FROM settings WHERE name = 'before'").fetchone()[0] == "kept"
    assert db.execute("PRAGMA integrity_check").fetchone()[0] == "ok"


def test_a_file_locked_for_too_long_is_named(db, path, monkeypatch):
    monkeypatch.setattr(database, "BUSY_TIMEOUT_S", 0.05)
    with closing(database.connect(path)) as other, database.transaction(db):
        with pytest.raises(database.StoreBusy), database.transaction(other):
            pass


def test_two_writers_take_turns(path):
    def count_up():
        with closing(database.connect(path)) as db:
            for _ in range(20):
                with database.transaction(db):
                    row = db.execute("SELECT value FROM settings WHERE name = 'n'").fetchone()
                    db.execute("INSERT OR REPLACE INTO settings VALUES ('n', ?)", (str(int(row[0] if row else 0) + 1),))

    threads = [threading.Thread(target=count_up) for _ in range(3)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    with closing(database.connect(path)) as db:
        assert db.execute("SELECT value FROM settings WHERE name = 'n'").fetchone()[0] == "60"


def test_a_backup_holds_what_is_still_in_the_log(db, path, tmp_path):
    with database.transaction(db):
        db.execute("INSERT INTO settings VALUES ('fresh', 'yes')")
    database.backup(path, tmp_path / "copy.sqlite3")
    with closing(sqlite3.connect(tmp_path / "copy.sqlite3")) as copy:
        assert copy.execute("SELECT value FROM settings WHERE name = 'fresh'").fetchone()[0] == "yes"


def test_the_signing_key_is_made_once_and_is_long(path):
    first = settings.signing_key_of(path)
    assert settings.signing_key_of(path) == first
    assert len(bytes.fromhex(first)) == 32
