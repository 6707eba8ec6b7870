"""Rules for expressions. A rule yields a message for each breach, saying what to write instead."""

import ast
import builtins
import math

from .program import Signature, signature
from .statements import stored_name
from .tables import BUILTINS, MATH, MATH_CONSTANTS, METHODS, TYPE_TESTS

LARGEST_WHOLE = 2**53  # beyond it JavaScript's numbers skip some
OPERATORS = (ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Mod, ast.FloorDiv, ast.Pow)
SUBSCRIPTED = (ast.Name, ast.Attribute, ast.Subscript, ast.Call, ast.List, ast.Tuple, ast.Dict, ast.ListComp, ast.Constant)
HINTS = {
    "round": "no round, halves go another way: use units.whole or units.rounded",
    "divmod": "no divmod: write a // b and a % b",
    "bool": "no bool: write a comparison",
    "set": "no sets: use a list",
    "map": "no map: use a list comprehension",
    "filter": "no filter: use a list comprehension",
    "print": "no print: the engine returns its results",
    "pow": "no pow: write a ** b",
}
SEARCHING = ("startswith", "endswith", "index", "count", "remove")
UNUSUAL_KEY = "__proto__"  # the one key that is no plain key in JavaScript


def constant(node, context):
    """Numbers JavaScript can hold, texts, None, truth values."""
    value = node.value
    if isinstance(value, (bytes, complex)) or value is ...:
        yield "only numbers, texts, True, False and None"
    elif isinstance(value, int) and abs(value) >= LARGEST_WHOLE:
        yield "whole numbers stay below 2**53"
    elif isinstance(value, float) and not math.isfinite(value):
        yield "use math.inf"


def name(node, context):
    """A builtin is called, never passed on; a name that is assigned is free to use."""
    if isinstance(node.ctx, ast.Store):
        if node.id != "__all__":
            yield from stored_name(node.id)
    elif id(node) in context.called or node.id in context.program.home:
        return
    elif node.id == "math" or hasattr(builtins, node.id):
        yield f"`{node.id}` cannot be handed on: wrap the call in a lambda"


def attribute(node, context):
    """Constants of math, attributes of the engine's classes; methods only where they are called."""
    if isinstance(node.value, ast.Name) and node.value.id == "math":
        if node.attr not in MATH and node.attr not in MATH_CONSTANTS:
            yield f"no math.{node.attr}: allowed are " + ", ".join(sorted(MATH) + sorted(MATH_CONSTANTS))
        elif node.attr in MATH and id(node) not in context.called:
            yield f"math.{node.attr} cannot be handed on: wrap the call in a lambda"
    elif id(node) not in context.called and (node.attr in METHODS or node.attr in context.methods):
        yield f"`.{node.attr}` cannot be handed on: wrap the call in a lambda"
    elif node.attr.startswith("__") and node.attr != "__init__":
        yield f"no `{node.attr}`"


def operator(node, context):
    """Arithmetic only."""
    if not isinstance(node.op, OPERATORS):
        yield "no bit operators: JavaScript's stop at 32 bits"
    if isinstance(node.op, ast.Mod) and isinstance(node.left, ast.Constant) and isinstance(node.left.value, str):
        yield "no formatting: the web layer words results"


def unary(node, context):
    """Minus, plus and not."""
    if isinstance(node.op, ast.Invert):
        yield "no bit operators: JavaScript's stop at 32 bits"


def compare(node, context):
    """`is` with None, True and False only; chains call nothing in their middle."""
    sides = [node.left] + node.comparators
    for left, op, right in zip(sides, node.ops, node.comparators):
        right_is_flag = _is_constant(right, bool)
        if isinstance(op, (ast.Is, ast.IsNot)) and not (right_is_flag or _is_constant(right, type(None))):
            yield "`is` only with None, True and False: use =="
        if isinstance(op, (ast.In, ast.NotIn, ast.Is, ast.IsNot)) and len(node.ops) > 1:
            yield "no `in` or `is` in a chain: use and"
        if isinstance(op, (ast.Eq, ast.NotEq)) and (right_is_flag or _is_constant(left, bool)):
            yield "no == with True or False, 1 and 0 are not them on the phone: use `is`, or the value itself"
    if any(isinstance(part, ast.Call) for side in sides[1:-1] for part in ast.walk(side)):
        yield "no call in the middle of a chain, it would be made twice: name the result first"
    if any(isinstance(op, (ast.In, ast.NotIn)) for op in node.ops) and isinstance(node.left, (ast.List, ast.Tuple, ast.Dict)):
        yield "`in` looks for a number or a text only"


def _is_constant(node, kind):
    """Whether a node is a literal of a type."""
    return isinstance(node, ast.Constant) and isinstance(node.value, kind)


def subscript(node, context):
    """Index, text key or slice without a step, on something with a name."""
    if not isinstance(node.value, SUBSCRIPTED):
        yield "name what you take an item of first"
    index = node.slice
    if isinstance(index, ast.Slice):
        if index.step is not None:
            yield "no step in a slice: use a comprehension, or reversed"
    elif isinstance(index, ast.Tuple):
        yield "no tuples as keys: join texts, or nest dicts"
    elif isinstance(index, ast.UnaryOp) and isinstance(index.op, ast.USub):
        if not isinstance(index.operand, ast.Constant) or any(isinstance(part, ast.Call) for part in ast.walk(node.value)):
            yield "a negative index is a literal such as a[-1], on something with a name"
    elif isinstance(index, ast.Constant) and not isinstance(index.value, str) and type(index.value) is not int:
        yield "an index is a whole number or a text"


