"""What the day asks of a warm-up: the time there is, the room, the gear, and the body that comes to it.

`day_of` reads settings and numbers into one mapping, with everything checked:

minutes_s : time there is before the heat, None for as much as wanted [s]. late_s, slipped_s : how late athlete and heat are [s].
called_s : time left when called early, None for not [s]
rack : as `warmup_loads.rack_of`. machines : movement keys, [] for none. people : on one lane. wall_free, bar_free : bool
category : of the heat index. easy_share, easy_extra_s : what room, age and hour do to the easy minutes. cool : whether to keep layers on
sore : groups to spare. largest_sets : by movement, of the break-up the athlete means to do. strain_prone : bool. light_kg : the load to loosen with [kg]. reasons, warnings : codes, with parameters
"""

from .athlete import body_mass
from .checks import choice, listing, mapping, number, optional, whole_number
from .errors import EngineError
from .heat_index import heat_category, heat_index_c
from .parameters import (
    COLD_C,
    COOL_C,
    EARLY_HOUR,
    EASY_EXTRA_S,
    EASY_SHARE_COLD,
    EASY_SHARE_COOL,
    EASY_SHARE_IN_HEAT,
    GROUPS,
    HUMIDITY_UNKNOWN_PERCENT,
    LIGHT_MOST_KG,
    LIGHT_OF_BODY,
    MACHINES,
    OLDER_YEARS,
    SHARED_FROM,
    SLIP_FOR_REPEAT_S,
    SORE_GROUPS,
)
from .units import whole
from .warmup_loads import rack_of

LONGEST_WAIT_S = 86400.0


def day_of(numbers: dict, given) -> dict:
    """Return the day, from the athlete's numbers and the settings.

    Raises
    ------
    EngineError : minutes_out_of_range, time_out_of_range, room_out_of_range, humidity_out_of_range, lane_out_of_range, rack_bad,
    machines_bad, free_bad, age_out_of_range, sore_bad, sets_bad.
    """
    settings = mapping("settings_not_a_mapping", given)
    minutes = settings.get("warm_up_min")
    called_s = settings.get("called_early")
    day = {
        "minutes_s": None if minutes is None else 60 * number("minutes_out_of_range", minutes, 0, 1440),
        "late_s": optional("time_out_of_range", settings.get("late_by_s"), 0, LONGEST_WAIT_S, 0.0),
        "slipped_s": optional("time_out_of_range", settings.get("slipped_by_s"), 0, LONGEST_WAIT_S, 0.0),
        "called_s": None if called_s is None else number("time_out_of_range", called_s, 0, LONGEST_WAIT_S),
        "rack": rack_of(settings.get("rack")),
        "machines": machines_of(settings.get("machines")),
        "people": 1 if settings.get("lane_shared_by") is None else whole_number("lane_out_of_range", settings.get("lane_shared_by"), 1, 100),
        "wall_free": is_free(settings.get("wall_free")),
        "bar_free": is_free(settings.get("bar_free")),
        "sore": sore_groups(numbers.get("sore")),
        "largest_sets": largest_sets(settings.get("largest_sets")),
        "strain_prone": len(texts(numbers.get("strain_prone"))) > 0,
        "light_kg": min(LIGHT_MOST_KG, LIGHT_OF_BODY * body_mass(numbers)),
        "easy_share": 1.0, "easy_extra_s": 0.0, "category": "usual", "cool": False, "reasons": [], "warnings": [],
    }  # fmt: skip
    feel_room(day, settings)
    feel_body(day, numbers, settings)
    if day["slipped_s"] > 0:
        is_long = day["slipped_s"] > SLIP_FOR_REPEAT_S
        day["reasons"].append({"code": "heat_slipped_repeat" if is_long else "heat_slipped_wait", "slipped_s": day["slipped_s"]})
    if day["people"] >= SHARED_FROM:
        day["reasons"].append({"code": "lane_shared", "people": day["people"]})
    return day


