"""How far whole plans are from the best with free rests, over a fixed set of workouts and athletes; and five naive plans a block.

The objective is the engine's own: seconds to the end for the athlete as given (caution 0), the same simulation, ceilings and half rule; where a cap
cuts the plan off, how many steps get done by then. The reference is the better of two searches over set sizes and depths of all blocks together (see
`whole_plans`): SciPy's `differential_evolution` over six numbers a block, polished, and a coordinate search begun at the engine's plan. Neither
is proved to be the optimum: the true excess may be larger, by how much the two differ says something.
"""

import concurrent.futures
import math
import statistics
import time

import numpy as np
from scipy.optimize import differential_evolution

from webapp.engine.breath import rest
from webapp.engine.choose import filled_up
from webapp.engine.joined import joined
from webapp.engine.ladder import tried
from webapp.engine.layout import carried_to_cap, complete, lay_out, with_more
from webapp.engine.prepare import Case, stints_of
from webapp.engine.reserve import twin
from webapp.engine.simulate import NO_STEP, run_sets
from webapp.engine.stint_segment import ceiling_of, segment_of
from webapp.engine.whole import LONGEST_S, Start, at_rest, do_stint, live_through, pass_change_over

from .whole_cases import cases, numbers_of, workout_of
from .whole_plans import Whole, as_planned, begun, live

GENERATIONS, PEOPLE = 12, 4  # of the evolution, for every number
SECONDS = 20.0  # the coordinate search from one start ends here at the latest
STEPS = [0.1, 0.04, 0.015]  # of depth; coarse to fine
SEED = 20261125


def laid_out(name, level):
    """The engine's layout at caution 0, its sets joined and its end filled up for somebody who is exactly as given, and the case."""
    case = Case(workout_of(name), numbers_of(name, level), {})
    case.stints = stints_of(case, case.option)
    ones = [1.0] * len(case.stints)
    exact = [{"factors": ones, "paces": ones, "breath": 0.0, "gain": case.gain, "ahead": 0.0}]
    layout = lay_out(case.stints, ones, case.gain, case.cap_s, [], at_rest())
    layout = {**carried_to_cap(layout, case.stints, case.gain, case.cap_s, at_rest()), "caution": 0}
    layout = joined(case, exact, case.cap_s, tried(case, exact, case.cap_s, None, layout))
    return filled_up(case, exact, case.cap_s, layout), case


def whole_of(layout, gain):
    """The layout, up to where it is cut off, as something to be lived through."""
    return Whole(layout["stints"][: len(layout["breakups"])], layout["breakups"], gain, at_rest())


class Descent:
    """The better of two neighbours, again and again: sizes moved between neighbours, sets joined and parted, depths up and down."""

    def __init__(self, whole, plan, guesses):
        self.whole, self.plan = whole, {index: [list(one) for one in sets] for index, sets in plan.items()}
        self.seconds, self.guesses, self.states = live(whole, self.plan, guesses, begun(whole), 0)
        self.until = time.perf_counter() + SECONDS

    def tried(self, index, sets, after=None):
        """Take these sets for the stint, and these for later ones, if the whole gets quicker by it."""
        if time.perf_counter() > self.until or not self.whole.keeps_rules(index, [size for size, _ in sets]):
            return False
        plan = {**self.plan, index: sets, **(after or {})}
        seconds, guesses, states = live(self.whole, plan, self.guesses, self.states, index)
        if seconds >= self.seconds - 0.005:
            return False
        self.plan, self.seconds, self.guesses, self.states = plan, seconds, guesses, states
        return True

    def depths(self, index, step):
        """Each set's depth up and down; then all from some set on, in this stint and in all."""
        better, most = False, self.whole.ceilings[index]
        for place in range(len(self.plan[index])):
            for change in (step, -step):
                for upto in (place + 1, len(self.plan[index])):
                    while self.tried(index, changed(self.plan[index], place, upto, change, most)):
                        better = True
                while self.tried(index, changed(self.plan[index], place, len(self.plan[index]), change, most), self.after(index, change)):
                    better = True
        return better

    def after(self, index, change):
        """The sets of all later stints, each depth changed."""
        return {
            later: changed(sets, 0, len(sets), change, self.whole.ceilings[later]) for later, sets in self.plan.items() if later > index
        }

    def sizes(self, index):
        """One piece from one set to another, two sets made one, one set made two."""
        better, piece = False, self.whole.stints[index]["piece_steps"]
        for other in sized(self.plan[index], piece):
            better = self.tried(index, other) or better
        return better

    def run(self):
        """Descend until nothing is better."""
        for step in STEPS:
            better = True
            while better and time.perf_counter() < self.until:
                better = any([self.sizes(index) | self.depths(index, step) for index in self.whole.local])
        return self.seconds


