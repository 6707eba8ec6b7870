"""Try my own: every edit is answered, failing is said in words, and what is kept is what break-up and card show."""

import re

import pytest

from .conftest import SMALL, go_to, open_class, overflow_px, wait_for_plan, wait_until_kept
from .test_accessibility import violations

pytestmark = pytest.mark.browser
ANSWER = "[data-own-verdict] .verdict__words"
FAILS = re.compile(r"You would fail rep \d+ of [\w -]+, about \d+:\d\d\.")


def open_own(page, link):
    """The own screen of a workout; on the phone of somebody keen, so that the plan breaks up its sets."""
    open_class(page, link)
    go_to(page, "plan")
    page.click('a[href="#own"]')
    page.wait_for_selector(ANSWER)


def answered(page, act):
    """What the answer says after an edit."""
    page.evaluate("selector => { document.querySelector(selector).dataset.old = ''; document.querySelector('[data-own-says]').textContent = ''; }", ANSWER)
    act()
    page.wait_for_selector(f"{ANSWER}:not([data-old])")
    return page.inner_text(ANSWER)


def settled(page):
    """Wait until the last edit is stored and told."""
    page.wait_for_function("selector => document.querySelector('[data-own-says]').textContent === document.querySelector(selector).textContent", arg=ANSWER)


@pytest.fixture
def own(new_page, class_links, keen):
    page = new_page(storage_state=keen)
    open_own(page, class_links[0])
    yield page
    assert page.faults == []


@pytest.fixture
def own_kept(new_page, class_links, keen):
    """The same, kept for a day without connection."""
    page = new_page(keeps=True, storage_state=keen)
    open_own(page, class_links[0])
    wait_until_kept(page)
    yield page
    assert page.faults == []


def sets_of(page, place=0):
    """The sizes of a block's sets; "14\u00d72" on one button are fourteen."""
    sizes = []
    for text in page.locator("[data-own-block]").nth(place).locator("[data-own-set]").all_inner_texts():
        *times, size = re.findall(r"\d+", text)
        sizes += [int(size)] * int(times[0] if times else 1)
    return sizes


def test_untouched_it_is_the_plan(own):
    assert re.search("The same time as the plan|As far as the plan", own.inner_text(ANSWER))
    assert re.search(r"Lowest strength left \([a-z ]+\): \d+%", own.inner_text(ANSWER))   # of one group of several


def test_one_more_in_a_set_is_too_many_until_it_fits(own):
    before = sets_of(own)
    own.locator("[data-own-set]").first.click()
    answered(own, lambda: own.get_by_role("button", name="More: Size").click())
    assert sets_of(own)[0] == before[0] + 1
    assert own.inner_text("[data-own-gap]") == "1 rep too many."
    answered(own, lambda: own.get_by_role("button", name="Make it fit at the end").click())
    assert own.locator("[data-own-gap]").count() == 0
    assert sum(int(size) for size in sets_of(own)) == sum(before)


def test_a_set_taken_out_is_missing_and_one_added_fills_it(own):
    block = own.locator("[data-own-block]").nth(1)
    whole = sum(sets_of(own, 1))
    block.locator("[data-own-set]").first.click()
    answered(own, lambda: block.locator("[data-own-tool=remove]").click())
    assert "missing" in own.inner_text("[data-own-gap]")
    answered(own, lambda: block.get_by_role("button", name="Make it fit at the end").click())
    assert sum(sets_of(own, 1)) == whole


