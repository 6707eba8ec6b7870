"""The player of the warm-up: taps, the list, the heat that moves, the holds, the day, sound and the screen."""

import pytest

from .conftest import go_to, kept, open_class, overflow_px
from .player_pages import QUIET_AUDIO, heat_in, open_warm_up, place, start, step_name, timed_steps

pytestmark = pytest.mark.browser
MOST_STEPS = 60
TWO_TAPS_MS = 700  # further apart than what counts as one tap


@pytest.fixture
def athlete(new_page, class_links):
    """The third demo workout on a phone whose time only the test lets pass."""
    page = new_page()
    page.add_init_script(QUIET_AUDIO)
    page.clock.install()
    open_class(page, class_links[2])
    yield page
    assert page.faults == []


def tap(page, hook, times=1):
    """Press one of the player's keys, as fast as a person would."""
    for _ in range(times):
        page.click(f"[data-player-{hook}]")
        page.clock.run_for(TWO_TAPS_MS)


def test_a_tap_anywhere_ticks_the_step(athlete):
    start(athlete)
    athlete.click("[data-player-step]")
    assert place(athlete)[0] == 2


def test_a_wet_finger_that_taps_twice_ticks_once(athlete):
    start(athlete)
    athlete.dblclick("[data-player-step]")
    assert place(athlete)[0] == 2


def test_back_skip_and_thirty_seconds_more(athlete):
    start(athlete)
    first = timed_steps(kept(athlete)["warmUp"])[0]["seconds"]
    tap(athlete, "skip", 2)
    assert place(athlete)[0] == 3
    tap(athlete, "back", 2)
    assert place(athlete)[0] == 1
    tap(athlete, "more-time")
    shown = athlete.inner_text("[data-player-digits]")
    minutes, seconds = shown.split(":")
    assert first + 30 - 3 <= int(minutes) * 60 + int(seconds) <= first + 30


def test_keyboard_alone_plays_it(athlete):
    start(athlete)
    for key, step in [("Space", 2), ("ArrowRight", 3), ("s", 4), ("ArrowLeft", 3)]:
        athlete.keyboard.press(key)
        athlete.clock.run_for(TWO_TAPS_MS)
        assert place(athlete)[0] == step, key


def test_by_hand_a_step_waits_for_its_tick(athlete):
    start(athlete)
    athlete.click("[data-player-open-more]")
    tap(athlete, "hand")
    athlete.clock.run_for(600_000)
    assert place(athlete)[0] == 1
    assert athlete.inner_text("[data-player-digits]").startswith("+")
    tap(athlete, "hand")  # by itself again: goes on from now, and runs through nothing
    assert place(athlete)[0] == 2


def test_list_shows_what_is_done_and_leads_to_any_step(athlete):
    start(athlete)
    tap(athlete, "done")
    tap(athlete, "skip")
    athlete.click("[data-player-list]")
    marks = athlete.eval_on_selector_all('[data-step]:not([data-step="extra"])', "all => all.map(one => one.dataset.step)")
    assert marks[:4] == ["done", "skipped", "now", ""]
    athlete.locator("[data-step] button").last.click()
    now, count = place(athlete)
    assert now == count


def test_ticked_steps_stay_ticked_over_a_reload(athlete):
    start(athlete)
    tap(athlete, "done", 3)
    before = (place(athlete), step_name(athlete))
    athlete.reload()
    athlete.wait_for_selector("[data-player]:not([hidden])")
    assert (place(athlete), step_name(athlete)) == before


def test_late_leaves_steps_out_and_says_so_in_one_line(athlete):
    heat_in(athlete, 20)
    start(athlete)
    tap(athlete, "done")
    count = place(athlete)[1]
    athlete.click("[data-player-open-more]")
    tap(athlete, "hand")
    athlete.clock.run_for(10 * 60_000)
    assert place(athlete)[1] < count
    assert "late" in athlete.inner_text("[data-player-line]")
    run = kept(athlete)["warmUp"]
    assert timed_steps(run)[0]["code"] == "easy_bike"  # what was ticked stays
    left_s = sum(step["seconds"] for step in timed_steps(run)[2:])
    heat_s = (kept(athlete)["heat"]["at_ms"] - athlete.evaluate("Date.now()")) / 1000
    assert heat_s - left_s >= 100  # the gap of two minutes, less a look each second and what is over by hand


def test_early_says_so_and_keeps_the_steps(athlete):
    heat_in(athlete, 22)
    start(athlete)
    count = place(athlete)[1]
    athlete.clock.run_for(100_000)
    tap(athlete, "done")
    assert "early" in athlete.inner_text("[data-player-line]")
    assert place(athlete)[1] == count


def test_a_heat_that_slips_adds_the_wait_and_beyond_fifteen_minutes_the_last_part_again(athlete):
    heat_in(athlete, 20)
    start(athlete)
    tap(athlete, "open-more")
    athlete.locator('[data-player] [data-heat-move="+5"]').click()
    athlete.clock.run_for(1000)
    codes = [step["code"] for step in timed_steps(kept(athlete)["warmUp"])]
    assert codes.count("keep_warm") == 1
    athlete.locator('[data-player] [data-heat-move="+15"]').click()
    athlete.clock.run_for(1000)
    codes = [step["code"] for step in timed_steps(kept(athlete)["warmUp"])]
    assert codes.count("keep_warm") == 1
    assert codes.index("keep_warm") < len(codes) - 3
    assert "later" in athlete.inner_text("[data-player-line]")


