"""The real server in a process of its own, with the demo workouts and a store of its own; and which Chromium to drive it with."""

import contextlib
import re
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SYSTEM_CHROMIUM = Path("/usr/bin/chromium")
# The list of suggestions under the address line is a page of its own, loaded anew for every context: a fifth of a test's computing for something
# nobody sees. Chromium heeds the last such flag only, so what Playwright leaves out (1.65) is named again.
UNUSED_FEATURES = [
    "WebUIOmniboxPopup", "WebUIOmniboxAimPopup", "AvoidUnnecessaryBeforeUnloadCheckSync", "DestroyProfileOnBrowserClose", "HttpsUpgrades",
    "HttpsFirstBalancedModeAutoEnable", "LensOverlay", "MediaRouter", "PaintHolding", "ThirdPartyStoragePartitioning",
    "AvoidCorsURLLoaderRestartOnRedirect", "OptimizationHints", "NetworkTimeServiceQuerying", "AimEnabled", "PreconnectToSearch",
]  # fmt: skip
FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run", f"--disable-features={','.join(UNUSED_FEATURES)}",
]  # fmt: skip
START_DEADLINE_S = 60


class ServerDidNotStart(Exception):
    """What the server said before it gave up."""


def chromium_options():
    """The system's Chromium if there is one, else the one Playwright brings."""
    return {"args": FLAGS} | ({"executable_path": str(SYSTEM_CHROMIUM)} if SYSTEM_CHROMIUM.exists() else {})


def free_port():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def _wait_until_up(process, address, log):
    deadline = time.monotonic() + START_DEADLINE_S
    while time.monotonic() < deadline:
        if process.poll() is not None:
            break
        try:
            with urllib.request.urlopen(f"{address}/health", timeout=2):
                return
        except (urllib.error.URLError, ConnectionError, TimeoutError):
            time.sleep(0.1)
    raise ServerDidNotStart(log.read_text())


@contextlib.contextmanager
def running_server(folder):
    """Run a server that keeps its data in `folder`, and give its address."""
    log = folder / "log.txt"
    port = free_port()
    command = [sys.executable, "-m", "webapp", "serve", "--demo", "--port", str(port), "--data", str(folder / "data.sqlite3")]
    with log.open("w") as output:
        process = subprocess.Popen(command, cwd=ROOT, stdout=output, stderr=subprocess.STDOUT)
    try:
        _wait_until_up(process, f"http://127.0.0.1:{port}", log)
        yield f"http://127.0.0.1:{port}"
    finally:
        process.terminate()
        process.wait(10)


def demo_links(address):
    """Addresses of the demo workouts, in the order of the home page."""
    with urllib.request.urlopen(address) as answer:
        codes = re.findall(r'href="(/w/[^"/#]+)"', answer.read().decode())
    return [address + path for path in dict.fromkeys(codes)]
