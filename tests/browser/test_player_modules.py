"""The player's pure modules: the run and the time go in, what to show and to sound comes out."""

import pytest

from .test_modules import run  # noqa: F401  (a fixture)

pytestmark = pytest.mark.browser
BASE_MS = 1_000_000


def step(seconds, **more):
    """A step of the engine's shape, as far as the modules look."""
    return {"phase": "build", "movement": "row", "name": "Row", "code": None, "amount": 5, "unit": "reps", "side": None, "load_kg": None,
            "optional": False, "seconds": seconds} | more


STEPS = [step(60), step(20, optional=True), step(30, name="Pull-up"), step(40, name="Squat")]


def played(*taps):
    """A run begun at the base, with taps given as (kind, seconds after the beginning, more)."""
    events = [{"kind": kind, "at_ms": BASE_MS + at_s * 1000} | (more[0] if more else {}) for kind, at_s, *more in [("start", 0), *taps]]
    return {"steps": STEPS, "ends_s": 120, "events": events}


@pytest.mark.parametrize("taps, now_s, phase, index, left_s", [
    ((), 0, "running", 0, 60), ((), 59.5, "running", 0, 0.5), ((), 60, "running", 1, 30), ((), 129.9, "running", 2, 0.1), ((), 130, "over", 3, 0),
    ((("tick", 10),), 10, "running", 1, 30), ((("tick", 10), ("skip", 15)), 20, "running", 2, 35), ((("back", 70),), 70, "running", 0, 60),
    ((("more", 10, {"seconds": 30}),), 70, "running", 0, 20), ((("go", 5, {"index": 2}),), 5, "running", 2, 40),
    ((("hand", 5),), 600, "running", 0, -540), ((("hand", 5), ("auto", 600)), 601, "running", 1, 29), ((("tick", 10), ("tick", 5)), 20, "running", 2, 30),
])
def test_state_is_a_function_of_run_and_now(run, taps, now_s, phase, index, left_s):  # noqa: F811
    state = run("player-state", "stateOf", played(*taps), BASE_MS + now_s * 1000, None)
    assert (state["phase"], state["index"]) == (phase, index)
    assert phase == "over" or state["left_s"] == pytest.approx(left_s)


def test_marks_tell_done_from_left_out_and_go_with_back(run):  # noqa: F811
    marks = run("player-state", "stateOf", played(("tick", 5), ("skip", 10)), BASE_MS + 11_000, None)["marks"]
    assert marks == ["done", "skipped"]
    assert run("player-state", "stateOf", played(("tick", 5), ("skip", 10), ("back", 12)), BASE_MS + 13_000, None)["marks"] == ["done"]


def test_gap_and_being_early_are_counted_to_the_heat(run):  # noqa: F811
    """130 s of steps from the base; the heat at 310 s leaves 180 s, 60 more than wished; a tick 20 s early makes it 80."""
    heat_ms = BASE_MS + 310_000
    assert run("player-state", "stateOf", played(), BASE_MS, heat_ms)["off_s"] == 60
    assert run("player-state", "stateOf", played(("tick", 40)), BASE_MS + 40_000, heat_ms)["off_s"] == 80


@pytest.mark.parametrize("one, seconds, expected", [
    (step(60), 60, [("work", 0, None)]),
    (step(40, amount=15, unit="s", side="both"), 40, [("work", 0, "first"), ("work", 15, "second"), ("rest", 30, None)]),
    (step(30, amount=10, unit="s"), 30, [("work", 0, None), ("rest", 10, None)]),
    (step(200, amount=200, unit="s"), 200, [("work", 0, None)]),
    (step(35, phase="settle", amount=None, unit=None), 35, [("rest", 0, None)]),
])
def test_work_and_rest_within_a_step(run, one, seconds, expected):  # noqa: F811
    assert [(part["kind"], part["from_s"], part["side"]) for part in run("player-cues", "stepParts", one, seconds)] == expected


def test_cues_are_three_two_one_go_and_those_past_are_gone(run):  # noqa: F811
    place = {"step": step(60), "since_ms": BASE_MS, "length_s": 60}
    cues = run("player-cues", "cuesOf", place, BASE_MS)
    assert [(cue["kind"], (cue["at_ms"] - BASE_MS) / 1000) for cue in cues] == [("count", 57), ("count", 58), ("count", 59), ("go", 60)]
    assert [cue["kind"] for cue in run("player-cues", "cuesOf", place, BASE_MS + 58_500)] == ["count", "go"]


