"""The coach's forms. Everything is text as typed; `webapp.typed` makes a workout of it.

The structured form works with plain submits: each button carries what to do, the page comes back with the
same content, one block more or less.
"""

from flask_babel import lazy_gettext as _l
from flask_wtf import FlaskForm
from wtforms import (
    FieldList, Form, FormField, HiddenField, IntegerField, RadioField, SelectField, SelectMultipleField, StringField,
    TextAreaField,
)
from wtforms.fields.choices import SelectChoice
from wtforms.validators import InputRequired

from webapp.own_movements import GROUPS
from webapp.typed import DIVISION_KEYS
from webapp.typed_gym import from_gym
from webapp.wording import GROUPS as GROUP_NAMES


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
# Beyond any workout: what is larger was not typed into this form.
MOST_BLOCKS_READ = 300


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


class WorkoutForm(FlaskForm):
    """A workout."""

    title = StringField(_l("Name of the workout"))
    shape = RadioField(_l("What it is"), choices=SHAPES, default="for_time")
    cap = StringField(_l("Time cap"))
    time = StringField(_l("Time"))
    interval = StringField(_l("Length of an interval"))
    interval_count = StringField(_l("How many intervals"))
    divisions = FieldList(StringField(), min_entries=len(DIVISION_KEYS), max_entries=len(DIVISION_KEYS))
    lane_length = StringField(_l("Length of the lane"))
    lane_unit = SelectField(_l("In"), choices=LENGTHS, default="m")
    lane_turn = SelectField(_l("At the end of the lane"), choices=TURNS, default="yes")
    ranking = RadioField(_l("Ranking"), choices=RANKINGS, default="prescribed_first")
    source_url = StringField(_l("Link to the organiser’s rules"))
    source_text = TextAreaField(_l("The organiser’s own words"))
    notes = TextAreaField(_l("Notes to the class"))
    gym = FormField(GymForm)
    options = FieldList(FormField(OptionForm))
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
        "title": "", "shape": "for_time", "cap": "", "time": "", "interval": "", "interval_count": "",
        "divisions": [str(_l("Men")), str(_l("Women"))],
        "lane_length": "10", "lane_unit": "m", "lane_turn": "yes", "ranking": "prescribed_first",
        "source_url": "", "source_text": "", "notes": "", "gym": from_gym(gym),
        "options": [empty_option("prescribed", str(_l("As prescribed")))],
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
    """The form's content as nested dicts of text."""
    ignored = ("csrf_token", "revision")
    return _text({name: value for name, value in form.data.items() if name not in ignored})


def too_large(fields):
    """Whether a request names more blocks than anybody typed."""
    blocks = {name.rpartition("-")[0] for name in fields if "-blocks-" in name}
    options = {name.split("-")[1] for name in fields if name.startswith("options-")}
    return len(blocks) > MOST_BLOCKS_READ or len(options) > MOST_BLOCKS_READ


def edited(typed, action):
    """The content after a button such as "add-block:0", "remove-block:0:3", "up:0:3"; unchanged if it makes no sense."""
    verb, *places = action.split(":")
    try:
        EDITS[verb](typed, *map(int, places))
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
    """A further option begins as a copy of the first, but for the advice: that was given for other movements and loads."""
    keys = {option["key"] for option in typed["options"]}
    names = {option["name"] for option in typed["options"]}
    number = len(typed["options"]) + 1
    while f"option-{number}" in keys:
        number += 1
    key = "scaled" if "scaled" not in keys else f"option-{number}"
    name = str(_l("Scaled")) if key == "scaled" else ""
    first = typed["options"][0] if typed["options"] else empty_option(key, name)
    blocks = [block | {"advice": ""} for block in first["blocks"]]
    typed["options"].append(first | {"key": key, "name": "" if name in names else name, "blocks": blocks})


def _remove_option(typed, option):
    if len(typed["options"]) > 1:
        del typed["options"][option]


EDITS = {
    "add-block": _add_block, "remove-block": _remove_block, "up": _move(-1), "down": _move(1),
    "add-option": _add_option, "remove-option": _remove_option,
}


def _text(value):
    if isinstance(value, dict):
        return {key: _text(item) for key, item in value.items()}
    if isinstance(value, list):
        return [_text(item) for item in value]
    return "" if value is None else str(value)
