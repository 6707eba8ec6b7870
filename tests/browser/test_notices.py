"""Installing, updating, being withdrawn, a full phone, another program's browser: each is told, none takes anything away."""

import json
import urllib.request

import pytest

from .conftest import go_to, open_class, wait_for_plan, wait_until_kept
from .real_server import chromium_options

pytestmark = pytest.mark.browser
EMBEDDED = "Mozilla/5.0 (Linux; Android 14; Phone; wv) AppleWebKit/537.36 (KHTML, like Gecko) Version/4.0 Chrome/156.0 Mobile Safari/537.36"


def test_is_installable(playwright_session, class_links, tmp_path):
    """Chromium names no reason against, in a profile of its own (private windows cannot install)."""
    context = playwright_session.chromium.launch_persistent_context(str(tmp_path), **chromium_options())
    try:
        page = context.new_page()
        open_class(page, class_links[0])
        wait_until_kept(page)
        session = context.new_cdp_session(page)
        assert session.send("Page.getInstallabilityErrors")["installabilityErrors"] == []
        assert session.send("Page.getAppManifest")["errors"] == []
    finally:
        context.close()


@pytest.mark.parametrize("language", ["en", "es"])
def test_manifest_is_in_the_language_and_has_both_kinds_of_icon(server, language):
    with urllib.request.urlopen(f"{server}/manifest.webmanifest?lang={language}") as answer:
        manifest = json.load(answer)
    assert manifest["lang"] == language
    assert {icon["purpose"] for icon in manifest["icons"]} == {"any", "maskable"}
    assert {"192x192", "512x512"} <= {icon["sizes"] for icon in manifest["icons"]}


@pytest.fixture
def phone(new_page, class_links):
    """The first demo workout on a phone, kept for a day without connection."""
    page = new_page(keeps=True)
    open_class(page, class_links[0])
    wait_until_kept(page)
    yield page
    assert page.faults == []


def test_newer_version_is_offered_and_numbers_are_kept(phone):
    go_to(phone, "numbers")
    field = phone.locator("[data-numbers-needed] input").first
    wait_for_plan(phone, lambda: (field.fill("9"), field.blur()))
    phone.route("**/json", lambda route: route.fulfill(json={"revision": 99}))
    phone.reload()
    notice = phone.locator('[data-notice="newer"]')
    notice.wait_for()
    assert phone.locator("[data-numbers-needed] input").first.input_value() == "9"
    notice.get_by_role("button").click()
    phone.wait_for_selector("[data-ready]", state="attached")
    assert phone.locator("[data-numbers-needed] input").first.input_value() == "9"


def test_withdrawn_workout_is_told_and_stays_usable(phone):
    phone.route("**/json", lambda route: route.fulfill(status=410, body=""))
    phone.reload()
    phone.wait_for_selector('[data-notice="withdrawn"]')
    phone.wait_for_selector("[data-ready]", state="attached")
    go_to(phone, "plan")
    assert phone.locator(".block").count() > 1


def test_inside_another_app_it_says_how_to_get_out(new_page, class_links):
    page = new_page(user_agent=EMBEDDED)
    open_class(page, class_links[0])
    page.wait_for_selector('[data-notice="inside"]')


def test_full_phone_is_told_and_the_plan_still_comes(new_page, class_links):
    page = new_page()
    page.add_init_script("""IDBObjectStore.prototype.put = () => { throw new DOMException("full", "QuotaExceededError"); };""")
    open_class(page, class_links[0])
    page.wait_for_selector('[data-notice="storage"]')
    go_to(page, "plan")
    assert page.locator(".block").count() > 1
