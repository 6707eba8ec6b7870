"""What the phone installs: worker, manifest, engine, words, static files."""

import json

from flask import Blueprint, Response, abort, render_template
from flask_babel import gettext

from webapp.assets import ASK_FIRST, FOR_EVER, Asset, assets, respond
from webapp.languages import LANGUAGES, current, direction

bp = Blueprint("phone", __name__)


@bp.get("/static/<version>/<path:name>")
def static_file(version, name):
    """A static file. An old page asks under an old version: it gets what there is, but must not keep it."""
    asset = assets().files.get(name)
    if asset is None:
        abort(404)
    return respond(asset, FOR_EVER if version == assets().version else ASK_FIRST)


@bp.get("/engine.js")
def engine():
    """The engine as one module."""
    return respond(assets().engine)


@bp.get("/words/<language>.json")
def words(language):
    """The texts of the phone's modules and of the engine's codes."""
    if language not in LANGUAGES:
        abort(404)
    return respond(assets().words[language])


@bp.get("/service-worker.js")
def service_worker():
    """At the root, so that it answers for every page."""
    return respond(assets().service_worker())


@bp.get("/manifest.webmanifest")
def manifest():
    """How the tool presents itself when installed."""
    data = {
        "id": "/",
        "name": "Heatside",
        "short_name": "Heatside",
        "description": gettext("A plan for the workout, for you, on your own phone, with no connection."),
        "lang": current(),
        "dir": direction(current()),
        "start_url": "/",
        "scope": "/",
        "display": "standalone",
        "background_color": "#f5f2ea",
        "theme_color": "#ffd428",
        "icons": list(_icons()),
    }
    return respond(Asset(json.dumps(data, ensure_ascii=False).encode(), "application/manifest+json"))


@bp.get("/offline")
def offline():
    """Shown by the worker for a page that was never opened before."""
    return render_template("offline.html")


@bp.get("/health")
def health():
    """For whoever watches the server."""
    return {"status": "ok", "version": assets().version}


@bp.get("/robots.txt")
def robots():
    """Links to workouts are for the people who were given them."""
    return Response("User-agent: *\nDisallow: /w/\nDisallow: /c/\n", mimetype="text/plain")


def _icons():
    """Every icon there is; its name tells size and purpose: icon-192.png, maskable-512.png."""
    for name in assets().files:
        if name.startswith(("icons/icon-", "icons/maskable-")) and name.endswith(".png"):
            size = name.rpartition("-")[2].removesuffix(".png")
            purpose = "maskable" if "maskable" in name else "any"
            yield {"src": assets().url(name), "sizes": f"{size}x{size}", "type": "image/png", "purpose": purpose}
