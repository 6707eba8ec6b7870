"""Numbers: operators, math, builtins."""

import math

HALF = 0.5
LOWEST = -3
ODD_VALUES = [-7.5, -7, -3, -1, -0.5, 0, 0.1, 0.3, 1, 2.5, 3, 7, 7.25]


def division(a: float, b: float) -> list:
    """Quotients and rests."""
    return [a / b, a // b, a % b, a - b, a * b, a + b]


def every_division() -> list:
    """Positive, negative, whole and broken numbers by each other."""
    return [division(a, b) for a in ODD_VALUES for b in ODD_VALUES if b != 0]


def floor_of_tenths() -> list:
    """Where the quotient rounds up to a whole number that is too large."""
    return [1 // 0.1, 1 % 0.1, 6 // 0.1, 6 % 0.1, -1 // 0.1]


def powers() -> list:
    """Powers, unary minus binding weaker."""
    return [2**10, 2**-1, 2**0.5, -(3**2), (-3) ** 2, 2**3**2, math.pow(2.5, 3), 0**0]


def rounding() -> list:
    """int, floor, ceil and whole numbers from texts."""
    return [[int(x), math.floor(x), math.ceil(x), abs(x), math.floor(x + 0.5), str(int(x))] for x in ODD_VALUES]


def functions_of_math() -> list:
    """Everything of math that is allowed."""
    x = 0.75
    logarithms = [math.log(x), math.log1p(x), math.log2(x), math.log10(x)]
    others = [math.exp(x), math.expm1(x), math.sqrt(x), math.tanh(x), math.pi]
    finite = [math.isfinite(x), math.isfinite(math.inf), math.isfinite(-math.inf), math.isfinite(True)]
    return logarithms + others + finite + [math.isnan(math.inf - math.inf), math.isnan(x)]


def extremes(values: list[float], unknown: list) -> list:
    """min and max of several and of lists, with and without key."""
    pairs = [(3, "c"), (1, "b"), (1, "a"), (3, "d")]
    return [
        min(3, 1, 2), max(3.5, 1), min(values), max(unknown), min(unknown[0], unknown[1]), max("b", "a"),
        min(pairs), max(pairs),
        min(pairs, key=lambda pair: pair[0]), max(pairs, key=lambda pair: pair[0]), 
        max((1, 2), (1, 3)), min(unknown, key=lambda x: -x),
    ]  # fmt: skip


def extremes_called() -> list:
    """The same with numbers."""
    return extremes([2.5, -1, 9], [4, 7, 5])


def sums() -> list:
    """sum of nothing, numbers and truth values; truth values as numbers."""
    return [sum([]), sum([1, 2, 3.5]), sum([x > 0 for x in ODD_VALUES]), sum((1, 2)), int(True), True + 1]


def constants() -> list:
    """Constants, one shadowed by a local name."""
    inner = []
    for HALF_WAY in [1, 2]:
        inner.append(HALF_WAY * HALF)
    return inner + [LOWEST, -LOWEST, 2 - LOWEST, LOWEST**2, shadowed(9)]


def shadowed(LOWEST: float) -> float:
    """A parameter called like a constant."""
    return LOWEST + HALF


def floats_of_texts() -> list:
    """float of texts and numbers."""
    texts = ["1", " 2.5 ", "-3e2", "+.5", "7.", "1_000", "", " ", "x", "1__0", "1e", "0x10", "1,5", "--1", "_1", "12 3", "5e-3"]
    numbers = [float(LOWEST), float(LOWEST < 0), text_to_number("inf") == math.inf, text_to_number("-Infinity") == -math.inf]
    return [text_to_number(text) for text in texts] + numbers


def text_to_number(text: str) -> float | None:
    """The number a text holds, or None."""
    try:
        value = float(text)
    except ValueError:
        return None
    return value


def in_place(values: list[float]) -> list:
    """Operators that change what is there."""
    total = 1.5
    total += values[0]
    total -= 2
    total *= values[1]
    total /= 4
    values[0] += total
    values[1] *= 2
    return values + [total]


def in_place_called() -> list:
    """The same with numbers."""
    return in_place([3.0, 5.0, 7.0])


def comparisons(a: float, b, c) -> list:
    """All comparisons, chained too, with known and unknown kinds."""
    return [
        a < b, a <= b, a > b, a >= b, a == b, a != b, b < c, b <= c, b > c, b >= c, b == c, b != c, a < b < c, a <= b <= c,
        a < b > c, a == b == c,
    ]  # fmt: skip


def comparisons_called() -> list:
    """The same with numbers and texts."""
    return [
        comparisons(1, 2, 3), comparisons(2, 2, 2), comparisons(3, 2.0, 2), comparisons(-1, 0, 0.5), flags(True, 1),
        flags(False, None),
    ]  # fmt: skip


def flags(a, b) -> list:
    """Truth values and what is none."""
    return [
        a is True, a is False, a is not True, b is True, b is not False, b is None, a is not None,
        a == b if b is None else a != 2,
    ]  # fmt: skip


def not_a_number() -> list:
    """NaN equals nothing and has no order, whatever is known of it."""
    nan = math.inf - math.inf
    box = {"nan": nan}
    return [nan == nan, nan != nan, nan < 1, box["nan"] < box["nan"], box["nan"] <= box["nan"], box["nan"] > 1]
