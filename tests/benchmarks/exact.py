"""The reference the memorable plans are held against: dynamic programming over work left, quick and slow fatigue.

State after a set: repetitions left, u, v. Decision: a rest, then a set. Values stand on a grid of u and v and are read between its points; the best
decisions are then followed with the model itself, so the time that comes out is one that somebody can do. Sets are free but for the half rule, every
rest is free on its own grid: nobody could remember such a plan.
"""

import math

import numpy as np

from webapp.engine.parameters import (
    QUICK_TIME_CONSTANT_S,
    SLOW_FLOOR,
    SLOW_GAIN,
    SLOW_THRESHOLD,
    SLOW_TIME_CONSTANT_S,
    SLOWING,
)
from webapp.engine.reserve import cost_per_rep
from webapp.engine.stints import half_steps

POINTS = 41  # of the grid, each way


class Exact:
    """One movement done fresh: see `best_time`."""

    def __init__(self, max_reps, reps, seconds, *, set_up_s=4.0, entry=0.4, held_back=0.15, rests_s=None):
        self.reps, self.seconds, self.entry = reps, seconds, entry
        self.max_reps, self.below_half = max_reps, half_steps(max_reps)
        self.cost = cost_per_rep(max_reps, seconds, entry, SLOW_GAIN)
        self.ceiling = 1 - held_back + 1e-9
        self.rests_s = np.array(rests_s if rests_s is not None else fine_rests(set_up_s))
        self.axis = np.linspace(0, 1, POINTS)
        self.u, self.v = (part.ravel() for part in np.meshgrid(self.axis, self.axis, indexing="ij"))

    def spend(self, u, v, cost):
        """Take a cost at its middle, as the model does."""
        share = np.clip(SLOW_GAIN * (u + v + cost / 2 - SLOW_THRESHOLD) / (1 - SLOW_THRESHOLD), SLOW_FLOOR, 1)
        return u + cost * (1 - share), v + cost * share

    def sets(self, u, v, most):
        """u, v and time after 1..most repetitions of one set, inf where it cannot be done."""
        u, v = self.spend(u, v, self.entry * self.cost)
        time_s = np.zeros_like(u)
        for _ in range(most):
            time_s = np.where(u + v + self.cost > self.ceiling, np.inf, time_s)
            middle = u + v + self.cost / 2
            lasts = self.seconds * (1 + SLOWING * middle**3)
            u, v = self.spend(u, v, self.cost)
            u, v = u * np.exp(-lasts / QUICK_TIME_CONSTANT_S), v * np.exp(-lasts / SLOW_TIME_CONSTANT_S)
            time_s = time_s + lasts
            yield u, v, time_s

    def rested(self, u, v):
        """u and v after every rest, one row each."""
        return u * np.exp(-self.rests_s[:, None] / QUICK_TIME_CONSTANT_S), v * np.exp(-self.rests_s[:, None] / SLOW_TIME_CONSTANT_S)

    def largest(self, left):
        """The largest set with so much still to do."""
        return min(left, self.below_half) if left > self.max_reps else left

    def between(self, values, u, v):
        """Values read between the points of the grid."""
        place_u, place_v = np.clip(u, 0, 1) * (POINTS - 1), np.clip(v, 0, 1) * (POINTS - 1)
        low_u, low_v = np.minimum(place_u.astype(int), POINTS - 2), np.minimum(place_v.astype(int), POINTS - 2)
        part_u, part_v = place_u - low_u, place_v - low_v
        corner = low_u * POINTS + low_v
        low = values[corner] * (1 - part_v) + values[corner + 1] * part_v
        high = values[corner + POINTS] * (1 - part_v) + values[corner + POINTS + 1] * part_v
        return low * (1 - part_u) + high * part_u

    def ahead(self, values, left, u, v):
        """Time to the end for every set next, begun at u, v with `left` to do: one row per size."""
        rows = []
        for size, (after_u, after_v, time_s) in enumerate(self.sets(u, v, self.largest(left)), start=1):
            rows.append(time_s if size == left else time_s + self.between(values[left - size], after_u, after_v))
        return np.array(rows)

    def solve(self):
        """Least time to the end after a set, for every amount left and every point of the grid."""
        values = {}
        for left in range(1, self.reps):
            u, v = self.rested(self.u, self.v)
            best = self.ahead(values, left, u.ravel(), v.ravel()).min(axis=0).reshape(u.shape)
            values[left] = np.minimum((best + self.rests_s[:, None]).min(axis=0), 1e6)
        return values

    def best_time(self):
        """Sets, rests [s] and time [s] of the best plan, followed with the model itself."""
        values = self.solve()
        u, v, left, clock = np.zeros(1), np.zeros(1), self.reps, 0.0
        sets, rests = [], []
        while left > 0:
            if sets:
                after = self.rested(u, v)
                times = self.ahead(values, left, after[0].ravel(), after[1].ravel()).min(axis=0) + self.rests_s
                choice = int(times.argmin())
                rests.append(float(self.rests_s[choice]))
                clock += rests[-1]
                u, v = after[0][choice], after[1][choice]
            size = int(self.ahead(values, left, u, v)[:, 0].argmin()) + 1
            u, v, time_s = list(self.sets(u, v, size))[-1]
            clock, left = clock + float(time_s[0]), left - size
            sets.append(size)
        return sets, rests, clock


def fine_rests(set_up_s):
    """Rests from the set-up time to three minutes, close together where they are short. [s]"""
    return [set_up_s + step for step in range(0, 40)] + [set_up_s + 40 + 3 * step for step in range(40)]


def time_of(max_reps, reps, seconds, **others):
    """Time of the best plan. [s]"""
    found = Exact(max_reps, reps, seconds, **others).best_time()[2]
    return found if math.isfinite(found) else math.inf
