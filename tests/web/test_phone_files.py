"""What a phone installs and keeps: every address answers, versions follow content, all of it compressed."""

import gzip
import json
import re
from urllib.parse import urljoin

import pytest

from webapp import assets as module
from webapp.assets import Assets


@pytest.fixture
def precached(client):
    worker = client.get("/service-worker.js").text
    return json.loads(re.search(r"const PRECACHE = (\[.*?\]);", worker, re.S)[1])


def test_every_precached_address_answers(client, precached):
    assert len(precached) == len(set(precached)) > 10
    for address in precached:
        answer = client.get(address)
        assert answer.status_code == 200, address
        assert "Set-Cookie" not in answer.headers, address


def test_every_static_file_is_precached_but_the_worker(client, precached):
    names = {path.relative_to(module.STATIC).as_posix() for path in module.STATIC.rglob("*") if path.is_file()}
    listed = {address.split("/", 3)[3] for address in precached if address.startswith("/static/")}
    assert names - listed == {"js/service-worker.js"}
    assert {"/engine.js", "/words/en.json", "/words/es.json", "/offline"} <= set(precached)


def test_the_worker_is_filled_in_and_always_asked_for(client, app):
    answer = client.get("/service-worker.js")
    assert "__VERSION__" not in answer.text and "__PRECACHE__" not in answer.text
    assert app.extensions["assets"].version in answer.text
    assert answer.headers["Cache-Control"] == "no-cache"


def test_everything_a_page_names_is_there(client, published):
    for page in ("/", f"/w/{published.code}", "/new", "/offline", f"/w/{published.code}/sheet"):
        named = re.findall(r'(?:href|src)="(/(?:static|engine|manifest|words)[^"]*)"', client.get(page).text)
        assert named
        for address in named:
            assert client.get(address).status_code == 200, (page, address)


def test_every_import_between_modules_is_there(app, client):
    files = app.extensions["assets"]
    for name, asset in files.files.items():
        for target in re.findall(rb'^(?:import|export)[^;]*?from "([^"]+)"', asset.body, re.M) if name.endswith(".js") else ():
            address = urljoin(files.url(name), target.decode())
            assert client.get(address).status_code == 200, (name, target)


def test_static_files_may_be_kept_for_ever_under_their_version_only(client, app):
    version = app.extensions["assets"].version
    assert "immutable" in client.get(f"/static/{version}/css/base.css").headers["Cache-Control"]
    old = client.get("/static/0123456789ab/css/base.css")
    assert old.status_code == 200 and old.headers["Cache-Control"] == "no-cache"


def test_the_version_follows_the_content(app, monkeypatch):
    with app.app_context():
        first, again = Assets().version, Assets().version
        monkeypatch.setattr(module, "engine_source", lambda: "export const plan = 1;")
        assert first == again != Assets().version


@pytest.mark.parametrize("address", ["/", "/engine.js", "/words/es.json", "/service-worker.js"])
def test_answers_are_compressed_for_those_who_can_read_that(client, address):
    plain = client.get(address)
    zipped = client.get(address, headers={"Accept-Encoding": "gzip"})
    assert "Content-Encoding" not in plain.headers
    if len(plain.data) >= module.SMALLEST_COMPRESSED_BYTES:
        assert zipped.headers["Content-Encoding"] == "gzip"
        assert gzip.decompress(zipped.data) == plain.data
    assert "Accept-Encoding" in zipped.headers["Vary"]


def test_the_manifest_speaks_the_language_of_its_page(client):
    data = client.get("/manifest.webmanifest?lang=es").get_json(force=True)
    assert (data["lang"], data["dir"], data["id"]) == ("es", "ltr", "/")
    assert {"any", "maskable"} <= {icon["purpose"] for icon in data["icons"]}
    assert {"192x192", "512x512"} <= {icon["sizes"] for icon in data["icons"]}
    assert all(client.get(icon["src"]).status_code == 200 for icon in data["icons"])


def test_health_and_robots(client):
    assert client.get("/health").get_json()["status"] == "ok"
    assert "Disallow: /w/" in client.get("/robots.txt").text


def test_words_hold_every_code_of_the_engine_in_every_language(client):
    from webapp.wording import WORDS

    for language in ("en", "es"):
        assert set(WORDS) <= set(client.get(f"/words/{language}.json").get_json()["codes"])
