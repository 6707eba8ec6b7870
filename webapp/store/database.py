"""Opening the file, transactions, backup, and what can go wrong with them."""

import sqlite3
from contextlib import closing, contextmanager
from pathlib import Path

from webapp.store.migrations import migrate

BUSY_TIMEOUT_S = 5.0
# FULL, because an answer "saved" must survive a power cut; the write rate of one gym never notices.
PRAGMAS = (
    "journal_mode = WAL",
    "synchronous = FULL",
    "foreign_keys = ON",
    "trusted_schema = OFF",
)
FULL_ERRORS = ("SQLITE_FULL", "SQLITE_IOERR_WRITE", "SQLITE_IOERR_FSYNC", "SQLITE_IOERR_SHMSIZE")
BUSY_ERRORS = ("SQLITE_BUSY", "SQLITE_BUSY_SNAPSHOT", "SQLITE_LOCKED")


class StoreError(Exception):
    """Something the store could not do; what was stored before is untouched."""


class StoreFull(StoreError):
    """No room left to write."""


class StoreBusy(StoreError):
    """Somebody else kept the file locked for longer than we wait."""


def connect(path):
    """An open connection; the caller closes it."""
    db = sqlite3.connect(path, isolation_level=None, timeout=BUSY_TIMEOUT_S)
    db.row_factory = sqlite3.Row
    with translated_errors():
        for pragma in PRAGMAS:
            db.execute(f"PRAGMA {pragma}")
    return db


def prepare(path):
    """Make the file when there is none and bring its schema up to date."""
    Path(path).parent.mkdir(parents=True, exist_ok=True)
    with closing(connect(path)) as db:
        with translated_errors():
            migrate(db)


@contextmanager
def transaction(db):
    """Write all of the body or none of it.

    BEGIN IMMEDIATE, because a transaction that reads first and writes later fails at once, without
    waiting, when another connection wrote in between.
    """
    with translated_errors():
        db.execute("BEGIN IMMEDIATE")
        try:
            yield db
            db.execute("COMMIT")
        except BaseException:
            if db.in_transaction:
                db.execute("ROLLBACK")
            raise


@contextmanager
def translated_errors():
    """Name the two failures a person can do something about; let every other one through."""
    try:
        yield
    except sqlite3.OperationalError as error:
        name = getattr(error, "sqlite_errorname", "")
        if name in FULL_ERRORS:
            raise StoreFull(str(error)) from error
        if name in BUSY_ERRORS:
            raise StoreBusy(str(error)) from error
        raise


def backup(path, target):
    """Copy the file while it is in use; copying it by hand would miss what is still in its log."""
    with closing(sqlite3.connect(f"file:{Path(path).resolve()}?mode=ro", uri=True)) as source:
        with closing(sqlite3.connect(target)) as copy:
            source.backup(copy)
