"""The engine as one program: its modules in order, what each defines, what it lets out.

A breach is a pair of a place, `engine/units.py:12`, and a sentence that says what to write instead.
"""

import ast
from graphlib import CycleError, TopologicalSorter
from typing import NamedTuple

DOOR = "__init__"
ERRORS = "errors"  # holds EngineError, the one class that is put into JavaScript by hand


class SubsetError(Exception):
    """Something in the engine that would fail on the phone, or silently differ there; `breaches` lists all of it."""

    def __init__(self, breaches):
        super().__init__("\n".join(f"{place}: {message}" for place, message in breaches))
        self.breaches = breaches


class Module(NamedTuple):
    """One file of the engine."""

    name: str
    file: str
    tree: ast.Module

    def place(self, node):
        """Where `node` stands, for people."""
        return f"{self.file}:{getattr(node, 'lineno', 1)}"


class Signature(NamedTuple):
    """Parameters in the phone's order, default expressions by name, and how many may be given by position on the server."""

    names: list
    defaults: dict
    positional: int


class Program:
    """What the engine's `__init__.py` needs, in the order in which it can be joined."""

    def __init__(self, modules):
        self.by_name = _reachable({module.name: module for module in modules})
        self.exports = _exports(self.by_name.get(DOOR))
        self.modules = [self.by_name[name] for name in _order(self.by_name) if name not in (DOOR, ERRORS)]
        self.home = _homes(self.by_name)
        self.functions = self._all(ast.FunctionDef)
        self.classes = self._all(ast.ClassDef)
        self.constants = {
            name: statement
            for module in self.modules
            for statement in module.tree.body
            if isinstance(statement, (ast.Assign, ast.AnnAssign))
            for name in _names_of(statement)
        }

    def _all(self, kind):
        return {node.name: node for module in self.modules for node in module.tree.body if isinstance(node, kind)}


def read_program(folder):
    """Parse every module of `folder`."""
    modules, breaches = [], []
    for path in sorted(folder.glob("*.py")):
        file = f"{folder.name}/{path.name}"
        try:
            modules.append(Module(path.stem, file, ast.parse(path.read_text(encoding="utf-8"))))
        except SyntaxError as error:
            breaches.append((f"{file}:{error.lineno}", f"not Python: {error.msg}"))
    if breaches:
        raise SubsetError(breaches)
    return Program(modules)


def engine_imports(tree):
    """The `from .module import …` statements of a module."""
    return [node for node in tree.body if isinstance(node, ast.ImportFrom) and node.level == 1 and node.module]


def is_docstring(statement):
    """Whether a statement is a bare text."""
    return isinstance(statement, ast.Expr) and isinstance(getattr(statement.value, "value", None), str)


def signature(node, method=False):
    """The signature of a function, or of a method without its self."""
    arguments = node.args
    positional = [argument.arg for argument in arguments.args]
    defaults = dict(zip(positional[len(positional) - len(arguments.defaults) :], arguments.defaults))
    defaults |= {named.arg: value for named, value in zip(arguments.kwonlyargs, arguments.kw_defaults) if value is not None}
    skipped = 1 if method else 0
    names = positional[skipped:] + [named.arg for named in arguments.kwonlyargs]
    return Signature(names, defaults, len(positional) - skipped)


def _exports(door):
    """Names the engine lets out: `__all__`, or all that its `__init__.py` imports."""
    if door is None:
        return []
    for node in door.tree.body:
        if isinstance(node, ast.Assign) and node.targets[0].id == "__all__":
            return [element.value for element in node.value.elts]
    return [alias.name for node in engine_imports(door.tree) for alias in node.names]


def _reachable(by_name):
    """The modules that `__init__.py` needs, by whatever way; all of them without one."""
    if DOOR not in by_name:
        return by_name
    needed, waiting = {ERRORS}, [DOOR]
    while waiting:
        name = waiting.pop()
        if name in by_name and name not in needed:
            needed.add(name)
            waiting += [node.module for node in engine_imports(by_name[name].tree)]
    return {name: module for name, module in by_name.items() if name in needed}


def _order(by_name):
    """Names of the modules, each after those it imports."""
    needs = {name: [node.module for node in engine_imports(module.tree)] for name, module in sorted(by_name.items())}
    try:
        return [name for name in TopologicalSorter(needs).static_order() if name in by_name]
    except CycleError as error:
        names = error.args[1]
        raise SubsetError([(by_name[names[0]].file + ":1", "imports run in a circle: " + " -> ".join(names))]) from error


def _homes(by_name):
    """The module and statement behind every top-level name; the same name twice is a breach."""
    homes, breaches = {}, []
    for module in by_name.values():
        for statement in module.tree.body:
            for name in _names_of(statement):
                if module.name == DOOR:
                    continue
                if name in homes:
                    other = homes[name][0].place(homes[name][1])
                    breaches.append((module.place(statement), f"`{name}` is also defined at {other}: rename one of them"))
                homes[name] = (module, statement)
    if breaches:
        raise SubsetError(breaches)
    return homes


def _names_of(statement):
    """Names a top-level statement defines."""
    if isinstance(statement, (ast.FunctionDef, ast.ClassDef)):
        return [statement.name]
    targets = statement.targets if isinstance(statement, ast.Assign) else [getattr(statement, "target", None)]
    return [target.id for target in targets if isinstance(target, ast.Name)]
