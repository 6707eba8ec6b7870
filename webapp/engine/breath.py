"""Breath in the course of a workout: spending W′ above critical power, getting it back below."""

import math

from .parameters import FAST_SHARE, FAST_TIME_CONSTANT_S, SLOW_AIR_TIME_CONSTANT_S
from .reserve import Fatigue, recover


class Breath:
    """What work does to W′.

    Attributes
    ----------
    spend : share of W′ spent a second, 0 at or below CP. [1/s]
    refill : how fast it comes back, as a share of the rate at rest: (CP − P)/CP, 0 at or above CP. [0–1]
    longer : seconds that one W′ of work takes at CP: where W′ is gone, what is still above CP takes so much longer. [s]
    """

    def __init__(self, spend: float, refill: float, longer: float):
        self.spend = spend
        self.refill = refill
        self.longer = longer


def breath_of(watts: float, lungs: dict) -> Breath:
    """Return what work at this power does to these lungs."""
    above = watts - lungs["cp_w"]
    return Breath(max(0.0, above) / lungs["w_prime_j"], max(0.0, -above) / lungs["cp_w"], lungs["w_prime_j"] / lungs["cp_w"])


def breathe(fatigue: Fatigue, seconds: float, breath: Breath) -> float:
    """Let work of `seconds` [s] pass for the lungs, in place, and return how much longer it took because W′ ran out. [s]"""
    if breath.spend > 0:
        spent = breath.spend * seconds
        over = max(0.0, fatigue.air_fast + fatigue.air_slow + spent - 1)
        fatigue.air_fast = fatigue.air_fast + FAST_SHARE * (spent - over)
        fatigue.air_slow = fatigue.air_slow + (1 - FAST_SHARE) * (spent - over)
        return over * breath.longer
    refill(fatigue, seconds * breath.refill)
    return 0.0


def refill(fatigue: Fatigue, seconds: float):
    """Let W′ come back as in `seconds` [s] of rest, in place."""
    fatigue.air_fast = fatigue.air_fast * math.exp(-seconds / FAST_TIME_CONSTANT_S)
    fatigue.air_slow = fatigue.air_slow * math.exp(-seconds / SLOW_AIR_TIME_CONSTANT_S)


def rest(fatigue: Fatigue, slots: list[int], seconds: float):
    """Let a rest of `seconds` [s] pass for muscles and lungs, in place."""
    recover(fatigue, slots, seconds)
    refill(fatigue, seconds)
