"""The schema, step by step. `PRAGMA user_version` counts the steps a file has taken."""

MIGRATIONS = (
    """
    CREATE TABLE settings (
        name TEXT PRIMARY KEY,
        value TEXT NOT NULL
    ) STRICT;
    CREATE TABLE workouts (
        code TEXT PRIMARY KEY,
        secret_hash TEXT NOT NULL,
        state TEXT NOT NULL CHECK (state IN ('draft', 'published', 'withdrawn')),
        revision INTEGER NOT NULL CHECK (revision >= 1),
        demo TEXT UNIQUE,           -- name of the demo file it came from
        draft_json TEXT NOT NULL,   -- what the coach is working at
        published_json TEXT,        -- what the class sees
        created_s INTEGER NOT NULL,
        changed_s INTEGER NOT NULL,
        CHECK (state = 'draft' OR published_json IS NOT NULL)
    ) STRICT;
    """,
)


class NewerFile(Exception):
    """The file was written by a later version of this program."""

    def __init__(self, found, known):
        super().__init__(
            f"the data file has schema {found}, this program knows only up to {known}: "
            "start the newer version, or name another file with --data"
        )


def version(db):
    """The number of steps this file has taken."""
    return db.execute("PRAGMA user_version").fetchone()[0]


def migrate(db, migrations=MIGRATIONS):
    """Take the missing steps, each wholly or not at all. Taking none is harmless."""
    if version(db) > len(migrations):
        raise NewerFile(version(db), len(migrations))
    while version(db) < len(migrations):
        _take_step(db, migrations)


def _take_step(db, migrations):
    db.execute("BEGIN IMMEDIATE")
    try:
        done = version(db)  # read again under the lock: another process may have been quicker
        if done < len(migrations):
            for statement in migrations[done].split(";\n"):
                db.execute(statement)
            db.execute(f"PRAGMA user_version = {done + 1}")
        db.execute("COMMIT")
    except BaseException:
        db.execute("ROLLBACK")
        raise
