"""Movements by the name a coach types, in the coach's language."""

from difflib import get_close_matches

from flask_babel import gettext

from webapp import movements
from webapp.typed import each_part
from webapp.workouts import REST

MOST_CANDIDATES = 8


def shown_name(key):
    """A movement's name in this language."""
    return gettext("Rest") if key == REST else gettext(movements.entry(key)["name"])


def all_names():
    """Every name a coach can choose from, in the library's order."""
    return [shown_name(key) for key in [*movements.library(), REST]]


class Finder:
    """Finds what is meant; movements of the coach's own are known by their whole name."""

    def __init__(self, own):
        self.names = {key: shown_name(key) for key in movements.library()}
        self.exact = {entry["name"].casefold(): key for key, entry in movements.library().items()}
        self.exact |= {name.casefold(): key for key, name in self.names.items()}
        self.exact |= {entry["name"].casefold(): key for key, entry in own.items()}
        self.exact |= {REST: REST, shown_name(REST).casefold(): REST}

    def __call__(self, text):
        """Keys that may be meant: one if it is clear, none if nobody knows it."""
        key = self.exact.get(text.casefold())
        return [key] if key else movements.find(text, self.names)

    def with_choices(self, content):
        """The form's content with each chosen candidate written out as the movement's name."""
        options = [option for part in each_part(content) for option in part["options"]]
        for block in (block for option in options for block in option["blocks"]):
            if block["choice"] in self.names:
                block |= {"movement": self.names[block["choice"]], "choice": ""}
        return content

    def candidates(self, text):
        """(key, name) of what may be meant, of what is spelt nearly so where nothing fits."""
        close = get_close_matches(text.casefold(), self.exact, n=MOST_CANDIDATES)
        keys = self(text) or [self.exact[name] for name in close]
        return [(key, self.names[key]) for key in dict.fromkeys(keys) if key in self.names][:MOST_CANDIDATES]
