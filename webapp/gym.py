"""What the gym has: what may be said of it, and the check. `webapp.typed_gym` reads it from the coach's form."""

from webapp.checks import check_number, check_text
from webapp.engine.parameters import MACHINES

# Each list of the rack with the least and the largest size there may be, wide enough for any gym. (chosen)
SIZES = {
    "dumbbells_kg": (0.5, 100), "kettlebells_kg": (1, 100), "plates_kg": (0.1, 60), "bars_kg": (1, 50),
    "sandbags_kg": (1, 200), "balls_kg": (0.5, 30), "boxes_m": (0.1, 2),
}
MOST_SIZES = 60
LINE_LENGTH = 320  # a little more than the form takes, for the unit behind it
# What a workout without `gym` stands for: nothing is said, so everything usual is there.
USUAL = {"rack": None, "machines": None, "wall": True, "bar": True}


def check_gym(problems, gym):
    """Note what is wrong with a workout's `gym`; None is a usual one."""
    if gym is None:
        return
    if not _has_its_form(USUAL | gym):
        problems.add((), "not_a_workout")
        return
    for key, sizes in (gym.get("rack") or {}).items():
        _check_sizes(problems, ("gym", "rack", key), sizes, SIZES[key])
    for key, text in (gym.get("as_written") or {}).items():
        check_text(problems, ("gym", "rack", key), text, LINE_LENGTH)


def _has_its_form(gym):
    """Whether lists are lists and so on: only a file made by hand differs."""
    rack, machines = gym["rack"], gym["machines"]
    return (
        (rack is None or all(isinstance(sizes, list) and key in SIZES for key, sizes in rack.items()))
        and (machines is None or isinstance(machines, list) and all(key in MACHINES for key in machines))
        and isinstance(gym["wall"], bool) and isinstance(gym["bar"], bool)
    )


def _check_sizes(problems, path, sizes, bounds):
    if len(sizes) > MOST_SIZES:
        problems.add(path, "too_many_sizes", limit=MOST_SIZES)
    for size in sizes:
        check_number(problems, path, size, bounds, needed=True)
