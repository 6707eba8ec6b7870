"""Which form field a problem belongs to."""

from flask_babel import gettext, lazy_gettext

from webapp.gym import SIZES
from webapp.measures import number
from webapp.problems import MESSAGES
from webapp.typed import DIVISION_KEYS
from webapp.wording import clock

# name in the workout: name of the form's field
RENAMED = {
    "cap_s": "cap", "time_s": "time", "interval_s": "interval", "tie_break_after_block": "tie_break",
    "load_kg": "load", "load_step_kg": "load_step", "height_m": "height", "target_m": "height", "rest_after_s": "rest_after",
}
UNITS = {
    "load_kg": "kg", "load_step_kg": "kg", "height_m": "m", "target_m": "m", "length_m": "m", "mark_every": "m",
    **{key: key.rpartition("_")[2] for key in SIZES},
}
# Fields that the form names after a division, under a heading of its own.
PER_DIVISION = {"load": lazy_gettext("Load"), "height": lazy_gettext("Height")}
# Fields that belong to a part; those of the first part stand among the workout's own.
OF_A_PART = ("part_title", "shape", "cap", "time", "interval", "interval_count", "rest_after", "options")

# What a block is asked first stands before the rest, which goes by the alphabet.
FIRST_IN_A_BLOCK = {"movement": "0", "amount": "1"}


def field_name(path):
    """("options", 0, "blocks", 2, "load_kg", "a") is the field options-0-blocks-2-load_a."""
    if path[0] == "parts" and len(path) > 1:
        return _field_of_part(path[1], path[2:])
    if path[0] in ("lane", "source"):
        return f"{path[0]}_{path[1].removesuffix('_m')}"
    if path[0] == "gym":
        return f"gym-{path[2].rpartition('_')[0]}"
    if path[0] == "divisions":
        return "-".join(str(step) for step in path if step != "name")
    if path[-2:-1] and path[-2] in RENAMED:
        path = (*path[:-2], f"{RENAMED[path[-2]]}_{path[-1]}")
    elif path[-1] in ("load_kg", "height_m", "target_m"):
        path = (*path[:-1], f"{RENAMED[path[-1]]}_a")
    else:
        path = (*path[:-1], RENAMED.get(path[-1], path[-1]))
    return "-".join(map(str, path))


def _field_of_part(part, path):
    """The form keeps the first part where a workout in one part has its work, and counts the further ones from 0."""
    own = "part_title" if path == ("title",) else field_name(path)
    return own if part == 0 else f"parts-{part - 1}-{own}"


def messages(problems):
    """{field name: sentence}, in the order of the form."""
    ordered = sorted((path for path in problems if path), key=_in_the_form)
    return {field_name(path): _sentence(path, *problems[path]) for path in ordered}


def _in_the_form(path):
    """The workout's own fields first, then part by part the part's own, option by option, block by block."""
    part, within = (path[1], path[2:]) if path[0] == "parts" and len(path) > 1 else (-1, path)
    return part, within[0] == "options", [f"{step:04d}" if isinstance(step, int) else FIRST_IN_A_BLOCK.get(step, step) for step in within]


def place(name, form):
    """Where a field stands and what it is called, for the list of problems at the top of the form."""
    part, within = _apart(name, form)
    number = gettext("Part %(number)s", number=part) if part else ""
    return " · ".join(said for said in (number, _where(within), _label(name, form)) if said)


def _apart(name, form):
    """The number of the part that a field belongs to, None where there is but one, and its name within the part."""
    first, _, rest = name.partition("-")
    if first == "parts" and rest:
        index, _, within = rest.partition("-")
        return int(index) + 2, within
    return 1 if form.parts.entries and first in OF_A_PART else None, name


def _label(name, form):
    """What the form calls a field; nothing for a whole list of them."""
    *_, last = steps = name.split("-")
    what, _, division = last.rpartition("_")
    if steps[0] == "divisions":
        return gettext("Divisions")
    if what in PER_DIVISION and division in DIVISION_KEYS:
        shown = form.divisions[DIVISION_KEYS.index(division)].data
        return ", ".join(part for part in (str(PER_DIVISION[what]), shown) if part)
    if last in ("blocks", "options", "parts"):
        return ""
    field = form
    for step in steps:
        field = field[int(step) if step.isdecimal() else step]
    return str(field.label.text)


def _where(name):
    parts = name.split("-")
    if len(parts) >= 4 and parts[2] == "blocks":
        return gettext("Option %(option)s, block %(block)s", option=int(parts[1]) + 1, block=int(parts[3]) + 1)
    if parts[0] == "options" and len(parts) > 1:
        return gettext("Option %(option)s", option=int(parts[1]) + 1)
    if parts[0] == "gym":
        return gettext("What the gym has")
    return ""


def _sentence(path, code, parameters):
    shown = dict(parameters)
    for name in ("low", "high"):
        if name in shown:
            shown[name] = _bound(path, shown[name])
    if "movement" in shown:
        shown["movement"] = gettext(shown["movement"])
    return str(MESSAGES[code]) % shown if shown else str(MESSAGES[code])


def _bound(path, value):
    if path[-1] in ("cap_s", "time_s", "interval_s", "rest_after_s"):
        return clock(value)
    unit = next((UNITS[step] for step in path if step in UNITS), "")
    return f"{number(value, 2)} {unit}".strip()
