"""Rules for modules, functions, classes and statements.

A rule yields a message for each breach, saying what to write instead; with a node before it where the breach is not at the
node itself.
"""

import ast
import builtins
import re

from pscript import stdlib

from .program import DOOR, ERRORS, is_docstring, signature
from .tables import FOREIGN_WORDS, METHODS

OURS = re.compile(r"rt_|stub\d|flx_|err_\d|_py|.*_rt\d*$")  # names the build gives itself
TAKEN = frozenset(dir(builtins)) | {"self", "EngineError"}
TAKEN_METHODS = frozenset(METHODS) | set(stdlib.METHODS)
IN_PLACE = (ast.Add, ast.Sub, ast.Mult, ast.Div)
CONSTANTS = (ast.Constant, ast.Name, ast.UnaryOp)


def module(node, context):
    """What a file consists of."""
    if context.module.name == ERRORS:
        names = [getattr(statement, "name", None) for statement in node.body if not is_docstring(statement)]
        if names != ["EngineError"]:
            yield "errors.py holds the class EngineError and nothing else: the build puts it into JavaScript by hand"
        return
    allowed = (ast.Import, ast.ImportFrom, ast.Assign, ast.AnnAssign, ast.FunctionDef, ast.ClassDef)
    for statement in node.body:
        if not isinstance(statement, allowed) and not is_docstring(statement):
            yield statement, "only imports, constants, functions and classes at top level"
        elif context.module.name == DOOR and isinstance(statement, (ast.FunctionDef, ast.ClassDef, ast.AnnAssign)):
            yield statement, "__init__.py only imports names and lists them in __all__"
    for name, (home, statement) in context.program.home.items():
        if home is context.module and name in FOREIGN_WORDS:
            yield statement, f"`{name}` has a meaning of its own in JavaScript: choose another name"


def plain_import(node, context):
    """Only `import math`."""
    if [(alias.name, alias.asname) for alias in node.names] != [("math", None)]:
        yield "import nothing but math and names of the engine's own modules"


def from_import(node, context):
    """Only names that exist, under their own name, from modules of the engine."""
    if node.level != 1 or not node.module:
        yield "import from a module of the engine: from .module import name"
        return
    for alias in node.names:
        if alias.name == "*" or alias.asname:
            yield "import each name as it is, without * and as"
        elif alias.name == "EngineError" and node.module == ERRORS:
            continue
        elif alias.name not in context.program.home or context.program.home[alias.name][0].name != node.module:
            yield f"{node.module}.py defines no `{alias.name}`"


def function(node, context):
    """Parameters, defaults and names of functions."""
    yield from _name(node.name, method=node.name in context.methods)
    if node.name[0].isupper():
        yield f"`{node.name}`: functions begin with a small letter"
    if node.decorator_list:
        yield "no decorators"
    arguments = node.args
    if arguments.vararg or arguments.kwarg or arguments.posonlyargs:
        yield "no *args, **kwargs or /: name every parameter"
    for default in arguments.defaults + [default for default in arguments.kw_defaults if default is not None]:
        if not isinstance(default, CONSTANTS) or isinstance(getattr(default, "operand", None), ast.Name):
            yield "a default is a constant or the name of one: use None and fill it inside"
    parameters = signature(node)
    given = [name in parameters.defaults for name in parameters.names]
    if given != sorted(given):
        yield "keyword-only parameters without default come before all parameters with one"


def lambda_function(node, context):
    """Lambdas have plain parameters."""
    arguments = node.args
    if arguments.defaults or arguments.kwonlyargs or arguments.vararg or arguments.kwarg or arguments.posonlyargs:
        yield "a lambda has plain parameters without defaults"


def argument(node, context):
    """Names of parameters."""
    if node.arg != "self":
        yield from _name(node.arg)


def class_definition(node, context):
    """Classes with ordinary methods and at most one base from the engine."""
    if not node.name[0].isupper():
        yield f"`{node.name}`: classes begin with a capital letter"
    yield from _name(node.name)
    if node.decorator_list or node.keywords:
        yield "no decorators or metaclasses: write __init__"
    if len(node.bases) > 1 or not all(getattr(base, "id", None) in context.program.classes for base in node.bases):
        yield "at most one base, a class of the engine (and no class is an exception but EngineError)"
    for item in node.body:
        if isinstance(item, ast.FunctionDef):
            yield from _method(item)
        elif not is_docstring(item) and not isinstance(item, ast.Pass):
            yield item, "a class holds methods only, set attributes in __init__"


