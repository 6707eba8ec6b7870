"""The command line: results on standard output, errors on standard error with exit status 2."""

import json
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest
from sample_workout import small_workout

from webapp.__main__ import main
from webapp.store import database

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture
def files(tmp_path):
    """A function that writes a file and gives its name."""
    def write(name, content):
        path = tmp_path / name
        path.write_text(content if isinstance(content, str) else json.dumps(content), "utf-8")
        return str(path)
    return write


def test_plan_prints_the_engines_answer(files, capsys):
    numbers = {"movements": {"ring-dip": {"max_unbroken": 12}}}
    assert main(["plan", files("w.json", small_workout()), files("n.json", numbers)]) == 0
    shown = capsys.readouterr()
    assert [block["movement"] for block in json.loads(shown.out)["blocks"]] == ["ring-dip", "sandbag-carry"]
    assert shown.err == ""


@pytest.mark.parametrize("workout, numbers", [
    ("{", {}), ({}, {}), (small_workout(), "nonsense"), (small_workout() | {"cap_s": 0}, {}),
    (small_workout(), {"movements": {"ring-dip": {"max_unbroken": -3}}}), ('{"cap_s": NaN}', {}),
])
def test_what_cannot_be_planned_is_told_on_standard_error(files, capsys, workout, numbers):
    assert main(["plan", files("w.json", workout), files("n.json", numbers)]) == 2
    shown = capsys.readouterr()
    assert shown.out == "" and shown.err.strip() and "Traceback" not in shown.err


def test_a_missing_file_is_named(capsys):
    assert main(["plan", "nowhere.json", "n.json"]) == 2
    assert "nowhere.json" in capsys.readouterr().err


def test_reading_text_says_that_it_is_not_there_yet(files, capsys):
    assert main(["read", files("t.txt", "20 ring dips")]) == 2
    assert "not possible yet" in capsys.readouterr().err


def test_backup_copies_and_never_overwrites(tmp_path, capsys):
    data, copy = tmp_path / "data.sqlite3", tmp_path / "copy.sqlite3"
    database.prepare(data)
    command = ["backup", str(copy), "--data", str(data)]
    assert main(command) == 0
    with closing(sqlite3.connect(copy)) as db:
        assert db.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
    assert main(command) == 2 and "exists already" in capsys.readouterr().err


def test_backup_of_nothing_is_an_error(tmp_path):
    assert main(["backup", str(tmp_path / "copy.sqlite3"), "--data", str(tmp_path / "none.sqlite3")]) == 2


def test_a_newer_data_file_is_refused_with_advice(tmp_path, capsys):
    data = tmp_path / "data.sqlite3"
    with closing(sqlite3.connect(data)) as db:
        db.execute("PRAGMA user_version = 99")
    assert main(["serve", "--data", str(data)]) == 2
    assert "start the newer version" in capsys.readouterr().err


@pytest.mark.parametrize("arguments", [[], ["nonsense"], ["serve", "--port", "x"], ["serve", "--port", "99999"]])
def test_a_wrong_command_exits_with_2(arguments):
    answer = subprocess.run([sys.executable, "-m", "webapp", *arguments], cwd=ROOT, capture_output=True, text=True)
    assert answer.returncode == 2 and "usage" in answer.stderr
