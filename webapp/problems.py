"""What can be wrong with a workout, as codes, and the sentences for them.

A problem stands at a path into the workout, such as ("options", 0, "blocks", 3, "amount"). Forms have the
same paths, so a sentence appears at the field it is about.
"""

from flask_babel import lazy_gettext

MESSAGES = {
    "missing": lazy_gettext("Please fill this in."),
    "too_long": lazy_gettext("At most %(limit)s characters, please."),
    "not_a_number": lazy_gettext("“%(value)s” is not a number. Write it in digits, such as 12 or 2.5."),
    "not_whole": lazy_gettext("Please give a whole number."),
    "out_of_range": lazy_gettext("Between %(low)s and %(high)s, please."),
    "not_a_time": lazy_gettext("Write minutes and seconds, such as 12:00."),
    "not_a_list": lazy_gettext("Write the rounds' numbers with spaces between, such as 18 12 6."),
    "commas_unclear": lazy_gettext("Put a space between the numbers: we cannot tell which commas are decimal ones."),
    "too_many_sizes": lazy_gettext("At most %(limit)s numbers, please."),
    "unknown_choice": lazy_gettext("Please choose one of the list."),
    "unknown_movement": lazy_gettext("We do not know “%(value)s”. Choose below, or make it a movement of your own."),
    "ambiguous_movement": lazy_gettext("“%(value)s” fits more than one movement. Which one?"),
    "wrong_unit": lazy_gettext("%(movement)s is not counted in this unit."),
    "unknown_division": lazy_gettext("There is no such division."),
    "same_name_twice": lazy_gettext("Two of them have the same name."),
    "no_options": lazy_gettext("A workout needs at least one option."),
    "too_many_options": lazy_gettext("At most %(limit)s options, please."),
    "no_blocks": lazy_gettext("Add at least one block."),
    "too_many_blocks": lazy_gettext("At most %(limit)s blocks, please: take some out."),
    "too_much_work": lazy_gettext("All rounds together come to more than %(limit)s blocks."),
    "only_rest": lazy_gettext("There is nothing to do here but rest."),
    "rounds_or_scheme": lazy_gettext("Give either rounds or numbers for each round, not both."),
    "amount_from_scheme": lazy_gettext("Leave this empty: the numbers for each round say how many."),
    "mark_beyond": lazy_gettext("The mark is further away than the whole distance."),
    "mark_without_distance": lazy_gettext("Marks are for distances in m or ft only."),
    "tie_break_beyond": lazy_gettext("There is no block with this number."),
    "not_https": lazy_gettext("The link must begin with https:// and name a page."),
    "scheme_for_time_only": lazy_gettext("Numbers for each round are for workouts done for time: give each block its amount."),
    "one_lift_only": lazy_gettext("A heaviest lift is one block: take the others out."),
    "no_heavy_single": lazy_gettext("Choose a lift with a barbell here, such as a front squat."),
    "step_without_rounds": lazy_gettext("Nothing can change with a single round: say how many rounds there are."),
    "step_from_nothing": lazy_gettext("Say first what it is in the first round."),
    "step_too_far": lazy_gettext("This change would leave the last round with too little or too much to do."),
    "load_step_too_far": lazy_gettext("This change would make the load of the last round impossible."),
    "number_of_parts": lazy_gettext("A workout in parts has %(low)s to %(high)s of them."),
    "parts_differ": lazy_gettext("Every part must have the same options."),
    "not_a_workout": lazy_gettext("This is not a workout."),
}


class WorkoutError(ValueError):
    """A workout that cannot be used; `problems` maps each path to (code, parameters)."""

    def __init__(self, problems):
        super().__init__("; ".join(f"{dotted(path)}: {code}" for path, (code, _) in problems.items()))
        self.problems = problems


class Problems(dict):
    """What was found so far; the first problem at a place is the one that is shown."""

    def add(self, path, code, **parameters):
        """Note one more."""
        self.setdefault(tuple(path), (code, parameters))

    def raise_if_any(self):
        """End the check."""
        if self:
            raise WorkoutError(dict(self))


def dotted(path):
    """A path as people write it in a file: options.1.blocks.4.amount, counted from 1."""
    return ".".join(str(step + 1) if isinstance(step, int) else step for step in path) or "workout"
