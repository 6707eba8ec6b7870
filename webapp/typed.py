"""From what a coach types to a workout; `webapp.as_typed` is the way back.

`typed` is the form's content as nested dicts and lists of text, shaped like the workout, so that nothing
typed is ever lost.
"""

import re

from webapp.engine.units import M_PER_FT
from webapp.measures import KEPT_PLACES, KG_PER_UNIT, M_PER_UNIT, parsed_clock, parsed_number
from webapp.own_movements import GROUPS, SECONDS_PER_UNIT, own_entry, own_key
from webapp.problems import Problems, WorkoutError
from webapp.typed_gym import to_gym
from webapp.workouts import REST, checked, completed

DIVISION_KEYS = ("a", "b")
OWN = "own"
# Of a heaviest lift only this is asked; what stands in the other fields belongs to another shape.
OF_A_LIFT = ("movement", "choice", "own_seconds", "own_group", "amount", "note", "advice")
NO_MORE_OF_A_LIFT = {"unit": "reps", "load_unit": "kg", "height_unit": "cm", "height_kind": "height_m"}


def each_part(typed):
    """The parts of what was typed: the first stands where a workout in one part has its work."""
    return [typed, *typed["parts"]]


def to_workout(typed, find_movement, brought):
    """The workout that was typed and every problem in it.

    `find_movement(text)` gives the keys that may be meant; `brought` the entries the draft has already,
    with the coach's changes.
    """
    reader = _Reader(find_movement, brought)
    workout = reader.workout(typed)
    if not reader.problems:
        return completed(checked(workout))
    # Say everything at once: what stands in the fields that could be read is checked as well.
    try:
        checked(workout)
    except WorkoutError as error:
        for path, problem in error.problems.items():
            if path not in reader.unmade:
                reader.problems.setdefault(path, problem)
    reader.problems.raise_if_any()


