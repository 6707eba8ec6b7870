"""Whatever would fail on the phone, or silently mean something else there, stops the build with file, line and a way out."""

import pytest
from webapp.phone import SubsetError, build_engine

IMPORTS = '"""Probe."""\n\nimport math\n\nfrom .errors import EngineError\n\n\n'
HEAD = IMPORTS + "def other(a: float, *, b: float = 2) -> float:\n    return a + b\n\n\n"
FIRST_LINE = HEAD.count("\n") + 2  # of the body of `probe`

# One line in the body of a function, and words from the message.
LINES = [
    ("x = (i for i in xs)", "list comprehension in brackets"),
    ("yield 1", "return a list"),
    ("yield from xs", "return a list"),
    ("x = {i for i in xs}", "use a list"),
    ("x = {1, 2}", "use a list"),
    ("x = set(xs)", "use a list"),
    ("x = {i: 1 for i in xs}", "fill a dict in a loop"),
    ("if (n := len(xs)) > 1: pass", "line of its own"),
    ("x = [*xs, 1]", "use + or extend"),
    ("x = other(*xs)", "use + or extend"),
    ("x = other(**d)", "takes other arguments"),
    ("x = f'{a}'", "join texts with +"),
    ("x = '%s' % a", "no formatting"),
    ("x = '{}'.format(a)", "no .format()"),
    ("x = str(a)", "str(int(x))"),
    ("x = repr(a)", "no repr"),
    ("x = round(a)", "units.whole"),
    ("x = divmod(a, 2)", "a // b"),
    ("x = pow(a, 2)", "a ** b"),
    ("x = bool(a)", "comparison"),
    ("x = map(other, xs)", "list comprehension"),
    ("x = filter(other, xs)", "list comprehension"),
    ("x = next(xs)", "no next"),
    ("x = hasattr(a, 'b')", "no hasattr"),
    ("print(a)", "returns its results"),
    ("x = sum(xs, 1)", "sum takes 1 to 1"),
    ("x = float('inf')", "math.inf"),
    ("x = min(xs, default=0)", "keywords of min"),
    ("x = max(a, b, key=other)", "takes one list"),
    ("x = dict(a=1)", "keywords of dict"),
    ("x = sorted(xs, cmp=1)", "keywords of sorted"),
    ("x = zip(xs)", "zip takes 2"),
    ("x = math.fsum(xs)", "no math.fsum"),
    ("x = math.log(a, 2)", "math.log takes 1 to 1"),
    ("x = math.gcd(a, b)", "no math.gcd"),
    ("x = math.exp", "wrap the call in a lambda"),
    ("x = sorted(xs, key=abs)", "wrap the call in a lambda"),
    ("x = sorted(xs, key=len)", "wrap the call in a lambda"),
    ("x = d.get", "wrap the call in a lambda"),
    ("x = isinstance(a, int)", "(int, float)"),
    ("x = isinstance(a, (str, list))", "(int, float)"),
    ("x = isinstance(a, set)", "(int, float)"),
    ("x = a & 1", "bit operators"),
    ("x = a << 2", "bit operators"),
    ("x = ~a", "bit operators"),
    ("x = a @ b", "bit operators"),
    ("x = 2 ** 53 + 9007199254740993", "2**53"),
    ("x = 1e999", "math.inf"),
    ("x = 1j", "only numbers"),
    ("x = b'a'", "only numbers"),
    ("x = ...", "only numbers"),
    ("x = a is b", "use =="),
    ("x = a is 0", "use =="),
    ("x = a == True", "`is`"),
    ("x = False != a", "`is`"),
    ("x = 1 < other(a) < 3", "name the result first"),
    ("x = 1 < a in xs", "use and"),
    ("x = (1, 2) in xs", "number or a text"),
    ("x = xs[::2]", "no step"),
    ("x = xs[-a]", "literal such as a[-1]"),
    ("x = other(a)[-1]", "literal such as a[-1]"),
    ("x = (xs + xs)[0]", "name what"),
    ("x = (xs if a else d)[0]", "name what"),
    ("x = d[1, 2]", "no tuples as keys"),
    ("x = d[1.5]", "whole number or a text"),
    ("x = d[None]", "whole number or a text"),
    ("x = {(1, 2): 3}", "no tuples as keys"),
    ("x = {1: 2}", "texts"),
    ("x = {'12': 2}", "digits"),
    ("x = {'__proto__': 2}", "texts"),
    ("xs[1:2] = [3]", "no assignment to slices"),
    ("del xs[0]", "use pop"),
    ("a = b = 1", "two lines"),
    ("(a, b), x = d", "flat tuple"),
    ("a, *x = xs", "starred"),
    ("for i, (x, y) in enumerate(zip(xs, xs)): pass", "flat tuple"),
    ("x = [i for i, (j, k) in xs]", "flat tuple"),
    ("for d['k'] in xs: pass", "flat tuple"),
    ("a %= 2", "in full"),
    ("a //= 2", "in full"),
    ("a **= 2", "in full"),
    ("for i in xs:\n        pass\n    else:\n        pass", "no else on loops"),
    ("while a:\n        pass\n    else:\n        pass", "no else on loops"),
    ("for i in range(1, 5, a): pass", "literal whole number"),
    ("for i in range(1, 5, 0): pass", "literal whole number"),
    ("assert a", "raise EngineError"),
    ("raise ValueError('no')", "EngineError(code, value)"),
    ("raise", "EngineError(code, value)"),
    ("raise EngineError('code')", "EngineError(code, value)"),
    ("raise EngineError('code', 1) from None", "EngineError(code, value)"),
    ("with a: pass", "no with"),
    ("global x", "no global"),
    ("import os", "import nothing but math"),
    ("from .errors import *", "without * and as"),
    ("from .errors import EngineError as E", "without * and as"),
    ("from .missing import thing", "defines no `thing`"),
    ("from json import loads", "from a module of the engine"),
    ("x = lambda i=1: i", "plain parameters"),
    ("x = lambda *i: i", "plain parameters"),
    ("def inner(i=[]): pass", "a default is a constant"),
    ("def inner(*i): pass", "name every parameter"),
    ("def inner(i, /): pass", "name every parameter"),
    ("@other\n    def inner(): pass", "no decorators"),
    ("inner = lambda i: i\n    x = inner(i=1)", "only in calls to the engine's own"),
    ("x = other(1, 2)", "takes other arguments"),
    ("x = other(c=2)", "takes other arguments"),
    ("x = other()", "needs all"),
    ("x = xs[0](1)", "by its name"),
    ("x = xs.union(xs)", "no .union()"),
    ("x = 'a b'.split()", ".split takes 1"),
    ("x = 'ab'.split('')", "something to look for"),
    ("x = 'ab'.startswith(('a', 'b'))", "number or a text"),
    ("x = xs.index([1])", "number or a text"),
    ("x = a.__class__", "no `__class__`"),
    ("a + b", "does nothing"),
    ("min = 1", "choose another name"),
    ("self = 1", "choose another name"),
    ("EngineError = 1", "choose another name"),
    ("for list in xs: pass", "choose another name"),
    ("x = [max for max in xs]", "choose another name"),
    ("def sorted(): pass", "choose another name"),
    ("x_rt = 1", "kept for the build"),
    ("rt_x = 1", "kept for the build"),
    ("stub1_x = 1", "kept for the build"),
    ("try:\n        x = float(a)\n        y = 1\n    except ValueError:\n        pass", "one line"),
    ("try:\n        x = int(a)\n    except ValueError:\n        pass", "one line"),
    ("try:\n        x = float(other(1))\n    except ValueError:\n        pass", "one line"),
    ("try:\n        x = float(a)\n    finally:\n        pass", "one line"),
    ("async def inner(): pass", "no async"),
    ("match a:\n        case 1: pass", "use if"),
]


