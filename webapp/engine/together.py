"""A way of doing work set by set that follows every slot it loads; see `walk`. The slow alternative to `quick`, and the one that counts."""

from .breath import rest
from .reserve import Fatigue, twin
from .segments import Segment, any_set


class Together:
    """A segment done set by set with every slot it loads. A state is [fatigue, seconds, steps done]."""

    def __init__(self, fatigue: Fatigue, segment: Segment, gain: float, ceiling: float, price: float):
        self.fatigue = fatigue
        self.segment = segment
        self.gain = gain
        self.ceiling = ceiling
        self.price = price

    def start(self) -> list:
        """Return the state before the first set."""
        return [twin(self.fatigue), 0.0, 0]

    def do_set(self, state: list, steps: int) -> bool:
        """Do a set of `steps`, in place; false where it fails."""
        result = any_set(state[0], self.segment, steps, self.gain, self.ceiling, state[2])
        state[1] = state[1] + result[1]
        state[2] = state[2] + steps
        return result[0] == steps

    def do_rest(self, state: list, rest_s: float):
        """Rest, in place. [s]"""
        rest(state[0], self.segment.slots, rest_s)
        state[1] = state[1] + rest_s

    def comes_to(self, state: list) -> float:
        """Return what it cost to come to this state: its time, and the price of the slow fatigue left in the primary slot. [s]"""
        return state[1] + self.price * state[0].slow[self.segment.slots[0]]
