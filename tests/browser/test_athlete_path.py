"""The athlete's way from the class link to the floor card, on small phones, by touch and by keyboard."""

import pytest

from .conftest import SMALL, go_to, open_class, overflow_px, wait_for_plan

pytestmark = pytest.mark.browser
SCREENS = ["briefing", "heat", "numbers", "plan", "warm-up", "card", "safety"]
SIZES = [(360, 740), (320, 568), (740, 360)]
ABSURD = ["-3", "0x10", "dieciséis", "1e400", "NaN", "1000000000", "<b>8</b>"]


def shown(page):
    """The screens that can be seen: one, if all is well."""
    return page.eval_on_selector_all("[data-screen]:not([hidden])", "all => all.map(one => one.dataset.screen)")


@pytest.mark.parametrize("width, height", SIZES)
def test_whole_path_by_the_large_button(new_page, class_links, width, height):
    """Briefing to safety notes, only by the next step, nothing wider than the phone."""
    page = new_page(viewport={"width": width, "height": height}, has_touch=True)
    open_class(page, class_links[0])
    for place, name in enumerate(SCREENS):
        assert shown(page) == [name]
        assert overflow_px(page) <= 0
        if name == "heat":
            page.get_by_label("Soon: in some minutes").tap()
        if name != SCREENS[-1]:
            page.locator(f'[data-screen="{name}"] .button--next').tap()
            page.wait_for_selector(f'[data-screen="{SCREENS[place + 1]}"]:not([hidden])')
    assert page.faults == []


@pytest.mark.parametrize("screen", SCREENS[1:5])
def test_next_step_is_the_largest_control_and_in_reach(look_at, class_links, screen):
    phone = look_at(class_links[0])
    go_to(phone, screen)
    sizes = phone.eval_on_selector_all(
        f'[data-screen="{screen}"] :is(button, a.button)',
        "all => all.map(one => [one.offsetWidth * one.offsetHeight, one.className])",
    )
    assert "button--next" in max(sizes)[1]
    box = phone.locator(f'[data-screen="{screen}"] .button--next').bounding_box()
    assert box["y"] + box["height"] <= phone.viewport_size["height"]


def test_changing_a_number_changes_the_plan_at_once(phone):
    go_to(phone, "numbers")
    question = phone.locator("[data-numbers-needed] [data-question]").first
    go_to(phone, "plan")
    before = phone.inner_text("[data-plan-body]")
    go_to(phone, "numbers")
    field = question.locator("input").first
    wait_for_plan(phone, lambda: (field.fill("3"), field.blur()))
    go_to(phone, "plan")
    assert phone.inner_text("[data-plan-body]") != before


def test_back_loses_nothing_and_coming_back_opens_where_one_was(phone):
    go_to(phone, "numbers")
    field = phone.locator("[data-numbers-needed] input").first
    wait_for_plan(phone, lambda: (field.fill("7"), field.blur()))
    go_to(phone, "plan")
    phone.go_back()
    assert shown(phone) == ["numbers"]
    assert field.input_value() == "7"
    go_to(phone, "plan")
    phone.goto(phone.url.split("#")[0])
    phone.wait_for_selector("[data-ready]", state="attached")
    assert shown(phone) == ["plan"]
    go_to(phone, "numbers")
    assert phone.locator("[data-numbers-needed] input").first.input_value() == "7"


def test_absurd_numbers_get_a_message_and_stay_in_the_field(phone):
    """One after the other, with a number that is taken in between."""
    go_to(phone, "numbers")
    question = phone.locator("[data-numbers-needed] [data-question]").first
    field, message = question.locator("input").first, question.locator("[role=alert]").first
    for typed in ABSURD:
        wait_for_plan(phone, lambda: (field.fill("6"), field.blur()))
        assert not message.is_visible(), typed
        field.fill(typed)
        field.blur()
        assert message.is_visible(), typed
        assert field.input_value() == typed
        assert field.get_attribute("aria-invalid") == "true", typed


def test_not_sure_goes_back_to_what_is_usual(phone):
    go_to(phone, "numbers")
    question = phone.locator("[data-numbers-needed] [data-question]").first
    wait_for_plan(phone, lambda: question.locator(".stepper__more").first.click())
    assert question.locator("input").first.input_value() != ""
    wait_for_plan(phone, lambda: question.get_by_role("button", name="Not sure").click())
    assert question.locator("input").first.input_value() == ""


def test_every_option_and_style_stands_beside_the_plan(phone):
    go_to(phone, "plan")
    phone.wait_for_function("() => !document.querySelector('[data-plan-options]').textContent.includes('working it out')")
    assert phone.locator("[data-plan-options] input").count() == 2
    assert phone.locator("[data-plan-styles] input").count() == 3
    wait_for_plan(phone, lambda: phone.locator("[data-plan-styles] input[value=bold]").focus() or phone.keyboard.press("Space"))
    assert phone.evaluate("document.activeElement.value") == "bold"


def test_keyboard_alone_reaches_the_plan(phone):
    """Skip link, heat by arrow keys, numbers by typing, next by Enter."""
    phone.locator('[data-screen="briefing"] .button--next').focus()
    phone.keyboard.press("Enter")
    phone.wait_for_function("() => document.activeElement.id === 'heat-title'")
    phone.locator("[data-heat-kind]").first.focus()
    phone.keyboard.press("Space")
    phone.locator('[data-screen="heat"] .button--next').focus()
    phone.keyboard.press("Enter")
    phone.wait_for_selector('[data-screen="numbers"]:not([hidden])')
    phone.locator("[data-numbers-needed] input").first.focus()
    wait_for_plan(phone, lambda: (phone.keyboard.type("6"), phone.keyboard.press("Tab")))


def test_twice_the_text_size_needs_no_sideways_scrolling(look_at, class_links):
    page = look_at(class_links[0], size=SMALL)
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    for screen in SCREENS:
        go_to(page, screen)
        assert overflow_px(page) <= 0, screen


def test_right_to_left_fits_too(look_at, class_links):
    phone = look_at(class_links[0])
    phone.evaluate("document.documentElement.dir = 'rtl'")
    for screen in SCREENS:
        go_to(phone, screen)
        assert overflow_px(phone) <= 0


@pytest.mark.parametrize("place", range(4))
def test_every_demo_workout_has_a_plan(look_at, class_links, place):
    page = look_at(class_links[place], size=SMALL)
    for screen in ("plan", "card"):
        go_to(page, screen)
        assert overflow_px(page) <= 0
    assert page.locator(".card__block").count() >= 2
