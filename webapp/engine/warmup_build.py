"""The build: short pieces of two rounds in which unlike drills alternate, each nearer to the workout.

A visit is one turn of a mover in one round of one piece: {"mover", "piece", "round", "rungs"}. Leaner levels have fewer pieces, rounds and
movers; `spares` counts, group by group, the measures that make the sequence easier on one that would get too tired, in a fixed order: two
thirds of the reps, half of them and no bursts, the full movement in the last visit only, one visit only, one rep only, and that one in an
easier form or with a light load.
"""

import math

from .parameters import LIGHTEST, RAMP_DOSES, RAMP_START_SHARE
from .units import whole
from .warmup_movers import easier_rung

VISITS_WITH_CARE = 2  # of a drill that stands for a movement one had better not do; chosen
TAXES_SHARE = 0.3  # a movement taxes a group from this share on; chosen


def picked(movers: list, count: int) -> list:
    """Return the movers that matter most, in the order of the workout: limiting, heaviest, then by what is asked of them."""
    essentials = len([1 for mover in movers if mover["limiting"] or mover["heaviest"]])
    kept = [mover["movement"] for mover in by_importance(movers)[: max(essentials, count)]]
    return [mover for mover in movers if mover["movement"] in kept]


def by_importance(movers: list) -> list:
    """Return the movers, the one that counts most first."""
    return sorted(movers, key=importance, reverse=True)


def importance(mover: dict) -> int:
    """Return what a mover counts when not all can be rehearsed, whole so that no last bit decides."""
    bonus = (2000000000 if mover["limiting"] else 0) + (1000000000 if mover["heaviest"] else 0)
    return bonus + whole(1000 * min(mover["demand"], 100000.0))


def pieces_of(movers: list, count: int) -> list:
    """Return which movers alternate in each piece: all of them up to three, else unlike ones together, the limiting one's piece last."""
    if len(movers) <= 3 or count == 1:
        return [movers for _ in range(min(count, 2))]
    size = (len(movers) + count - 1) // count
    left = by_importance(movers)
    pieces = []
    while len(left) > 0:
        piece = [left[0]["movement"]]
        first = left.pop(0)
        while len(piece) < size and len(left) > 0:
            piece.append(left.pop(most_unlike(first, left))["movement"])
        pieces.append([mover for mover in movers if mover["movement"] in piece])
    return list(reversed(pieces))


def most_unlike(mover: dict, others: list) -> int:
    """Return which of the others shares least muscle with a mover, the first of those that share as little."""
    best = 0
    for index in range(len(others)):
        if overlap(mover, others[index]) < overlap(mover, others[best]) - 1e-9:
            best = index
    return best


def overlap(mover: dict, other: dict) -> float:
    """Return how much two movers load the same groups."""
    shares = mover["entry"]["shares"]
    theirs = other["entry"]["shares"]
    return sum([shares[group] * theirs.get(group, 0.0) for group in sorted(list(shares.keys()))])


def visits_of(movers: list, level: dict, spares: dict) -> list:
    """Return the visits of the build in order, rungs and amounts set."""
    visits = []
    for piece, members in enumerate(pieces_of(movers, level["pieces"])):
        for turn in range(level["rounds"]):
            for mover in members:
                visits.append({"mover": mover, "piece": piece + 1, "round": turn + 1, "rungs": []})
    for mover in movers:
        own = [visit for visit in visits if visit["mover"]["movement"] == mover["movement"]]
        spare = measures(mover, spares)
        if spare >= 4:
            own = own[len(own) - 1 :]
        if mover["care"] != "none" and len(mover["ladder"]) == 1:
            own = own[:VISITS_WITH_CARE]
        share_out(own, mover, spare)
    return [visit for visit in visits if len(visit["rungs"]) > 0]


def measures(mover: dict, spares: dict) -> int:
    """Return how many measures are taken on a mover: the most of any group that it loads so that it counts."""
    shares = mover["entry"]["shares"]
    return max([0] + [spares[group] for group in sorted(list(spares.keys())) if shares.get(group, 0.0) >= TAXES_SHARE])


