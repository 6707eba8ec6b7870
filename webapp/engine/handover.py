"""From one movement of a group to the next: strength lost carries over, not a share of repetitions.

Somebody who fails at a load of 70 % of their one-rep max has lost 30 % of their strength; a load of 50 % still goes then, one of 90 % went no
more long before. So a depth in one movement is another depth in a heavier or lighter one of the same primary group.

Strength lost at depth d is L·d^p, L = 1 − (load as a share of the one-rep max) what is lost at failure. The share follows from the largest
set by the relation between loads and repetitions, bodyweight movements included. The same loss in the next movement is the depth
d·(L / L')^(1/p). One movement alone, or two of equal largest sets, stay as they were, and there and back changes nothing.
"""

import math

from .parameters import HANDOVER_LEAST, HANDOVER_MOST, LOSS_EXPONENT
from .reserve import Fatigue
from .segments import ALL_SLOTS, SLOTS
from .strength import load_share


def lost_at_failure(stint: dict) -> float | None:
    """Return the share of strength lost when the stint's movement fails, None for work that is not counted in repetitions. [0–1]"""
    if stint["kind"] != "local" or stint["unit"] != "reps":
        return None
    return 1 - load_share(stint["max_steps"] * stint["step_units"])


def set_handovers(stints: list):
    """Set on each stint, in place, what the depth of its primary group is multiplied by when it is come to: `handover`, 1 for no change.

    Only movements of the same primary group hand over; work that ends by breath, by a miss or in metres and seconds says nothing of the
    load and is passed over.
    """
    last = {}
    for stint in stints:
        stint["handover"] = 1.0
        lost = lost_at_failure(stint)
        if lost is None:
            continue
        before = last.get(stint["primary"])
        if before is not None:
            stint["handover"] = max(HANDOVER_LEAST, min(HANDOVER_MOST, math.pow(before / lost, 1 / LOSS_EXPONENT)))
        last[stint["primary"]] = lost


def hand_over(fatigue: Fatigue, stint: dict):
    """Take the fatigue of the stint's primary group from the movement before to the stint's own, in place."""
    factor = stint.get("handover")  # plans stored before it was known lack it
    if factor is None or factor == 1:
        return
    for slot in ALL_SLOTS:
        if SLOTS[slot] == stint["primary"]:
            fatigue.quick[slot] = fatigue.quick[slot] * factor
            fatigue.slow[slot] = fatigue.slow[slot] * factor


def handed_on(stints: list, index: int) -> float:
    """Return what the fatigue left by a stint is multiplied by when the next movement of its primary group is come to, 1 for none."""
    for later in stints[index + 1 :]:
        factor = later.get("handover")
        if later["kind"] == "local" and later["primary"] == stints[index]["primary"] and factor is not None:
            return factor
    return 1.0
