"""The front door."""

from flask import Blueprint, render_template

from webapp import briefing
from webapp.store import workouts
from webapp.views.connection import db

bp = Blueprint("home", __name__)


@bp.get("/")
def index():
    """What the tool is for, and the demo workouts."""
    demos = [(stored, briefing.summary(stored.published)) for stored in workouts.demos(db())]
    return render_template("home.html", demos=demos)
