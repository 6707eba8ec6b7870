"""Between what a coach types of the gym, a line of sizes for each kind of implement, and `gym` of a workout."""

import re

from webapp.engine.parameters import MACHINES
from webapp.gym import SIZES, USUAL
from webapp.measures import KEPT_PLACES, KG_PER_UNIT, M_PER_UNIT, parsed_number

# The first unit of each kind is the one a line is shown in when nobody typed it.
UNITS = {"kg": ("kg", "lb"), "m": ("cm", "in")}
FACTORS = KG_PER_UNIT | M_PER_UNIT
# What a coach writes who has none of a kind: an empty line says that it is as usual.
NONE_OF_THEM = "0"


def to_gym(typed, problems):
    """The gym that was typed, problems noted; None for a usual one."""
    if not typed["asked"]:
        # A tick that is not there sends nothing: a page that did not ask must not be read as a gym with nothing in it.
        return None
    lines = {key: _sizes(key, typed, problems) for key in SIZES}
    rack = {key: sizes for key, sizes in lines.items() if sizes is not None}
    machines = [key for key in MACHINES if key in typed["there"]]
    gym = {
        "rack": rack or None,
        "machines": None if machines == MACHINES else machines,
        "wall": "wall" in typed["there"],
        "bar": "bar" in typed["there"],
    }
    written = {key: f"{typed[_name(key)].strip()} {typed[_name(key) + '_unit']}" for key in rack if _is_foreign(key, typed)}
    return None if gym == USUAL else gym | ({"as_written": written} if written else {})


def from_gym(gym):
    """What the form shows for a workout's `gym`."""
    gym = USUAL | (gym or {})
    machines = MACHINES if gym["machines"] is None else gym["machines"]
    typed = {"asked": "yes", "there": [*machines, *(key for key in ("wall", "bar") if gym[key])]}
    for key in SIZES:
        typed |= _line(key, (gym["rack"] or {}).get(key), (gym.get("as_written") or {}).get(key, ""))
    return typed


def _sizes(key, typed, problems):
    """The sizes in one line, in kg or m; None for an empty one or one with a problem."""
    path, text = ("gym", "rack", key), typed[_name(key)].strip()
    if text in ("", NONE_OF_THEM):
        return [] if text else None
    numbers = []
    for part in _parts(text):
        try:
            numbers.append(parsed_number(part))
        except ValueError:
            problems.add(path, "not_a_number", value=part[:40])
            return None
    if _is_unclear(text, numbers):
        problems.add(path, "commas_unclear")
        return None
    factor = FACTORS[typed[f"{_name(key)}_unit"]]
    return sorted({round(number * factor, KEPT_PLACES) for number in numbers})


def _parts(text):
    """The texts of the numbers. Where spaces or semicolons set them apart, a comma inside one is a decimal comma."""
    if re.search(r"[\s;]", text):
        return [part.rstrip(",") for part in re.split(r"[\s;]+", text) if part.rstrip(",")]
    return text.split(",")


def _is_unclear(text, numbers):
    """Whether commas alone set the numbers apart and some may be decimal: 20,22,5 does not rise, 10,15,20 does."""
    return "," in text and not re.search(r"[\s;.]", text) and numbers != sorted(set(numbers))


def _line(key, sizes, written):
    """One line of the form and its unit: as it was typed in pounds or inches, else the sizes themselves."""
    units = UNITS[_kept_in(key)]
    text, _, unit = written.rpartition(" ")
    if unit not in units or not sizes:
        unit = units[0]
        text = NONE_OF_THEM if sizes == [] else ", ".join(_plain(size / FACTORS[unit]) for size in sizes or [])
    return {_name(key): text, f"{_name(key)}_unit": unit}


def _is_foreign(key, typed):
    """Whether a line was typed in pounds or inches: what is written on the thing is kept beside its mass."""
    return typed[f"{_name(key)}_unit"] != UNITS[_kept_in(key)][0]


def _plain(number):
    """A size as it goes back into a line: unlike a load it is never taken for the whole number nearby."""
    return f"{number:.6f}".rstrip("0").rstrip(".")


def _name(key):
    return key.rpartition("_")[0]


def _kept_in(key):
    return key.rpartition("_")[2]
