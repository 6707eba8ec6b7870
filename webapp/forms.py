"""The coach's forms. Everything is text as typed; `webapp.typed` makes a workout of it.

The structured form works with plain submits: each button carries what to do, the page comes back with the
same content, one block more or less. A workout in parts has the first part's fields where a workout in one part has its own, and
the further ones under `parts`.
"""

import re

from flask_babel import lazy_gettext as _l
from flask_wtf import FlaskForm
from wtforms import (
    FieldList, Form, FormField, HiddenField, IntegerField, RadioField, SelectField, SelectMultipleField, StringField,
    TextAreaField,
)
from wtforms.fields.choices import SelectChoice
from wtforms.validators import InputRequired

from webapp.own_movements import GROUPS
from webapp.typed import DIVISION_KEYS, each_part
from webapp.typed_gym import from_gym
from webapp.wording import GROUPS as GROUP_NAMES
from webapp.workouts import PARTS


def _choices(*pairs):
    return [SelectChoice(value, label) for value, label in pairs]


SHAPES = _choices(
    ("for_time", _l("For time")), ("amrap", _l("Most rounds in a time")),
    ("intervals", _l("Every interval")), ("load", _l("Heaviest lift")),
)
UNITS = _choices(
    ("reps", _l("reps")), ("m", _l("metres")), ("ft", _l("feet")), ("cal", _l("calories")), ("s", _l("seconds")),
)
MASSES = _choices(("kg", "kg"), ("lb", "lb"))
BOX_HEIGHTS = _choices(("cm", _l("cm")), ("in", _l("inches")))
THERE = _choices(
    ("row", _l("rowing machine")), ("bike", _l("bike")), ("run", _l("room to run")),
    ("wall", _l("a free wall")), ("bar", _l("a free bar")),
)
LENGTHS = _choices(("m", _l("metres")), ("ft", _l("feet")))
HEIGHTS = _choices(("cm", _l("cm")), ("in", _l("inches")), ("m", _l("metres")), ("ft", _l("feet")))
HEIGHT_KINDS = _choices(("height_m", _l("box or step")), ("target_m", _l("target to hit or touch")))
SIDES = _choices(
    ("", _l("as usual for the movement")), ("both", _l("both sides together")),
    ("one", _l("one side at a time")), ("alternating", _l("alternating")),
)
IMPLEMENTS = _choices(("1", _l("one")), ("2", _l("two, one in each hand")))
TURNS = _choices(("yes", _l("turn and come back")), ("", _l("walk back to the start")))
RANKINGS = _choices(
    ("prescribed_first", _l("As prescribed ranks before scaled")), ("separate", _l("Each option is ranked by itself")),
)
OWN_GROUPS = _choices(("", _l("choose")), *((key, _l(GROUP_NAMES[key])) for key in GROUPS))
# Beyond any workout: what is larger was not typed into this form. Counted of parts, of options, of blocks.
MOST_READ = 350
COUNTED = [re.compile(place) for place in (r"parts-[^-]*", r"(parts-[^-]*-)?options-[^-]*", r".*-blocks-[^-]*")]
WITHIN = re.compile(r"(?:parts-([0-9]+)-)?(.*)", re.DOTALL)


class BlockForm(Form):
    """One block of work."""

    movement = StringField(_l("Movement"))
    choice = RadioField(_l("Which one is meant?"), choices=[], default="", validate_choice=False)
    own_seconds = StringField(_l("Seconds for one, when fresh"))
    own_group = SelectField(_l("What it works most"), choices=OWN_GROUPS, default="")
    amount = StringField(_l("How many"))
    unit = SelectField(_l("Counted in"), choices=UNITS, default="reps")
    step = StringField(_l("More each round"))
    load_a = StringField()
    load_b = StringField()
    load_unit = SelectField(_l("kg or lb"), choices=MASSES, default="kg")
    load_step = StringField(_l("Heavier each round by"))
    implements = SelectField(_l("How many to lift"), choices=IMPLEMENTS, default="1")
    mark_every = StringField(_l("A mark every"))
    height_a = StringField()
    height_b = StringField()
    height_unit = SelectField(_l("Measured in"), choices=HEIGHTS, default="cm")
    height_kind = SelectField(_l("Height of the"), choices=HEIGHT_KINDS, default="height_m")
    sides = SelectField(_l("Sides"), choices=SIDES, default="")
    note = StringField(_l("Note to the athletes"))
    advice = TextAreaField(_l("Your own advice"))


