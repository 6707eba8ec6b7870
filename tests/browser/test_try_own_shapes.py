"""Try my own, and why, for intervals, heaviest lifts and workouts in parts."""

import re

import pytest

from .conftest import SMALL, go_to, open_class, overflow_px, wait_until_kept
from .test_accessibility import violations
from .test_try_own import ANSWER, answered, settled

pytestmark = pytest.mark.browser


@pytest.fixture
def own(new_page, shape_links, keen):
    pages = []

    def open_own(shape, **options):
        page = new_page(viewport=SMALL, storage_state=keen, **options)
        pages.append(page)
        open_class(page, shape_links[shape])
        go_to(page, "own")
        page.wait_for_selector(ANSWER)
        return page

    yield open_own
    assert [fault for page in pages for fault in page.faults] == []


def words(page, selector=ANSWER):
    return " ".join(page.inner_text(selector).split())


def test_intervals_answer_with_the_margin_of_the_tightest(own):
    page = own("fits")
    assert re.match(r"It fits 10 of 10 As much to spare as in the plan\. Tightest is interval \d+: \d+ s to spare\.", words(page))
    page.locator("[data-own-set]").first.click()
    answered(page, lambda: page.locator("[data-own-tool=add]").click())
    answered(page, lambda: page.get_by_role("button", name="Make it fit at the end").first.click())
    assert re.search(r"\d+ s (more|less) to spare than in the plan\.|As much to spare", words(page))


def test_intervals_that_break_name_the_first(own):
    page = own("breaks")
    answered(page, lambda: page.click("[data-own-example=halves]"))
    settled(page)
    text = words(page)
    assert re.search(r"It breaks in interval \d+ .+ Interval \d+ takes .+ too long\.|It fits \d+ of \d+|You would fail rep \d+ of Pull-up in interval \d+", text)
    page.click("[data-own-keep]")
    page.wait_for_selector("[data-plan-head] [data-mine]")
    assert page.locator("[data-back-to-plan]").is_visible()


def test_attempts_answer_with_the_chance_of_each(own):
    page = own("load")
    assert re.match(r"Likely heaviest lift [\d.]+ kg Most likely the same load as in the plan\. How often each goes: ([\d.]+ kg \d+%(, |\.)){4}", words(page))
    before = page.locator(".own__chance").all_inner_texts()
    page.locator("[data-own-set]").nth(1).click()
    answered(page, lambda: page.get_by_role("button", name="More: Load").click())
    after = page.locator(".own__chance").all_inner_texts()
    assert int(after[1][:-1]) < int(before[1][:-1])
    assert after[0] == before[0]
    answered(page, lambda: page.locator("[data-own-tool=add]").click())
    assert page.locator(".own__chance").last.inner_text() == "too late"
    assert "kg too late." in words(page)


def test_starting_heavy_shows_what_it_costs_and_kept_attempts_are_on_the_card(own):
    page = own("load")
    answered(page, lambda: page.click("[data-own-example=hot]"))
    assert re.search(r"no lift|less than in the plan|the same load", words(page))
    assert not page.locator("[data-own-example=halves]").is_visible()
    first = page.locator("[data-own-set] > span").first.inner_text()
    page.click("[data-own-keep]")
    page.wait_for_selector("[data-plan-head] [data-mine]")
    assert page.locator("[data-attempt] .block__big").first.inner_text() == first
    go_to(page, "card")
    assert first.startswith(page.locator("[data-digits]").first.inner_text())
    assert "your own break-up" in page.inner_text("[data-card-score]")


def test_parts_are_tried_one_by_one_and_kept_together(own):
    page = own("parts")
    assert words(page).startswith("Rounds by the end")
    page.locator("[data-own-set]").first.click()
    answered(page, lambda: page.locator("[data-own-tool=add]").click())
    answered(page, lambda: page.locator("[data-own-parts] input").nth(1).check(force=True))
    assert words(page).startswith("Likely heaviest lift")
    assert page.locator("[data-own-blocks] [data-own-attempts]").count() == 1
    answered(page, lambda: page.locator("[data-own-parts] input").nth(0).check(force=True))
    assert "missing" in page.inner_text("[data-own-blocks]") or "too many" in page.inner_text("[data-own-blocks]")
    page.click("[data-own-keep]")
    page.wait_for_selector("[data-plan-head] [data-mine]")
    assert page.locator("[data-plan-head] [data-mine]").count() == 1


@pytest.mark.parametrize("shape, place, lines", [
    ("breaks", 0, r"What gives out first here: .+Two seconds less of every rest: .+"),
    ("load", 1, r"Your heaviest single limits you.+One step heavier, [\d.]+ kg: it goes \d+% of the time instead of \d+%\..+30 s less of the rest after it: the next one at \d+:\d\d"),
])
def test_why_says_what_limits_and_what_a_change_would_do(own, shape, place, lines):
    page = own(shape)
    go_to(page, "plan")
    details = page.locator("[data-why]").nth(place)
    details.locator("summary").click()
    page.wait_for_selector("[data-why][data-told]")
    assert re.search(lines, " ".join(details.inner_text().split()))


def test_with_no_connection_attempts_answer_all_the_same(own):
    page = own("load", keeps=True)
    wait_until_kept(page)
    page.context.set_offline(True)
    assert "Likely heaviest lift" in answered(page, lambda: page.click("[data-own-example=hot]"))


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("shape", ["load", "parts"])
def test_axe_finds_nothing_and_nothing_is_too_wide(own, shape, scheme):
    page = own(shape, color_scheme=scheme)
    page.locator("[data-own-set]").first.click()
    settled(page)
    assert violations(page) == []
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    assert overflow_px(page) <= 0


def test_in_pounds_the_bar_goes_up_by_fives(own):
    page = own("load")
    go_to(page, "numbers")
    page.eval_on_selector("[data-numbers-units]", "units => { units.closest('details').open = true; }")
    page.get_by_label("lb", exact=True).check()
    page.wait_for_function("() => document.querySelector('[data-plan-body]').innerText.includes('\u00a0lb')")
    go_to(page, "card")
    loads = [int(text) for text in page.locator(".card__block .card__tier").all_inner_texts()]
    assert len(loads) > 1 and all(load % 5 == 0 for load in loads)


def test_where_there_is_nothing_to_tap_nobody_is_told_to(look_at, shape_links):
    page = look_at(shape_links["one pull"], size=SMALL)
    go_to(page, "own")
    page.get_by_text("There is nothing to break up by hand in this plan.").wait_for()
    assert "Tap a set" not in page.inner_text('[data-screen="own"]')
