"""A real browser against the real server."""

import pytest
from playwright.sync_api import sync_playwright

from .real_server import chromium_options, demo_links, running_server

PHONE = {"width": 360, "height": 740}


@pytest.fixture(scope="session")
def server(tmp_path_factory):
    """Address of a server with the demo workouts, on a free port and with a store of its own."""
    with running_server(tmp_path_factory.mktemp("server")) as address:
        yield address


@pytest.fixture(scope="session")
def class_links(server):
    """Addresses of the demo workouts, in the order of the home page."""
    return demo_links(server)


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
    """A function that opens a page in a fresh context: a new phone, so to speak."""
    contexts = []

    def open_page(**options):
        context = browser.new_context(**({"viewport": PHONE, "locale": "en-GB"} | options))
        contexts.append(context)
        page = context.new_page()
        page.faults = []
        page.on("pageerror", lambda error: page.faults.append(str(error)))
        return page

    yield open_page
    for context in contexts:
        context.close()


@pytest.fixture
def phone(new_page, class_links):
    """The first demo workout, open on a phone and ready."""
    page = new_page()
    open_class(page, class_links[0])
    yield page
    assert page.faults == []


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
