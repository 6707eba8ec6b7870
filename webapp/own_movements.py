"""Movements of a coach's own: from four facts to a whole entry of the library's form."""

import re
import unicodedata

PREFIX = "own-"
GROUPS = ("push", "pull", "grip", "overhead", "legs", "hinge", "trunk")
SECONDS_PER_UNIT = (0.2, 120)
LONGEST_KEY = 40
# What a class can usually do in one go of a movement nobody here knows: wide, so that plans stay careful. (chosen)
MAX_BY_LEVEL = {
    "reps": {"new": 5, "regular": 12, "keen": 20, "expert": 30},
    "m": {"new": 20, "regular": 50, "keen": 100, "expert": 200},
    "cal": {"new": 8, "regular": 15, "keen": 25, "expert": 40},
    "s": {"new": 20, "regular": 45, "keen": 75, "expert": 120},
}


def own_key(name):
    """The key under which a workout keeps it."""
    plain = unicodedata.normalize("NFKD", name.casefold()).encode("ascii", "ignore").decode()
    slug = re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST_KEY]
    return PREFIX + (slug or "movement")


def own_entry(name, unit, seconds_per_unit, group):
    """An entry with every field the engine and the pages ask for; what is unknown is empty."""
    return {
        "name": name, "also": [], "family": "own", "unit": unit, "units": [unit], "other_units": {},
        "limit": "local", "ask": "max_unbroken", "hint": "",
        "seconds_per_unit": seconds_per_unit, "fast_seconds_per_unit": seconds_per_unit * 0.7,
        "seconds_source": "", "primary": group, "shares": {group: 1.0}, "share_reasons": {},
        "set_up_s": 4, "entry_units": 0.4, "change_s": 8,
        "max_by_level": MAX_BY_LEVEL[unit], "typical_load_kg": None, "load_kind": None, "implements": 1,
        "one_rep_max_of_body": None, "gate": False, "inverted": False, "sides": "both", "switch": None,
        "failing_harmless": False, "fail_cost_s": 10, "keep_reserve": 0.15, "quick_singles": False, "reset_s": None,
        "mechanics": None, "energy": None,
        "standards": [], "measures": [], "no_reps": [], "equipment": [], "lane": "",
        "holds": [], "easier": [], "drills": [], "confused_with": None, "loosen": [], "cue": "", "cautions": [],
    }
