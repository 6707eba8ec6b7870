"""The same class open on two pages of one phone: one leads the sounds, and what is said on one is known on the other."""

import pytest

from .conftest import go_to, kept, open_class, wait_for_plan
from .player_pages import QUIET_AUDIO, heat_in, place, start

pytestmark = pytest.mark.browser

def tones_to_come(page):
    """How many tones this page has scheduled that nobody called off."""
    return page.evaluate("() => tones.filter((tone) => !tone.stopped && tone.at_s > performance.now() / 1000).length")


@pytest.fixture
def two(new_page, class_links):
    """Two pages of one phone with the same class, the first with a warm-up under way."""
    first = new_page(keeps=True)
    first.context.add_init_script(QUIET_AUDIO)
    first.context.clock.install()
    open_class(first, class_links[0])
    heat_in(first, 30)
    second = first.context.new_page()
    open_class(second, class_links[0])
    start(first)
    return first, second


def test_only_one_of_two_pages_beeps_and_the_other_says_so(two):
    first, second = two
    go_to(second, "warm-up")
    second.wait_for_selector("[data-player]:not([hidden])")
    second.click("[data-player-open-more]")   # a touch lets sound out
    first.wait_for_selector("[data-player-silent]:not([hidden])")
    first.context.clock.run_for(1000 * (kept(first)["warmUp"]["steps"][0]["seconds"] - 6))
    second.wait_for_function("() => tones.some((tone) => !tone.stopped && tone.at_s > performance.now() / 1000)")
    assert [tones_to_come(first), tones_to_come(second) > 0] == [0, True]


def test_the_other_page_takes_over_when_the_leading_one_goes(two):
    first, second = two
    go_to(second, "warm-up")
    first.wait_for_selector("[data-player-silent]:not([hidden])")
    second.close()
    first.wait_for_selector("[data-player-silent]", state="hidden")


def test_a_touch_takes_the_lead_and_the_step_is_the_same_on_both(two):
    first, second = two
    go_to(second, "warm-up")
    first.wait_for_selector("[data-player-silent]:not([hidden])")
    first.click("[data-player-skip]")
    second.wait_for_selector("[data-player-silent]:not([hidden])")
    assert place(first)[0] == 2
    second.wait_for_function("() => document.querySelector('[data-player-count]').textContent.startsWith('2')")


def test_numbers_given_on_one_page_are_not_lost_by_the_other(new_page, class_links):
    first = new_page(keeps=True)
    open_class(first, class_links[0])
    second = first.context.new_page()
    open_class(second, class_links[0])
    for page, turn in ((first, 0), (second, 1)):
        go_to(page, "numbers")
        field = page.locator("[data-question] input:visible").nth(turn)
        wait_for_plan(page, lambda field=field: (field.fill("9"), field.blur()))
    assert len(kept(first)["answers"]) == 2