def test_rests_go_by_five_seconds_down_to_the_set_up(own):
    own.locator("[data-own-set]").first.click()
    less = own.get_by_role("button", name="Less: Rest after it")
    rest = own.locator(".slide__value").nth(1)
    before = int(rest.inner_text().split()[0])
    less.click()
    assert int(rest.inner_text().split()[0]) == 5 * ((before - 1) // 5)
    for _ in range(20):
        less.click()
    assert 1 <= int(rest.inner_text().split()[0]) <= 10


def under_finger(page, slide, share):
    """Bring a slide into view and press it at this share of its width: its box, and the height of its middle. [px]"""
    slide.scroll_into_view_if_needed()
    box = slide.bounding_box()
    middle = box["y"] + box["height"] / 2
    page.mouse.move(box["x"] + box["width"] * share, middle)
    page.mouse.down()
    return box, middle


def test_a_finger_on_the_slide_is_answered_and_not_thrown_off(own):
    broken_up = next(block for block in own.locator("[data-own-block]").all() if block.locator("[data-own-set]").count() > 2)
    broken_up.locator("[data-own-set]").first.click()
    box, middle = under_finger(own, broken_up.locator(".slide__range").first, 1 / 3)
    first = answered(own, lambda: own.mouse.move(box["x"] + box["width"] / 2, middle))
    then = answered(own, lambda: own.mouse.move(box["x"] + box["width"] - 4, middle))
    own.mouse.up()
    assert first != then


def who_fails(page):
    """How many of those who could be the athlete fail with the athlete's own, once that is worked out."""
    page.wait_for_selector("[data-own-risk]:not([data-stale]):not(:empty)")
    said = page.inner_text("[data-own-risk]")
    assert re.fullmatch(r"Of 20 people with numbers like yours, (nobody would fail anywhere|\d+ would fail somewhere) with your break-up\.", said)
    return int((re.findall(r"\d+", said) + ["0"])[1])


def test_more_who_could_be_you_fail_going_out_hot(own):
    settled(own)
    before = who_fails(own)
    answered(own, lambda: own.click("[data-own-example=hot]"))
    assert who_fails(own) > before


@pytest.mark.parametrize("example", ["hot", "halves"])
def test_an_example_shows_the_blow_up_in_words_and_picture(own, example):
    text = answered(own, lambda: own.click(f"[data-own-example={example}]"))
    assert FAILS.search(text.replace("\n", " "))
    settled(own)
    assert own.locator("[data-own-curve] .curve__fail").count() == 1
    assert own.locator("[data-own-curve] polyline.curve__before").count() == 1
    assert "about" in own.text_content("[data-own-says]")
    answered(own, lambda: own.click("[data-own-example=plan]"))
    test_untouched_it_is_the_plan(own)


def test_kept_it_is_what_break_up_and_card_show_until_back_to_the_plan(own_kept):
    plan = own_kept.text_content("[data-plan-body] .block__says")
    own_kept.locator("[data-own-set]").first.click()
    for _ in range(2):
        answered(own_kept, lambda: own_kept.get_by_role("button", name="More: Size").click())
    opening = str(sets_of(own_kept)[0])
    wait_for_plan(own_kept, lambda: own_kept.click("[data-own-keep]"))
    assert own_kept.locator("[data-plan-head] [data-mine]").is_visible()
    assert own_kept.text_content("[data-plan-body] .block__says").startswith(f"{opening},")
    own_kept.goto(own_kept.url.split("#")[0])
    own_kept.wait_for_selector("[data-ready]", state="attached")
    go_to(own_kept, "card")
    assert "your own break-up" in own_kept.inner_text("[data-card-score]")
    assert opening in own_kept.locator(".card__block").nth(1).locator("[data-digits]").first.inner_text()
    go_to(own_kept, "plan")
    wait_for_plan(own_kept, lambda: own_kept.click("[data-back-to-plan]"))
    assert own_kept.text_content("[data-plan-body] .block__says") == plan
    assert own_kept.locator("[data-mine]").count() == 0


def test_going_back_loses_nothing_and_keeps_nothing(own_kept):
    plan = own_kept.text_content("[data-plan-body]")
    own_kept.locator("[data-own-set]").first.click()
    answered(own_kept, lambda: own_kept.get_by_role("button", name="More: Size").click())
    tried = sets_of(own_kept)
    settled(own_kept)
    own_kept.go_back()
    own_kept.wait_for_selector('[data-screen="plan"]:not([hidden])')
    assert own_kept.text_content("[data-plan-body]") == plan
    own_kept.reload()
    own_kept.wait_for_selector("[data-ready]", state="attached")
    go_to(own_kept, "own")
    own_kept.wait_for_selector(ANSWER)
    assert sets_of(own_kept) == tried


def test_by_keyboard_alone(own):
    own.locator("[data-own-set]").first.focus()
    own.keyboard.press("Enter")
    own.locator(".slide__range").first.focus()
    before = sets_of(own)[0]
    answered(own, lambda: own.keyboard.press("ArrowRight"))
    assert sets_of(own)[0] == before + 1
    assert own.evaluate("document.activeElement.className") == "slide__range"
    own.locator("[data-own-tool=add]").focus()
    answered(own, lambda: own.keyboard.press("Enter"))


def test_with_no_connection_it_answers_all_the_same(own_kept):
    own_kept.context.set_offline(True)
    assert FAILS.search(answered(own_kept, lambda: own_kept.click("[data-own-example=hot]")).replace("\n", " "))


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_whatever_state_it_is_in(new_page, class_links, keen, scheme):
    page = new_page(color_scheme=scheme, storage_state=keen)
    open_own(page, class_links[0])
    page.locator("[data-own-set]").first.click()
    answered(page, lambda: page.get_by_role("button", name="More: Size").click())
    settled(page)
    assert violations(page) == []
    answered(page, lambda: page.click("[data-own-example=hot]"))
    settled(page)
    assert violations(page) == []


@pytest.mark.parametrize("place, font", [(0, "200%"), (1, "100%"), (3, "200%")])
def test_nothing_is_wider_than_a_small_phone(new_page, class_links, keen, place, font):
    page = new_page(viewport=SMALL, storage_state=keen)
    open_own(page, class_links[place])
    page.evaluate("font => { document.documentElement.style.fontSize = font; }", font)
    page.locator("[data-own-set]").first.click()
    answered(page, lambda: page.click("[data-own-example=halves]"))
    page.locator("[data-own-set]").first.click()
    assert overflow_px(page) <= 0
    heights = page.eval_on_selector_all(".own :is(button, [type=range])", "all => all.filter(one => one.offsetParent).map(one => one.offsetHeight)")
    if font == "100%":
        assert min(heights) >= 44  # px; the target size of WCAG 2.2, 2.5.5
    assert page.faults == []


def test_a_kept_own_plan_that_fails_keeps_the_later_sets_on_the_card(own):
    answered(own, lambda: own.click("[data-own-example=hot]"))
    wait_for_plan(own, lambda: own.click("[data-own-keep]"))
    assert own.locator("[data-if-reached]").count() >= 1
    go_to(own, "card")
    after = own.locator("[data-card-after]").inner_text()
    assert after.startswith("If you get past it") and "Handstand walk: 24\u00a0m" in after


@pytest.mark.parametrize("width, height", [(740, 360), (320, 568)])
def test_the_answer_stays_in_sight_while_a_set_is_changed(new_page, class_links, keen, width, height):
    page = new_page(viewport={"width": width, "height": height}, storage_state=keen)
    open_own(page, class_links[0])
    page.locator("[data-own-block]").nth(1).locator("[data-own-set]").first.click()
    page.get_by_role("button", name="More: Size").scroll_into_view_if_needed()
    answer, keep = page.locator("[data-own-verdict]").bounding_box(), page.locator("[data-own-keep]").bounding_box()
    assert 0 <= answer["y"] and answer["y"] + answer["height"] + 60 < keep["y"]  # px; room for a row of controls between them


@pytest.mark.parametrize("width, height", [(740, 360), (568, 320)])
def test_on_its_side_the_answer_is_in_sight_from_the_start_and_hides_nothing(new_page, class_links, keen, width, height):
    page = new_page(viewport={"width": width, "height": height}, storage_state=keen)
    open_own(page, class_links[0])
    number = page.locator(".verdict__number").bounding_box()
    assert number["y"] + number["height"] <= height
    page.locator("[data-own-block]").nth(1).locator("[data-own-set]").first.click()
    slide, answer = page.locator(".slide__range").first, page.locator("[data-own-verdict]")
    slide.scroll_into_view_if_needed()
    assert answer.bounding_box()["x"] + answer.bounding_box()["width"] <= slide.bounding_box()["x"]   # side by side
    assert answer.bounding_box()["y"] == 0
    assert overflow_px(page) <= 0


@pytest.mark.parametrize("width, height", [(360, 740), (320, 568), (740, 360)])
def test_the_slide_stays_under_the_finger_when_it_becomes_too_many(new_page, class_links, keen, width, height):
    page = new_page(viewport={"width": width, "height": height}, storage_state=keen)
    open_own(page, class_links[0])
    page.locator("[data-own-set]").first.click()
    slide = page.locator(".slide__range").first
    before, middle = under_finger(page, slide, 0.5)
    for share in (0.6, 0.9, 0.2):
        answered(page, lambda share=share: page.mouse.move(before["x"] + before["width"] * share, middle))
        assert page.locator("[data-own-gap]").count() == 1
        assert slide.bounding_box()["y"] == pytest.approx(before["y"], abs=1)   # px
    page.mouse.up()
