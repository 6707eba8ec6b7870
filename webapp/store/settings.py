"""What the installation keeps for itself."""

import secrets
from contextlib import closing

from webapp.store.database import connect, transaction

SIGNING_KEY_BYTES = 32


def signing_key(db):
    """The key that signs cookies and forms; made on first use, so that nobody has to invent one."""
    with transaction(db):
        db.execute(
            "INSERT OR IGNORE INTO settings (name, value) VALUES ('signing_key', ?)",
            (secrets.token_hex(SIGNING_KEY_BYTES),),
        )
        row = db.execute("SELECT value FROM settings WHERE name = 'signing_key'").fetchone()
    return row["value"]


def signing_key_of(path):
    """The same, before there is a connection."""
    with closing(connect(path)) as db:
        return signing_key(db)
