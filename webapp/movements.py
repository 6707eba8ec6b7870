"""The movement library: what is known of each movement, as data, and how to find it in a coach's words.

The entries are JSON files in `webapp/library/`, one per family, checked by `tests/library/`.
Reading: `library`, `entry`. Searching: `find`. For a published workout: `freeze`. For translators: `texts`.

>>> find("30 Push-ups, then 200 m of Row")
['push-up', 'row']

An unknown key raises `UnknownMovement`, a `KeyError`. Standard library only, so that command line and tests need no web server.
"""

import copy
import functools
import json
import pathlib
import re
import unicodedata

FOLDER = pathlib.Path(__file__).with_name("library")

# In the order a coach reads a list of movements; the files' order inside a family is kept as well.
FAMILIES = ("press", "hang", "squat", "hinge", "jump", "carry", "machine", "trunk")

LONGEST_NAME_WORDS = 6  # words; chosen, one more than the longest name in use
SHORTEST_TYPED_WORD = 3  # letters; chosen, shorter ones are units and little words


class UnknownMovement(KeyError):
    """Raised for a key that is not in the library; says which one and where to look."""

    def __init__(self, key):
        super().__init__(key)
        self.key = key

    def __str__(self):
        return f"no movement {self.key!r} in the library; find() lists the keys that match a text"


@functools.cache
def library() -> dict:
    """Return every entry by key, families in the order of `FAMILIES`; callers must not change what they get."""
    entries = {}
    for family in FAMILIES:
        entries.update(json.loads((FOLDER / f"{family}.json").read_text(encoding="utf-8")))
    return entries


def entry(key: str) -> dict:
    """Return the entry of one movement, not to be changed; `UnknownMovement` if there is none."""
    try:
        return library()[key]
    except KeyError:
        raise UnknownMovement(key) from None


def freeze(keys) -> dict:
    """Return deep copies of the entries of `keys`, free to be edited by a coach and kept inside a workout."""
    return {key: copy.deepcopy(entry(key)) for key in keys}


def find(text: str, names: dict | None = None) -> list[str]:
    """Return the keys of the movements named in a text, the longest match first.

    Parameters
    ----------
    text : a line as a coach writes or types it; case, accents, hyphens and plurals make no difference.
    names : translated name by key, searched beside the English spellings.

    Returns
    -------
    list of str : keys, each once. A name inside a longer one does not count ("ring row" is not "row"). Where no name stands whole
    in the text, the movements whose name has every word typed so far, so that "squat" offers all squats.
    """
    words = _words(text)
    titles, others = _spellings(names)
    return _named_in(words, titles + others) or _begun_by(words, titles) or _begun_by(words, others)


def texts(movement_entry: dict):
    """Yield every translatable string of an entry, in the order a reader meets them; a text may come more than once."""
    for field in ("name", "hint", "seconds_source", "lane", "cue"):
        if movement_entry[field]:
            yield movement_entry[field]
    for field in ("standards", "measures", "no_reps", "equipment", "loosen", "cautions"):
        yield from movement_entry[field]
    yield from movement_entry["share_reasons"].values()
    for field in ("holds", "easier", "drills"):
        for item in movement_entry[field]:
            yield from (item[part] for part in ("name", "why") if part in item)
    yield from _texts_about_work_and_likeness(movement_entry)


def _texts_about_work_and_likeness(movement_entry):
    for field in ("mechanics", "energy"):
        if movement_entry[field]:
            yield movement_entry[field]["reason"]
    likeness = movement_entry["confused_with"]
    if likeness:
        # A likeness is a key of the library (its name is a text of its own entry) or a plain name.
        if likeness["movement"] not in library():
            yield likeness["movement"]
        yield likeness["difference"]


def _words(text):
    plain = unicodedata.normalize("NFKD", text.casefold())
    plain = "".join(letter for letter in plain if not unicodedata.combining(letter))
    return [_singular(word) for word in re.findall(r"[a-z0-9]+", re.sub(r"['’]", "", plain))]


def _singular(word):
    # Rough on purpose: names and text pass through the same rules, so a wrong singular still meets itself.
    # "-iones" is the Spanish plural of "-ión".
    for ending, instead in (("ies", "y"), ("iones", "ion"), ("sses", "ss"), ("ches", "ch"), ("shes", "sh"), ("xes", "x")):
        if word.endswith(ending) and len(word) > len(ending) + 1:
            return word[: -len(ending)] + instead
    return word[:-1] if word.endswith("s") and not word.endswith("ss") and len(word) > 2 else word


def _spellings(names):
    """Return (key, words) of the names, translated ones included, and (key, words) of the other spellings."""
    titles = [(key, _words(known["name"])) for key, known in library().items()]
    titles += [(key, _words(name)) for key, name in (names or {}).items() if key in library()]
    others = [(key, _words(spelling)) for key, known in library().items() for spelling in known["also"]]
    return titles, others


def _named_in(words, spellings):
    # Words are joined before they are compared, so that "pushup", "push up" and "push-up" are one.
    keys_by_joined = {}
    for key, spelling in spellings:
        keys_by_joined.setdefault("".join(spelling), []).append(key)
    hits = []
    for start in range(len(words)):
        for end in range(start + 1, min(len(words), start + LONGEST_NAME_WORDS) + 1):
            joined = "".join(words[start:end])
            hits.extend((len(joined), start, end, key) for key in keys_by_joined.get(joined, ()))
    hits.sort(key=lambda hit: (-hit[0], hit[1]))
    return _first_of_each(hit[3] for hit in hits if not any(_lies_inside(hit, other) for other in hits))


def _lies_inside(hit, other):
    _, start, end, _ = hit
    _, other_start, other_end, _ = other
    return other_start <= start and end <= other_end and other_end - other_start > end - start


def _begun_by(words, spellings):
    # Amounts and units say nothing of the movement: "40 m sandbag" asks for the sandbag.
    typed = [word for word in words if len(word) >= SHORTEST_TYPED_WORD and not word[0].isdigit()]
    if not typed:
        return []
    return _first_of_each(
        key for key, spelling in spellings
        if all(any(word.startswith(start) for word in spelling) for start in typed)
    )


def _first_of_each(keys):
    return list(dict.fromkeys(keys))
