"""The search's inner loop: a whole break-up on plain numbers, for the primary slot alone.

The same model as `reserve.perform` and `breath`, written out once more because nearly all of a plan's computing is spent here; a test holds
the two together to the last digits.
"""

import math

from .parameters import (
    FAST_SHARE,
    FAST_TIME_CONSTANT_S,
    SLOW_AIR_TIME_CONSTANT_S,
    SLOW_FLOOR,
    SLOW_THRESHOLD,
    SLOW_TIME_CONSTANT_S,
    SLOWING,
    SWITCH_S,
)
from .reserve import Fatigue, quick_time_constant
from .segments import Segment

MANY_STEPS = 1000000


def leads_alone(fatigue: Fatigue, segment: Segment) -> bool:
    """Is the primary slot the only one likely to give out, so that a search may look at it alone and check its answer?

    So it is where no other slot, from where it starts, gets deep even if the primary one is emptied once.
    """
    for position in range(1, len(segment.effort.slots)):
        slot = segment.effort.slots[position]
        if fatigue.quick[slot] + fatigue.slow[slot] + segment.effort.costs[position] / segment.effort.costs[0] > 0.95:
            return False
    return True


def seconds_alone(
    fatigue: Fatigue, segment: Segment, sets: list[int], rests_s: list[float], gain: float, ceiling: float, price: float = 0.0
) -> float:
    """Return what `run_sets` takes where only the primary slot can give out, math.inf where it would fail; nothing is changed. [s]

    `price` is added for the slow fatigue left in the primary slot, seconds for all of it: what it will cost the blocks to come.

    The search's inner loop: the same model as `reserve.perform` on plain numbers, a test holds the two together. Where sides change and
    the primary slot is one side's own, the resting side's fatigue is kept aside and caught up with when its turn comes.
    """
    breath = segment.breath
    lead = segment.effort.slots[0]
    other = lead if segment.other_side is None else segment.other_side.slots[0]
    cost = segment.effort.costs[0]
    fresh_s = segment.effort.seconds
    linger_s = segment.effort.linger_s
    entry = segment.effort.entry * cost
    air_fast = fatigue.air_fast
    air_slow = fatigue.air_slow
    slope = gain / (1 - SLOW_THRESHOLD)
    u = fatigue.quick[lead]
    v = fatigue.slow[lead]
    idle_u = fatigue.quick[other]
    idle_v = fatigue.slow[other]
    idle_since = 0.0
    elapsed = 0.0
    done = 0
    turn = segment.switch_steps if segment.switch_steps > 0 else MANY_STEPS
    for index in range(len(sets)):
        quick_s = quick_time_constant(air_fast + air_slow)
        begun = elapsed
        for step in range(sets[index]):
            if done == turn:
                turn = turn + segment.switch_steps
                pause_s = SWITCH_S if step > 0 else 0.0
                u = u * math.exp(-pause_s / quick_s)
                v = v * math.exp(-pause_s / SLOW_TIME_CONSTANT_S)
                elapsed = elapsed + pause_s
                if other != lead:
                    away_s = elapsed - idle_since
                    rested_u = idle_u * math.exp(-away_s / quick_s)
                    rested_v = idle_v * math.exp(-away_s / SLOW_TIME_CONSTANT_S)
                    idle_u = u
                    idle_v = v
                    idle_since = elapsed
                    u = rested_u
                    v = rested_v
            if step == 0:
                share = min(1.0, max(SLOW_FLOOR, slope * (u + v + entry / 2 - SLOW_THRESHOLD)))
                u = u + entry * (1 - share)
                v = v + entry * share
            depth = u + v
            if depth + cost > ceiling:
                return math.inf
            middle = depth + cost / 2
            share = slope * (middle - SLOW_THRESHOLD)
            if share < SLOW_FLOOR:
                share = SLOW_FLOOR
            elif share > 1:
                share = 1.0
            seconds = fresh_s * (1 + SLOWING * middle * middle * middle)
            u = (u + cost * (1 - share)) * math.exp(-seconds / quick_s)
            v = (v + cost * share) * math.exp(-seconds / SLOW_TIME_CONSTANT_S)
            elapsed = elapsed + seconds + linger_s
            done = done + 1
        work_s = elapsed - begun
        if breath.spend > 0:
            spent = breath.spend * work_s
            over = max(0.0, air_fast + air_slow + spent - 1)
            air_fast = air_fast + FAST_SHARE * (spent - over)
            air_slow = air_slow + (1 - FAST_SHARE) * (spent - over)
            if over > 0:
                longer_s = over * breath.longer
                quick_s = quick_time_constant(1.0)
                u = u * math.exp(-longer_s / quick_s)
                v = v * math.exp(-longer_s / SLOW_TIME_CONSTANT_S)
                elapsed = elapsed + longer_s
        else:
            air_fast = air_fast * math.exp(-work_s * breath.refill / FAST_TIME_CONSTANT_S)
            air_slow = air_slow * math.exp(-work_s * breath.refill / SLOW_AIR_TIME_CONSTANT_S)
        if index < len(rests_s):
            rest_s = rests_s[index]
            quick_s = quick_time_constant(air_fast + air_slow)
            u = u * math.exp(-rest_s / quick_s)
            v = v * math.exp(-rest_s / SLOW_TIME_CONSTANT_S)
            air_fast = air_fast * math.exp(-rest_s / FAST_TIME_CONSTANT_S)
            air_slow = air_slow * math.exp(-rest_s / SLOW_AIR_TIME_CONSTANT_S)
            elapsed = elapsed + rest_s
    return elapsed + price * v
