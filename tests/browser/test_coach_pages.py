"""The coach's pages in a real browser: by the link, without JavaScript, on a small phone, for everybody."""

import re

import pytest

from .conftest import SMALL, overflow_px
from .test_accessibility import violations

pytestmark = pytest.mark.browser
BLOCK = "[name=options-0-blocks-0-{}]"


def fill_in(page, server, movement="Push press"):
    """Everything a workout needs."""
    page.goto(server + "/new")
    page.fill("[name=title]", "Brass Bell")
    page.fill(BLOCK.format("movement"), movement)
    page.fill(BLOCK.format("amount"), "24")


def go_on(page):
    """Press the largest button."""
    page.click("button.button--next")


def published(page, server):
    """Set and publish a workout; return its coach link."""
    fill_in(page, server)
    go_on(page)
    link = page.inner_text("section code")
    go_on(page)
    page.wait_for_selector("img.coach-qr")
    return link


def test_the_coach_link_opens_the_page_on_another_device_and_leaves_the_address_bar(new_page, server):
    link = published(new_page(), server)
    other = new_page()
    other.goto(link)
    other.wait_for_selector("h1:has-text('Brass Bell')")
    assert "#" not in other.url
    assert other.faults == []


def test_the_whole_of_it_works_without_javascript(new_page, server):
    page = new_page(java_script_enabled=False)
    link = published(page, server)
    other = new_page(java_script_enabled=False)
    other.goto(link)
    other.fill("[name=secret]", link)
    go_on(other)
    assert other.inner_text("h1") == "Brass Bell"


@pytest.mark.parametrize("shape, shown, hidden", [
    ("for_time", ["cap", "options-0-rounds", "options-0-tie_break"], ["time", "interval", "interval_count"]),
    ("amrap", ["time", "options-0-blocks-0-step"], ["cap", "interval", "options-0-rounds", "options-0-rep_scheme"]),
    ("intervals", ["interval", "interval_count", "options-0-blocks-0-step"], ["cap", "time", "options-0-rounds"]),
    ("load", ["time", "options-0-blocks-0-amount"], ["cap", "options-0-blocks-0-unit", "options-0-blocks-0-step"]),
])
def test_a_shape_shows_its_own_fields_and_no_others(new_page, server, shape, shown, hidden):
    page = new_page(java_script_enabled=False)
    page.goto(server + "/new")
    page.check(f"[name=shape][value={shape}]", force=True)
    assert [name for name in shown if not page.is_visible(f"[name={name}]")] == []
    assert [name for name in hidden if page.is_visible(f"[name={name}]")] == []


def test_changing_the_language_loses_nothing_that_was_typed(new_page, server):
    page = new_page()
    fill_in(page, server)
    page.click("footer [lang=es]")
    assert page.get_attribute("html", "lang") == "es"
    assert (page.input_value("[name=title]"), page.input_value(BLOCK.format("amount"))) == ("Brass Bell", "24")


def test_enter_in_a_field_saves_and_removes_nothing(new_page, server):
    page = new_page()
    fill_in(page, server)
    page.press("[name=title]", "Enter")
    page.wait_for_url(re.compile("/c/"))
    assert page.inner_text("h1") == "Brass Bell"


def test_a_new_block_is_where_the_page_opens(new_page, server):
    page = new_page()
    fill_in(page, server)
    page.click("button[value='add-block:0']")
    box = page.locator("#options-0-blocks-1").bounding_box()
    assert 0 <= box["y"] < 740


def check_every_page(page, server, check):
    """Visit each page of the coach's side and of paper, in the state people meet it."""
    link = published(page, server)
    base = link.partition("#")[0]
    page.locator("details summary").first.click()
    check(page, "coach page")
    fill_in(page, server, "press")
    page.click("details summary")
    page.fill(BLOCK.format("amount"), "-3")
    go_on(page)
    check(page, "form with mistakes")
    for address in ("/", base + "/edit", *(base.replace("/c/", "/w/") + sheet for sheet in ("/qr", "/sheet", "/lane-sheet"))):
        page.goto(address if address.startswith("http") else server + address)
        check(page, address)
    page.context.clear_cookies()
    page.goto(base)
    check(page, "question for the link")
    page.goto(server + "/nothing")
    check(page, "nothing here")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_page_shuts_anybody_out(new_page, server, scheme):
    def check(page, name):
        assert violations(page) == [], name
    check_every_page(new_page(color_scheme=scheme), server, check)


def test_no_page_scrolls_sideways_on_the_smallest_phone(new_page, server):
    def check(page, name):
        assert overflow_px(page) <= 0, name
    check_every_page(new_page(viewport={"width": 320, "height": 568}), server, check)


@pytest.mark.parametrize("language", ["en", "es"])
def test_each_sheet_is_one_page_of_paper(new_page, class_links, language):
    page = new_page()
    for link in class_links:
        for sheet in ("/sheet", "/lane-sheet"):
            page.goto(f"{link}{sheet}?lang={language}")
            for paper in ("A4", "Letter", "A5"):
                pages = len(re.findall(rb"/Type\s*/Page\b(?!s)", page.pdf(format=paper)))
                assert pages == 1, (link, sheet, paper)


def test_sheets_fill_the_page_they_have(new_page, class_links):
    """A4 without its margins is 192 by 279 mm; a briefing sheet takes at least two thirds of it, a lane sheet all of it."""
    page = new_page(viewport={"width": 726, "height": 1054})
    page.emulate_media(media="print")
    filled = {}
    for link in class_links:
        for sheet in ("/sheet", "/lane-sheet"):
            page.goto(link + sheet)
            filled[link, sheet] = page.evaluate("document.querySelector('.sheet').getBoundingClientRect().bottom / innerHeight")
    assert all(share >= (0.97 if sheet == "/lane-sheet" else 0.66) for (_link, sheet), share in filled.items()), filled


def test_the_front_door_is_one_tap_from_a_plan(new_page, server):
    page = new_page()
    page.goto(server)
    page.click("article .button >> nth=0")
    page.wait_for_selector("[data-screen=plan]:not([hidden]) .numeral")
    assert page.faults == []


@pytest.mark.parametrize("language, says", [("en", "That is too much at once, and nothing was sent."), ("es", "Eso es demasiado de una vez y no se ha enviado nada.")])
def test_what_the_server_would_turn_away_is_told_on_the_form_with_all_of_it_there(new_page, server, language, says):
    """On the page of a button already pressed: to come back to that one, a browser would send the old content again."""
    page = new_page(viewport=SMALL)
    page.goto(f"{server}/new?lang={language}")
    page.click("button[value='add-block:0']")
    page.fill("[name=title]", "Brass Bell")
    page.fill(BLOCK.format("movement"), "Push press")
    page.fill(BLOCK.format("amount"), "24")
    page.click("button[value='remove-block:0:1']")
    page.locator("[name=notes]").evaluate("node => { node.value = '\\u0301'.repeat(180000); }")   # once the page is there; six bytes each as sent, over a megabyte
    address = page.url
    go_on(page)
    page.get_by_text(says).wait_for()
    assert page.evaluate("document.activeElement.matches('[data-too-much]')") and page.url == address
    assert page.input_value("[name=title]") == "Brass Bell"
    assert overflow_px(page) <= 0
    page.fill("[name=notes]", "Short.")
    go_on(page)
    assert page.inner_text("h1") == "Brass Bell"
    assert page.faults == []
