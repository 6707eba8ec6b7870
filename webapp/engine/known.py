"""What flat plans of the same work cost, kept under their tiers: the last set is what these leave. Rests are whole seconds."""

from .tiers import LONGEST_REST_S

NOT_ASKED = -1.0  # s
RESTS = LONGEST_REST_S + 1
COUNTS = 16384  # above the most sets of a tier


class Place:
    """Where some tiers lead: the cost of a plan that ends here, negative where nobody has asked yet [s], and the places one tier further, by its name.

    They are few, so lists are quicker than a dict.
    """

    def __init__(self):
        self.cost_s = NOT_ASKED
        self.names = []
        self.places = []


def place_of(root: Place, plan: list[float]) -> Place:
    """Return the place of a flat plan, made where there is none yet."""
    here = root
    for tier in range(0, len(plan) - 1, 3):
        here = one_further(here, (plan[tier] * RESTS + plan[tier + 2]) * COUNTS + plan[tier + 1])
    return here


def one_further(here: Place, name: float) -> Place:
    """Return the place one tier of this name further, made where there is none yet."""
    names: list[float] = here.names
    at = 0
    while at < len(names) and names[at] != name:
        at = at + 1
    if at == len(names):
        names.append(name)
        here.places.append(Place())
    return here.places[at]
