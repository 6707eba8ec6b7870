"""From the first open on, everything works with the network off; nothing is lost when the browser dies."""

import os
import re
import signal
import subprocess
import time
import urllib.request

import pytest

from .conftest import go_to, open_class, wait_for_plan, wait_until_kept
from .real_server import FLAGS, SYSTEM_CHROMIUM, free_port

pytestmark = pytest.mark.browser
CONNECT_DEADLINE_S = 20


@pytest.fixture
def kept(new_page, class_links):
    """A phone that has opened the first class link once and then lost its connection."""
    page = new_page(keeps=True)
    open_class(page, class_links[0])
    wait_until_kept(page)
    page.context.set_offline(True)
    return page


def test_second_page_and_all_further_screens_need_no_network(kept, class_links):
    kept.goto(class_links[0])
    kept.wait_for_selector("[data-ready]", state="attached")
    for screen in ("heat", "numbers", "plan", "warm-up", "card", "safety"):
        go_to(kept, screen)
    assert kept.faults == []
    assert kept.locator(".card__block").count() > 1


def test_numbers_changed_offline_give_a_new_plan(kept, class_links):
    kept.goto(class_links[0] + "#numbers")
    kept.wait_for_selector("[data-ready]", state="attached")
    before = kept.text_content("[data-plan-body]")
    field = kept.locator("[data-numbers-needed] input").first
    wait_for_plan(kept, lambda: (field.fill("2,5"), field.blur()))
    assert kept.text_content("[data-plan-body]") != before
    assert field.input_value() == "2.5"


def test_language_can_be_switched_offline_and_stays(kept, class_links):
    kept.goto(class_links[0])
    kept.click('[data-language="es"]')
    kept.wait_for_selector("[data-ready]", state="attached")
    assert kept.get_attribute("html", "lang") == "es"
    kept.goto(class_links[0])
    kept.wait_for_selector("[data-ready]", state="attached")
    assert kept.get_attribute("html", "lang") == "es"


def test_a_page_never_opened_says_so_and_lists_what_is_kept(kept, class_links):
    kept.goto(class_links[1])
    kept.wait_for_selector("[data-kept]:not([hidden])")
    kept.locator("[data-kept-list] a").first.click()
    kept.wait_for_selector("[data-ready]", state="attached")


def test_kept_pages_hold_no_form_token_and_no_redirect(new_page, class_links):
    page = new_page(keeps=True)
    open_class(page, class_links[0])
    wait_until_kept(page)
    kept = page.evaluate("""async () => {
        const found = [];
        for (const name of await caches.keys())
            for (const request of await (await caches.open(name)).keys()) {
                const response = await caches.match(request, {ignoreVary: true});
                found.push([request.url, response.redirected, response.ok, /csrf/i.test(await response.clone().text())]);
            }
        return found;
    }""")
    assert [url for url, redirected, ok, token in kept if redirected or not ok or token] == []
    assert not [url for url, *_ in kept if re.search(r"/(c/|new|json)", url)]


def test_every_file_of_the_precache_list_is_served(server):
    """And the list is generated: the engine, both languages and this test's own module among it."""
    with urllib.request.urlopen(f"{server}/service-worker.js") as answer:
        text = answer.read().decode()
    paths = re.findall(r'"(/[^"]*)"', text[text.index("PRECACHE ="):text.index("KEPT_PATHS")])
    assert {"/engine.js", "/words/en.json", "/words/es.json", "/offline"} <= set(paths)
    assert any(path.endswith("/js/pages/class.js") for path in paths)
    for path in paths:
        with urllib.request.urlopen(server + path) as answer:
            assert answer.status == 200 and answer.url == server + path


def _launch(profile, port, playwright):
    """A browser of our own that can be killed; returns its process and a connection to it."""
    program = str(SYSTEM_CHROMIUM) if SYSTEM_CHROMIUM.exists() else playwright.chromium.executable_path
    for lock in profile.glob("Singleton*"):
        lock.unlink()
    process = subprocess.Popen(
        [program, *FLAGS, "--headless=new", f"--remote-debugging-port={port}", f"--user-data-dir={profile}", "about:blank"],
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True,
    )
    deadline = time.monotonic() + CONNECT_DEADLINE_S
    while True:
        try:
            return process, playwright.chromium.connect_over_cdp(f"http://127.0.0.1:{port}")
        except Exception:
            if time.monotonic() > deadline:
                os.killpg(process.pid, signal.SIGKILL)
                raise
            time.sleep(0.2)


def test_browser_killed_and_started_again_offline_has_everything(playwright_session, class_links, tmp_path):
    """SIGKILL right after typing; then a cold start with no network."""
    profile = tmp_path / "profile"
    profile.mkdir()
    process, browser = _launch(profile, free_port(), playwright_session)
    try:
        page = browser.contexts[0].new_page()
        open_class(page, class_links[0])
        wait_until_kept(page)
        go_to(page, "numbers")
        field = page.locator("[data-numbers-needed] input").first
        wait_for_plan(page, lambda: (field.fill("13"), field.blur()))
    finally:
        os.killpg(process.pid, signal.SIGKILL)
        process.wait()
    process, browser = _launch(profile, free_port(), playwright_session)
    try:
        browser.contexts[0].set_offline(True)
        page = browser.contexts[0].new_page()
        open_class(page, class_links[0])
        assert page.locator('[data-screen="numbers"]').is_visible()
        assert page.locator("[data-numbers-needed] input").first.input_value() == "13"
    finally:
        os.killpg(process.pid, signal.SIGKILL)
        process.wait()
