"""What the player's tests share: an audio device that only takes notes, a heat in some minutes, and the run as the phone keeps it."""

from .conftest import go_to

# Time of the audio device is the page's own, so that the test's clock drives it too.
QUIET_AUDIO = """
    globalThis.tones = [];
    globalThis.devices = [];
    globalThis.AudioContext = class {
        constructor() { this.state = 'running'; this.destination = {}; devices.push(this); }
        get currentTime() { return performance.now() / 1000; }
        addEventListener() {}
        async resume() { if (this.state === 'suspended') this.state = 'running'; }
        async close() { this.state = 'closed'; }
        createGain() { return { gain: { setValueAtTime() {}, exponentialRampToValueAtTime() {} }, connect: (next) => next }; }
        createOscillator() {
            const tone = { frequency: {}, made_s: performance.now() / 1000, connect: (next) => next,
                start: (at_s) => { tone.at_s = at_s; }, stop: (at_s) => { if (at_s === 0) tone.stopped = true; } };
            tones.push(tone);
            return tone;
        }
    };
"""


def heat_in(page, minutes):
    """Say that the heat starts in some minutes."""
    go_to(page, "heat")
    page.get_by_label("Soon: in some minutes").check(force=True)
    field = page.locator("[data-heat-minutes] input")
    field.fill(str(minutes))
    field.blur()


def open_warm_up(page):
    """Open the warm-up's screen and wait for its steps."""
    go_to(page, "warm-up")
    page.wait_for_selector("[data-warm-up-steps] li")


def start(page):
    """Start the warm-up and wait for its first step."""
    open_warm_up(page)
    page.click("[data-warm-up-start]")
    page.wait_for_function("() => document.querySelector('[data-player-step]').textContent !== ''")


def timed_steps(run):
    """The steps that take time: extras aside."""
    return [step for step in run["steps"] if not step["optional"]]


def step_name(page):
    """The step on the screen."""
    return page.inner_text("[data-player-step]")


def place(page):
    """Which step is on the screen, from 1, and of how many."""
    now, count = page.inner_text("[data-player-count]").split("/")
    return int(now), int(count)