def share_out(visits: list, mover: dict, spare: int):
    """Give a mover's visits their rungs, each nearer to the workout, in place."""
    ladder = mover["ladder"]
    top = len(ladder) - 1
    for slot in range(len(visits)):
        last = slot == len(visits) - 1
        chosen = [ladder[rung_index(slot, len(visits), top + 1)]]
        doubled = (mover["heaviest"] or mover["limiting"]) and len(visits) == 2 and slot == 0 and top >= 2
        if doubled and spare < 3:
            chosen.append(ladder[top - 1])
        if spare >= 3 and not last:
            chosen = [ladder[max(0, min(top - 1, rung_index(slot, len(visits), top + 1)))]]
        if spare >= LIGHTEST:
            chosen = [easiest_rung(ladder, mover)]
        visits[slot]["rungs"] = [{**rung, "amount": lighter(rung, spare)} for rung in chosen]
    trim(visits, mover)


def easiest_rung(ladder: list, mover: dict) -> dict:
    """Return the rung that is left when all measures are taken: a light load, else the rung below the movement, else an easier form."""
    top = ladder[len(ladder) - 1]
    if top["share"] is not None:
        return {**top, "share": min(top["share"], RAMP_START_SHARE)}
    if not top["full"]:
        return top
    return ladder[len(ladder) - 2] if len(ladder) > 1 and not ladder[len(ladder) - 2]["full"] else easier_rung(mover["entry"])


def rung_index(slot: int, visits: int, rungs: int) -> int:
    """Return which rung a visit climbs: one after the other where there are visits enough, else the last and evenly spaced ones before."""
    if visits == 1:
        return rungs - 1
    if rungs <= visits:
        return min(slot, rungs - 1)
    return whole(slot * (rungs - 1) / (visits - 1))


def lighter(rung: dict, spare: int) -> float:
    """Return a rung's amount after the measures taken: two thirds, half, a quarter, at last one rep or hardly any."""
    shares = [1.0, 2 / 3, 0.5, 0.5, 0.25, 0.125, 0.125]
    if rung["amount"] <= 1:
        return rung["amount"]
    if spare >= 5 and rung["unit"] == "reps":
        return 1
    return max(1, math.floor(rung["amount"] * shares[min(spare, len(shares) - 1)] + 1e-9))


def trim(visits: list, mover: dict):
    """Take reps off a mover's visits until build and burst keep within the ramp's most, in place.

    A rep goes where most can be spared above the rung's least, the earliest first.
    """
    rungs = []
    for visit in visits:
        rungs.extend([rung for rung in visit["rungs"] if rung["unit"] == "reps"])
    spare = mover["ramp_reps"] - (mover["burst"]["amount"] if mover["burst"] is not None and mover["burst"]["unit"] == "reps" else 0)
    while sum([rung["amount"] for rung in rungs]) > spare:
        best = 0
        for index in range(len(rungs)):
            if rungs[index]["amount"] - least_reps(rungs[index]) > rungs[best]["amount"] - least_reps(rungs[best]):
                best = index
        if rungs[best]["amount"] <= 1:
            return
        rungs[best]["amount"] = rungs[best]["amount"] - 1


def least_reps(rung: dict) -> int:
    """Return the fewest reps a rung keeps before others give."""
    if rung["share"] is not None:
        for dose in RAMP_DOSES:
            if rung["share"] <= dose[0]:
                return dose[1]
    return 1


def hardest_neighbours(blocks: list, several_rounds: bool, movers: list) -> list:
    """Return the two neighbouring movers with most asked of them together, [] where no two different ones meet."""
    best = []
    most = -1
    count = len(blocks)
    for place in range(count if several_rounds else count - 1):
        first = mover_named(blocks[place].get("movement"), movers)
        second = mover_named(blocks[(place + 1) % count].get("movement"), movers)
        if first is not None and second is not None and first["movement"] != second["movement"]:
            together = whole(1000 * min(first["demand"] + second["demand"], 200000.0))
            if together > most:
                most = together
                best = [first, second]
    return best


def mover_named(movement, movers: list) -> dict | None:
    """Return the mover of a movement, None where it has none."""
    for mover in movers:
        if mover["movement"] == movement:
            return mover
    return None
