"""A new version of the program: it installs beside the old one and comes in by a tap, with everything kept."""

import json
import threading
import urllib.error
import urllib.request
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from urllib.parse import urlsplit

import pytest

from .conftest import go_to, open_class, wait_for_plan, wait_until_kept

pytestmark = pytest.mark.browser
NEXT = "next-"
KEPT_HEADERS = ("Content-Type", "Cache-Control", "Content-Security-Policy")


class Front(BaseHTTPRequestHandler):
    """Passes everything on to the server, and can pretend that it has another version."""

    def do_GET(self):
        try:
            with urllib.request.urlopen(self.server.behind + self.path.replace(NEXT, "")) as answer:
                self._pass_on(answer.status, answer.headers, answer.read())
        except urllib.error.HTTPError as error:
            self._pass_on(error.code, error.headers, error.read())

    def _pass_on(self, status, headers, body):
        if self.server.is_newer:
            body = body.replace(self.server.version, NEXT.encode() + self.server.version)
        self.send_response(status)
        for name in KEPT_HEADERS:
            if name in headers:
                self.send_header(name, headers[name])
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, *parts):
        """Say nothing: a test's output is its own."""


@pytest.fixture
def front(server):
    """The server behind a front whose version the test can change."""
    front = ThreadingHTTPServer(("127.0.0.1", 0), Front)
    front.behind, front.is_newer = server, False
    with urllib.request.urlopen(f"{server}/health") as answer:
        front.version = json.load(answer)["version"].encode()
    thread = threading.Thread(target=front.serve_forever)
    thread.start()
    yield front
    front.shutdown()
    thread.join()
    front.server_close()


@pytest.fixture
def old_page(new_page, class_links, front):
    """A class page opened and kept before the new version."""
    page = new_page(keeps=True)
    open_class(page, f"http://127.0.0.1:{front.server_port}{urlsplit(class_links[0]).path}")
    wait_until_kept(page)
    go_to(page, "numbers")
    field = page.locator("[data-numbers-needed] input").first
    wait_for_plan(page, lambda: (field.fill("11"), field.blur()))
    front.is_newer = True
    page.evaluate("navigator.serviceWorker.getRegistration().then(one => one.update())")
    page.wait_for_selector('[data-notice="update"]')
    return page


def test_it_waits_and_the_open_page_goes_on(old_page):
    assert old_page.evaluate("caches.keys().then(names => names.length)") == 2
    go_to(old_page, "plan")
    assert old_page.locator(".block").count() > 1


def test_a_tap_brings_it_and_nothing_is_lost(old_page):
    with old_page.expect_navigation():
        old_page.locator('[data-notice="update"]').get_by_role("button").click()
    old_page.wait_for_selector("[data-ready]", state="attached")
    assert old_page.evaluate("caches.keys().then(names => names.filter(name => !name.includes('next-')))") == []
    assert old_page.locator("[data-numbers-needed] input").first.input_value() == "11"
    old_page.context.set_offline(True)
    old_page.reload()
    old_page.wait_for_selector("[data-ready]", state="attached")
