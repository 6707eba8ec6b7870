"""Around the player: for screen readers, on paper, with no connection, and the warm-up of the whole class on the gym's screen."""

import re

import pytest

from .conftest import kept, open_class, overflow_px, wait_until_kept
from .player_pages import QUIET_AUDIO, heat_in, open_warm_up, place, start
from .test_accessibility import violations
from .test_print import page_count

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_at_work_rest_and_next(new_page, class_links, scheme):
    page = new_page(color_scheme=scheme)
    page.clock.install()
    open_class(page, class_links[0])
    heat_in(page, 30)
    start(page)
    page.click("[data-player-open-more]")
    found = {}
    for stage in ("work", "next", "rest"):
        while page.get_attribute("[data-player]", "data-stage") != stage:
            page.clock.run_for(4000)
        found[stage] = violations(page)
    assert found == {"work": [], "next": [], "rest": []}


def test_digits_are_a_silent_timer_and_only_milestones_are_told(new_page, class_links):
    page = new_page()
    page.clock.install()
    open_class(page, class_links[0])
    start(page)
    timer = page.locator("[data-player-digits]")
    assert timer.get_attribute("role") == "timer" and timer.get_attribute("aria-live") == "off"
    assert page.locator('[data-screen="warm-up"] [role=status]').count() == 1
    page.evaluate("""() => { globalThis.told = []; new MutationObserver(() => told.push(1))
        .observe(document.querySelector('[data-player-says]'), {childList: true, characterData: true, subtree: true}); }""")
    page.clock.run_for(150_000)
    assert page.evaluate("() => told.length") == 0
    page.clock.run_for(60_000)
    assert page.evaluate("() => told.length") == 1


def test_stages_differ_in_brightness_and_in_shape(new_page, class_links):
    """Never by colour alone: the grounds are far apart in luminance, and the digits stand in another shape."""
    page = new_page()
    open_class(page, class_links[0])
    start(page)
    seen = {}
    for stage in ("work", "rest", "next"):
        seen[stage] = page.evaluate("""stage => {
            const root = document.querySelector('[data-player]');
            root.dataset.stage = stage;
            const ground = getComputedStyle(root).backgroundColor.match(/[\\d.]+/g).slice(0, 3).map(Number);
            const shape = getComputedStyle(root.querySelector('.player__shape'));
            return [ground.reduce((sum, part) => sum + part, 0) / 3, shape.borderRadius + shape.clipPath];
        }""", stage)
    grounds = sorted(light for light, _shape in seen.values())
    assert grounds[1] - grounds[0] > 60 and grounds[2] - grounds[1] > 20
    assert len({shape for _light, shape in seen.values()}) == 3


@pytest.mark.parametrize("size", [(360, 740), (320, 568), (740, 360), (1280, 720)])
def test_digits_stay_on_one_line_however_many_there_are(new_page, class_links, size):
    page = new_page(viewport={"width": size[0], "height": size[1]})
    page.clock.install()
    open_class(page, class_links[0])
    heat_in(page, 200)
    start(page)
    lines = []
    for _wait in range(2):   # 3:20, then by hand beyond the step's end, then more than an hour to the heat
        lines.append(one_line(page))
        page.click("[data-player-open-more]")
        page.click("[data-player-hand]")
        page.click("[data-player-open-more]")
        page.clock.run_for(260_000)
    lines.append(one_line(page))
    assert lines == [True, True, True]
    assert overflow_px(page) <= 0


def one_line(page):
    """The digits stand on one line."""
    return page.evaluate("""() => {
        const digits = document.querySelector('[data-player-digits]');
        return digits.getBoundingClientRect().height < 1.5 * parseFloat(getComputedStyle(digits).fontSize);
    }""")


def test_less_motion_moves_nothing(new_page, class_links):
    page = new_page(reduced_motion="reduce")
    open_class(page, class_links[0])
    start(page)
    page.wait_for_timeout(1200)
    assert page.evaluate("document.getAnimations().length") == 0


@pytest.mark.parametrize("order", range(4))
def test_prints_on_one_page_before_and_while_it_runs(new_page, class_links, order):
    page = new_page()
    open_class(page, class_links[order])
    open_warm_up(page)
    papers = ["A4", "Letter"]
    assert {paper: page_count(page.pdf(format=paper)) for paper in papers} == {"A4": 1, "Letter": 1}
    start(page)
    assert {paper: page_count(page.pdf(format=paper)) for paper in papers} == {"A4": 1, "Letter": 1}


def test_plays_and_fits_anew_with_no_connection(new_page, class_links):
    page = new_page(keeps=True)
    open_class(page, class_links[1])
    wait_until_kept(page)
    page.context.set_offline(True)
    page.reload()
    page.wait_for_selector("[data-ready]", state="attached")
    heat_in(page, 30)
    start(page)
    page.click("[data-player-open-more]")
    page.locator('[data-player] [data-heat-move="call"]').click()
    page.locator('[data-player] [data-heat-move="in-4"]').click()
    page.wait_for_function("() => document.querySelector('[data-player-line]').textContent.startsWith('Called')")
    assert page.faults == []


@pytest.fixture
def hall(new_page, class_links):
    """The warm-up for everybody on a gym's screen."""
    page = new_page(viewport={"width": 1280, "height": 720})
    page.add_init_script(QUIET_AUDIO)
    page.goto(class_links[3] + "/warm-up")
    page.wait_for_selector("[data-warm-up-steps] li")
    yield page
    assert page.faults == []


def test_everybodys_warm_up_names_no_loads_and_no_heights(hall):
    text = hall.inner_text("[data-warm-up-steps]")
    assert "your own load" in text and "your own height" in text
    assert not re.search(r"\d\s?(kg|lb)\b", text)


def test_everybodys_warm_up_fills_the_hall_and_plays_by_keyboard(hall):
    hall.click("[data-warm-up-start]")
    hall.wait_for_selector("[data-player]:not([hidden])")
    hall.keyboard.press("ArrowRight")
    assert place(hall)[0] == 2
    assert overflow_px(hall) <= 0
    assert hall.locator("[data-player-digits]").bounding_box()["height"] >= 160
    assert violations(hall) == []
    hall.reload()
    hall.wait_for_selector("[data-player]:not([hidden])")
    assert place(hall)[0] == 2


def test_everybodys_heat_is_counted_to(hall):
    field = hall.locator("[data-everybody-heat] input")
    field.fill("20")
    field.blur()
    hall.wait_for_function("() => document.querySelector('[data-warm-up-heat]').textContent.startsWith('19 minutes')")
    hall.click("[data-warm-up-start]")
    hall.wait_for_function("() => document.querySelector('[data-player-heat]').textContent.includes('to the heat')")


def test_a_gym_without_machines_is_warmed_up_on_foot(new_page, class_links):
    """The workout's key `gym`, set once by the coach, reaches the engine."""
    page = new_page()

    def without_machines(route):
        answer = route.fetch()
        route.fulfill(response=answer, body=answer.text().replace('id="workout">{', 'id="workout">{"gym": {"machines": []}, '))

    page.route(re.compile(r"/w/[^/]+$"), without_machines)
    open_class(page, class_links[0])
    open_warm_up(page)
    start(page)
    assert kept(page)["warmUp"]["steps"][0]["code"] == "jog"
