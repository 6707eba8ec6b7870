"""The floor card: digits by visual angle, short cues, both ways up, as a picture."""

import math

import pytest

from .conftest import SMALL, go_to, overflow_px

pytestmark = pytest.mark.browser
PIXEL_MM = 0.16  # one CSS pixel of a phone, 147 to 163 of them to the inch
DIGIT_PX = """() => {
    const pen = document.createElement('canvas').getContext('2d');
    return [...document.querySelectorAll('[data-digits]')].map(node => {
        const style = getComputedStyle(node);
        pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
        return pen.measureText('0').actualBoundingBoxAscent;
    });
}"""


def needed_mm(distance_m, minutes_of_arc):
    """Height that fills an angle: H = 2 D tan(angle / 2)."""
    return 2 * distance_m * 1000 * math.tan(math.radians(minutes_of_arc / 60) / 2)


# Check table after ISO 9241-303: 20' preferred, 16' the least.
@pytest.mark.parametrize("distance_m, minutes_of_arc, expected_mm", [(2, 20, 11.64), (3, 16, 13.96), (2, 16, 9.31), (3, 20, 17.45)])
def test_formula_gives_the_published_heights(distance_m, minutes_of_arc, expected_mm):
    assert needed_mm(distance_m, minutes_of_arc) == pytest.approx(expected_mm, abs=0.005)


@pytest.mark.parametrize("width, height", [(360, 740), (320, 568), (740, 360), (810, 1080)])
def test_sets_are_read_from_two_metres(look_at, class_links, width, height):
    """Every set's number is at least 20 minutes of arc high at 2 m, on any phone, without sideways scrolling."""
    for link in class_links:
        page = look_at(link, size={"width": width, "height": height})
        go_to(page, "card")
        heights_px = page.evaluate(DIGIT_PX)
        assert heights_px and min(heights_px) * PIXEL_MM >= needed_mm(2, 20)
        assert overflow_px(page) <= 0


def test_on_an_ordinary_phone_they_are_read_from_three(look_at, class_links):
    """Where the width allows, 16 minutes of arc at 3 m."""
    phone = look_at(class_links[0])
    go_to(phone, "card")
    assert min(phone.evaluate(DIGIT_PX)) * PIXEL_MM >= needed_mm(3, 16)


def test_no_tier_is_cut_off(look_at, class_links):
    for link in class_links:
        page = look_at(link, size=SMALL)
        go_to(page, "card")
        edges = page.eval_on_selector_all("[data-digits]", "all => all.map(one => one.getBoundingClientRect().right)")
        assert max(edges) <= 320


def test_cues_have_at_most_four_words(look_at, class_links):
    for link in class_links:
        cues = look_at(link).locator(".card__cue").all_text_contents()
        assert cues and all(len(cue.split()) <= 4 for cue in cues)


def test_card_can_be_saved_as_a_picture(look_at, class_links):
    phone = look_at(class_links[0])
    go_to(phone, "card")
    with phone.expect_download() as waiting:
        phone.click("[data-card-image]")
    picture = waiting.value
    assert picture.suggested_filename.endswith(".png")
    with open(picture.path(), "rb") as file:
        assert file.read(8) == b"\x89PNG\r\n\x1a\n"


def test_without_the_page_around_it(look_at, class_links):
    """On the floor nothing else is on the screen."""
    phone = look_at(class_links[0])
    go_to(phone, "card")
    assert not phone.locator(".top").is_visible()
    assert not phone.locator(".foot").is_visible()
