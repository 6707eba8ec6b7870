"""Message catalogues: extracting, updating, compiling, checking, and what the phone needs of them."""

import json
import re
import sys
from functools import cache
from os import getpid

from babel.messages import Catalog
from babel.messages.extract import extract_from_dir
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po
from babel.support import Translations

from webapp.languages import DEFAULT, LANGUAGES, ROOT, TRANSLATIONS

KEYWORDS = {
    "_": None,
    "_l": None,
    "N_": None,
    "gettext": None,
    "lazy_gettext": None,
    "ngettext": (1, 2),
    "lazy_ngettext": (1, 2),
}
PLACEHOLDER = re.compile(r"%\((\w+)\)|\{(\w+)\}")
# Where the phone's own texts stand. Codes go to it as a table, the library's texts with each workout.
PHONE_SOURCE = "static/js/"


def extract_library(fileobj, keywords, comment_tags, options):
    """Every text of a movement file, as Babel wants it."""
    from webapp.movements import texts

    for entry in json.load(fileobj).values():
        for text in texts(entry):
            yield 1, None, text, []


def _demo_texts(fileobj, keywords, comment_tags, options):
    from webapp.workouts import texts

    for text in texts(json.load(fileobj)):
        yield 1, None, text, []


METHODS = {
    "webapp": [("library/*.json", extract_library), ("**.py", "python")],
    "templates": [("**.html", "jinja2")],
    "static/js": [("**.js", "javascript")],
    "demo_data": [("*.json", _demo_texts)],
}


def extract():
    """A catalogue of every text in the project, with the files each stands in."""
    catalogue = Catalog(project="Heatside", version="1")
    for folder, methods in METHODS.items():
        found = extract_from_dir(
            ROOT / folder, methods, {"**.html": {"silent": "false"}}, KEYWORDS, strip_comment_tags=True
        )
        for name, _line, message, comments, context in found:
            # Without line numbers, so that a moved line changes no catalogue.
            catalogue.add(message, None, [(f"{folder}/{name}", None)], context=context)
    return catalogue


def po_path(language):
    """Where a language's catalogue stands."""
    return TRANSLATIONS / language / "LC_MESSAGES" / "messages.po"


def read(language):
    """A language's catalogue; an empty one if nobody has begun it."""
    path = po_path(language)
    if not path.exists():
        return Catalog(locale=language, header_comment=f"# Heatside in {LANGUAGES[language]}", project="Heatside",
                       version="1", last_translator="Heatside", language_team="Heatside",
                       msgid_bugs_address="Heatside", fuzzy=False)
    with path.open("rb") as file:
        return read_po(file, locale=language)


def update():
    """Bring every catalogue up to date with the texts in the project."""
    texts = extract()
    for language in translated_languages():
        catalogue = read(language)
        catalogue.update(texts, no_fuzzy_matching=True)
        catalogue.obsolete.clear()
        po_path(language).parent.mkdir(parents=True, exist_ok=True)
        with po_path(language).open("wb") as file:
            write_po(file, catalogue, width=100, sort_by_file=True, include_lineno=False)


def translated_languages():
    """Every language but the one that is its own key."""
    return [language for language in LANGUAGES if language != DEFAULT]


def compile_catalogues():
    """Make the binary catalogues that are older than their source."""
    for language in translated_languages():
        source = po_path(language)
        target = source.with_suffix(".mo")
        if source.exists() and (not target.exists() or target.stat().st_mtime <= source.stat().st_mtime):
            # Written aside and moved, so that another process never reads half of it, nor moves it away.
            aside = target.with_suffix(f".{getpid()}.mo")
            with aside.open("wb") as file:
                write_mo(file, read(language))
            aside.replace(target)


def problems(language):
    """What is missing or wrong in a catalogue: (text, what) pairs."""
    catalogue = read(language)
    for message in extract():
        if message.id:
            what = _problem(message, catalogue.get(message.id, message.context))
            if what:
                yield message.id, what


def _problem(wanted, found):
    if found is None:
        return "not in the catalogue"
    forms = found.string if isinstance(found.string, tuple) else (found.string,)
    if not all(forms):
        return "not translated"
    if found.fuzzy:
        return "marked fuzzy"
    keys = wanted.id if isinstance(wanted.id, tuple) else (wanted.id,)
    # The singular may leave its number out ("one breath"), so the last form of the key decides.
    if any(placeholders(form) - placeholders(keys[-1]) for form in forms):
        return "has a placeholder the English lacks"
    if placeholders(keys[-1]) - placeholders(forms[-1]):
        return "lacks a placeholder"
    return None


def placeholders(text):
    """The names to be filled in."""
    return {a or b for a, b in PLACEHOLDER.findall(text)}


def translator(language):
    """A function from an English text to the text in this language."""
    return Translations.load(TRANSLATIONS, [language]).gettext


@cache
def phone_messages(language):
    """Texts of the phone's modules: {English: translation or list of plural forms}."""
    if language == DEFAULT:
        return {}
    found = {}
    for message in read(language):
        if message.id and any(name.startswith(PHONE_SOURCE) for name, _ in message.locations):
            key = message.id[0] if isinstance(message.id, tuple) else message.id
            forms = message.string
            if all(forms) and not message.fuzzy:
                found[key] = list(forms) if isinstance(forms, tuple) else forms
    return found


def main(arguments):
    """The command line: `update` or `check`."""
    if arguments == ["update"]:
        update()
        return 0
    if arguments == ["check"]:
        found = [(lang, text, what) for lang in translated_languages() for text, what in problems(lang)]
        for language, text, what in found:
            print(f"{language}: {what}: {text!r}", file=sys.stderr)
        return 1 if found else 0
    print("usage: python -m webapp.languages update | check", file=sys.stderr)
    return 2