def _method(item):
    """Rules for one method."""
    first = item.args.args[0].arg if item.args.args else ""
    if first != "self":
        yield item, f"`{item.name}`: the first parameter of a method is self"
    if item.name in TAKEN_METHODS:
        yield item, f"`{item.name}`: a method must not be called like one of lists, dicts or texts"
    if item.name.startswith("__") and item.name != "__init__":
        yield item, f"`{item.name}`: no special methods but __init__"


def assign(node, context):
    """One target; flat."""
    if len(node.targets) != 1:
        yield "one target to an assignment: write two lines"
    for target in node.targets:
        yield from _target(target, (ast.Name, ast.Attribute, ast.Subscript))


def annotated_assign(node, context):
    """One target, as without annotation."""
    yield from _target(node.target, (ast.Name, ast.Attribute))


def in_place_assign(node, context):
    """Plain arithmetic on what is there."""
    if not isinstance(node.op, IN_PLACE):
        yield "only += -= *= /= : write x = x … in full"
    yield from _target(node.target, (ast.Name, ast.Attribute, ast.Subscript))


def for_loop(node, context):
    """A flat target, no else."""
    if node.orelse:
        yield "no else on loops: use a flag, or return from a function"
    yield from _target(node.target, (ast.Name,))
    call = node.iter
    if isinstance(call, ast.Call) and getattr(call.func, "id", None) == "range" and len(call.args) == 3:
        step = call.args[2].operand if isinstance(call.args[2], ast.UnaryOp) else call.args[2]
        if not isinstance(step, ast.Constant) or not step.value:
            yield "the step of range is a literal whole number"


def while_loop(node, context):
    """No else."""
    if node.orelse:
        yield "no else on loops: use a flag, or return from a function"


def raise_error(node, context):
    """Only EngineError, with a code and a value."""
    call = node.exc
    good = isinstance(call, ast.Call) and getattr(call.func, "id", None) == "EngineError"
    if not good or len(call.args) != 2 or call.keywords or node.cause:
        yield "raise nothing but EngineError(code, value)"


def try_statement(node, context):
    """Only float(text), alone."""
    if len(node.body) != 1 or len(node.handlers) != 1 or node.orelse or node.finalbody or not _is_float(node.body[0], context):
        yield "try holds one line, `name = float(text)` or `return float(text)`, and one except ValueError"


def except_handler(node, context):
    """Only ValueError, unnamed."""
    if getattr(node.type, "id", None) != "ValueError" or node.name:
        yield "catch nothing but ValueError, without a name for it"


def expression(node, context):
    """A line that is only an expression calls something or is a docstring."""
    if not isinstance(node.value, ast.Call) and not is_docstring(node):
        yield "this line does nothing"


def _is_float(statement, context):
    """Whether a statement takes `float(…)` and calls nothing of the engine's on the way."""
    call = getattr(statement, "value", None)
    if not isinstance(statement, (ast.Assign, ast.Return)) or getattr(getattr(call, "func", None), "id", None) != "float":
        return False
    inner = [part.func for argument in call.args for part in ast.walk(argument) if isinstance(part, ast.Call)]
    return all(isinstance(func, ast.Attribute) and func.attr in METHODS for func in inner)


def _target(target, allowed):
    """Rules for the left side of an assignment or of `for`."""
    parts = target.elts if isinstance(target, ast.Tuple) else [target]
    for part in parts:
        if not isinstance(part, allowed):
            yield "the target is a name or a flat tuple of names"
        elif isinstance(part, ast.Subscript) and isinstance(part.slice, ast.Slice):
            yield "no assignment to slices: build a new list"


def _name(name, method=False):
    """Rules for a name somebody gives."""
    if OURS.match(name):
        yield f"`{name}`: such names are kept for the build"
    elif name in TAKEN and not method:
        yield f"`{name}` has a meaning of its own in Python: choose another name"


def stored_name(name):
    """Rules for a name that is assigned to."""
    return _name(name)


RULES = {
    ast.Module: module,
    ast.Import: plain_import,
    ast.ImportFrom: from_import,
    ast.FunctionDef: function,
    ast.Lambda: lambda_function,
    ast.arg: argument,
    ast.ClassDef: class_definition,
    ast.Assign: assign,
    ast.AnnAssign: annotated_assign,
    ast.AugAssign: in_place_assign,
    ast.For: for_loop,
    ast.While: while_loop,
    ast.Raise: raise_error,
    ast.Try: try_statement,
    ast.ExceptHandler: except_handler,
    ast.Expr: expression,
}
