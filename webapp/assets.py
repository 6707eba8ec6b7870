"""Static files, addressed by a version over the content of everything a page is made of.

All of it is read once, compressed once and answered from memory. Relative imports between modules stay
inside one version, so everything under it may be kept for ever.
"""

import gzip
import hashlib
import json
import mimetypes
import posixpath
import re
from dataclasses import dataclass
from functools import cached_property, lru_cache
from pathlib import Path

import brotli
from flask import Response, current_app, request

from webapp.catalogues import phone_messages, po_path, translated_languages
from webapp.languages import LANGUAGES, ROOT

STATIC = ROOT / "static"
TEMPLATES = ROOT / "templates"
ENGINE = ROOT / "webapp" / "engine"
MODULE_ONLY = {"js/service-worker.js"}  # served from the root, never as a static file
COMPRESSED_TYPES = ("text/", "application/json", "application/manifest+json", "image/svg+xml")
SMALLEST_COMPRESSED_BYTES = 500
STATIC_IMPORT = re.compile(r'^import [^;]*? from "(\.[^"]+)"', re.MULTILINE)
FOR_EVER = "public, max-age=31536000, immutable"
ASK_FIRST = "no-cache"


@dataclass(frozen=True)
class Asset:
    """The bytes of one address, plain and compressed."""

    body: bytes
    mimetype: str

    @cached_property
    def br(self):
        """As small as it gets: a fifth smaller than gzip, half a second once for the engine."""
        return brotli.compress(self.body, quality=11)

    @cached_property
    def gzip(self):
        """For whoever does not know better; without a time stamp, so that the same content is the same bytes."""
        return gzip.compress(self.body, 9, mtime=0)

    @cached_property
    def etag(self):
        """A name of the content."""
        return hashlib.sha256(self.body).hexdigest()[:20]


class Assets:
    """Everything that is the same for all people: files, engine, words."""

    def __init__(self):
        self.files = {name: _file(name) for name in _names()}
        self.engine = Asset(engine_source().encode(), "text/javascript")
        self.words = {language: _words(language) for language in LANGUAGES}
        self.version = self._version()

    def url(self, path):
        """Where a page finds a static file."""
        return f"/static/{self.version}/{path}"

    def imports(self, path, known=()):
        """What a module imports at once, and what that imports: a page names them all, so that none waits for another to be read."""
        found = list(known)
        for target in STATIC_IMPORT.findall(self.files[path].body.decode()):
            name = posixpath.normpath(posixpath.join(posixpath.dirname(path), target))
            if name not in found:
                found = self.imports(name, [*found, name])
        return found

    def precache(self):
        """Every address a phone keeps from the first visit on."""
        return [self.url(name) for name in self.files] + [
            "/engine.js", *(f"/words/{language}.json" for language in LANGUAGES), "/offline"
        ]

    def service_worker(self):
        """The worker with its version and list filled in."""
        text = (STATIC / "js" / "service-worker.js").read_text("utf-8")
        text = text.replace('"__VERSION__"', json.dumps(self.version))
        text = text.replace('["__PRECACHE__"]', json.dumps(self.precache()))
        return Asset(text.encode(), "text/javascript")

    def _version(self):
        digest = hashlib.sha256()
        parts = [*self.files.items(), ("engine", self.engine), *self.words.items()]
        for name, asset in parts:
            digest.update(name.encode() + b"\0" + asset.body + b"\0")
        # Pages are kept on the phone too: a change of theirs, or of their words, must reach it.
        pages = [*sorted(TEMPLATES.rglob("*.html")), STATIC / "js" / "service-worker.js"]
        for path in [*pages, *(po_path(language) for language in translated_languages())]:
            digest.update(path.read_bytes() if path.exists() else b"")
        return digest.hexdigest()[:12]


def init_app(app):
    """Read everything and give templates `asset(path)`, `imports_of(path)` and `version`."""
    app.extensions["assets"] = Assets()
    app.context_processor(lambda: {"asset": assets().url, "version": assets().version, "imports_of": assets().imports})
    app.after_request(_compress)


def assets():
    """The running application's assets; read anew on every page while somebody works on them."""
    if current_app.config["WATCH"] and request.endpoint not in ("phone.static_file", None):
        phone_messages.cache_clear()
        current_app.extensions["assets"] = Assets()
    return current_app.extensions["assets"]


def respond(asset, cache_control=ASK_FIRST):
    """An answer with one asset, compressed if the browser can, empty if it has it already."""
    encoding = _encoding_wanted(asset.mimetype, len(asset.body), ("br", "gzip"))
    response = Response(getattr(asset, encoding) if encoding else asset.body, mimetype=asset.mimetype)
    if encoding:
        response.headers["Content-Encoding"] = encoding
    response.vary.add("Accept-Encoding")
    response.headers["Cache-Control"] = cache_control
    response.set_etag(asset.etag)
    return response.make_conditional(request)


def _compress(response):
    """Compress pages and data as they go out.

    Answers that must not be stored carry a person's form; compressing a secret beside what somebody
    else may have put into the page would let its length tell about the secret.
    """
    if response.direct_passthrough or response.status_code != 200 or response.cache_control.no_store:
        return response
    if "Content-Encoding" not in response.headers and _encoding_wanted(response.mimetype, len(response.data), ("gzip",)):
        response.data = gzip.compress(response.data, 6, mtime=0)
        response.headers["Content-Encoding"] = "gzip"
    response.vary.add("Accept-Encoding")
    return response


def _encoding_wanted(mimetype, size, encodings):
    """The first of the encodings that the browser takes, None where compressing would not pay."""
    if not (mimetype or "").startswith(COMPRESSED_TYPES) or size < SMALLEST_COMPRESSED_BYTES:
        return None
    return next((encoding for encoding in encodings if request.accept_encodings[encoding] > 0), None)


def _names():
    paths = (path for path in sorted(STATIC.rglob("*")) if path.is_file())
    names = (path.relative_to(STATIC).as_posix() for path in paths)
    return [name for name in names if name not in MODULE_ONLY and not Path(name).name.startswith(".")]


def _file(name):
    mimetype = "text/javascript" if name.endswith(".js") else mimetypes.guess_type(name)[0]
    return Asset((STATIC / name).read_bytes(), mimetype or "application/octet-stream")


def engine_source():
    """The text of the engine's module, built anew where a source is newer."""
    newest_s = max(path.stat().st_mtime for path in ENGINE.glob("*.py"))
    return _built_engine(newest_s)


@lru_cache(maxsize=1)
def _built_engine(newest_s):
    """Building takes a second or more, so it is done again only when a source is newer."""
    from webapp.phone import build_engine

    return build_engine()


def _words(language):
    from webapp.wording import templates

    data = {"lang": language, "messages": phone_messages(language), "codes": templates(language)}
    return Asset(json.dumps(data, ensure_ascii=False, sort_keys=True).encode(), "application/json")
