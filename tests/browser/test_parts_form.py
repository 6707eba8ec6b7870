"""A workout in parts on a small phone: from the coach's form to the break-up of an athlete."""

import re

import pytest

from .conftest import go_to, open_class, overflow_px
from .test_accessibility import violations
from .test_coach_pages import BLOCK, fill_in, go_on

pytestmark = pytest.mark.browser
SECOND = "[name=parts-0-options-0-blocks-0-{}]"


def add_part(page, server):
    """A form with one part filled in and a second one asked for."""
    fill_in(page, server, "Push-up")
    page.fill(BLOCK.format("amount"), "8")
    page.check("[name=shape][value=amrap]", force=True)
    page.fill("[name=time]", "5:00")
    page.click("button[value='add-part']")


def fill_in_parts(page):
    """What the two parts still need."""
    page.fill("[name=part_title]", "First lamp")
    page.fill("[name=rest_after]", "3:00")
    page.fill("[name=parts-0-part_title]", "Second lamp")
    page.check("[name=parts-0-shape][value=load]", force=True)
    page.fill("[name=parts-0-time]", "6:00")
    page.fill(SECOND.format("movement"), "Front squat")
    page.fill(SECOND.format("amount"), "1")


@pytest.mark.parametrize("javascript", [True, False])
def test_from_the_form_to_the_break_up_of_both_parts(new_page, server, javascript):
    page = new_page(java_script_enabled=javascript)
    add_part(page, server)
    assert 0 <= page.locator("#parts-0").bounding_box()["y"] < 740, "the page opens at the new part"
    fill_in_parts(page)
    go_on(page)
    go_on(page)
    link = page.wait_for_selector("a[href*='/w/']").get_attribute("href")
    assert page.faults == []

    phone = new_page()
    open_class(phone, server + "/w/" + re.search(r"/w/([^/#?]+)", link)[1])
    briefing = phone.inner_text("[data-screen=briefing]")
    assert "First lamp" in briefing and "Then a rest of 3 minutes." in briefing and "Second lamp" in briefing
    go_to(phone, "plan")
    phone.wait_for_selector("[data-plan-head] .numeral")
    assert re.search(
        r"Part 1: First lamp Likely score \d+ rounds.+Part 2: Second lamp Likely heaviest lift [\d.]+ kg", " ".join(phone.inner_text("[data-plan-head]").split())
    )
    assert overflow_px(phone) <= 0
    assert phone.faults == []


def test_each_part_shows_the_fields_of_its_own_shape(new_page, server):
    page = new_page(java_script_enabled=False)
    add_part(page, server)
    page.check("[name=parts-0-shape][value=intervals]", force=True)
    assert [page.is_visible(f"[name={name}]") for name in ("time", "interval", "options-0-rounds")] == [True, False, False]
    assert [page.is_visible(f"[name=parts-0-{name}]") for name in ("time", "interval", "options-0-rounds")] == [False, True, False]


def test_after_a_mistake_the_page_opens_where_it_is_said(new_page, server):
    page = new_page()
    add_part(page, server)
    go_on(page)
    assert 0 <= page.locator("[role=alert]").bounding_box()["y"] < 370
    page.click("[role=alert] a >> nth=0")
    assert page.locator(SECOND.format("movement") + "," + SECOND.format("amount")).first.is_visible()


@pytest.mark.parametrize("viewport", [(360, 740), (320, 568), (740, 360)])
@pytest.mark.parametrize("language", ["en", "es"])
def test_nothing_is_wider_than_the_phone(new_page, server, viewport, language):
    page = new_page(viewport=dict(zip(("width", "height"), viewport)))
    add_part(page, server)
    page.click("button[value='add-option']")
    page.click(f"footer [lang={language}]")
    for name in ("part_title", "parts-0-part_title"):
        page.fill(f"[name={name}]", "Lanternlightlongerthanthelane" * 2)
    page.evaluate("document.querySelectorAll('details').forEach(one => { one.open = true; })")
    assert overflow_px(page) <= 0
    go_on(page)
    assert page.locator("[role=alert]").count() == 1 and overflow_px(page) <= 0


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_parts_shut_nobody_out(new_page, server, scheme):
    page = new_page(color_scheme=scheme)
    add_part(page, server)
    page.click("button[value='add-option']")
    assert violations(page) == []
    go_on(page)
    assert violations(page) == []
