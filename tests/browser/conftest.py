"""A real browser against the real server."""

import json

import pytest
from playwright.sync_api import sync_playwright

from .real_server import chromium_options, demo_links, running_server
from .shapes import ALL, GATES, ONE_PULL, publish

PHONE = {"width": 360, "height": 740}
SMALL = {"width": 320, "height": 568}
ON_A_PHONE = {"viewport": PHONE, "locale": "en-GB", "service_workers": "block"}


@pytest.fixture(scope="session")
def server_folder(tmp_path_factory):
    """Where the server keeps its data."""
    return tmp_path_factory.mktemp("server")


@pytest.fixture(scope="session")
def server(server_folder):
    """Address of a server with the demo workouts, on a free port and with a store of its own."""
    with running_server(server_folder) as address:
        yield address


@pytest.fixture(scope="session")
def class_links(server):
    """Addresses of the demo workouts, in the order of the home page."""
    return demo_links(server)


@pytest.fixture(scope="session")
def shape_links(server, server_folder):
    """Addresses of workouts of every other shape, by the names of `shapes.ALL`, of one that is a gate all round and of one in one go."""
    return {name: server + publish(server_folder / "data.sqlite3", workout) for name, workout in {**ALL, "gates": GATES, "one pull": ONE_PULL}.items()}


@pytest.fixture(scope="session")
def playwright_session():
    """One Playwright for all browser tests."""
    with sync_playwright() as playwright:
        yield playwright


@pytest.fixture(scope="session")
def browser(playwright_session):
    """One Chromium; every test gets a context of its own, so none sees what another stored."""
    chromium = playwright_session.chromium.launch(**chromium_options())
    yield chromium
    chromium.close()


@pytest.fixture
def new_page(browser):
    """A function that opens a page in a fresh context: a new phone, so to speak.

    Without `keeps` nothing is kept for a day without connection: the worker fetches a hundred files, which is for tests that look at what is kept.
    """
    contexts = []

    def open_page(keeps=False, **options):
        page = page_of(browser, **({"service_workers": "allow"} if keeps else {}), **options)
        contexts.append(page.context)
        return page

    yield open_page
    for context in contexts:
        context.close()


def page_of(browser, **options):
    """A page in a context of its own that notes the errors nobody caught."""
    page = browser.new_context(**(ON_A_PHONE | options)).new_page()
    page.faults = []
    page.on("pageerror", lambda error: page.faults.append(str(error)))
    return page


@pytest.fixture
def phone(new_page, class_links):
    """The first demo workout, open on a phone and ready."""
    page = new_page()
    open_class(page, class_links[0])
    yield page
    assert page.faults == []


@pytest.fixture(scope="session")
def keen(browser, class_links):
    """What a phone keeps of an athlete who called herself keen, for `storage_state`: her plans break up their sets."""
    page = page_of(browser)
    open_class(page, class_links[0])
    go_to(page, "numbers")
    wait_for_plan(page, lambda: page.locator('input[value="keen"]').check(force=True))
    state = page.context.storage_state(indexed_db=True)
    page.context.close()
    return state


@pytest.fixture(scope="session")
def open_pages():
    """The pages that `look_at` has opened, by what they show."""
    pages = {}
    yield pages
    for page in pages.values():
        page.context.close()


@pytest.fixture
def look_at(browser, open_pages):
    """A function that shows a class page which is opened once for all tests that only look, put back to how it was at first.

    A test that leaves anything on the phone fails: it needs a page of its own, from `new_page`.
    """
    shown = []

    def show(link, size=PHONE, **options):
        key = json.dumps([link, options], sort_keys=True)
        if key not in open_pages:
            open_pages[key] = page_of(browser, **options)
            open_class(open_pages[key], link)
        put_back(open_pages[key], size)
        shown.append((open_pages[key], what_was_said(open_pages[key])))
        return open_pages[key]

    yield show
    for page, before in shown:
        assert page.faults == []
        assert what_was_said(page) == before, "a page that is only looked at was changed"


def put_back(page, size):
    """The first screen of a page, from its top, in ordinary type, unfolded what was unfolded at first."""
    page.emulate_media(media="null", color_scheme="light")
    page.set_viewport_size(size)
    page.evaluate("""() => {
        document.documentElement.dir = 'ltr';
        document.documentElement.removeAttribute('style');
        globalThis.unfolded ??= new Set(document.querySelectorAll('details[open]'));   // when the page was new
        document.querySelectorAll('details').forEach((one) => { one.open = unfolded.has(one); });
    }""")
    go_to(page, "briefing")
    page.evaluate("scrollTo(0, 0)")


def kept(page, key=None):
    """What the phone keeps of this class, or of this person: read from IndexedDB itself."""
    return page.evaluate("""(key) => new Promise((resolve) => {
        const asked = indexedDB.open('heatside', 1);
        asked.onsuccess = () => {
            const room = asked.result.transaction('kept').objectStore('kept');
            const found = room.get(key ?? `class/${location.pathname.split('/')[2]}`);
            found.onsuccess = () => { asked.result.close(); resolve(found.result ?? null); };
        };
    })""", key)


def what_was_said(page):
    """What is kept of an athlete's answers and choices; which screens were opened, and so a draft begun from the plan, are none."""
    return [kept(page, "athlete"), (kept(page) or {}) | dict.fromkeys(["screen", "summary", "draft"])]


def open_class(page, link):
    """Open a class link and wait until the first plan is made."""
    page.goto(link)
    page.wait_for_selector("[data-ready]", state="attached")


def go_to(page, screen):
    """Open one screen of the athlete's path."""
    page.evaluate("name => { location.hash = name; }", screen)
    page.wait_for_selector(f'[data-screen="{screen}"]:not([hidden])')


def wait_until_kept(page):
    """Wait for the tick that says: saved, works offline."""
    page.wait_for_selector("[data-saved]:not([hidden])")


def wait_for_plan(page, act):
    """Do something that changes the plan, and wait for the new one."""
    before = page.get_attribute('[data-screen="plan"]', "data-plan-ready")
    act()
    page.wait_for_function(
        "before => document.querySelector('[data-screen=plan]').dataset.planReady !== before", arg=before
    )


def overflow_px(page):
    """How far the page can be scrolled sideways."""
    return page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
