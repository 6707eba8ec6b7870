"""How work is held and carried: the hold that spares what comes next, where sides change, which slots the other side loads."""

import math

from .asked import lane_length
from .checks import number
from .parameters import SWITCH_LONGEST_M, SWITCH_SHORTEST_M
from .segments import LEFT_OF
from .units import clamp, whole


def hold_of(stint: dict, entry: dict, upcoming: dict | None):
    """Choose the way of holding it that loads least what the next block needs most, the library's best where that is all the same."""
    stint["hold"] = None
    stint["hold_reason"] = None
    holds = entry["holds"]
    if len(holds) == 0 or (stint["load_kg"] is None and entry["load_kind"] is not None):
        return
    best = holds[0]
    stint["hold_reason"] = {"code": "hold_best"}
    if upcoming is not None and upcoming["primary"] != entry["primary"]:
        group = upcoming["primary"]
        for hold in holds:
            if hold["shares"].get(group, 0.0) < best["shares"].get(group, 0.0) - 1e-9:
                best = hold
        if len([1 for hold in holds if hold["shares"].get(group, 0.0) > best["shares"].get(group, 0.0) + 1e-9]) > 0:
            stint["hold_reason"] = {"code": "hold_spares", "group": group}
    stint["hold"] = best["key"]


def shares_of(entry: dict, hold) -> dict:
    """Return the shares of a movement held that way; a hold's own replace the movement's."""
    for way in entry["holds"]:
        if way["key"] == hold and len(way["shares"]) > 0:
            return way["shares"]
    return entry["shares"]


def switches_of(stint: dict, entry: dict, block: dict, workout: dict):
    """Set after how many steps sides change: at a lane end or mark, every 7.5 to 15.5 m, the sooner the harder the load."""
    stint["switch_steps"] = 0
    if not stint["one_sided"] or stint["unit"] != "m":
        return
    hard = clamp(stint["amount"] / (stint["max_steps"] * stint["step_units"]), 0.5, 1.5)
    wanted_m = SWITCH_LONGEST_M - (hard - 0.5) * (SWITCH_LONGEST_M - SWITCH_SHORTEST_M)
    places = marks_of(stint, workout)
    best = 0.0
    for metres in places:
        near = SWITCH_SHORTEST_M <= metres and metres <= SWITCH_LONGEST_M
        if near and (best == 0 or abs(metres - wanted_m) < abs(best - wanted_m) - 1e-9):
            best = metres
    if best == 0:
        best = places[0] if places[0] <= SWITCH_LONGEST_M else SWITCH_SHORTEST_M
    stint["switch_steps"] = max(1, whole(best / stint["step_units"]))


def marks_of(stint: dict, workout: dict) -> list:
    """Return the distances at which one meets a mark or a lane end, rising. [m]"""
    every = stint["mark_every"]
    every = lane_length(workout) if every is None else number("mark_out_of_range", every, 0.05, 1000)
    return [every * count for count in range(1, 1 + max(1, math.ceil(SWITCH_LONGEST_M / every)))]


def sides_of(slots: list) -> list:
    """Return the same slots on the other side of the body."""
    right = [LEFT_OF["grip"] + 1, LEFT_OF["overhead"] + 1]
    return [slot + 1 if slot + 1 in right else slot for slot in slots]
