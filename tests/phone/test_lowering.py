"""What each form becomes on the phone: plain operators where the kinds are known, helpers elsewhere."""

import re

import pytest
from webapp.phone import build_engine
from webapp.phone.build import build

IMPORTS = '"""Probe."""\n\nimport math\n\nfrom .errors import EngineError\n\nHALF = 0.5\nMINUS = -2\nNAMES = ["a", "b"]\n\n\n'


def emitted(engine_of, text, name="f"):
    """The JavaScript of one function, white space evened out."""
    module = build_engine(engine_of(probe=IMPORTS + text))
    function = re.search(rf"^function {name}\(.*?^}};?$", module, re.DOTALL | re.MULTILINE)
    return re.sub(r"\s+", " ", function[0])


def returned(engine_of, parameters, expression):
    """The JavaScript of one expression."""
    return re.search(r"return (.*?);", emitted(engine_of, f"def f({parameters}):\n    return {expression}\n"))[1]


# Parameters, expression, its JavaScript.
EXPRESSIONS = [
    ("a: float, b: float", "a + b", "a + b"),
    ("a, b: float", "a + b", "a + b"),
    ("a, b=2.0", "a + b", "a + b"),
    ("a, b", "a + b", "rt_add(a, b)"),
    ("a: str, b", "a + b", "a + b"),
    ("a: list, b", "a + b", "rt_concat(a, b)"),
    ("a, b", "[a] + b", "rt_concat([a], b)"),
    ("a: float, b: float", "a * b", "a * b"),
    ("a, b: float", "a * b", "rt_multiply(a, b)"),
    ("a: list[float], b: int", "a * b", "rt_repeat(a, b)"),
    ("a: list[float], b: int", "b * a", "rt_repeat(a, b)"),
    ("a: list[float]", "a[0] + a[1] * a[-1]", "a[0] + (a[1] * a[a.length -1])"),
    ("a: list[list[float]]", "a[0] + a[1]", "rt_concat(a[0], a[1])"),
    ("a: dict[str, float]", "a['x'] + a['y']", 'a["x"] + a["y"]'),
    ("a: list[float] | None", "a[0] + a[1]", "a[0] + a[1]"),
    ("a, b", "a - b / 2", "a - (b / 2)"),
    ("a, b", "a % b // 2", "rt_floordiv(rt_mod(a, b), 2)"),
    ("a, b", "a ** b", "Math.pow(a, b)"),
    ("a, b", "-a ** 2", "-Math.pow(a, 2)"),
    ("a: float, b", "a == b", "a === b"),
    ("a, b", "a == 'x'", 'a === "x"'),
    ("a, b", "a != b", "!rt_equals(a, b)"),
    ("a, b", "a is None", "a==null"),
    ("a, b", "a is not True", "a !== true"),
    ("a: float, b", "a < b", "a < b"),
    ("a, b", "a < b", "rt_compare(a, b) < 0"),
    ("a: float, b: float", "0 < a < b", "(0 < a) && (a < b)"),
    ("a, b", "a in b", "rt_contains(b, a)"),
    ("a, b", "a not in b", "!rt_contains(b, a)"),
    ("a: list", "not a", "!(a.length > 0)"),
    ("a: float", "not a", "!a"),
    ("a", "not a", "!rt_truth(a)"),
    ("a: list, b", "1 if a else b", "((a.length > 0))? (1) : (b)"),
    ("a: float, b", "a or b", "a || b"),
    ("a: list, b", "a or b", "((a.length > 0))? (a) : (b)"),
    ("a, b", "a and b", "(rt_truth(a))? (b) : (a)"),
    ("a: list", "len(a)", "a.length"),
    ("a", "len(a)", "rt_len(a)"),
    ("a: float, b", "min(a, b)", "Math.min(a, b)"),
    ("a, b", "max(a, b)", "rt_greatest([a, b], null)"),
    ("a", "max(a)", "rt_greatest(a, null)"),
    ("a", "sorted(a, reverse=True)", "rt_sorted(a, null, true)"),
    ("a", "sum(a)", "rt_sum(a)"),
    ("a", "float(a)", "rt_float(a)"),
    ("a: float", "float(a)", "+a"),
    ("a", "int(a)", "Math.trunc(a)"),
    ("a", "str(int(a))", "rt_text(Math.trunc(a))"),
    ("a", "abs(a)", "Math.abs(a)"),
    ("a", "math.floor(a) + math.inf", "Math.floor(a) + Infinity"),
    ("a", "math.isfinite(a)", "isFinite(a)"),
    ("a", "math.pi", "Math.PI"),
    ("a", "isinstance(a, (int, float))", "rt_is_number(a)"),
    ("a", "isinstance(a, dict)", "rt_is_dict(a)"),
    ("a", "HALF", "0.5"),
    ("a", "MINUS - a", "(-2) - a"),
    ("HALF", "HALF", "HALF"),
    ("a", "NAMES", "NAMES"),
    ("a", "{'x': a, 'y': 1}", "({x: a, y: 1})"),
    ("a", "{'x-y': a}", 'rt_record("x-y", a)'),
    ("a, b", "{b: a}", "rt_record(b, a)"),
    ("a, b", "{'x': 1, **a, **b, 'y': 2}", "rt_merge(({x: 1}), a, b, ({y: 2}))"),
    ("a", "a.get('x')", 'rt_get(a, "x")'),
    ("a", "a.items()", "rt_items(a)"),
    ("a", "a[1:]", "a.slice(1)"),
    ("a", "list(a)", "rt_list(a)"),
    ("a", "range(a)", "rt_range(0, a, 1)"),
]  # fmt: skip