class OptionForm(Form):
    """As prescribed, scaled, or another way to do it."""

    key = HiddenField()
    name = StringField(_l("Name of this option"))
    rounds = StringField(_l("Rounds"), default="1")
    rep_scheme = StringField(_l("Or a number for each round"))
    cap = StringField(_l("A time cap of its own"))
    tie_break = StringField(_l("Tie-break: the time after block number"))
    blocks = FieldList(FormField(BlockForm))


class GymForm(Form):
    """What the gym has: the sizes of each kind in one line, and what is free for the warm-up."""

    asked = HiddenField()
    dumbbells = StringField(_l("Dumbbells"))
    dumbbells_unit = SelectField(_l("kg or lb"), choices=MASSES)
    kettlebells = StringField(_l("Kettlebells"))
    kettlebells_unit = SelectField(_l("kg or lb"), choices=MASSES)
    plates = StringField(_l("Plates"))
    plates_unit = SelectField(_l("kg or lb"), choices=MASSES)
    bars = StringField(_l("Bars"))
    bars_unit = SelectField(_l("kg or lb"), choices=MASSES)
    sandbags = StringField(_l("Sandbags"))
    sandbags_unit = SelectField(_l("kg or lb"), choices=MASSES)
    balls = StringField(_l("Medicine balls"))
    balls_unit = SelectField(_l("kg or lb"), choices=MASSES)
    boxes = StringField(_l("Boxes"))
    boxes_unit = SelectField(_l("cm or inches"), choices=BOX_HEIGHTS)
    there = SelectMultipleField(_l("There and free for the warm-up"), choices=THERE)


class PartForm(Form):
    """A part of a workout; most workouts have one."""

    part_title = StringField(_l("Name of this part"))
    shape = RadioField(_l("What it is"), choices=SHAPES, default="for_time")
    cap = StringField(_l("Time cap"))
    time = StringField(_l("Time"))
    interval = StringField(_l("Length of an interval"))
    interval_count = StringField(_l("How many intervals"))
    rest_after = StringField(_l("Rest before the next part"))
    options = FieldList(FormField(OptionForm))


class WorkoutForm(PartForm, FlaskForm):
    """A workout: what is said of the whole, the first part, the further ones."""

    title = StringField(_l("Name of the workout"))
    divisions = FieldList(StringField(), min_entries=len(DIVISION_KEYS), max_entries=len(DIVISION_KEYS))
    lane_length = StringField(_l("Length of the lane"))
    lane_unit = SelectField(_l("In"), choices=LENGTHS, default="m")
    lane_turn = SelectField(_l("At the end of the lane"), choices=TURNS, default="yes")
    ranking = RadioField(_l("Ranking"), choices=RANKINGS, default="prescribed_first")
    source_url = StringField(_l("Link to the organiser’s rules"))
    source_text = TextAreaField(_l("The organiser’s own words"))
    notes = TextAreaField(_l("Notes to the class"))
    gym = FormField(GymForm)
    parts = FieldList(FormField(PartForm))
    revision = HiddenField()


class ActionForm(FlaskForm):
    """A button that changes something, with the revision it was shown for."""

    revision = IntegerField(validators=[InputRequired()])


class EnterForm(FlaskForm):
    """The coach link, pasted or taken from the address by the page."""

    secret = StringField(_l("Coach link"))


def empty_workout(gym=None):
    """What the form of a new workout holds, in the gym the coach told us of last."""
    return {
        "title": "",
        "divisions": [str(_l("Men")), str(_l("Women"))],
        "lane_length": "10", "lane_unit": "m", "lane_turn": "yes", "ranking": "prescribed_first",
        "source_url": "", "source_text": "", "notes": "", "gym": from_gym(gym),
        **_empty_part([("prescribed", str(_l("As prescribed")))]), "parts": [],
    }


