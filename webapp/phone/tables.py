"""What the engine may use, each with what it becomes on the phone and the kind of thing it gives."""

import builtins
from typing import NamedTuple

from pscript import stdlib


class Kind(NamedTuple):
    """What an expression gives: a base, and for lists and dicts the kind of their items."""

    base: str
    item: "Kind | None" = None


NUMBER, TEXT = Kind("number"), Kind("text")  # a truth value is a number, as in Python
LIST, DICT = Kind("list"), Kind("dict")
TEXTS, PAIRS = Kind("list", TEXT), Kind("list", LIST)


class Form(NamedTuple):
    """How something may be called: least and most arguments, keywords, name on the phone, kind of the result."""

    least: int
    most: int
    phone: str
    gives: Kind | None
    keywords: tuple = ()


BUILTINS = {
    "abs": Form(1, 1, "Math.abs", NUMBER),
    "all": Form(1, 1, "rt_all", NUMBER),
    "any": Form(1, 1, "rt_any", NUMBER),
    "dict": Form(1, 1, "rt_dict", DICT),
    "enumerate": Form(1, 2, "rt_enumerate", PAIRS),
    "float": Form(1, 1, "rt_float", NUMBER),
    "int": Form(1, 1, "Math.trunc", NUMBER),
    "isinstance": Form(2, 2, "", NUMBER),
    "len": Form(1, 1, "rt_len", NUMBER),
    "list": Form(1, 1, "rt_list", LIST),
    "max": Form(1, 9, "rt_greatest", None, ("key",)),
    "min": Form(1, 9, "rt_least", None, ("key",)),
    "range": Form(1, 3, "rt_range", Kind("list", NUMBER)),
    "reversed": Form(1, 1, "rt_reversed", LIST),
    "sorted": Form(1, 1, "rt_sorted", LIST, ("key", "reverse")),
    "str": Form(1, 1, "rt_text", TEXT),
    "sum": Form(1, 1, "rt_sum", NUMBER),
    "super": Form(0, 0, "", None),
    "tuple": Form(1, 1, "rt_list", LIST),
    "zip": Form(2, 9, "rt_zip", PAIRS),
}

METHODS = {
    "append": Form(1, 1, ".push", None),
    "copy": Form(0, 0, "rt_copy", None),
    "count": Form(1, 1, "rt_count", NUMBER),
    "endswith": Form(1, 1, "rt_endswith", NUMBER),
    "extend": Form(1, 1, "rt_extend", None),
    "get": Form(1, 2, "rt_get", None),
    "index": Form(1, 1, "rt_index", NUMBER),
    "insert": Form(2, 2, "rt_insert", None),
    "items": Form(0, 0, "rt_items", PAIRS),
    "join": Form(1, 1, "rt_join", TEXT),
    "keys": Form(0, 0, "rt_keys", TEXTS),
    "lower": Form(0, 0, "rt_lower", TEXT),
    "pop": Form(0, 2, "rt_pop", None),
    "remove": Form(1, 1, "rt_remove", None),
    "replace": Form(2, 2, "rt_replace", TEXT),
    "reverse": Form(0, 0, "rt_reverse", None),
    "setdefault": Form(2, 2, "rt_setdefault", None),
    "sort": Form(0, 0, "rt_sort", None, ("key", "reverse")),
    "split": Form(1, 1, "rt_split", TEXTS),
    "startswith": Form(1, 1, "rt_startswith", NUMBER),
    "strip": Form(0, 0, "rt_strip", TEXT),
    "update": Form(1, 1, "rt_update", None),
    "upper": Form(0, 0, "rt_upper", TEXT),
    "values": Form(0, 0, "rt_values", LIST),
}

MATH = {
    "ceil": Form(1, 1, "Math.ceil", NUMBER),
    "exp": Form(1, 1, "Math.exp", NUMBER),
    "expm1": Form(1, 1, "Math.expm1", NUMBER),
    "floor": Form(1, 1, "Math.floor", NUMBER),
    "isfinite": Form(1, 1, "isFinite", NUMBER),
    "isnan": Form(1, 1, "isNaN", NUMBER),
    "log": Form(1, 1, "Math.log", NUMBER),
    "log10": Form(1, 1, "Math.log10", NUMBER),
    "log1p": Form(1, 1, "Math.log1p", NUMBER),
    "log2": Form(1, 1, "Math.log2", NUMBER),
    "pow": Form(2, 2, "Math.pow", NUMBER),
    "sqrt": Form(1, 1, "Math.sqrt", NUMBER),
    "tanh": Form(1, 1, "Math.tanh", NUMBER),
}
MATH_CONSTANTS = {"inf": "Infinity", "pi": "Math.PI"}

TYPE_TESTS = {"str": "rt_is_text", "dict": "rt_is_dict", "list": "rt_is_list", "bool": "rt_is_flag"}
NUMBER_TEST = "rt_is_number"

# Names with a meaning of their own in JavaScript modules or for the translator, and none in Python.
FOREIGN_WORDS = frozenset(
    """abstract arguments await boolean case catch const debugger default delete do enum eval export extends final function goto
    implements instanceof interface let native new null package private protected public static switch synchronized this
    throw throws transient true false typeof undefined var void volatile window Array Boolean Date Error Function Infinity
    JSON Map Math NaN Number Object Set String Symbol isFinite isNaN globalThis RawJS this_is_js PSCRIPT_OVERLOAD""".split()
) | (set(stdlib.FUNCTIONS) - set(dir(builtins)))
