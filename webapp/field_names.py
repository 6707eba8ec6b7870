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
    "load_kg": "load", "load_step_kg": "load_step", "height_m": "height", "target_m": "height",
}
UNITS = {
    "load_kg": "kg", "load_step_kg": "kg", "height_m": "m", "target_m": "m", "length_m": "m", "mark_every": "m",
    **{key: key.rpartition("_")[2] for key in SIZES},
}
# Fields that the form names after a division, under a heading of its own.
PER_DIVISION = {"load": lazy_gettext("Load"), "height": lazy_gettext("Height")}


def field_name(path):
    """("options", 0, "blocks", 2, "load_kg", "a") is the field options-0-blocks-2-load_a."""
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


def messages(problems):
    """{field name: sentence}, in the order of the form."""
    ordered = sorted((path for path in problems if path), key=_in_the_form)
    return {field_name(path): _sentence(path, *problems[path]) for path in ordered}


def _in_the_form(path):
    """The workout's own fields first, then option by option, block by block."""
    return path[0] == "options", [f"{step:04d}" if isinstance(step, int) else step for step in path]


def place(name, form):
    """Where a field stands and what it is called, for the list of problems at the top of the form."""
    return " · ".join(part for part in (_where(name), _label(name, form)) if part)


def _label(name, form):
    """What the form calls a field; nothing for a whole list of them."""
    *_, last = parts = name.split("-")
    what, _, division = last.rpartition("_")
    if parts[0] == "divisions":
        return gettext("Divisions")
    if what in PER_DIVISION and division in DIVISION_KEYS:
        shown = form.divisions[DIVISION_KEYS.index(division)].data
        return ", ".join(part for part in (str(PER_DIVISION[what]), shown) if part)
    if last in ("blocks", "options"):
        return ""
    field = form
    for step in parts:
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
    if path[-1] in ("cap_s", "time_s", "interval_s"):
        return clock(value)
    unit = next((UNITS[step] for step in path if step in UNITS), "")
    return f"{number(value, 2)} {unit}".strip()
