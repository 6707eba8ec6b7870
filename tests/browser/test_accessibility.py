"""axe on every screen, both themes, two languages, and what it cannot see: names, live regions, forced colours, less motion."""

from pathlib import Path

import pytest

from .conftest import go_to, open_class

pytestmark = pytest.mark.browser
AXE = Path(__file__).resolve().parents[2] / "node_modules/axe-core/axe.min.js"
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
SCREENS = ["briefing", "heat", "numbers", "plan", "warm-up", "card", "safety"]


def violations(page):
    """What axe finds, in short: rule and where."""
    if not AXE.exists():
        pytest.fail(f"{AXE} is missing: the README's second command puts it there")
    if not page.evaluate("() => 'axe' in globalThis"):
        page.evaluate(AXE.read_text("utf-8"))
    found = page.evaluate("rules => axe.run(document, {runOnly: rules, resultTypes: ['violations']})", RULES)
    return [(rule["id"], node["target"]) for rule in found["violations"] for node in rule["nodes"]]


@pytest.mark.parametrize("scheme, language", [("light", "en"), ("dark", "en"), ("light", "es")])
def test_axe_finds_nothing_on_any_screen(look_at, class_links, scheme, language):
    page = look_at(class_links[0], **({} if language == "en" else {"locale": language}))
    page.emulate_media(color_scheme=scheme)
    page.evaluate("document.querySelectorAll('details').forEach(one => { one.open = true; })")
    found = {}
    for screen in SCREENS:
        go_to(page, screen)
        found[screen] = violations(page)
    assert found == {screen: [] for screen in SCREENS}


@pytest.mark.parametrize("path", ["/", "/offline"])
def test_axe_finds_nothing_on_the_pages_around(new_page, server, path):
    page = new_page()
    page.goto(server + path)
    page.wait_for_selector("[data-theme-switch]:not([hidden])")
    assert violations(page) == []


def test_theme_switch_is_kept(phone):
    phone.click("[data-theme-switch]")
    assert phone.get_attribute("html", "data-theme") == "dark"
    phone.reload()
    phone.wait_for_selector('html[data-theme="dark"]')


@pytest.mark.parametrize("media", [{"forced_colors": "active"}, {"reduced_motion": "reduce"}, {"contrast": "more"}])
def test_system_wishes_break_nothing(new_page, class_links, media):
    page = new_page(**media)
    open_class(page, class_links[0])
    for screen in SCREENS:
        go_to(page, screen)
        assert page.locator(f'[data-screen="{screen}"]').is_visible()
    assert page.evaluate("document.getAnimations().length") == 0
    assert page.faults == []


def test_focus_is_never_under_the_large_button(look_at, class_links):
    """WCAG 2.2, 2.4.11: whatever is reached by keyboard can be seen."""
    phone = look_at(class_links[0])
    go_to(phone, "numbers")
    controls = phone.locator('[data-screen="numbers"] :is(button, summary)').all()
    for control in [one for one in controls if one.is_visible()][:12]:
        control.focus()
        covered = control.evaluate("""node => {
            const bar = node.closest('[data-screen]').querySelector('.next').getBoundingClientRect();
            const own = node.getBoundingClientRect();
            return own.top >= bar.top && own.bottom <= bar.bottom;
        }""")
        assert not covered
