"""What break-ups of one segment cost, done one way or another.

A way of doing the work (`quick.Alone`, `together.Together`) has a state: `start()` makes it, `do_set(state, steps)` moves it on, false where that fails,
`do_rest(state, rest_s)` likewise, and `comes_to(state)` says what it cost [s].
"""

import math


class Walk:
    """Break-ups of `steps` steps in pieces of `piece_steps`, done one way."""

    def __init__(self, way, steps: int, piece_steps: int):
        self.way = way
        self.steps = steps
        self.piece_steps = piece_steps

    def bill(self, plan: list[float]) -> float:
        """Return what a flat plan costs, math.inf where it fails: the last set takes what whole pieces leave over or want. [s]"""
        way = self.way
        state = way.start()
        left: float = self.steps
        for tier in range(0, len(plan) - 1, 3):
            steps = plan[tier] * self.piece_steps
            for _ in range(plan[tier + 1]):
                if not way.do_set(state, steps):
                    return math.inf
                way.do_rest(state, plan[tier + 2])
            left = left - steps * plan[tier + 1]
        return way.comes_to(state) if way.do_set(state, left) else math.inf
