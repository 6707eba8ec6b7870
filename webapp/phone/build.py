"""Joins the engine's modules into one ES module."""

import ast
import re
from pathlib import Path

from pscript import JSError, Parser

from .expressions import own_signature
from .kinds import World
from .lowering import Lowering
from .naming import rename
from .program import SubsetError, is_docstring, read_program
from .subset import check

HERE = Path(__file__).parent
ENGINE = HERE.parent / "engine"
HELPERS = ("runtime.js", "containers.js")
HEADER = "// Made from the Python under webapp/engine; see webapp/phone. Changes belong there.\n"
CONSTRUCTOR = re.compile(r"^var (\w+);\n\1 = function \(\) \{\n +_pyfunc_op_instantiate\(this, arguments\);\n\}")
FUNCTION = re.compile(r"^var (\w+);\n\1 = function flx_\1 \(")
FOREIGN = re.compile(r"_pyfunc_\w+|_pymeth_\w+")


class PlainParser(Parser):
    """The translator without its own operators: lowering has already chosen what each operator means."""

    _pscript_overload = False


def build_engine(folder=ENGINE):
    """The text of the ES module: the same text for the same engine. Raises SubsetError."""
    return build(folder)[0]


def build(folder):
    """The text of the ES module, and the places where a slow helper stands for want of an annotation."""
    program = read_program(folder)
    check(program)
    rename(program)
    world = World(program)
    pieces, breaches, slow = [], [], []
    for module in program.modules:
        lowering = Lowering(world, module)
        for statement in module.tree.body:
            if _is_needed(statement, lowering):
                try:
                    pieces.append(_translate(lowering.visit(statement), program))
                except JSError as error:
                    breaches.append((module.place(statement), str(error).splitlines()[-1]))
        breaches += lowering.breaches
        slow += lowering.slow
    if breaches:
        raise SubsetError(breaches)
    helpers = [(HERE / name).read_text(encoding="utf-8") for name in HELPERS]
    exports = "export { " + ", ".join(sorted(program.exports)) + " };\n"
    return "\n".join([HEADER, *helpers, *pieces, exports]), slow


def _is_needed(statement, lowering):
    """Imports, docstrings and numbers that stand where they are used leave nothing behind."""
    if isinstance(statement, (ast.Import, ast.ImportFrom)) or is_docstring(statement):
        return False
    target = getattr(statement, "target", None) or getattr(statement, "targets", [None])[0]
    return target is None or target.id not in lowering.numbers or target.id in lowering.program.exports


def _translate(statement, program):
    """One top-level statement in JavaScript."""
    source = ast.unparse(ast.fix_missing_locations(statement))
    text = PlainParser(source, docstrings=False, inline_stdlib=False).dump().strip() + "\n"
    if isinstance(statement, ast.ClassDef):
        parameters = ", ".join(own_signature(program, statement.name).names)
        body = f"\n    this.__init__({parameters});\n" if _has_init(program, statement) else ""
        text = CONSTRUCTOR.sub(lambda match: f"function {match[1]}({parameters}) {{{body}}}", text)
    text = FUNCTION.sub(r"function \1(", text)
    foreign = FOREIGN.search(text)
    if foreign:
        raise JSError(f"the translator wants {foreign[0]}, which is no helper of ours")
    return text


def _has_init(program, node):
    """Whether a class or its base has an `__init__`."""
    own = any(getattr(item, "name", None) == "__init__" for item in node.body)
    return own or (bool(node.bases) and _has_init(program, program.classes[node.bases[0].id]))