def changed(sets, place, upto, change, most):
    """The sets with the depth of some of them changed."""
    return [[size, min(most, depth + change) if place <= at < upto else depth] for at, (size, depth) in enumerate(sets)]


def sized(sets, piece):
    """The sets with sizes changed a little: neighbours in the order they are looked at."""
    made = []
    for place in range(len(sets)):
        for other in (place - 1, place + 1, len(sets) - 1):
            if 0 <= other < len(sets) and other != place:
                moved = [list(one) for one in sets]
                moved[place][0] -= piece
                moved[other][0] += piece
                made.append([one for one in moved if one[0] > 0])
        if place + 1 < len(sets):
            joined = [sets[place][0] + sets[place + 1][0], max(sets[place][1], sets[place + 1][1])]
            made.append([*sets[:place], joined, *sets[place + 2 :]])
        first = sets[place][0] // (2 * piece) * piece
        if first > 0:
            made.append([*sets[:place], [first, sets[place][1]], [sets[place][0] - first, sets[place][1]], *sets[place + 1 :]])
    return made


def shaped(whole, numbers):
    """The plan that six numbers a block stand for: opening, first and last size as shares of what is allowed, depths at both ends and for the last set."""
    plan = {}
    for place, index in enumerate(whole.local):
        opening, early, late, deep_early, deep_late, deep_last = numbers[6 * place : 6 * place + 6]
        stint, sets = whole.stints[index], []
        left, piece = stint["steps"], stint["piece_steps"]
        while left > 0:
            gone = 1 - left / stint["steps"]
            most = whole.largest(index, left)
            share = opening if not sets else early + (late - early) * gone
            size = min(left, max(piece, round(share * most / piece) * piece))
            sets.append([size, whole.ceilings[index] * (deep_early + (deep_late - deep_early) * gone)])
            left -= size
        sets[-1][1] = whole.ceilings[index] * deep_last
        plan[index] = sets
    return plan