@pytest.mark.parametrize(("parameters", "expression", "expected"), EXPRESSIONS, ids=[f"{a}: {b}" for a, b, _ in EXPRESSIONS])
def test_expression(engine_of, parameters, expression, expected):
    """Brackets round a whole expression make no difference."""
    found = returned(engine_of, parameters, expression)
    assert found in (expected, f"({expected})"), found


def test_local_names_have_the_kind_of_all_their_values(engine_of):
    """One value of another kind, or of none that is known, and nothing is certain."""
    loop = "    for i in range(3):\n        y = y + x * b\n        x = {}\n        z = b\n    return z * 2\n"
    text = "def f(a, b: float):\n    x = 1\n    y = 0.0\n    z = None\n" + loop
    same, other = emitted(engine_of, text.format("2")), emitted(engine_of, text.format("a"))
    assert "x * b" in same
    assert "rt_multiply(x, b)" in other
    assert "return z * 2" in same


def test_attributes_of_classes_have_kinds(engine_of):
    """From what __init__ gives them."""
    pair = "class Pair:\n    def __init__(self, xs: list[float], n):\n"
    pair = pair + "        self.xs = xs\n        self.n = n\n        self.at = 0\n\n\n"
    text = pair + "def f(pair: Pair):\n    return [pair.xs[0] + pair.xs[1], pair.n + pair.n, pair.at * pair.at]\n"
    found = emitted(engine_of, text)
    assert "[pair.xs[0] + pair.xs[1], rt_add(pair.n, pair.n), pair.at * pair.at]" in found


def test_results_of_functions_have_kinds(engine_of):
    """From their annotations."""
    text = "def g(a) -> float:\n    return a\n\n\ndef h(a):\n    return a\n\n\ndef f(a):\n    return [g(a) * g(a), h(a) * h(a)]\n"
    assert "[g(a) * g(a), rt_multiply(h(a), h(a))]" in emitted(engine_of, text)


def test_loop_over_range_counts_on_its_own(engine_of):
    """Its end stands fixed, its name may be changed."""
    found = emitted(engine_of, "def f(n: int):\n    for i in range(1, n, 2):\n        i = i + n\n    return i\n")
    assert "rt_end1 = n; for (rt_i1 = 1; rt_i1 < rt_end1; rt_i1 += 2) { i = rt_i1; i = i + n; }" in found


def test_keywords_become_positional(engine_of):
    """Gaps get the defaults, what comes after the last is left out."""
    text = "def g(a, b=HALF, *, c=None, d=4, e=5):\n    return a\n\n\n"
    text = text + "def f(x):\n    return [g(x), g(x, d=1), g(b=1, a=x), g(x, 1, e=2)]\n"
    assert "[g(x), g(x, 0.5, null, 1), g(x, 1), g(x, 1, null, 4, 2)]" in emitted(engine_of, text)
    assert emitted(engine_of, text, "g").startswith("function g(a, b, c, d, e) { b = (b === undefined) ? 0.5: b;")


def test_classes_are_made_without_detours(engine_of):
    """A constructor with the parameters of __init__; a class without one takes its base's."""
    classes = "class A:\n    def __init__(self, x, *, y=1):\n        self.x = x\n\n\nclass B(A):\n    pass\n\n\n"
    text = classes + "def f(x):\n    return [A(x), B(x, y=3)]\n"
    assert emitted(engine_of, text, "A") == "function A(x, y) { this.__init__(x, y); }"
    assert emitted(engine_of, text, "B") == "function B(x, y) { this.__init__(x, y); }"
    assert "[new A(x), new B(x, 3)]" in emitted(engine_of, text)


def test_errors_are_thrown_by_the_helper(engine_of):
    """With code and value."""
    assert 'rt_fail("no", a);' in emitted(engine_of, "def f(a):\n    raise EngineError('no', a)\n")


def test_comprehension_variables_get_names_of_their_own(engine_of):
    """So do parameters of lambdas."""
    found = emitted(engine_of, "def f(x, xs):\n    ys = [x for x in xs if x > 0]\n    return sorted(ys, key=lambda x: -x)\n")
    assert "x = " not in found.replace("_x = ", "").replace("x_rt1 = ", "")
    assert "(x_rt2) {return -x_rt2;}" in found


def test_slow_helpers_are_listed(engine_of):
    """With the place where an annotation would help."""
    _, slow = build(engine_of(probe="def f(a, b: float):\n    x = b * b\n    return a * x\n"))
    assert slow == [("engine/probe.py:3", "Mult of something unknown")]
