"""Every option side by side, with advice: the rule that holds, gates, and no connection."""

import pytest

from .conftest import go_to, open_class, overflow_px, wait_until_kept
from .test_accessibility import violations

pytestmark = pytest.mark.browser
ADVICE = "[data-which]"


@pytest.fixture
def plan(look_at, class_links):
    return advised(look_at(class_links[0]))


@pytest.fixture
def plan_of_ones_own(new_page, class_links):
    page = new_page(keeps=True)
    open_class(page, class_links[0])
    yield advised(page)
    assert page.faults == []


def advised(page):
    """The break-up, with the advice beside it."""
    go_to(page, "plan")
    page.wait_for_selector(ADVICE)
    return page


def said(page):
    return " ".join(page.inner_text(ADVICE).split())


def test_every_option_stands_beside_the_other_with_its_score(plan):
    items = plan.locator("[data-plan-options] .choice__item")
    boxes = [item.bounding_box() for item in items.all()]
    assert len(boxes) == 2 and boxes[0]["y"] == pytest.approx(boxes[1]["y"], abs=1)
    assert all(text.strip() for text in plan.locator(".choice__big").all_inner_texts())


def test_the_advice_says_the_rule_and_leaves_the_choice(plan):
    """A regular athlete is caught by the cap as prescribed and finishes scaled."""
    assert plan.get_attribute(ADVICE, "data-which") == "option_prescribed_ranks"
    assert "As prescribed counts above every other score here" in said(plan)
    assert "For training alone, Scaled gives you more." in said(plan)
    assert said(plan).endswith("Your coach’s rule: As prescribed ranks above every other score. The choice is yours.")


def test_without_a_heat_training_counts(plan_of_ones_own):
    go_to(plan_of_ones_own, "heat")
    plan_of_ones_own.locator('[data-heat-kind][value="none"]').check(force=True)
    go_to(plan_of_ones_own, "plan")
    plan_of_ones_own.wait_for_selector('[data-which="option_trains"]')
    assert "Just for you, no ranking counts: Scaled trains you more" in said(plan_of_ones_own)


def test_with_no_connection_and_in_spanish(plan_of_ones_own):
    wait_until_kept(plan_of_ones_own)
    plan_of_ones_own.context.set_offline(True)
    plan_of_ones_own.goto(plan_of_ones_own.url.split("#")[0] + "?lang=es")
    plan_of_ones_own.wait_for_selector("[data-ready]", state="attached")
    go_to(plan_of_ones_own, "plan")
    plan_of_ones_own.wait_for_selector(ADVICE)
    assert "Prescrito queda aquí por delante de cualquier otro resultado" in said(plan_of_ones_own)
    assert said(plan_of_ones_own).endswith("Tú eliges.")


def test_where_every_option_is_a_gate_a_third_way_of_similar_dose_is_named(new_page, shape_links):
    """The library's first easier form of a pull-up is the ring row, one and a half for each."""
    page = new_page(viewport={"width": 320, "height": 568})
    open_class(page, shape_links["gates"])
    go_to(page, "numbers")
    page.locator('input[value="new"]').check(force=True)
    go_to(page, "plan")
    page.wait_for_selector('[data-which="option_prescribed_gate"]')
    assert "In place of 20 reps Pull-up: 30 reps Ring row." in said(page)
    assert page.locator("[data-plan-options] .choice__item").first.inner_text().endswith("Ring muscle-up is a gate for you")
    assert overflow_px(page) <= 0
    assert violations(page) == []
