"""The module as a whole."""

import re
import subprocess
import sys
from pathlib import Path

import pytest
from webapp import engine
from webapp.assets import engine_source
from webapp.phone import SubsetError, build_engine

ROOT = Path(__file__).resolve().parents[2]
DOOR = '"""Door."""\n\nfrom .errors import EngineError\nfrom .{} import {}\n'


def run(*arguments):
    """A Python of its own, at the top of the project."""
    return subprocess.run([sys.executable, *arguments], cwd=ROOT, capture_output=True, text=True, timeout=60)


@pytest.fixture(scope="module")
def module():
    """The engine's module as the server has it."""
    return engine_source()


def test_the_engine_keeps_to_the_subset(module):
    """All of it gets through, every door is there."""
    assert all(f"function {name}(" in module for name in engine.__all__ if name != "EngineError")


def test_same_text_every_time_and_without_the_web_framework(module):
    """By the command, in another process with other hash seeds; importing and building leave flask alone."""
    code = "import sys; from webapp.phone.__main__ import main; main([]); sys.exit('flask' in sys.modules)"
    ran = run("-c", code)
    assert (ran.returncode, ran.stdout) == (0, module)


def test_lets_out_what_the_server_does(module):
    """The names of `__all__`."""
    exported = re.search(r"^export \{ (.*) \};$", module, re.MULTILINE)[1]
    assert exported.split(", ") == sorted(engine.__all__)


def test_nothing_of_the_translators_library_is_left(module):
    """Every helper is ours."""
    assert not re.search(r"_pyfunc_|_pymeth_", module)


def test_command_lists_what_annotations_would_speed_up():
    """One place in a line."""
    lines = run("-m", "webapp.phone", "--slow").stdout.splitlines()
    assert all(re.fullmatch(r"engine/\w+\.py:\d+: .+", line) for line in lines)


def test_modules_come_after_those_they_need(engine_of):
    """Whatever their names."""
    modules = {"a_last": "from .z_first import X\n\nY = [X, X]\n", "z_first": "X = [1]\n", "__init__": DOOR.format("a_last", "Y")}
    module = build_engine(engine_of(**modules))
    assert module.index("X = [1]") < module.index("Y = [X, X]")
    assert module.endswith("export { EngineError, Y };\n")


def test_numbers_that_are_let_out_stay(engine_of):
    """Though they also stand where they are used."""
    module = build_engine(engine_of(one="X = 1\nY = 2\n\n\ndef f():\n    return X + Y\n", __init__=DOOR.format("one", "X, f")))
    assert "X = 1;" in module
    assert "Y = 2;" not in module
    assert "return 1 + 2;" in module


def test_what_the_translator_refuses_has_its_place(engine_of, monkeypatch):
    """Should it ever want a helper that is not ours."""
    monkeypatch.setattr("webapp.phone.build.FOREIGN", re.compile("unheard_of"))
    with pytest.raises(SubsetError, match=r"engine/one\.py:2: the translator wants unheard_of"):
        build_engine(engine_of(one="X = 1\ndef unheard_of(x):\n    return x\n"))
