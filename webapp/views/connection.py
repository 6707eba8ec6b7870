"""The store, one connection per request."""

from flask import abort, current_app, g

from webapp.store import database, workouts


def init_app(app):
    """Close the connection when the request is over."""
    app.teardown_appcontext(_close)


def db():
    """This request's connection."""
    if "db" not in g:
        g.db = database.connect(current_app.config["DATABASE"])
    return g.db


def stored_or_404(code):
    """The workout with this code, or the page that says there is none."""
    stored = workouts.get(db(), code)
    if stored is None:
        abort(404)
    return stored


def shown_or_gone(code):
    """The workout as its class sees it; a withdrawn one is gone, a draft does not exist yet."""
    stored = stored_or_404(code)
    if stored.state == workouts.DRAFT:
        abort(404)
    if stored.state == workouts.WITHDRAWN:
        abort(410)
    return stored


def _close(error):
    connection = g.pop("db", None)
    if connection is not None:
        connection.close()
