"""The engine's codes and parameters as sentences.

`WORDS` holds the English template of each code once; it is the gettext key, and the phone gets the same
table as data. Parameters are filled in by what their name says: `_s` a time, `_kg` a load, `_m` a length,
`_fraction` a percentage, `movement` the name of a movement, `group` the name of a muscle group.
"""

from babel.numbers import format_decimal, format_percent
from flask_babel import gettext

from webapp.catalogues import translator
from webapp.languages import current


def N_(text):
    """Mark a text for extraction and leave it as it is."""
    return text


WORDS = {
    # What the engine refuses
    "not_a_number": N_("“{value}” is not a number."),
    "out_of_range": N_("{value} is outside what this can work with."),
    "unknown_movement": N_("Nobody here knows the movement “{value}”."),
    "unknown_option": N_("This workout has no option “{value}”."),
    "unknown_division": N_("This workout has no division “{value}”."),
    "unknown_shape": N_("Workouts of this kind cannot be planned yet."),
    "no_blocks": N_("A workout needs at least one block."),
}

GROUPS = {
    "push": N_("pressing muscles"),
    "pull": N_("pulling muscles"),
    "grip": N_("grip"),
    "overhead": N_("shoulders"),
    "legs": N_("legs"),
    "hinge": N_("back and hips"),
    "trunk": N_("trunk"),
}
SECONDS_PER_MINUTE = 60


def templates(language):
    """Every template, and the muscle groups as `group.<key>`, in one language."""
    translate = translator(language)
    named = WORDS | {f"group.{key}": name for key, name in GROUPS.items()}
    return {code: translate(text) for code, text in named.items()}


def say(item, names=None):
    """The sentence for `{"code": ..., **parameters}`; `names` gives movements by key."""
    shown = {key: _shown(key, value, names or {}) for key, value in item.items() if key != "code"}
    return gettext(WORDS[item["code"]]).format_map(shown)


def clock(seconds):
    """A time as people read it off a clock: 0:45, 12:30."""
    minutes, rest = divmod(round(seconds), SECONDS_PER_MINUTE)
    return f"{minutes}:{rest:02d}"


def number(value, places=1):
    """A number in the reader's language, without needless decimals."""
    return format_decimal(round(value, places), locale=current())


def _shown(name, value, names):
    if name == "movement":
        return gettext(names.get(value, value))
    if name == "group":
        return gettext(GROUPS[value])
    if name.endswith("_fraction"):
        return format_percent(value, locale=current())
    if name.endswith("_s"):
        return clock(value) if value >= SECONDS_PER_MINUTE else f"{number(value)} s"
    for suffix, unit in (("_kg", "kg"), ("_m", "m")):
        if name.endswith(suffix):
            return f"{number(value)} {unit}"
    return number(value) if isinstance(value, (int, float)) else str(value)
