"""Engines of a few lines, written to a folder."""

import pytest

ERRORS = '"""Errors."""\n\n\nclass EngineError(ValueError):\n    pass\n'


@pytest.fixture
def engine_of(tmp_path):
    """A function that writes an engine of some modules, name by text, and gives its folder; EngineError is always there."""

    def write(**modules):
        folder = tmp_path / "engine"
        folder.mkdir(exist_ok=True)
        for name, text in {"errors": ERRORS, **modules}.items():
            (folder / f"{name}.py").write_text(text, encoding="utf-8")
        return folder

    return write
