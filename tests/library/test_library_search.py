"""A coach's spelling finds the movement meant; a copy can be edited without touching the library."""

import doctest
import subprocess
import sys

import pytest

from webapp import movements


@pytest.mark.parametrize("text, expected", [
    ("30 Push-ups", ["push-up"]),
    ("30 pushups", ["push-up"]),
    ("PUSH UP", ["push-up"]),
    ("20 Ring Dips (strict)", ["ring-dip"]),
    ("10 handstand pushups", ["handstand-push-up"]),
    ("12 chest-to-bar pull-ups", ["chest-to-bar-pull-up"]),
    ("15 T2B", ["toes-to-bar"]),
    ("50 dus", ["double-under"]),
    ("farmer’s carry 2 x 24 kg", ["farmer-carry"]),
    ("8 push presses @ 40/30", ["push-press"]),
    ("overhead walking lunges", ["overhead-lunge"]),
    ("10 ring rows", ["ring-row"]),
    ("500 m row", ["row"]),
    ("sándbag cärry", ["sandbag-carry"]),
    ("40 m sandbag 40/30", ["sandbag-carry"]),
])
def test_a_line_as_a_coach_writes_it_names_its_movement(text, expected):
    assert movements.find(text) == expected


def test_the_longest_name_comes_first():
    assert movements.find("5 burpees, 10 kettlebell swings") == ["kettlebell-swing", "burpee"]


def test_an_open_name_offers_all_it_could_mean():
    assert movements.find("50 squats") == ["air-squat", "goblet-squat", "front-squat"]
    assert movements.find("hands") == ["handstand-push-up", "handstand-walk"]


@pytest.mark.parametrize("text", ["", "rest 60 s", "3 rounds for time", "12:00", "m", "21-15-9", "back squat"])
def test_a_line_without_a_movement_of_ours_finds_none(text):
    assert movements.find(text) == []


def test_translated_names_are_searched_too():
    names = {"push-up": "Flexión", "ring-dip": "Fondo en anillas", "movement-of-the-coach": "Salto"}
    assert movements.find("30 flexiones", names) == ["push-up"]
    assert movements.find("20 fondos en anillas", names) == ["ring-dip"]
    assert movements.find("salto", names) == []


def plural(name):
    """An English plural, good enough for the names of movements."""
    if name.endswith("s") and not name.endswith("ss"):
        return name
    if name.endswith("y"):
        return name[:-1] + "ies"
    return name + ("es" if name.endswith(("ss", "ch", "sh")) else "s")


def test_every_name_key_and_other_spelling_finds_its_own_movement_first():
    for key, entry in movements.library().items():
        for spelling in [entry["name"], key, *entry["also"]]:
            assert movements.find(spelling)[:1] == [key], spelling
            assert movements.find(f"21 {plural(spelling)}, then rest")[:1] == [key], spelling


def test_no_spelling_belongs_to_two_movements():
    spellings = [spelling for entry in movements.library().values() for spelling in {entry["name"].lower(), *entry["also"]}]
    assert len(spellings) == len(set(spellings))


def test_an_unknown_key_is_refused_by_name():
    with pytest.raises(movements.UnknownMovement, match="moon-walk") as caught:
        movements.entry("moon-walk")
    assert isinstance(caught.value, KeyError)
    with pytest.raises(KeyError):
        movements.freeze(["push-up", "moon-walk"])


def test_a_frozen_entry_can_be_edited_without_touching_the_library():
    frozen = movements.freeze(["ring-dip"])
    frozen["ring-dip"]["standards"].append("Edited by a coach.")
    assert "Edited by a coach." not in movements.entry("ring-dip")["standards"]
    assert movements.freeze(["ring-dip"]) == {"ring-dip": movements.entry("ring-dip")}


def test_the_library_is_read_once():
    assert movements.library() is movements.library()


def test_the_example_of_the_module_is_true():
    assert doctest.testmod(movements).failed == 0


def test_reading_the_library_needs_no_web_server():
    check = "import sys, webapp.movements as m; m.library(); assert 'flask' not in sys.modules"
    subprocess.run([sys.executable, "-c", check], check=True, timeout=20)
