"""Amounts, loads and lengths as people read them, in both unit systems, in the language of the answer."""

import re
from itertools import groupby

from flask_babel import gettext, ngettext

from webapp.engine.units import KG_PER_LB, M_PER_FT, M_PER_INCH
from webapp.wording import clock, number

M_PER_UNIT = {"m": 1, "ft": M_PER_FT, "cm": 0.01, "in": M_PER_INCH}
KG_PER_UNIT = {"kg": 1, "lb": KG_PER_LB}
# Conversions are exact; this only takes away what binary fractions add behind them.
KEPT_PLACES = 8
UNIT_SPACE = "\u00a0"  # a number and its unit stay on one line
# A label such as 35 lb, kept in kg, comes back as a number this close to whole.
LABEL_TOLERANCE = 0.02
LONG_FT = 30


def load_text(load_kg):
    """40 kg (88 lb); a label written in pounds comes back whole."""
    return f"{_unit(load_kg, 'kg')} ({_unit(pounds(load_kg), 'lb')})"


def length_text(length_m):
    """60 m (197 ft); nobody paces out a tenth of a foot in a long lane."""
    feet = length_m / M_PER_FT
    return f"{_unit(length_m, 'm')} ({_unit(feet, 'ft', 0 if feet > LONG_FT else 1)})"


def height_text(height_m):
    """61 cm (24 in) for a box, 3 m (10 ft) for a target."""
    inches = height_m / M_PER_FT * 12
    if height_m < 2:
        return f"{_unit(_near(height_m * 100), 'cm')} ({_unit(_near(inches), 'in')})"
    return f"{_unit(round(height_m, 2), 'm', 2)} ({_unit(_near(inches / 12), 'ft')})"


def amount_text(amount, unit):
    """40 reps, 60 m (197 ft), 15 calories, 60 seconds."""
    if unit == "m":
        return length_text(amount)
    if unit == "cal":
        return ngettext("%(shown)s calorie", "%(shown)s calories", amount, shown=number(amount))
    if unit == "s":
        return ngettext("%(shown)s second", "%(shown)s seconds", amount, shown=number(amount))
    return ngettext("%(shown)s rep", "%(shown)s reps", amount, shown=number(amount))


def sets_text(sets):
    """8, then 4 sets of 6, then 12."""
    tiers = [(size, len(list(same))) for size, same in groupby(sets)]
    return gettext(", then ").join(_tier_text(size, count) for size, count in tiers)


def pounds(load_kg):
    """The load in pounds, whole where whole pounds were meant."""
    return _near(load_kg / KG_PER_LB)


def parsed_number(text):
    """The number in a text, with a decimal point or comma; ValueError if there is none.

    Only plain digits: no exponents, no "nan", no thousands that might be decimals.
    """
    match = re.fullmatch(r"\s*(-?[0-9]{1,12})(?:[.,]([0-9]{1,6}))?\s*", text)
    if match is None:
        raise ValueError(text)
    whole, decimals = match.groups()
    return float(f"{whole}.{decimals}") if decimals and decimals.strip("0") else int(whole)


def plain_number(value):
    """A number as it goes back into a field: a point, no needless decimals."""
    value = round(_near(value), 4)
    return str(int(value)) if value == int(value) else str(value)


def parsed_clock(text):
    """Seconds in "12:30" or "12"; ValueError if it is neither."""
    match = re.fullmatch(r"\s*([0-9]{1,3})(?::([0-5][0-9]))?\s*", text)
    if match is None:
        raise ValueError(text)
    minutes, seconds = match.groups()
    return int(minutes) * 60 + int(seconds or 0)


def init_app(app):
    """Give templates the filters `load`, `distance`, `height`, `clock`, `number`."""
    app.jinja_env.filters |= {
        "load": load_text, "distance": length_text, "height": height_text, "clock": clock, "number": number,
    }
    app.jinja_env.globals |= {"amount_text": amount_text, "sets_text": sets_text, "sides_text": sides_text}


def sides_text(sides):
    """How the sides of the body share the work."""
    return {"one": gettext("one side at a time"), "alternating": gettext("sides alternating")}.get(sides, "")


def _tier_text(size, count):
    if count == 1:
        return number(size)
    return ngettext("%(num)s set of %(size)s", "%(num)s sets of %(size)s", count, size=number(size))


def _near(value):
    return round(value) if abs(value - round(value)) < LABEL_TOLERANCE else value


def _unit(value, unit, places=1):
    return f"{number(value, places)}{UNIT_SPACE}{unit}"