def texts(given) -> list:
    """Return a list of texts, or raise EngineError."""
    return [choice("sore_bad", text, [text]) for text in listing("sore_bad", given) if text is not None]


def is_free(given) -> bool:
    """Return whether a wall or a bar can be used, yes unless told otherwise."""
    if given is None:
        return True
    if not isinstance(given, bool):
        raise EngineError("free_bad", 0)
    return given


def machines_of(given) -> list:
    """Return the machines there are that we know how to use gently; the usual ones when nobody said."""
    if given is None:
        return MACHINES
    told = [choice("machines_bad", key, [key]) for key in listing("machines_bad", given) if key is not None]
    return [key for key in MACHINES if key in told]


def largest_sets(given) -> dict:
    """Return the largest set of each movement in the break-up the athlete means to do, checked; nothing where none is told."""
    told = mapping("sets_bad", given)
    sets = {}
    for key in sorted(list(told.keys())):
        sets[key] = number("sets_bad", told[key], 0.1, 5000)
    return sets


def sore_groups(given) -> list:
    """Return the groups to spare for sore groups and parts of the body; words we do not know only bring the caution."""
    sore = texts(given)
    groups = []
    for part in sore:
        groups.extend([part] if part in GROUPS else SORE_GROUPS.get(part.lower(), []))
    if len(sore) > 0 and len(groups) == 0:
        groups.append("somewhere")
    return groups


def feel_room(day: dict, settings: dict):
    """Shorten the easy minutes in a warm room and lengthen them in a cold one, in place."""
    if settings.get("room_c") is None:
        return
    room_c = number("room_out_of_range", settings.get("room_c"), -40, 60)
    humidity = optional("humidity_out_of_range", settings.get("humidity_percent"), 0, 100, HUMIDITY_UNKNOWN_PERCENT)
    feels_c = heat_index_c(room_c, humidity)
    day["category"] = heat_category(feels_c)
    day["easy_share"] = EASY_SHARE_IN_HEAT[day["category"]]
    if day["category"] != "usual":
        day["reasons"].append({"code": "hot_shorter", "feels_c": whole(feels_c)})
        if day["category"] != "caution":
            day["warnings"].append({"code": "heat_danger" if day["category"] == "danger" else "heat_care"})
    elif room_c < COOL_C:
        day["cool"] = True
        day["easy_share"] = EASY_SHARE_COLD if room_c < COLD_C else EASY_SHARE_COOL
        day["reasons"].append({"code": "cold_longer", "room_c": room_c})


def feel_body(day: dict, numbers: dict, settings: dict):
    """Add easy minutes for age, for the morning and for people prone to strains, in place."""
    age = numbers.get("age")
    if age is not None and number("age_out_of_range", age, 3, 120) >= OLDER_YEARS:
        day["easy_extra_s"] = day["easy_extra_s"] + EASY_EXTRA_S
        day["reasons"].append({"code": "age_longer"})
    hour = hour_of(settings.get("heat_start"))
    if hour is not None and hour < EARLY_HOUR:
        day["easy_extra_s"] = day["easy_extra_s"] + EASY_EXTRA_S
        day["reasons"].append({"code": "morning_longer"})
    if day["strain_prone"]:
        day["easy_extra_s"] = day["easy_extra_s"] + EASY_EXTRA_S
        day["reasons"].append({"code": "strain_longer"})
    if len(day["sore"]) > 0:
        day["warnings"].append({"code": "sore_care"})


def hour_of(heat_start) -> float | None:
    """Return the hour of the day where the heat is, from a time written with its offset; None where it cannot be told."""
    if not isinstance(heat_start, str) or heat_start.endswith("Z"):
        return None
    parts = heat_start.split("T")
    if len(parts) != 2 or len(parts[1]) < 5:
        return None
    try:
        return float(parts[1][0:2])
    except ValueError:
        return None