def breaches(engine_of, text):
    """What the build says of a module."""
    with pytest.raises(SubsetError) as caught:
        build_engine(engine_of(probe=text))
    return caught.value.breaches


@pytest.mark.parametrize(("line", "words"), LINES, ids=[line for line, _ in LINES])
def test_line_is_refused(engine_of, line, words):
    """With its place and what to write instead."""
    found = breaches(engine_of, HEAD + f"def probe(a, b, xs: list, d: dict):\n    {line}\n")
    messages = [message for place, message in found if place.startswith("engine/probe.py:")]
    assert any(words in message for message in messages), found
    assert all(int(place.split(":")[1]) in range(FIRST_LINE, FIRST_LINE + 1 + line.count("\n")) for place, _ in found), found


def test_except_clause_names_one_error(engine_of):
    """Anything else stands on the line of the except clause."""
    body = "    try:\n        x = float(a)\n    except {}:\n        x = 0\n    return x\n"
    for clause in ("TypeError", "ValueError as error", "(ValueError, TypeError)", "Exception"):
        found = breaches(engine_of, HEAD + "def probe(a):\n" + body.format(clause))
        assert found == [(f"engine/probe.py:{FIRST_LINE + 2}", "catch nothing but ValueError, without a name for it")]


# Whole modules, the line at fault, and words from the message.
MODULES = [
    ("x = 1\nx = 2\n", 2, "also defined at engine/probe.py:1"),
    ("print(1)\n", 1, "only imports, constants"),
    ("if 1: x = 2\n", 1, "only imports, constants"),
    ("import math as m\n", 1, "import nothing but math"),
    ("def Upper(): pass\n", 1, "small letter"),
    ("class lower: pass\n", 1, "capital letter"),
    ("class A(ValueError): pass\n", 1, "at most one base"),
    ("class A(Exception): pass\n", 1, "at most one base"),
    ("class A: pass\nclass B: pass\nclass C(A, B): pass\n", 3, "at most one base"),
    ("class A(metaclass=type): pass\n", 1, "write __init__"),
    ("@dataclass\nclass A: pass\n", 2, "write __init__"),
    ("class A:\n    x = 1\n", 2, "methods only"),
    ("class A:\n    @property\n    def x(self): pass\n", 3, "no decorators"),
    ("class A:\n    @staticmethod\n    def x(): pass\n", 3, "no decorators"),
    ("class A:\n    def x(this): pass\n", 2, "is self"),
    ("class A:\n    def get(self, k): pass\n", 2, "must not be called like"),
    ("class A:\n    def find(self, k): pass\n", 2, "must not be called like"),
    ("class A:\n    def __eq__(self, other): pass\n", 2, "no special methods"),
    ("class A:\n    def go(self, a): pass\n\n\ndef f(x: A): x.go(a=1)\n", 5, "positional arguments only"),
    ("class A:\n    def go(self): pass\n\n\ndef f(x: A): return x.go\n", 5, "wrap the call"),
    ("def f(*, a=1, b): pass\n", 1, "before all parameters with one"),
    ("def f(a=1, *, b): pass\n", 1, "before all parameters with one"),
    ("def f(a=[]): pass\n", 1, "a default is a constant"),
    ("def f(max): pass\n", 1, "choose another name"),
    ("new = 1\n", 1, "choose another name"),
    ("def time(): pass\n", 1, "choose another name"),
    ("def f(:\n", 1, "not Python"),
]