def _empty_part(options):
    """A part with these options, (key, name), each with one block to fill in."""
    return {
        "part_title": "", "shape": "for_time", "cap": "", "time": "", "interval": "", "interval_count": "", "rest_after": "",
        "options": [empty_option(key, name) for key, name in options],
    }


def empty_option(key, name):
    """An option with one block to fill in."""
    return {
        "key": key, "name": name, "rounds": "1", "rep_scheme": "", "cap": "", "tie_break": "",
        "blocks": [empty_block()],
    }


def empty_block():
    """A block as it comes into the form."""
    return {name: field.data or "" for name, field in BlockForm()._fields.items()}


def shown(typed, revision):
    """A form with this content and a fresh token."""
    return WorkoutForm(formdata=None, data=typed | {"revision": revision})


def typed_in(form):
    """The form's content as nested dicts of text. What the options are is asked of the first part and holds for all."""
    ignored = ("csrf_token", "revision")
    typed = _text({name: value for name, value in form.data.items() if name not in ignored})
    for part in typed["parts"]:
        for option, first in zip(part["options"], typed["options"]):
            option |= {"key": first["key"], "name": first["name"]}
    return typed


def too_large(fields):
    """Whether a request names more parts, options or blocks than anybody typed."""
    return any(len({found[0] for found in map(place.match, fields) if found}) > MOST_READ for place in COUNTED)


def edited(typed, action):
    """The content after a button; unchanged if it makes no sense.

    Buttons are such as "add-block:0", "up:0:3", "add-option"; in a further part they begin as its fields do, "parts-0-add-block:0".
    """
    further, edit = WITHIN.fullmatch(action).groups()
    verb, *places = edit.split(":")
    try:
        EDITS[verb](typed["parts"][int(further)] if further else typed, *map(int, places))
    except (KeyError, ValueError, IndexError, TypeError):
        # An old page, or two tabs: the block is not where the button thought. Nothing typed is lost.
        pass
    return typed


def _add_block(typed, option):
    typed["options"][option]["blocks"].append(empty_block())


def _remove_block(typed, option, block):
    del typed["options"][option]["blocks"][block]


def _move(step):
    def move(typed, option, block):
        blocks = typed["options"][option]["blocks"]
        if 0 <= block + step < len(blocks):
            blocks.insert(block + step, blocks.pop(block))
    return move


def _add_option(typed):
    """A further option, in every part."""
    keys = {option["key"] for option in typed["options"]}
    names = {option["name"] for option in typed["options"]}
    number = len(typed["options"]) + 1
    while f"option-{number}" in keys:
        number += 1
    key = "scaled" if "scaled" not in keys else f"option-{number}"
    name = str(_l("Scaled")) if key == "scaled" else ""
    for part in each_part(typed):
        part["options"].append(_like_the_first(part["options"]) | {"key": key, "name": "" if name in names else name})


def _like_the_first(options):
    """An option begins as a copy of the first, but for the advice: that was given for other movements and loads."""
    first = options[0] if options else empty_option("", "")
    return first | {"blocks": [block | {"advice": ""} for block in first["blocks"]]}


def _remove_option(typed, option):
    if len(typed["options"]) > 1:
        for part in each_part(typed):
            del part["options"][option:option + 1]


def _add_part(typed):
    """A further part, empty, with the options there are."""
    if len(each_part(typed)) < PARTS[1]:
        typed["parts"].append(_empty_part([(option["key"], option["name"]) for option in typed["options"]]))


def _remove_part(typed, part):
    """Where the first goes the second takes its place."""
    if part == 0:
        typed |= typed["parts"].pop(0)
    else:
        del typed["parts"][part - 1]


EDITS = {
    "add-block": _add_block, "remove-block": _remove_block, "up": _move(-1), "down": _move(1),
    "add-option": _add_option, "remove-option": _remove_option, "add-part": _add_part, "remove-part": _remove_part,
}


def _text(value):
    if isinstance(value, dict):
        return {key: _text(item) for key, item in value.items()}
    if isinstance(value, list):
        return [_text(item) for item in value]
    return "" if value is None else str(value)