@pytest.mark.parametrize("heat_min, said, expected", [(None, None, None), (48, None, None), (30, None, 30), (30, 12, 12), (10, 12, 10), (None, 12, 12), (90, 12, 12)])
def test_minutes_there_are_for_it(run, heat_min, said, expected):  # noqa: F811
    assert run("player-plan", "minutesFor", None if heat_min is None else heat_min * 60_000, said, 0, True) == expected


@pytest.mark.parametrize("heat_min, expected", [(30, 28), (25, 23), (10, 9), (5, 4.5), (0, 0)])
def test_it_begins_a_little_later_than_now_until_it_is_started(run, heat_min, expected):  # noqa: F811
    """Two minutes, and a tenth of what is left when that is less: chosen."""
    assert run("player-plan", "minutesFor", heat_min * 60_000, None, 0) == pytest.approx(expected)


@pytest.mark.parametrize("agent, is_home, expected", [
    ("Mozilla/5.0 (iPhone; CPU iPhone OS 17_5 like Mac OS X)", True, True), ("Mozilla/5.0 (iPhone; CPU iPhone OS 17_5 like Mac OS X)", False, False),
    ("Mozilla/5.0 (iPhone; CPU iPhone OS 18_3 like Mac OS X)", True, True), ("Mozilla/5.0 (iPhone; CPU iPhone OS 18_4 like Mac OS X)", True, False),
    ("Mozilla/5.0 (Linux; Android 14)", True, False),
])  # fmt: skip
def test_home_screen_pages_before_18_4_promise_a_lock_they_do_not_keep(run, agent, is_home, expected):  # noqa: F811
    """WebKit bug 254545, mended in 18.4."""
    assert run("platform", "breaksItsPromise", agent, is_home) is expected


def test_largest_sets_are_those_of_the_break_up_shown(run):  # noqa: F811
    blocks = [{"movement": "row", "unit": "cal", "sets": [34]}, {"movement": "thruster", "unit": "reps", "sets": [6, 4]}, {"movement": "thruster", "unit": "reps", "sets": [9]}, {"movement": "rest", "unit": "s"}]
    assert run("player-today", "largestSets", {"blocks": blocks}) == {"thruster": 9}
    assert run("player-today", "largestSets", {"parts": [{"blocks": blocks}]}) == {"thruster": 9}
    assert run("player-today", "largestSets", None) is None


def test_a_heat_two_hours_ago_is_forgotten(run):  # noqa: F811
    assert run("player-plan", "heatFor", {"at_ms": 0}, 119 * 60_000) == 0
    assert run("player-plan", "heatFor", {"at_ms": 0}, 121 * 60_000) is None


@pytest.mark.parametrize("steps, expected", [
    ([(1000, 1000)], 1000), ([(3_600_000, 0)], 3_600_000),          # time passes; it passes during sleep, when the other clock stands still
    ([(-3_600_000, 1000)], 1000), ([(-3_600_000, 1000), (5000, 5000)], 6000),  # set back by an hour: only what really passed
    ([(1100, 1000)], 1000),                                          # a tenth of a second is the clocks' own difference
])
def test_steady_clock(browser, server, steps, expected):
    page = browser.new_page()
    page.goto(server)
    passed = page.evaluate("""async ([steps]) => {
        const base = document.querySelector('script[src*="/static/"]').src.split('/js/')[0];
        const { SteadyClock } = await import(`${base}/js/lib/player-clock.js`);
        let [date, run] = [1e9, 0];
        const clock = new SteadyClock(() => date, () => run);
        for (const [more, moreRun] of steps) { date += more; run += moreRun; clock.now(); }
        return clock.now() - 1e9;
    }""", [steps])
    page.close()
    assert passed == expected


def test_chosen_hold_takes_the_place_of_the_plans(run):  # noqa: F811
    plan = {"blocks": [{"movement": "row", "hold": None}, {"movement": "pull-up", "hold": "over"}]}
    held = run("player-hold", "withHolds", plan, {"pull-up": "under", "row": "x"})["blocks"]
    assert held == [{"movement": "row", "hold": None}, {"movement": "pull-up", "hold": "under", "hold_chosen": True}]


def test_gym_and_day_become_settings(run):  # noqa: F811
    today = {"machine": False, "wall": True, "bar": True, "people": 4, "room_c": None}
    settings = run("player-today", "daySettings", today, {"machines": ["row"], "bar": False})
    assert settings == {"rack": None, "machines": [], "wall_free": True, "bar_free": False, "room_c": None, "lane_shared_by": 4}
