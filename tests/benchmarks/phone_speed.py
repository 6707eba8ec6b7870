"""How long the engine takes on a phone.

Chromium, one page, the engine's module and the demo workouts; every figure is the median of several runs after a first one, in
milliseconds, as it is and at a quarter of the processor's speed (what a cheap phone has). The first run stands apart:
the module is not yet compiled then, and that is what an athlete meets.
"""

import json
from pathlib import Path

from browser.real_server import chromium_options
from parity.page import engine_page
from playwright.sync_api import sync_playwright
from webapp.phone import build_engine
from webapp.workouts import completed

DEMO = Path(__file__).resolve().parents[2] / "demo_data"
SLOWDOWNS = [1, 4]
RUNS = 7
ATHLETE = {"level": "regular", "body_mass_kg": 72}

MEASURE = """([call, given, runs]) => {
  const times = [];
  for (let run = 0; run <= runs; run += 1) {
    const start = performance.now();
    window.engine[call](...given);
    times.push(performance.now() - start);
  }
  const first = times.shift();
  times.sort((a, b) => a - b);
  return [first, times[Math.floor(times.length / 2)]];
}"""


def questions_to_the_engine(page):
    """Name, function and arguments of everything that is timed."""
    for path in sorted(DEMO.glob("*.json")):
        workout = completed(json.loads(path.read_text(encoding="utf-8")))
        for style in ("steady", "bold"):
            yield f"plan, {workout['title']}, {style}", "plan", [workout, ATHLETE, {"style": style}]
        plan = page.evaluate("given => window.engine.plan(...given)", [workout, ATHLETE, {}])
        own = [block["uncut"] or {"sets": block["sets"], "rests_s": block["rests_s"]} for block in plan["blocks"]]
        yield f"judge, {workout['title']}", "judge", [workout, ATHLETE, {}, own]
        yield f"who fails, {workout['title']}", "who_fails", [workout, ATHLETE, {}, own]
        end_s = plan["blocks"][0]["end_s"]
        yield f"replan, {workout['title']}", "replan", [plan, [{"at_s": end_s * 1.1, "kind": "block"}], end_s * 1.1]
    yield "break_up 14, 40", "break_up", [14, 40, 2.4]


def measure(browser, slowdown):
    """First and median time of every question, on a page of its own."""
    with engine_page(browser, build_engine()) as page:
        page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slowdown})
        return {name: page.evaluate(MEASURE, [call, given, RUNS]) for name, call, given in questions_to_the_engine(page)}


def main():
    """Print one line per question."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(**chromium_options())
        found = [measure(browser, slowdown) for slowdown in SLOWDOWNS]
        browser.close()
    print(f"{'':36}" + "".join(f"{f'first {slowdown}x':>10}{f'then {slowdown}x':>10}" for slowdown in SLOWDOWNS))
    for name in found[0]:
        print(f"{name:36}" + "".join(f"{first:10.1f}{median:10.1f}" for first, median in (times[name] for times in found)))

