"""A phone on its side: the next step stays in reach of a thumb."""

import pytest

from .conftest import SMALL, go_to, overflow_px

pytestmark = pytest.mark.browser
WIDE = {"width": 740, "height": 360}
LOW = {"width": 568, "height": 320}


@pytest.mark.parametrize("screen", ["briefing", "heat", "numbers", "plan", "own", "warm-up"])
def test_the_next_step_is_on_the_screen_and_leaves_most_of_it_free(look_at, class_links, screen):
    page = look_at(class_links[0], size=WIDE)
    go_to(page, screen)
    button = page.locator(f'[data-screen="{screen}"] .button--next:visible').first
    box = button.bounding_box()
    assert box["y"] + box["height"] <= WIDE["height"]
    assert 44 <= box["height"] <= 60  # px; 44 is the target size of WCAG 2.2, 2.5.5; above it the page is hidden, chosen
    page.evaluate("scrollTo(0, 400)")
    box = button.bounding_box()
    assert 0 <= box["y"] and box["y"] + box["height"] <= WIDE["height"]
    assert overflow_px(page) <= 0


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("size", [SMALL, WIDE, LOW], ids=["small", "on its side", "small on its side"])
def test_the_warm_ups_start_is_whole_above_the_next_step(look_at, class_links, size, language):
    page = look_at(f"{class_links[0]}?lang={language}", size=size)
    go_to(page, "warm-up")
    start, onward = page.locator("[data-warm-up-start]"), page.locator('[data-screen="warm-up"] .button--next')
    start.wait_for()
    page.wait_for_function("() => document.querySelector('[data-warm-up-steps]').children.length > 0")
    box, bar = start.bounding_box(), onward.bounding_box()
    assert box["y"] + box["height"] <= bar["y"] and bar["y"] + bar["height"] <= size["height"]
    for corner in ((box["x"] + 8, box["y"] + 4), (box["x"] + box["width"] - 8, box["y"] + box["height"] - 4)):
        assert page.evaluate("([x, y]) => document.elementFromPoint(x, y).closest('[data-warm-up-start]') !== null", corner)
