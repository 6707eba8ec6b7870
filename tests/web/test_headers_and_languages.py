"""Headers of every answer, errors in people's language, and which language that is."""

import pytest
from form_reader import words

from webapp.store.database import StoreBusy, StoreFull


@pytest.mark.parametrize("address", ["/", "/nothing", "/engine.js", "/words/en.json", "/service-worker.js", "/new", "/health"])
def test_every_answer_says_what_it_may_load(client, address):
    headers = client.get(address).headers
    policy = headers["Content-Security-Policy"]
    assert "default-src 'none'" in policy and "unsafe" not in policy
    assert "require-trusted-types-for 'script'" in policy and "frame-ancestors 'none'" in policy
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "same-origin"
    assert headers["Cross-Origin-Opener-Policy"] == headers["Cross-Origin-Resource-Policy"] == "same-origin"
    assert "Cache-Control" in headers
    assert headers["X-Frame-Options"] == "DENY" and "max-age=63072000" in headers["Strict-Transport-Security"]


def test_no_page_has_script_or_style_within(client, published):
    for address in ("/", "/new", f"/w/{published.code}", f"/w/{published.code}/sheet", f"/c/{published.code}", "/nothing"):
        page = client.get(address).text
        assert " style=" not in page and "<style" not in page and " onclick" not in page, address
        scripts = [part.partition(">")[0] for part in page.split("<script")[1:]]
        assert all("src=" in tag or 'type="application/json"' in tag for tag in scripts), address


@pytest.mark.parametrize("scheme, name, secure", [("http", "heatside=", False), ("https", "__Host-heatside=", True)])
def test_cookies_are_as_strict_as_the_connection_allows(client, scheme, name, secure):
    cookie = client.get("/new", base_url=f"{scheme}://localhost").headers["Set-Cookie"]
    assert cookie.startswith(name) and "HttpOnly" in cookie and "SameSite=Lax" in cookie and "Path=/" in cookie
    assert ("Secure" in cookie) == secure


@pytest.mark.parametrize("wanted, language", [
    ("en", "en"), ("es", "es"), ("es-MX,en;q=0.5", "es"), ("de-AT, es;q=0.8, en;q=0.5", "es"), ("fr", "en"), ("", "en"),
    ("%%%", "en"), ("es-AR", "es"),
])
def test_the_browsers_wish_is_followed(client, wanted, language):
    answer = client.get("/", headers={"Accept-Language": wanted})
    assert f'<html lang="{language}" dir="ltr">' in answer.text
    assert "Accept-Language" in answer.headers["Vary"]


def test_a_chosen_language_lasts_and_beats_the_browsers(client):
    client.get("/?lang=es")
    assert '<html lang="es"' in client.get("/", headers={"Accept-Language": "en"}).text


def test_fetching_a_page_in_another_language_to_keep_it_changes_nothing(client):
    client.get("/?lang=es", headers={"Sec-Fetch-Mode": "cors"})
    assert '<html lang="en"' in client.get("/", headers={"Accept-Language": "en"}).text


def test_an_unknown_language_is_ignored(client):
    answer = client.get("/?lang=xx")
    assert answer.status_code == 200 and "Set-Cookie" not in answer.headers


@pytest.mark.parametrize("error, status", [(StoreFull, 507), (StoreBusy, 503), (RuntimeError, 500)])
def test_what_goes_wrong_inside_is_told_in_words(app, error, status, monkeypatch):
    def broken(_):
        raise error("secret detail")
    app.config["PROPAGATE_EXCEPTIONS"] = False
    monkeypatch.setattr("webapp.views.home.workouts.demos", broken)
    answer = app.test_client().get("/")
    assert answer.status_code == status
    assert "secret detail" not in answer.text and "To the start page" in words(answer)
    assert "Content-Security-Policy" in answer.headers
