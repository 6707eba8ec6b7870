"""Imports point inward only: views, services, engine and store."""

import ast
import re
import subprocess
import sys
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parent.parent / "webapp"
SQL = re.compile(r"\b(SELECT .* FROM|INSERT (OR \w+ )?INTO|UPDATE \w+ SET|DELETE FROM|CREATE TABLE|PRAGMA)\b", re.S)


def modules(folder):
    return sorted((PACKAGE / folder).rglob("*.py"))


def imported(path):
    """Names of the modules a file imports, wherever in it."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield ("." if node.level else "") + (node.module or "")


@pytest.mark.parametrize("name", ["webapp", "webapp.engine"])
def test_importing_the_inner_rings_brings_no_web_and_no_store(name):
    code = f"import sys, {name}; print([m for m in ('flask', 'sqlite3', 'babel', 'webapp.app') if m in sys.modules])"
    answer = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, cwd=PACKAGE.parent, check=True)
    assert answer.stdout.strip() == "[]"


def test_the_package_itself_imports_nothing():
    assert list(imported(PACKAGE / "__init__.py")) == []


def test_the_engine_imports_only_itself_and_mathematics():
    for path in modules("engine"):
        outside = [name for name in imported(path) if not name.startswith(".") and name not in ("math", "webapp.engine")]
        assert outside == [], path.name


def test_the_store_knows_nothing_of_the_web():
    for path in modules("store"):
        assert not [name for name in imported(path) if name.startswith(("flask", "webapp.views", "webapp.engine"))], path.name


def test_services_know_nothing_of_views():
    services = set(modules(".")) - set(modules("views"))
    for path in services - {PACKAGE / "app.py"}:
        assert not [name for name in imported(path) if name.startswith("webapp.views")], path.name


def test_sql_stands_only_in_the_store():
    for path in set(modules(".")) - set(modules("store")):
        assert not SQL.search(path.read_text("utf-8")), path.name


def test_the_session_is_used_only_in_views():
    for path in set(modules(".")) - set(modules("views")):
        assert "import session" not in path.read_text("utf-8"), path.name