def dictionary(node, context):
    """Keys are texts."""
    for key in node.keys:
        if isinstance(key, (ast.Tuple, ast.List, ast.Dict)):
            yield "no tuples as keys: join texts, or nest dicts"
        elif isinstance(key, ast.Constant) and (not isinstance(key.value, str) or key.value == UNUSUAL_KEY):
            yield "keys of a dict are texts"
        elif isinstance(key, ast.Constant) and key.value.isdecimal():
            yield "no keys of digits only: JavaScript sorts them to the front"


def comprehension(node, context):
    """Flat targets."""
    for part in node.generators:
        names = part.target.elts if isinstance(part.target, ast.Tuple) else [part.target]
        if not all(isinstance(target, ast.Name) for target in names):
            yield "the target is a name or a flat tuple of names"


def call(node, context):
    """Only what the tables or the engine define, with the arguments they take."""
    if isinstance(node.func, ast.Attribute):
        yield from _method_call(node, context)
    elif not isinstance(node.func, ast.Name):
        yield "call something by its name"
    elif node.func.id in context.program.functions or node.func.id in context.program.classes:
        yield from _own_call(node, context)
    elif node.func.id in BUILTINS:
        yield from _fits(node, BUILTINS[node.func.id], node.func.id)
        yield from _builtin_call(node, context)
    elif hasattr(builtins, node.func.id):
        yield HINTS.get(node.func.id, f"no {node.func.id} in the engine: see tables.py for what there is")
    elif node.keywords:
        yield "keywords only in calls to the engine's own functions and classes"


def _fits(node, form, shown):
    """Number of arguments and keywords of a call to something from the tables."""
    if not form.least <= len(node.args) <= form.most:
        yield f"{shown} takes {form.least} to {form.most} arguments here"
    if any(keyword.arg not in form.keywords for keyword in node.keywords):
        allowed = ", ".join(form.keywords) or "none"
        yield f"keywords of {shown} here: {allowed}"


def _builtin_call(node, context):
    """What is particular to some builtins."""
    called, first = node.func.id, node.args[0] if node.args else None
    if called == "float" and isinstance(first, ast.Constant):
        yield "no float of a literal: write the number, or math.inf"
    elif called == "str" and not (isinstance(first, ast.Call) and getattr(first.func, "id", None) == "int"):
        yield "only str(int(x)): a float looks different on the phone"
    elif called in ("min", "max") and len(node.args) > 1 and node.keywords:
        yield f"{called} with key= takes one list"
    elif called == "isinstance" and not _is_type_test(node, context):
        yield "isinstance(x, …) tests for str, dict, list, bool, (int, float) or a class of the engine"


def _is_type_test(node, context):
    """Whether the second argument is something the phone can test for."""
    wanted = node.args[1] if len(node.args) == 2 else None
    if isinstance(wanted, ast.Tuple):
        return sorted(getattr(part, "id", "") for part in wanted.elts) == ["float", "int"]
    return getattr(wanted, "id", "") in TYPE_TESTS or getattr(wanted, "id", "") in context.program.classes


def _own_call(node, context):
    """A call to a function or class of the engine has every argument it needs and no other."""
    names, defaults, positional = own_signature(context.program, node.func.id)
    keywords = [keyword.arg for keyword in node.keywords]
    if len(node.args) > positional or any(keyword not in names[len(node.args) :] for keyword in keywords):
        yield f"`{node.func.id}` takes other arguments: " + ", ".join(names)
    elif any(name not in defaults and name not in keywords for name in names[len(node.args) :]):
        yield f"`{node.func.id}` needs all of its arguments: " + ", ".join(names)


def own_signature(program, called):
    """Signature of a function or, through its `__init__` or its base's, of a class of the engine."""
    if called in program.functions:
        return signature(program.functions[called])
    node = program.classes[called]
    for item in node.body:
        if getattr(item, "name", None) == "__init__":
            return signature(item, method=True)
    return own_signature(program, node.bases[0].id) if node.bases else Signature([], {}, 0)


def _method_call(node, context):
    """Methods from the tables, of math, or of the engine's classes; positional arguments only."""
    owner, method = node.func.value, node.func.attr
    if isinstance(owner, ast.Name) and owner.id == "math":
        if method in MATH:
            yield from _fits(node, MATH[method], "math." + method)
    elif method in METHODS:
        yield from _fits(node, METHODS[method], "." + method)
        yield from _search_method(node, method)
    elif method not in context.members:
        yield f"no .{method}() in the engine: see tables.py for what there is"
    elif node.keywords:
        yield "methods take positional arguments only"


def _search_method(node, method):
    """What methods may look for."""
    wanted = node.args[0] if node.args else None
    if method in SEARCHING and isinstance(wanted, (ast.Tuple, ast.List)):
        yield f".{method} looks for a number or a text only"
    if method in ("split", "replace") and isinstance(wanted, ast.Constant) and wanted.value == "":
        yield f".{method} needs something to look for"


RULES = {
    ast.Constant: constant,
    ast.Name: name,
    ast.Attribute: attribute,
    ast.BinOp: operator,
    ast.UnaryOp: unary,
    ast.Compare: compare,
    ast.Subscript: subscript,
    ast.Dict: dictionary,
    ast.ListComp: comprehension,
    ast.Call: call,
}
