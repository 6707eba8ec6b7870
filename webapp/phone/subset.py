"""RULES FOR ENGINE AUTHORS: the Python that means the same on the server and on the phone. Anything else stops the build.

1. A file: docstring, `import math`, `from .module import name, name`, constants, functions, classes. Top-level names are unique
   over all modules. `__init__.py` imports what the phone may call (a module nobody needs does not go to the phone);
   `errors.py` holds EngineError alone.
2. Annotate numbers, lists and dicts (parameters, returns). What is known becomes a plain JavaScript operator; what is not known
   becomes a slower helper that does what Python does. `python -m webapp.phone --slow` lists the latter. `x += y` only on what is
   known to be numbers or texts.
3. `is` only with None, True, False; a truth value never equals a number on the phone. No call in the middle of `a < b < c`.
4. `%`, `//`, `/`, `**` are Python's. No round (units.whole), divmod, bit operators, `float("inf")` (math.inf). Whole numbers stay
   below 2**53.
5. Builtins, methods of lists, dicts and texts, and parts of `math`: those in `tables.py`. min and max take two or more numbers,
   or one list.
6. Texts: `+` between texts, no formatting; `str(int(x))` is the one way from number to text.
7. Indices are never negative but for a literal such as `a[-1]`, and neither an index nor a key may be missing; nothing is
   divided by zero, no logarithm taken of it: Python would fail, the phone would not notice. No steps in slices, no assignment
   to slices, no del.
8. Keys of dicts are texts; the order of a dict decides nothing. List comprehensions only. Dicts are joined as
   `{**a, "key": value}`.
9. Functions: defaults are constants; keyword-only parameters become positional on the phone, in the order written; keywords
   only in calls to the engine's own functions and classes. No *args, global, nonlocal, decorators.
10. Loops without else; targets flat; one target to an assignment.
11. Classes: Capital name, at most one base, `__init__` and ordinary methods.
12. `raise EngineError(code, value)`; the one try is `float(text)` alone, with `except ValueError`.
13. math.exp, log and pow may differ in the last bit: decisions need a tolerance, ties an integer rule.
"""

import ast
from typing import NamedTuple

from . import expressions, statements
from .program import ERRORS, SubsetError

INSTEAD = {
    ast.JoinedStr: "no f-strings: join texts with +",
    ast.GeneratorExp: "no generator expressions: put a list comprehension in brackets",
    ast.Set: "no sets: use a list",
    ast.SetComp: "no sets: use a list",
    ast.DictComp: "no dict comprehensions: fill a dict in a loop",
    ast.NamedExpr: "no := here: assign on a line of its own",
    ast.Starred: "no starred expressions: use + or extend",
    ast.Yield: "no generators: return a list",
    ast.YieldFrom: "no generators: return a list",
    ast.Global: "no global: pass the value and return it",
    ast.Nonlocal: "no nonlocal: return the value",
    ast.Delete: "no del: use pop",
    ast.Assert: "no assert: raise EngineError",
    ast.With: "no with: the engine opens nothing",
    ast.Match: "no match: use if and elif",
    ast.AsyncFunctionDef: "no async: the engine waits for nothing",
}
ALLOWED = (
    ast.arguments, ast.arg, ast.alias, ast.keyword, ast.comprehension, ast.operator, ast.unaryop, ast.boolop, ast.cmpop,
    ast.expr_context, ast.Return, ast.If, ast.Pass, ast.Break, ast.Continue, ast.BoolOp, ast.IfExp, ast.List,
    ast.Tuple, ast.Slice,
)  # fmt: skip
RULES = {**statements.RULES, **expressions.RULES}


class Context(NamedTuple):
    """What a rule may need to know besides the node."""

    program: object
    module: object
    methods: frozenset  # names of the methods of the engine's classes
    members: frozenset  # the same and the attributes set in them, which may hold functions
    called: frozenset  # ids of nodes that may stand for a function, a type or `math`


def check(program):
    """Raise SubsetError with every breach in the engine."""
    inside = [part for node in program.classes.values() for part in ast.walk(node)]
    methods = frozenset(part.name for part in inside if isinstance(part, ast.FunctionDef))
    members = methods | {part.attr for part in inside if isinstance(part, ast.Attribute) and isinstance(part.ctx, ast.Store)}
    breaches = []
    for module in program.by_name.values():
        context = Context(program, module, methods, members, frozenset(_called(ast.walk(module.tree))))
        breaches += [(module.place(node), message) for node, message in _inspect(module.tree, context)]
    if breaches:
        raise SubsetError(sorted(set(breaches), key=_file_and_line))


def _inspect(node, context):
    """Yield what is wrong with a node and all below it, annotations left out, each with the node to point at."""
    rule = RULES.get(type(node))
    if rule is not None:
        for found in rule(node, context):
            yield found if isinstance(found, tuple) else (node, found)
    elif not isinstance(node, ALLOWED):
        yield node, INSTEAD.get(type(node), f"{type(node).__name__} is not part of the engine's Python")
        return
    if not (isinstance(node, ast.Module) and context.module.name == ERRORS):
        for child in _children(node):
            for place, message in _inspect(child, context):
                yield (place if hasattr(place, "lineno") else node), message


def _children(node):
    """Nodes right below, annotations left out."""
    for field, value in ast.iter_fields(node):
        if field not in ("annotation", "returns"):
            yield from (child for child in (value if isinstance(value, list) else [value]) if isinstance(child, ast.AST))


def _called(nodes):
    """Ids of nodes that may stand for a function, a type or `math`."""
    for node in nodes:
        if isinstance(node, ast.Call):
            yield id(node.func)
            if isinstance(node.func, ast.Name) and node.func.id == "isinstance" and len(node.args) == 2:
                yield from (id(part) for part in ast.walk(node.args[1]))
        elif isinstance(node, ast.Attribute):
            yield id(node.value)
        elif isinstance(node, ast.ClassDef):
            yield from (id(base) for base in node.bases)
        elif isinstance(node, ast.ExceptHandler) and node.type is not None:
            yield from (id(part) for part in ast.walk(node.type))


def _file_and_line(breach):
    """Order of breaches: by file, then by line."""
    file, line = breach[0].rsplit(":", 1)
    return file, int(line), breach[1]
