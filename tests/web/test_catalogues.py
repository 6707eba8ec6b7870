"""Extraction finds every text; the check finds every gap."""

import pytest
from babel.messages import Catalog

from webapp import catalogues

SOURCE = Catalog()
SOURCE.add("Open with {opening}.")
SOURCE.add(("%(num)s round", "%(num)s rounds"))
WHOLE = {"Open with {opening}.": "Abre con {opening}.", "%(num)s round": ("%(num)s ronda", "%(num)s rondas")}


def translated(**changes):
    catalogue = Catalog(locale="es")
    for message in SOURCE:
        if message.id:
            key = message.id[0] if isinstance(message.id, tuple) else message.id
            catalogue.add(message.id, changes.get("strings", WHOLE).get(key, ""), flags=changes.get("flags", ()))
    return catalogue


@pytest.mark.parametrize("catalogue, found", [
    (translated(), []),
    (translated(strings={}), ["not translated"] * 2),
    (translated(flags=["fuzzy"]), ["marked fuzzy"] * 2),
    (translated(strings=WHOLE | {"Open with {opening}.": "Abre."}), ["lacks a placeholder"]),
    (translated(strings=WHOLE | {"Open with {opening}.": "{opening} {then}"}), ["has a placeholder the English lacks"]),
    (translated(strings=WHOLE | {"%(num)s round": ("una ronda", "")}), ["not translated"]),
    (translated(strings=WHOLE | {"%(num)s round": ("una ronda", "%(num)s rondas")}), []),
    (Catalog(locale="es"), ["not in the catalogue"] * 2),
])
def test_the_check_finds_each_kind_of_gap(monkeypatch, catalogue, found):
    monkeypatch.setattr(catalogues, "extract", lambda: SOURCE)
    monkeypatch.setattr(catalogues, "read", lambda language: catalogue)
    assert [what for _, what in catalogues.problems("es")] == found


def test_extraction_reaches_every_kind_of_source():
    from webapp.wording import WORDS

    folders = {name.partition("/")[0] for message in catalogues.extract() for name, _ in message.locations}
    assert {"webapp", "templates", "static", "demo_data"} <= folders
    texts = {message.id for message in catalogues.extract() if isinstance(message.id, str)}
    assert set(WORDS.values()) <= texts
    assert {"Ring dip", "Men", "Set a workout"} <= texts


@pytest.mark.parametrize("language", catalogues.translated_languages())
def test_every_text_is_translated(language):
    assert list(catalogues.problems(language)) == []


def test_updating_twice_and_compiling_keeps_what_was_translated(monkeypatch, tmp_path):
    monkeypatch.setattr(catalogues, "TRANSLATIONS", tmp_path)
    monkeypatch.setattr(catalogues, "extract", lambda: SOURCE)
    catalogues.update()
    path = catalogues.po_path("es")
    path.write_text(path.read_text("utf-8").replace('msgid "Open with {opening}."\nmsgstr ""', 'msgid "Open with {opening}."\nmsgstr "Abre con {opening}."'), "utf-8")
    catalogues.update()
    catalogues.compile_catalogues()
    assert catalogues.translator("es")("Open with {opening}.") == "Abre con {opening}."
    assert path.with_suffix(".mo").stat().st_size > 0
