"""The four demo workouts, put in place once."""

from contextlib import closing

from webapp.languages import ROOT
from webapp.store import database, workouts
from webapp.workouts import checked, completed, read_json

FOLDER = ROOT / "demo_data"


def load(path):
    """Publish every demo workout that this file has not seen yet."""
    database.prepare(path)
    with closing(database.connect(path)) as db:
        known = workouts.demo_names(db)
        for file in sorted(FOLDER.glob("*.json")):
            if file.stem not in known:
                workout = completed(checked(read_json(file.read_text("utf-8"))))
                stored, _secret = workouts.create(db, workout, demo=file.stem)
                workouts.publish(db, stored.code, stored.revision)
