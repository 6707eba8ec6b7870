"""The search's inner loop: the primary slot alone, on plain numbers.

The same model as `reserve.perform` and `breath`, written out once more because nearly all of a plan's computing is spent here; a test holds
the two together to the last digits.
"""

import math

from .parameters import (
    BREATH_SLOWS,
    FAST_SHARE,
    FAST_TIME_CONSTANT_S,
    QUICK_TIME_CONSTANT_S,
    SLOW_AIR_TIME_CONSTANT_S,
    SLOW_FLOOR,
    SLOW_THRESHOLD,
    SLOW_TIME_CONSTANT_S,
    SLOWING,
    SWITCH_S,
)
from .reserve import Fatigue
from .segments import Segment

MANY_STEPS = 1000000


class Alone:
    """A segment done set by set where only the primary slot can give out; see `walk`.

    `price` is added to the cost for the slow fatigue left in the primary slot, seconds for all of it: what it will cost the blocks to come.

    A state is a list: u, v, seconds, air_fast, air_slow, steps done, the step at which sides change next; and where the primary slot is one
    side's own, the resting side's u and v, and the second up to which it has rested.
    """

    def __init__(self, fatigue: Fatigue, segment: Segment, gain: float, ceiling: float, price: float):
        self.lead = segment.effort.slots[0]
        self.other = self.lead if segment.other_side is None else segment.other_side.slots[0]
        self.fatigue = fatigue
        self.segment = segment
        self.slope = gain / (1 - SLOW_THRESHOLD)
        self.ceiling = ceiling
        self.price = price

    def start(self) -> list[float]:
        """Return the state before the first set."""
        now = self.fatigue
        turn = self.segment.switch_steps if self.segment.switch_steps > 0 else MANY_STEPS
        lead = self.lead
        other = self.other
        return [now.quick[lead], now.slow[lead], 0.0, now.air_fast, now.air_slow, 0.0, turn, now.quick[other], now.slow[other], 0.0]

    def do_set(self, state: list[float], steps: int) -> bool:
        """Do a set of `steps`, in place; false where it fails."""
        effort = self.segment.effort
        cost = effort.costs[0]
        half = cost / 2
        fresh_s = effort.seconds
        linger_s = effort.linger_s
        slope = self.slope
        most = self.ceiling - cost
        begun_s = state[2]
        before = state[5]
        quick_s = QUICK_TIME_CONSTANT_S * (1 + BREATH_SLOWS * (state[3] + state[4]))
        self.turned(state, 0.0, quick_s)
        entry = effort.entry * cost
        share = min(1.0, max(SLOW_FLOOR, slope * (state[0] + state[1] + entry / 2 - SLOW_THRESHOLD)))
        u = state[0] + entry * (1 - share)
        v = state[1] + entry * share
        elapsed = begun_s
        turn = state[6] - before
        for step in range(steps):
            if step == turn:
                state[0] = u
                state[1] = v
                state[2] = elapsed
                state[5] = before + step
                self.turned(state, SWITCH_S, quick_s)
                u = state[0]
                v = state[1]
                elapsed = state[2]
                turn = state[6] - before
            depth = u + v
            if depth > most:
                return False
            middle = depth + half
            share = slope * (middle - SLOW_THRESHOLD)
            if share < SLOW_FLOOR:
                share = SLOW_FLOOR
            elif share > 1:
                share = 1.0
            seconds = fresh_s * (1 + SLOWING * middle * middle * middle)
            u = (u + cost * (1 - share)) * math.exp(-seconds / quick_s)
            v = (v + cost * share) * math.exp(-seconds / SLOW_TIME_CONSTANT_S)
            elapsed = elapsed + seconds + linger_s
        state[0] = u
        state[1] = v
        state[2] = elapsed
        state[5] = before + steps
        if self.other != self.lead:
            self.rested(state, quick_s)
        self.breathed(state, elapsed - begun_s)
        return True

    def turned(self, state: list[float], pause_s: float, quick_s: float):
        """Change sides where it is time, in place, after a pause within a set. [s]"""
        if state[5] < state[6]:
            return
        state[6] = state[6] + self.segment.switch_steps
        state[0] = state[0] * math.exp(-pause_s / quick_s)
        state[1] = state[1] * math.exp(-pause_s / SLOW_TIME_CONSTANT_S)
        state[2] = state[2] + pause_s
        if self.other != self.lead:
            self.rested(state, quick_s)
            u = state[0]
            v = state[1]
            state[0] = state[7]
            state[1] = state[8]
            state[7] = u
            state[8] = v

    def rested(self, state: list[float], quick_s: float):
        """Let the resting side catch up with the time, in place."""
        away_s = state[2] - state[9]
        state[7] = state[7] * math.exp(-away_s / quick_s)
        state[8] = state[8] * math.exp(-away_s / SLOW_TIME_CONSTANT_S)
        state[9] = state[2]

    def breathed(self, state: list[float], work_s: float):
        """Let the work of a set pass for the lungs, in place; where W′ runs out it takes longer."""
        breath = self.segment.breath
        if breath.spend == 0:
            state[3] = state[3] * math.exp(-work_s * breath.refill / FAST_TIME_CONSTANT_S)
            state[4] = state[4] * math.exp(-work_s * breath.refill / SLOW_AIR_TIME_CONSTANT_S)
            return
        spent = breath.spend * work_s
        over = max(0.0, state[3] + state[4] + spent - 1)
        state[3] = state[3] + FAST_SHARE * (spent - over)
        state[4] = state[4] + (1 - FAST_SHARE) * (spent - over)
        if over > 0:
            longer_s = over * breath.longer
            quick_s = QUICK_TIME_CONSTANT_S * (1 + BREATH_SLOWS)
            state[0] = state[0] * math.exp(-longer_s / quick_s)
            state[1] = state[1] * math.exp(-longer_s / SLOW_TIME_CONSTANT_S)
            state[2] = state[2] + longer_s
            self.rested(state, quick_s)

    def do_rest(self, state: list[float], rest_s: float):
        """Rest, in place. [s]"""
        quick_s = QUICK_TIME_CONSTANT_S * (1 + BREATH_SLOWS * (state[3] + state[4]))
        state[0] = state[0] * math.exp(-rest_s / quick_s)
        state[1] = state[1] * math.exp(-rest_s / SLOW_TIME_CONSTANT_S)
        state[2] = state[2] + rest_s
        if self.other != self.lead:
            self.rested(state, quick_s)
        state[3] = state[3] * math.exp(-rest_s / FAST_TIME_CONSTANT_S)
        state[4] = state[4] * math.exp(-rest_s / SLOW_AIR_TIME_CONSTANT_S)

    def comes_to(self, state: list[float]) -> float:
        """Return what it cost to come to this state: its time, and the price of the slow fatigue left. [s]"""
        return state[2] + self.price * state[1]
