"""What the class opens: the workout's page, its data and its words."""

import json

from flask import Blueprint, Response, abort, render_template, request

from webapp import briefing
from webapp.catalogues import translator
from webapp.languages import LANGUAGES
from webapp.views.connection import shown_or_gone
from webapp.workouts import texts

bp = Blueprint("athlete", __name__, url_prefix="/w/<code>")


@bp.get("")
def class_page(code):
    """The whole path of an athlete, in one page that a phone can keep."""
    workout = shown_or_gone(code).published
    page = render_template(
        "athlete/class.html", workout=workout, code=code, briefing=briefing.of(workout), workout_json=_script(workout)
    )
    return _kept(Response(page, mimetype="text/html"))


@bp.get("/warm-up")
def class_warm_up(code):
    """The warm-up of the whole class, for the gym's screen: one clock, nobody's own loads."""
    workout = shown_or_gone(code).published
    page = render_template("athlete/class_warm_up.html", workout=workout, code=code, workout_json=_script(workout))
    return _kept(Response(page, mimetype="text/html"))


@bp.get("/json")
def workout_json(code):
    """The workout as data; its revision tells a phone that there is a newer one."""
    return _kept(Response(_dump(shown_or_gone(code).published), mimetype="application/json"))


@bp.get("/words/<language>.json")
def words(code, language):
    """The library's texts in this workout, in one language."""
    if language not in LANGUAGES:
        abort(404)
    translate = translator(language)
    pairs = ((text, translate(text)) for text in texts(shown_or_gone(code).published))
    found = {text: other for text, other in pairs if other != text}
    return _kept(Response(_dump({"lang": language, "messages": found}), mimetype="application/json"))


def _kept(response):
    """Always asked for again, never sent again unchanged; search engines are asked to stay away."""
    response.headers["Cache-Control"] = "no-cache"
    response.headers["X-Robots-Tag"] = "noindex"
    response.add_etag()
    return response.make_conditional(request)


def _dump(data):
    return json.dumps(data, ensure_ascii=False, sort_keys=True)


def _script(data):
    """JSON that cannot end the script element it stands in."""
    return _dump(data).replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
