"""What a phone that can do less is told, and the warm-up that follows the athlete's own break-up."""

from datetime import UTC, datetime

import pytest

from .conftest import go_to, kept, open_class
from .player_pages import heat_in, open_warm_up, start
from .test_accessibility import violations
from .test_try_own import open_own

pytestmark = pytest.mark.browser
APPLE = "Mozilla/5.0 (iPhone; CPU iPhone OS 15_6 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/15.6 Mobile/15E148 Safari/604.1"


@pytest.fixture
def apple(new_page, class_links):
    """A phone of Apple's that knows no wake lock."""
    page = new_page(keeps=True, user_agent=APPLE)
    page.add_init_script("delete Navigator.prototype.wakeLock;")
    open_class(page, class_links[0])
    yield page
    assert page.faults == []


def test_a_phone_without_a_wake_lock_says_how_to_keep_the_screen_on_before_it_matters(apple):
    open_warm_up(apple)
    assert "Auto-Lock" in apple.inner_text("[data-warm-up-around] [data-screen-hint]")
    go_to(apple, "card")
    assert apple.locator('[data-screen="card"] [data-screen-hint]').is_visible()
    assert violations(apple) == []


def test_the_home_screen_is_advised_until_it_is_understood(apple):
    notice = apple.locator('[data-notice="home-screen"]')
    notice.wait_for()
    assert "Add to Home Screen" in notice.inner_text()
    notice.get_by_role("button").click()
    assert notice.count() == 0
    assert kept(apple, "athlete")["homeScreen"] == "told"
    apple.reload()
    apple.wait_for_selector("[data-saved]:not([hidden])")
    assert notice.count() == 0


def test_other_phones_are_told_neither(new_page, class_links):
    page = new_page()
    open_class(page, class_links[0])
    open_warm_up(page)
    assert page.locator("[data-screen-hint]:visible").count() == 0
    assert page.locator('[data-notice="home-screen"]').count() == 0


def where_it_is_afternoon():
    """A time zone in which it is between three and four: before nine the warm-up is another."""
    ahead = (15 - datetime.now(UTC).hour + 11) % 24 - 11  # hours, -11 to 12
    return f"Etc/GMT{-ahead:+d}"  # these names count westwards


def test_a_near_heat_leaves_time_to_begin(new_page, class_links):
    page = new_page(timezone_id=where_it_is_afternoon())
    open_class(page, class_links[0])
    heat_in(page, 20)
    open_warm_up(page)
    minutes, _seconds = page.inner_text("[data-warm-up-now] .numeral").split(":")
    assert minutes in ("1", "2")
    start(page)
    assert page.inner_text("[data-player-line]") == ""


def test_bursts_follow_a_break_up_of_ones_own(new_page, class_links, keen):
    page = new_page(storage_state=keen)
    open_own(page, class_links[0])
    block = page.locator("[data-own-block]").first
    for place in range(block.locator("[data-own-set]").count()):
        size = block.locator("[data-own-set]").nth(place)
        size.click()
        for _turn in range(int(size.inner_text()) - 1):
            page.get_by_role("button", name="Less: Size").click()
    page.get_by_role("button", name="Make it fit at the end").first.click()
    page.get_by_role("button", name="Keep mine").click()
    open_warm_up(page)
    page.wait_for_function("() => document.querySelector('[data-warm-up-checks]').textContent.includes('as many as your largest set')")
