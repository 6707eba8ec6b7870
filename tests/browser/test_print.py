"""On paper: card and briefing on one page each, A5, A4 and Letter."""

import re

import pytest

from .conftest import go_to

pytestmark = pytest.mark.browser


def page_count(pdf):
    """Pages of a PDF: its page objects, not the tree above them."""
    return len(re.findall(rb"/Type\s*/Page(?!s)", pdf))


PAPERS = {"card": ["A4", "A5", "Letter"], "briefing": ["A4", "Letter"]}


@pytest.mark.parametrize("place", range(4))
@pytest.mark.parametrize("screen", PAPERS)
def test_fits_one_page(look_at, class_links, screen, place):
    page = look_at(class_links[place])
    go_to(page, screen)
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    counts = {paper: page_count(page.pdf(format=paper)) for paper in PAPERS[screen]}
    assert set(counts.values()) == {1}, counts


@pytest.mark.parametrize("place", range(4))
def test_my_break_up_takes_two_pages_at_most(look_at, class_links, place):
    page = look_at(class_links[place])
    go_to(page, "plan")
    page.wait_for_selector("[data-which]")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    counts = {paper: page_count(page.pdf(format=paper)) for paper in ("A4", "Letter")}
    assert max(counts.values()) <= 2, counts
    page.emulate_media(media="print")
    assert page.locator("[data-plan-why] figure.curve").is_visible() and page.locator("[data-which]").is_visible()
    assert page.evaluate("getComputedStyle(document.querySelector('.head__number')).color") == "rgb(0, 0, 0)"


def test_my_break_up_on_paper_names_the_workout_and_keeps_its_words_apart(look_at, class_links):
    page = look_at(class_links[0])
    go_to(page, "plan")
    page.emulate_media(media="print")
    assert page.locator('[data-screen="plan"] > header .eyebrow').is_visible()
    assert page.evaluate("getComputedStyle(document.querySelector('.head')).borderTopColor") == "rgb(0, 0, 0)"
    after = page.evaluate("[...document.querySelectorAll('.block .block__big')].map((one) => getComputedStyle(one, '::after').content)")
    assert set(after) <= {'". "'}


def test_paper_is_black_on_white_and_holds_no_buttons(look_at, class_links):
    phone = look_at(class_links[0])
    go_to(phone, "card")
    phone.emulate_media(media="print", color_scheme="dark")
    assert phone.evaluate("getComputedStyle(document.querySelector('.card')).color") == "rgb(0, 0, 0)"
    assert not phone.locator("[data-card-print]").is_visible()


def test_what_was_tried_is_on_paper_without_what_it_is_tried_with(look_at, class_links, keen):
    page = look_at(class_links[0], storage_state=keen)
    go_to(page, "own")
    page.wait_for_selector("[data-own-verdict] .verdict__words")
    page.emulate_media(media="print")
    assert page.locator('[data-screen="own"] > header .eyebrow').is_visible() and page.locator("[data-own-verdict] .eyebrow").is_visible()
    assert page.locator("[data-own-set]").first.is_visible()
    assert [one for one in page.locator(".own__add, [data-own-examples], [data-own-how]").all() if one.is_visible()] == []
    inside = page.evaluate("document.querySelector('[data-own-verdict]').getBoundingClientRect().left >= document.querySelector('[data-own-blocks]').getBoundingClientRect().left")
    assert inside