@pytest.mark.parametrize(("text", "line", "words"), MODULES, ids=[text for text, _, _ in MODULES])
def test_module_is_refused(engine_of, text, line, words):
    """With its place and what to write instead."""
    found = breaches(engine_of, text)
    assert any(place == f"engine/probe.py:{line}" and words in message for place, message in found), found


# What only shows once the kinds are known.
KINDS = [
    ("def f(a, b):\n    a += b\n", "annotate"),
    ("def f(a: list, b: list):\n    a += b\n", "extend"),
    ("def f(a: list):\n    a *= 2\n", "extend"),
    ("def f():\n    x = []\n    x += [1]\n", "extend"),
    ("def f(a, b):\n    return g(a) or b\n\n\ndef g(a):\n    return a\n", "name the result"),
]


@pytest.mark.parametrize(("text", "words"), KINDS, ids=[text for text, _ in KINDS])
def test_unknown_kind_is_refused_where_no_helper_can_stand(engine_of, text, words):
    """Lists that would be changed in place, calls that would be made twice."""
    assert words in breaches(engine_of, text)[0][1]


def test_same_name_in_two_modules_is_refused(engine_of):
    """They share one scope on the phone."""
    with pytest.raises(SubsetError, match="also defined at engine/one.py:1"):
        build_engine(engine_of(one="_x = 1\n", two="_x = 2\n"))


def test_circle_of_imports_is_refused(engine_of):
    """There is no order in which to join the modules."""
    with pytest.raises(SubsetError, match="in a circle"):
        build_engine(engine_of(one="from .two import b\na = 1\n", two="from .one import a\nb = 1\n"))


def test_errors_holds_its_one_class_only(engine_of):
    """It is put into JavaScript by hand."""
    with pytest.raises(SubsetError, match="EngineError and nothing else"):
        build_engine(engine_of(errors="class EngineError(ValueError): pass\n\n\nx = 1\n"))


def test_every_breach_is_told_at_once(engine_of):
    """In the order of files and lines."""
    text = "def f(a):\n    x = round(a)\n    y = {1}\n    return x + y\n"
    assert [place for place, _ in breaches(engine_of, text)] == ["engine/probe.py:2", "engine/probe.py:3"]