def evolved(whole):
    """The best plan of the evolution."""
    bounds = [(0.0, 1.0), (0.0, 1.0), (0.0, 1.0), (0.3, 1.0), (0.3, 1.0), (0.5, 1.0)] * len(whole.local)

    def seconds(numbers):
        plan = shaped(whole, numbers)
        if not all(whole.keeps_rules(index, [size for size, _ in sets]) for index, sets in plan.items()):
            return 1e5
        return min(live(whole, plan, {}, begun(whole), 0)[0], 1e4)

    population = max(8, PEOPLE * len(bounds) // 3)
    start = np.random.default_rng(SEED).uniform([low for low, _ in bounds], [high for _, high in bounds], (population, len(bounds)))
    found = differential_evolution(seconds, bounds, init=start, maxiter=GENERATIONS, polish=False, seed=SEED, tol=0)
    return shaped(whole, found.x)


def breakup_of(sets, rests_s, lead_s=0.0):
    """A break-up as the engine keeps it."""
    return {"sets": sets, "rests_s": rests_s, "lead_s": lead_s, "plan": []}


def naive_sets(most, amount):
    """Five ways people go about it without a plan: sets each, before any rest is chosen."""
    most, third, half = max(1, int(most)), max(1, int(most) // 3), max(1, math.ceil(amount / 2))

    def even(size):
        return [size] * (amount // size) + ([amount % size] if amount % size else [])

    return {
        "to failure, then singles": [min(most, amount)] + [1] * max(0, amount - most), "equal halves": even(half),
        "constant fives": even(5), "every rep single": even(1), "even thirds": even(third),
    }  # fmt: skip


def naive_breakup(whole, index, sets, fatigue):
    """These sets with the least wait and the least rest for all, whole seconds, that hold; None where none does."""
    stint, segment = whole.stints[index], whole.segments[index]
    for lead_s in (0.0, 10.0, 30.0, 60.0):
        for rest_s in range(math.ceil(whole.least_rest_s(index)), 300):
            going = twin(fatigue)
            rest(going, segment.slots, lead_s)
            if run_sets(going, segment, sets, [rest_s] * (len(sets) - 1), whole.gain, ceiling_of(stint, 1.0)).failed_at == NO_STEP:
                return breakup_of(sets, [float(rest_s)] * (len(sets) - 1), lead_s)
            if len(sets) == 1:
                break
    return None


def naive_result(whole, kind, only, cap_s):
    """Seconds to the end, steps by the cap, and whether the half rule was kept (our plans must), with a naive plan in one block, all rounds of it, or in
    all for None, the engine's own everywhere else; None where it does not go."""
    fatigue, clock, gain, kept, breakups = at_rest().fatigue, 0.0, whole.gain, True, []
    for index, stint in enumerate(whole.stints):
        clock += pass_change_over(fatigue, stint, index > 0)
        if clock >= cap_s:
            break
        breakup = whole.breakups[index]
        if index in whole.local:
            if only in (None, stint["block"]):
                breakup = naive_breakup(whole, index, naive_sets(stint["max_steps"], stint["steps"])[kind], fatigue)
            else:
                ones = [1.0] * (len(whole.stints) - index)
                breakup = lay_out(whole.stints[index:], ones, gain, None, [], Start(fatigue, clock, False))["breakups"][0]
            if breakup is None:
                return None
            kept = kept and whole.keeps_rules(index, breakup["sets"])
        breakups.append(breakup)
        clock += do_stint(fatigue, stint, breakup, segment_of(stint, 1.0, 1.0), gain, clock).seconds
    ones = [1.0] * len(whole.stints)
    return clock, sum(live_through(whole.stints, breakups, ones, ones, gain, cap_s, at_rest())["done"]), kept


def better_naive(whole, ours_s, ours_steps, cap_s):
    """The naive plans that were quicker, or got further by the cap, in words: those that keep the half rule, those that break it. Work in pieces of
    several steps is left out."""
    kinds = [] if any(stint["piece_steps"] > 1 for stint in whole.stints if stint["kind"] == "local") else list(naive_sets(10, 10))
    blocks = sorted({whole.stints[index]["block"] for index in whole.local})
    found = {True: [], False: []}
    for kind in kinds:
        for only in [None, *blocks] if len(blocks) > 1 else [None]:
            result = naive_result(whole, kind, only, cap_s)
            if result is not None and (result[1] > ours_steps or result[1] == ours_steps and result[0] < ours_s - 1e-6):
                found[result[2]].append(f"{kind} in {'all' if only is None else only}: {result[0]:.0f} s, {result[1]}")
    return found[True], found[False]


def furthest(layout, asked, stints):
    """The most steps by the cap that the reference finds: one more, and one more, for as long as its best time for them is within the cap."""
    more = 0
    while True:
        reached = with_more(layout["stints"][: len(layout["breakups"])], stints, more + 1)
        start = lay_out(reached, [1.0] * len(reached), asked.gain, None, [], at_rest())
        if min(best_times(whole_of(start, asked.gain))) > asked.cap_s or complete(reached, stints):
            return steps_in(layout) + more
        more += 1


def best_times(whole):
    """The least times of both references. [s]"""
    plan, guesses, _ = as_planned(whole)
    return Descent(whole, plan, guesses).run(), Descent(whole, evolved(whole), {}).run()


def steps_in(layout):
    """Steps planned."""
    return sum(stint["steps"] for stint in layout["stints"][: len(layout["breakups"])])


def compare(case):
    """One case: ours and the references', in seconds, or in steps by the cap where it cuts the plan off, the naive plans that were better, capped or not."""
    layout, asked = laid_out(*case)
    whole = whole_of(layout, asked.gain)
    ours_s = as_planned(whole)[2]
    until_s = LONGEST_S if asked.cap_s is None else asked.cap_s
    ones = [1.0] * len(whole.stints)
    lived = live_through(whole.stints, whole.breakups, ones, ones, asked.gain, until_s, at_rest())
    assert lived["finished"] and not sum(lived["fails"]) and abs(lived["seconds"] - ours_s) < 1e-6, (case, lived, ours_s)
    stints = stints_of(asked, asked.option)
    if layout["capped"]:
        uncut = {**layout, "stints": stints, "breakups": layout["whole"]}
        naive = better_naive(whole_of(uncut, asked.gain), until_s, steps_in(layout), until_s)
        furthest_steps = furthest(layout, asked, stints)
        return case, steps_in(layout), furthest_steps, furthest_steps, naive, True
    return case, ours_s, *best_times(whole), better_naive(whole, ours_s, steps_in(layout), until_s), False


def main():
    """Print the table."""
    print("workout, athlete: ours [s], best from ours, best evolved [s], or steps by the cap; excess over the better [%]; naive plans that were better")
    excesses, naive, breaking = [], 0, 0
    with concurrent.futures.ProcessPoolExecutor() as pool:
        for (name, level), ours, one, other, (better, unruly), capped in pool.map(compare, cases()):
            excesses.append(100 * (one / ours - 1 if capped else ours / min(one, other) - 1))
            naive, breaking = naive + len(better), breaking + len(unruly)
            told = "; ".join(better) + (f" [{len(unruly)} that break the half rule]" if unruly else "") + (" (steps by the cap)" if capped else "")
            print(f"{name:20} {level:8} {ours:7.1f} {one:7.1f} {other:7.1f}  {excesses[-1]:5.1f}  {told}", flush=True)
    print(f"{len(excesses)} whole workouts: excess median {statistics.median(excesses):.1f} %, worst {max(excesses):.1f} %")
    print(f"naive plans that were better: {naive} within the half rule, {breaking} that break it")
