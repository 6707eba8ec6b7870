"""Many break-ups of one segment tried one after another: what they have in common is done once.

A way of doing the work (`quick.Alone`, `Together`) makes states: `start()`, `after_set(state, steps)`, an empty list where it fails,
`after_rest(state, rest_s)`, and `comes_to(state)`, what it cost [s].
"""

import math

from .breath import rest
from .reserve import Fatigue, twin
from .segments import Segment, any_set


class Together:
    """A segment done set by set with every slot it loads; the slow alternative to `quick.Alone`. A state is [fatigue, seconds, steps done]."""

    def __init__(self, fatigue: Fatigue, segment: Segment, gain: float, ceiling: float, price: float):
        self.fatigue = fatigue
        self.segment = segment
        self.gain = gain
        self.ceiling = ceiling
        self.price = price

    def start(self) -> list:
        """Return the state before the first set."""
        return [self.fatigue, 0.0, 0]

    def after_set(self, state: list, steps: int) -> list:
        """Return the state after a set of `steps`, an empty list where it fails."""
        after = twin(state[0])
        result = any_set(after, self.segment, steps, self.gain, self.ceiling, state[2])
        return [after, state[1] + result[1], state[2] + steps] if result[0] == steps else []

    def after_rest(self, state: list, rest_s: float) -> list:
        """Return the state after a rest. [s]"""
        after = twin(state[0])
        rest(after, self.segment.slots, rest_s)
        return [after, state[1] + rest_s, state[2]]

    def comes_to(self, state: list) -> float:
        """Return what it cost to come to this state: its time, and the price of the slow fatigue left in the primary slot. [s]"""
        return state[1] + self.price * state[0].slow[self.segment.slots[0]]


class Walk:
    """Break-ups of `steps` steps in pieces of `piece_steps`, done one way; remembers the states after every set of every beginning."""

    def __init__(self, way, steps: int, piece_steps: int):
        self.way = way
        self.steps = steps
        self.piece_steps = piece_steps
        self.known = {}

    def bill(self, plan: list) -> float:
        """Return what a flat plan costs, math.inf where it fails: the last set takes what whole pieces leave over or want. [s]"""
        state = self.way.start()
        beginning = ""
        left = self.steps
        for tier in range(0, len(plan) - 1, 3):
            steps = plan[tier] * self.piece_steps
            beginning = beginning + str(int(plan[tier])) + "/" + str(int(plan[tier + 2]))
            state = self.after_tier(beginning, state, steps, plan[tier + 1], plan[tier + 2])
            if len(state) == 0:
                return math.inf
            beginning = beginning + "x" + str(int(plan[tier + 1])) + " "
            left = left - steps * plan[tier + 1]
        state = self.way.after_set(state, left)
        return self.way.comes_to(state) if len(state) > 0 else math.inf

    def after_tier(self, beginning: str, state: list, steps: int, count: int, rest_s: float) -> list:
        """Return the state after `count` sets of `steps` and their rests, an empty list where one fails."""
        states = self.known.get(beginning)
        if states is None:
            states = []
            self.known[beginning] = states
        while len(states) < count:
            before = state if len(states) == 0 else states[len(states) - 1]
            if len(before) == 0:
                return before
            after = self.way.after_set(before, steps)
            states.append(self.way.after_rest(after, rest_s) if len(after) > 0 else after)
        return states[count - 1]
