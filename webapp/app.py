"""The application factory."""

from datetime import timedelta

from flask import Flask
from werkzeug.middleware.proxy_fix import ProxyFix

from webapp import assets, headers, languages, limits, measures, shape_words, views
from webapp.store import database, settings

LARGEST_REQUEST_BYTES = 256 * 1024


def create_app(test_config=None):
    """The web application; `test_config` overrides the settings below."""
    app = Flask(__name__, template_folder="../templates", static_folder=None)
    app.config.from_mapping(
        DATABASE="heatside.sqlite3",
        PROXIES=0,     # how many proxies of our own stand in front of the server
        WATCH=False,   # read changed files again, for those who work on the pages
        MAX_CONTENT_LENGTH=LARGEST_REQUEST_BYTES,
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
