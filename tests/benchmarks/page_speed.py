"""What a class link weighs and how soon it is there: bytes of the first usable screen, and the second open with the network off."""

import statistics
import tempfile
from pathlib import Path

from browser.conftest import PHONE, open_class
from browser.real_server import chromium_options, demo_links, running_server
from playwright.sync_api import sync_playwright

SLOWDOWN = 4
RUNS = 5
# Until the first words of the briefing stand on the screen, as the browser itself times it.
PAINTED = "performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? null"

USABLE = "performance.getEntriesByName('usable')[0].startTime"   # one can read it and go on from it


def first_open(browser, link):
    """Bytes on the wire, headers included, of the first usable screen and the engine: all but what is asked for once that screen stands."""
    context = browser.new_context(viewport=PHONE, service_workers="block")
    context.route("**/class-path.js", lambda route: route.abort())
    page = context.new_page()
    session = context.new_cdp_session(page)
    session.send("Network.enable")
    sizes = []
    session.on("Network.loadingFinished", lambda event: sizes.append(event["encodedDataLength"]))
    page.goto(link)
    page.wait_for_selector("[data-usable]", state="attached")
    page.evaluate("() => import('/engine.js').then(() => null)")
    page.wait_for_timeout(500)
    context.close()
    return sum(sizes), len(sizes)


def second_open(browser, link):
    """Times [ms] to the first paint, to a usable screen and to a finished plan, network off, processor slowed."""
    context = browser.new_context(viewport=PHONE)
    page = context.new_page()
    open_class(page, link)
    page.wait_for_selector("[data-saved]", state="attached")
    page.wait_for_timeout(1500)
    context.set_offline(True)
    times = []
    for _ in range(RUNS):
        page = context.new_page()
        context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWDOWN})
        page.goto(link, wait_until="commit")
        page.wait_for_selector("[data-usable]", state="attached")
        usable = page.evaluate(USABLE)
        page.wait_for_selector("[data-ready]", state="attached")
        times.append((page.evaluate(PAINTED), usable, page.evaluate("performance.now()")))
        page.close()
    context.close()
    return times


def main():
    """Print both for every demo workout's class link."""
    with tempfile.TemporaryDirectory() as folder, running_server(Path(folder)) as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(**chromium_options())
        for link in demo_links(address):
            size, answers = first_open(browser, link)
            times = second_open(browser, link)
            painted, usable, ready = (statistics.median(part) for part in zip(*times, strict=True))
            print(f"first open {size / 1000:.1f} kB in {answers} answers; second open, offline, {SLOWDOWN}x: painted {painted:.0f} ms, usable {usable:.0f} ms, plan made {ready:.0f} ms")
        browser.close()