def test_called_now_skips_to_the_essentials_not_yet_done(athlete):
    heat_in(athlete, 30)
    start(athlete)
    tap(athlete, "done", 3)
    tap(athlete, "open-more")
    athlete.locator('[data-player] [data-heat-move="call"]').click()
    athlete.locator('[data-player] [data-heat-move="in-4"]').click()
    athlete.clock.run_for(1000)
    run = kept(athlete)["warmUp"]
    left = timed_steps(run)[place(athlete)[0] - 1:]
    assert 1 <= len(left) <= 4
    assert sum(step["seconds"] for step in left) <= 240
    assert "Called" in athlete.inner_text("[data-player-line]")


def test_hold_that_felt_best_goes_to_the_card_marked(athlete):
    start(athlete)
    while athlete.locator("[data-player-ask] [data-hold]").count() == 0:
        tap(athlete, "skip")
    other = athlete.locator('[data-player-ask] [data-hold][aria-pressed="false"]').first
    name = other.inner_text()
    other.click()
    assert athlete.locator('[data-player-ask] [aria-pressed="true"]').inner_text().endswith(name)
    go_to(athlete, "card")
    assert f"{name} (your choice)" in athlete.inner_text("[data-card-blocks]")


def test_what_is_different_today_changes_the_steps_and_is_kept(athlete):
    open_warm_up(athlete)
    athlete.evaluate("document.querySelectorAll('details').forEach(one => { one.open = true; })")
    assert "Walk briskly" not in athlete.inner_text("[data-warm-up-steps]")
    athlete.click('[data-today="machine"]')
    athlete.click('[data-today="knee"]')
    # No machine, and no jog on a sore knee. Each of the two changes the steps: the first change is not yet it.
    athlete.wait_for_function("() => document.querySelector('[data-warm-up-steps]').innerText.includes('Walk briskly')")
    athlete.reload()
    open_warm_up(athlete)
    assert athlete.get_attribute('[data-today="knee"]', "aria-pressed") == "true"


def test_no_placeholder_is_left_in_any_step(look_at, class_links):
    for link in class_links:
        page = look_at(link)
        open_warm_up(page)
        text = page.inner_text("[data-warm-up-around]")
        assert "{" not in text and "undefined" not in text and "null" not in text


def test_mute_is_remembered_and_silent(athlete):
    start(athlete)
    tap(athlete, "mute")
    athlete.reload()
    athlete.wait_for_selector("[data-player]:not([hidden])")
    assert athlete.get_attribute("[data-player-mute]", "aria-pressed") == "true"
    athlete.click("[data-player-place]", force=True)
    athlete.clock.run_for(60_000)
    assert athlete.evaluate("() => tones.length") == 0


def test_voice_is_off_until_wished_and_then_says_each_step(athlete):
    athlete.evaluate("""() => { globalThis.said = []; speechSynthesis.speak = (words) => said.push(words.text); }""")
    start(athlete)
    tap(athlete, "done")
    assert athlete.evaluate("() => said") == []
    tap(athlete, "open-more")
    athlete.locator('[data-player] [data-signal="voice"]').click()
    tap(athlete, "done")
    assert athlete.evaluate("() => said.length") == 2
    assert step_name(athlete) in athlete.evaluate("() => said[1]")


@pytest.mark.parametrize("width, height", [(320, 568), (360, 740), (740, 360), (1280, 720)])
def test_fits_the_screen_with_done_in_reach(new_page, class_links, width, height):
    page = new_page(viewport={"width": width, "height": height})
    open_class(page, class_links[3])
    heat_in(page, 40)
    start(page)
    assert overflow_px(page) <= 0
    box = page.locator("[data-player-done]").bounding_box()
    assert box["y"] + box["height"] <= height
    assert page.locator("[data-player-digits]").bounding_box()["height"] >= 48


def test_when_all_is_done_the_card_is_one_tap_away(athlete):
    heat_in(athlete, 20)
    start(athlete)
    while athlete.inner_text("[data-player-stage]") != "Warm-up done":
        athlete.clock.run_for(30_000)
    athlete.click("[data-player-done]")
    athlete.wait_for_selector('[data-screen="card"]:not([hidden])')


def test_whoever_skips_everything_comes_to_the_end_with_the_heat_far_off(athlete):
    heat_in(athlete, 40)
    start(athlete)
    for _ in range(MOST_STEPS):
        if athlete.inner_text("[data-player-stage]") == "Warm-up done":
            break
        tap(athlete, "skip")
        athlete.clock.run_for(1000)
    assert athlete.inner_text("[data-player-stage]") == "Warm-up done"


def test_called_and_then_put_off_brings_the_easy_minutes_back(athlete):
    """What the call cut short comes again when there is time after all."""
    heat_in(athlete, 30)
    start(athlete)
    athlete.clock.run_for(20_000)
    tap(athlete, "open-more")
    athlete.locator('[data-player] [data-heat-move="call"]').click()
    athlete.locator('[data-player] [data-heat-move="in-2"]').click()
    athlete.clock.run_for(1000)
    athlete.locator('[data-player] [data-heat-move="+15"]').click()
    athlete.clock.run_for(1000)
    left = timed_steps(kept(athlete)["warmUp"])[place(athlete)[0] - 1:]
    assert {"get_warm", "loosen", "build"} <= {step["phase"] for step in left}
