"""The application with a store of its own, and people who use it."""

from contextlib import closing
from dataclasses import dataclass

import pytest
from form_reader import fields
from jinja2 import BytecodeCache
from sample_workout import small_workout

from webapp import assets, class_tables
from webapp.app import create_app
from webapp.store import database, workouts
from webapp.workouts import checked, completed


class Compiled(BytecodeCache):
    """Templates compiled once for all the applications of these tests."""

    def __init__(self):
        self.known = {}

    def load_bytecode(self, bucket):
        if bucket.key in self.known:
            bucket.bytecode_from_string(self.known[bucket.key])

    def dump_bytecode(self, bucket):
        self.known[bucket.key] = bucket.bytecode_to_string()


@pytest.fixture(scope="session")
def compiled():
    """What is worked out once: templates and static files do not change while these tests run."""
    return Compiled(), assets.Assets()


@pytest.fixture
def app(tmp_path, monkeypatch, compiled):
    """A fresh installation."""
    templates, files = compiled
    monkeypatch.setattr(assets, "Assets", lambda: files)
    application = create_app({"TESTING": True, "DATABASE": str(tmp_path / "data.sqlite3")})
    application.jinja_env.bytecode_cache = templates
    return application


@pytest.fixture(autouse=True)
def prepared(monkeypatch):
    """Workouts whose tables were asked for at publishing; nothing is worked out beside a test."""
    asked = []
    monkeypatch.setattr(class_tables, "prepare", asked.append)
    return asked


@pytest.fixture
def client(app):
    """Somebody with a browser and no links."""
    return app.test_client()


@pytest.fixture
def workout():
    """The small workout with its movements, ready to be stored."""
    return completed(checked(small_workout()))


@dataclass
class Published:
    """A workout the class can see, and its coach's secret."""

    code: str
    secret: str
    path: str

    def row(self):
        """How it stands in the store now."""
        with closing(database.connect(self.path)) as db:
            return workouts.get(db, self.code)


@pytest.fixture
def published(app, workout):
    """A published workout."""
    path = app.config["DATABASE"]
    with closing(database.connect(path)) as db:
        stored, secret = workouts.create(db, workout)
        workouts.publish(db, stored.code, 1)
    return Published(stored.code, secret, path)


@pytest.fixture
def coach(app, published):
    """Its coach, who came in by the coach link."""
    client = app.test_client()
    page = client.get(f"/c/{published.code}")
    answer = client.post(f"/c/{published.code}/enter", data=fields(page) | {"secret": published.secret})
    assert answer.status_code == 303
    return client
