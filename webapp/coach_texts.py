"""The library's texts as a coach sees and changes them, one per line.

What the coach leaves as it is stays the English key, so that athletes read it in their own language; what is
changed is kept in the coach's words.
"""

from flask_babel import gettext
from flask_babel import lazy_gettext as _l

FIELDS = {
    "standards": _l("What a good rep is"),
    "no_reps": _l("What is a no-rep"),
    "measures": _l("Measures to set up"),
    "equipment": _l("Equipment"),
    "holds": _l("Ways to hold it, best first: name | why"),
    "cautions": _l("Cautions"),
}
LONGEST_TEXT = 4000
HOLD_MARK = " | "


def shown_lines(entry, field):
    """The lines of one field, in the coach's language."""
    if field == "holds":
        return [f"{gettext(hold['name'])}{HOLD_MARK}{gettext(hold['why'])}" for hold in entry["holds"]]
    return [gettext(text) for text in entry[field]]


def changed(entry, field, text):
    """The entry with one field as the coach left it in its text area."""
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    if field == "holds":
        return entry | {"holds": _holds(entry, lines)}
    keys = {gettext(key): key for key in entry[field]}
    return entry | {field: [keys.get(line, line) for line in lines]}


def _holds(entry, lines):
    """Holds keep what they cost the muscles; a hold of the coach's own costs what the first one does."""
    known = dict(zip(shown_lines(entry, "holds"), entry["holds"]))
    by_name = {gettext(hold["name"]): hold for hold in entry["holds"]}
    holds = []
    for number, line in enumerate(lines, start=1):
        name, _, why = line.partition(HOLD_MARK.strip())
        like = by_name.get(name.strip()) or (entry["holds"][0] if entry["holds"] else None)
        shares = like["shares"] if like else entry["shares"]
        own = {"key": f"own-{number}", "name": name.strip(), "why": why.strip(), "shares": shares}
        holds.append(known.get(line) or own)
    return holds
