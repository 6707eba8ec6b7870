"""The application factory."""

from datetime import timedelta

from flask import Flask
from werkzeug.middleware.proxy_fix import ProxyFix

from webapp import assets, headers, languages, limits, measures, shape_words, views
from webapp.store import database, settings

# The coach's form at its fullest (4 parts of 4 options of 20 blocks) sends 202 kB with short words, 295 kB with a line of note and advice in every
# block and 601 kB with all of them as long as they may be, in Spanish (measured 2026-11-26). Twice that is no form of ours; to turn a
# hostile megabyte away takes half a second.
LARGEST_REQUEST_BYTES = 1024 * 1024


def create_app(test_config=None):
    """The web application; `test_config` overrides the settings below."""
    app = Flask(__name__, template_folder="../templates", static_folder=None)
    app.config.from_mapping(
        DATABASE="heatside.sqlite3",
        PROXIES=0,     # how many proxies of our own stand in front of the server
        WATCH=False,   # read changed files again, for those who work on the pages
        MAX_CONTENT_LENGTH=LARGEST_REQUEST_BYTES,
        MAX_FORM_MEMORY_SIZE=LARGEST_REQUEST_BYTES,  # Flask's own, 500 kB, would turn away what the line above lets in
        SESSION_COOKIE_HTTPONLY=True,
        SESSION_COOKIE_SAMESITE="Lax",
        PERMANENT_SESSION_LIFETIME=timedelta(days=365),
        WTF_CSRF_TIME_LIMIT=None,  # a form may lie open for days; the token stays bound to the session
    )
    app.config.from_mapping(test_config or {})
    app.config["TEMPLATES_AUTO_RELOAD"] = app.config["WATCH"]

    database.prepare(app.config["DATABASE"])
    app.config["SECRET_KEY"] = settings.signing_key_of(app.config["DATABASE"])

    headers.init_app(app)
    languages.init_app(app)
    limits.init_app(app)
    measures.init_app(app)
    shape_words.init_app(app)
    assets.init_app(app)
    views.init_app(app)

    proxies = app.config["PROXIES"]
    if proxies:
        app.wsgi_app = ProxyFix(app.wsgi_app, x_for=proxies, x_proto=proxies, x_host=proxies)
    return app
