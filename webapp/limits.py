"""How often one address may do what fills the disk or tries keys.

Kept in memory: a restart forgives, and one process serves a gym.
"""

import time
from collections import deque

from flask import abort, current_app, request

WINDOW_S = 600
# Generous for a gym whose coaches share one address, hopeless for filling a disk. (chosen)
MOST = {"new workout": 30, "wrong coach link": 20}
MOST_ADDRESSES = 10_000


class Limiter:
    """Counts what each address did within the window."""

    def __init__(self, most=MOST, window_s=WINDOW_S):
        self.most = most
        self.window_s = window_s
        self.seen = {}

    def allows(self, what, who, now_s):
        """Whether there may be one more, which is then counted."""
        times = self.seen.setdefault((what, who), deque())
        while times and times[0] <= now_s - self.window_s:
            times.popleft()
        if len(times) >= self.most[what]:
            return False
        times.append(now_s)
        self._forget(now_s)
        return True

    def _forget(self, now_s):
        if len(self.seen) > MOST_ADDRESSES:
            self.seen = {key: times for key, times in self.seen.items() if times[-1] > now_s - self.window_s}


def init_app(app):
    """One limiter for the process."""
    app.extensions["limiter"] = Limiter()


def count(what):
    """Note one more by this address, or answer "too many"."""
    if not current_app.extensions["limiter"].allows(what, request.remote_addr, time.monotonic()):
        abort(429)
