"""One row per workout a coach has set.

`revision` counts every save. The class compares it to learn that there is a newer version, and a
coach's form carries it back, so that two coaches never overwrite each other unseen.
"""

import hashlib
import hmac
import json
import secrets
import time
from dataclasses import dataclass

from webapp.store.database import transaction

# Without look-alikes, so that a code can be read from a wall: 14 of 31 letters are 69 bits.
CODE_LETTERS = "23456789abcdefghjkmnpqrstuvwxyz"
CODE_LENGTH = 14
SECRET_BYTES = 24

DRAFT, PUBLISHED, WITHDRAWN = "draft", "published", "withdrawn"


class Conflict(Exception):
    """Somebody else saved this workout since the form was opened; `stored` is what they saved."""

    def __init__(self, stored):
        super().__init__(f"revision is now {stored.revision}")
        self.stored = stored


@dataclass(frozen=True)
class Stored:
    """A workout as it stands in the file."""

    code: str
    secret_hash: str
    state: str
    revision: int
    demo: str | None
    draft: dict
    published: dict | None
    changed_s: int


def create(db, workout, *, demo=None):
    """Keep a new draft; return it and the coach's secret, which is stored only as a hash."""
    code = "".join(secrets.choice(CODE_LETTERS) for _ in range(CODE_LENGTH))
    secret = secrets.token_urlsafe(SECRET_BYTES)
    now_s = int(time.time())
    with transaction(db):
        db.execute(
            "INSERT INTO workouts (code, secret_hash, state, revision, demo, draft_json, created_s, changed_s)"
            " VALUES (?, ?, 'draft', 1, ?, ?, ?, ?)",
            (code, hash_of(secret), demo, _dump(workout | {"revision": 1}), now_s, now_s),
        )
    return get(db, code), secret


def get(db, code):
    """The workout with this code, or None."""
    row = db.execute("SELECT * FROM workouts WHERE code = ?", (code,)).fetchone()
    return _stored(row) if row else None


def latest(db, codes):
    """The one of these workouts that was changed last, or None."""
    marks = ", ".join("?" * len(codes))
    row = db.execute(
        f"SELECT * FROM workouts WHERE code IN ({marks}) ORDER BY changed_s DESC, rowid DESC LIMIT 1", tuple(codes)
    ).fetchone()
    return _stored(row) if row else None


def demos(db):
    """The demo workouts that are on show, in the order of their files."""
    rows = db.execute("SELECT * FROM workouts WHERE demo IS NOT NULL AND state = 'published' ORDER BY demo")
    return [_stored(row) for row in rows]


def demo_names(db):
    """The demo files that have been loaded already, withdrawn ones included."""
    return {row["demo"] for row in db.execute("SELECT demo FROM workouts WHERE demo IS NOT NULL")}


def save_draft(db, code, workout, revision):
    """Keep what the coach typed; the class goes on seeing what was published."""
    return _save(db, code, revision, lambda stored: (stored.state, workout, stored.published))


def publish(db, code, revision):
    """Show the draft to the class."""
    return _save(db, code, revision, lambda stored: (PUBLISHED, stored.draft, stored.draft))


def withdraw(db, code, revision):
    """Take it from the class; it can be put back."""
    return _save(db, code, revision, lambda stored: (WITHDRAWN, stored.draft, stored.published))


def put_back(db, code, revision):
    """Show the class again what was withdrawn."""
    return _save(db, code, revision, lambda stored: (PUBLISHED, stored.draft, stored.published))


def hash_of(secret):
    """What is stored in place of a secret. The secret is random, so a fast hash is enough."""
    return hashlib.sha256(secret.encode()).hexdigest()


def secret_fits(stored, secret):
    """Compare without telling by the time taken how much was right."""
    return hmac.compare_digest(stored.secret_hash, hash_of(secret))


def _save(db, code, revision, change):
    with transaction(db):
        stored = get(db, code)
        if stored.revision != revision:
            raise Conflict(stored)
        state, draft, published = change(stored)
        number = revision + 1
        # A workout shown to the class carries the revision under which it was shown.
        if published is not None and (state, published) != (stored.state, stored.published):
            published = published | {"revision": number}
        db.execute(
            "UPDATE workouts SET state = ?, revision = ?, draft_json = ?, published_json = ?, changed_s = ?"
            " WHERE code = ?",
            (state, number, _dump(draft | {"revision": number}), published and _dump(published),
             int(time.time()), code),
        )
    return get(db, code)


def _dump(workout):
    return json.dumps(workout, ensure_ascii=False, allow_nan=False)


def _stored(row):
    published = row["published_json"]
    return Stored(
        code=row["code"],
        secret_hash=row["secret_hash"],
        state=row["state"],
        revision=row["revision"],
        demo=row["demo"],
        draft=json.loads(row["draft_json"]),
        published=json.loads(published) if published else None,
        changed_s=row["changed_s"],
    )
