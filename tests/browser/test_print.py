"""On paper: card and briefing on one page each, A5, A4 and Letter."""

import re

import pytest

from .conftest import go_to, open_class

pytestmark = pytest.mark.browser


def page_count(pdf):
    """Pages of a PDF: its page objects, not the tree above them."""
    return len(re.findall(rb"/Type\s*/Page(?!s)", pdf))


PAPERS = {"card": ["A4", "A5", "Letter"], "briefing": ["A4", "Letter"]}


@pytest.mark.parametrize("place", range(4))
@pytest.mark.parametrize("screen", PAPERS)
def test_fits_one_page(new_page, class_links, screen, place):
    page = new_page()
    open_class(page, class_links[place])
    go_to(page, screen)
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    counts = {paper: page_count(page.pdf(format=paper)) for paper in PAPERS[screen]}
    assert set(counts.values()) == {1}, counts


def test_paper_is_black_on_white_and_holds_no_buttons(phone):
    go_to(phone, "card")
    phone.emulate_media(media="print", color_scheme="dark")
    assert phone.evaluate("getComputedStyle(document.querySelector('.card')).color") == "rgb(0, 0, 0)"
    assert not phone.locator("[data-card-print]").is_visible()
