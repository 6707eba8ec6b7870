"""Takes the README's pictures: `python -m pytest tests/browser/readme_pictures.py`. Not part of the test run: its name says so."""

from pathlib import Path

import pytest
from .conftest import go_to, open_class

FOLDER = Path(__file__).resolve().parents[2] / ".ci" / "pictures"
SETTLE_MS = 700  # after a change of screen: drawings are made after the frame is painted


def take(page, name):
    """Save what the phone shows."""
    page.wait_for_timeout(SETTLE_MS)
    FOLDER.mkdir(exist_ok=True)
    page.screenshot(path=FOLDER / f"{name}.png")


@pytest.mark.browser
def test_home_and_path(new_page, server, class_links):
    """The home page and one athlete's path, each screen as it opens."""
    page = new_page()
    page.goto(server)
    take(page, "home")
    open_class(page, class_links[0])
    for screen in ("briefing", "numbers", "plan", "warm-up", "card"):
        go_to(page, screen)
        page.evaluate("scrollTo(0, 0)")
        take(page, screen)


@pytest.mark.browser
def test_strength_left(new_page, class_links):
    """The picture of the strength left, further down the break-up."""
    page = new_page()
    open_class(page, class_links[0])
    go_to(page, "plan")
    page.locator(".curve__legend").first.evaluate("node => { node.scrollIntoView({ block: 'end' }); scrollBy(0, 110); }")
    take(page, "strength-left")
