"""A phone on its side: the next step stays in reach of a thumb."""

import pytest

from .conftest import go_to, overflow_px

pytestmark = pytest.mark.browser
WIDE = {"width": 740, "height": 360}


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