class _Reader:
    """Reads one form, noting problems by path as it goes."""

    def __init__(self, find_movement, brought):
        self.find_movement = find_movement
        self.movements = dict(brought)
        self.problems = Problems()
        # Not missing, though not there: own movements that lack a fact, amounts that numbers for each round would give if they could be read.
        self.unmade = set()

    def workout(self, typed):
        """The whole workout."""
        divisions = [
            {"key": key, "name": name.strip()}
            for key, name in zip(DIVISION_KEYS, typed["divisions"]) if name.strip() or key == DIVISION_KEYS[0]
        ]
        return {
            "schema": 1,
            "title": typed["title"].strip(),
            "divisions": divisions,
            **({"parts": self.parts(typed, divisions)} if typed["parts"] else self.work((), typed, divisions)),
            "movements": self.movements,
            "lane": {
                "length_m": self.scaled(("lane", "length_m"), typed["lane_length"], M_PER_UNIT[typed["lane_unit"]]),
                "turn": bool(typed["lane_turn"]),
            },
            "source": {"text": typed["source_text"].strip(), "url": typed["source_url"].strip() or None},
            "ranking": typed["ranking"],
            "notes": typed["notes"].strip(),
            "gym": to_gym(typed["gym"], self.problems),
        }

    def parts(self, typed, divisions):
        """Each part of a workout in parts; what was typed as a rest after the last one comes before nothing."""
        parts = []
        for index, own in enumerate(each_part(typed)):
            path = ("parts", index)
            is_last = index == len(typed["parts"])
            rest_s = None if is_last else self.clock((*path, "rest_after_s"), own["rest_after"])
            around = {"title": own["part_title"].strip() or None, "rest_after_s": rest_s}
            part = {name: value for name, value in around.items() if value is not None}
            parts.append(part | self.work(path, own, divisions))
        return parts

    def work(self, path, typed, divisions):
        """What is done, of a workout in one part or of a part."""
        return {
            "shape": typed["shape"],
            **self.times(path, typed),
            "options": [
                self.option((*path, "options", index), option, divisions, typed["shape"])
                for index, option in enumerate(typed["options"])
            ],
            "advice": _advice(typed["options"]),
        }

    def times(self, path, typed):
        """The times of the chosen shape; what was typed for another one is not part of the workout."""
        if typed["shape"] == "for_time":
            return {"cap_s": self.clock((*path, "cap_s"), typed["cap"])}
        if typed["shape"] == "intervals":
            return {
                "interval_s": self.clock((*path, "interval_s"), typed["interval"]),
                "interval_count": self.number((*path, "interval_count"), typed["interval_count"]),
            }
        return {"time_s": self.clock((*path, "time_s"), typed["time"])}

    def option(self, path, typed, divisions, shape):
        """One option."""
        option = {"key": typed["key"], "name": typed["name"].strip()}
        if shape == "for_time":
            option |= self.rounds(path, typed)
        option["blocks"] = [
            self.block((*path, "blocks", number), _of_a_lift(block) if shape == "load" else block, divisions)
            for number, block in enumerate(typed["blocks"])
        ]
        if (*path, "rep_scheme") in self.problems:
            self.unmade |= {(*path, "blocks", number, "amount") for number in range(len(option["blocks"]))}
        return option

    def rounds(self, path, typed):
        """What an option of a workout for time says beside its blocks."""
        option = {
            "rounds": self.number((*path, "rounds"), typed["rounds"]),
            "rep_scheme": self.scheme((*path, "rep_scheme"), typed["rep_scheme"]),
            "cap_s": self.clock((*path, "cap_s"), typed["cap"]),
            "tie_break_after_block": self.number((*path, "tie_break_after_block"), typed["tie_break"]),
        }
        option = {name: value for name, value in option.items() if value is not None}
        return option if "rep_scheme" in option else {"rounds": 1} | option

    def block(self, path, typed, divisions):
        """One block; what was left empty is left out."""
        unit = typed["unit"]
        length_factor = M_PER_UNIT.get(unit, 1)
        block = {
            "movement": self.movement(path, typed),
            "amount": self.scaled((*path, "amount"), typed["amount"], length_factor),
            "unit": "m" if unit == "ft" else unit,
            "step": self.scaled((*path, "step"), typed["step"], length_factor),
            "mark_every": self.scaled((*path, "mark_every"), typed["mark_every"], length_factor),
            "load_kg": self.per_division(path, "load_kg", typed, "load", KG_PER_UNIT[typed["load_unit"]], divisions),
            "load_step_kg": self.scaled((*path, "load_step_kg"), typed["load_step"], KG_PER_UNIT[typed["load_unit"]]),
            typed["height_kind"]: self.per_division(
                path, typed["height_kind"], typed, "height", M_PER_UNIT[typed["height_unit"]], divisions
            ),
            "implements": 2 if typed["implements"] == "2" else None,
            "sides": typed["sides"] or None,
            "note": typed["note"].strip() or None,
            "as_written": _as_written(typed),
        }
        return {name: value for name, value in block.items() if value is not None or name == "amount"}

    def movement(self, path, typed):
        """The key of the movement that is meant, or the text with a problem noted."""
        text = typed["movement"].strip()
        if not text:
            self.problems.add((*path, "movement"), "missing")
            return text
        if typed["choice"] == OWN:
            return self.own(path, typed, text)
        keys = self.find_movement(text)
        if len(keys) != 1:
            code = "ambiguous_movement" if keys else "unknown_movement"
            self.problems.add((*path, "movement"), code, value=text[:60])
            return text
        return keys[0]

    def own(self, path, typed, name):
        """A movement nobody knows, from the few facts the coach gave."""
        key = own_key(name)
        seconds = self.number((*path, "own_seconds"), typed["own_seconds"])
        if typed["own_seconds"].strip() == "":
            self.problems.add((*path, "own_seconds"), "missing")
        elif seconds is not None and not SECONDS_PER_UNIT[0] <= seconds <= SECONDS_PER_UNIT[1]:
            low, high = SECONDS_PER_UNIT
            self.problems.add((*path, "own_seconds"), "out_of_range", low=low, high=high)
        if typed["own_group"] not in GROUPS:
            self.problems.add((*path, "own_group"), "missing")
        unit = "m" if typed["unit"] == "ft" else typed["unit"]
        if seconds and typed["own_group"] in GROUPS:
            # Counted in m though typed in feet: the seconds are for one unit as typed.
            per_unit_s = seconds / M_PER_FT if typed["unit"] == "ft" else seconds
            fresh = own_entry(name, unit, per_unit_s, typed["own_group"])
            known = self.movements.get(key)
            self.movements[key] = _with_coach_texts(fresh, known) if known else fresh
        else:
            self.unmade.add((*path, "movement"))
        return key

    def number(self, path, text):
        """A number as typed, or None where nothing was."""
        if not text.strip():
            return None
        try:
            return parsed_number(text)
        except ValueError:
            self.problems.add(path, "not_a_number", value=text.strip()[:40])
            return None

    def scaled(self, path, text, factor):
        """A number in the unit it is kept in."""
        value = self.number(path, text)
        return value if value is None or factor == 1 else round(value * factor, KEPT_PLACES)

    def clock(self, path, text):
        """Seconds of a time as typed, or None where nothing was."""
        if not text.strip():
            return None
        try:
            return parsed_clock(text)
        except ValueError:
            self.problems.add(path, "not_a_time")
            return None

    def scheme(self, path, text):
        """The rounds' numbers, however they were set apart."""
        if not text.strip():
            return None
        parts = re.split(r"[\s,;/-]+", text.strip())
        if not all(re.fullmatch(r"[0-9]{1,6}", part) for part in parts):
            self.problems.add(path, "not_a_list")
            return None
        return [int(part) for part in parts]

    def per_division(self, path, field, typed, name, factor, divisions):
        """A value for each division; one left empty takes the other's."""
        values = {
            division["key"]: self.scaled((*path, field, division["key"]), typed[f"{name}_{division['key']}"], factor)
            for division in divisions
        }
        given = [value for value in values.values() if value is not None]
        return {key: given[0] if value is None else value for key, value in values.items()} if given else None


def _of_a_lift(block):
    return dict.fromkeys(block, "") | NO_MORE_OF_A_LIFT | {name: block[name] for name in OF_A_LIFT}


def _advice(options):
    return [
        {"option": option["key"], "block": number, "text": block["advice"].strip()}
        for option in options for number, block in enumerate(option["blocks"], start=1) if block["advice"].strip()
    ]


def _as_written(typed):
    """The coach's own figures, kept where they are not metric: a label of 35 lb is not 15.9 kg to anybody."""
    parts = []
    if typed["unit"] == "ft":
        parts.append(f"{typed['amount'].strip()} ft")
        if typed["mark_every"].strip():
            parts.append(f"↦ {typed['mark_every'].strip()} ft")
    for name, units in (("load", ("lb",)), ("height", ("in", "ft"))):
        values = [typed[f"{name}_{key}"].strip() for key in DIVISION_KEYS]
        unit = typed[f"{name}_unit"]
        if unit in units and any(values):
            parts.append(f"{' / '.join(value for value in values if value)} {unit}")
    if typed["load_step"].strip() and typed["load_unit"] == "lb":
        parts.append(f"+ {typed['load_step'].strip()} lb")
    return " · ".join(parts) or None


def _with_coach_texts(fresh, known):
    texts = ("standards", "measures", "no_reps", "equipment", "holds", "cautions")
    return fresh | {name: known[name] for name in texts}
