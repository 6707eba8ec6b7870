"""Functions, loops, classes, errors."""

import math

from .arithmetic import HALF, division
from .errors import EngineError

FACTOR = 3
LATER = FACTOR * 2 + 0.5
NAMES = {"one": "a-1", "two": "b-2"}


class Walker:
    """Something with a state."""

    def __init__(self, start: float, step: float = 2, name: str = "walker"):
        self.at = start
        self.step = step
        self.name = name
        self.seen = []

    def walk(self, times: int) -> float:
        """Take steps."""
        for _ in range(times):
            self.at = self.at + self.step
            self.seen.append(self.at)
        return self.at

    def described(self) -> list:
        """State, through another method."""
        return [self.name, self.walk(0), self.seen, self.at > 3]


class Runner(Walker):
    """Goes further."""

    def __init__(self, start: float):
        super().__init__(start, 5, "runner")
        self.extra = [start] + self.seen

    def walk(self, times: int) -> float:
        """Twice as often."""
        return super().walk(times * 2)


class Idle(Walker):
    """Nothing of its own."""


def classes() -> list:
    """Instances, inheritance, keywords, identity."""
    walker = Walker(1)
    runner = Runner(start=1)
    idle = Idle(0, name="idle")
    walker.walk(2)
    runner.walk(1)
    walker.step = HALF
    other = walker
    other.walk(1)
    doubled = [each.walk(1) for each in [walker, runner]]
    return [
        walker.described(), runner.described(), runner.extra, idle.described(), doubled, isinstance(runner, Walker),
        isinstance(walker, Runner), isinstance(1, Walker),
    ]  # fmt: skip


def parameters(a: float, b: float = 2, *, c: float = FACTOR, d: str | None = None) -> list:
    """Positional and keyword-only parameters with defaults."""
    return [a, b, c, d]


def calls() -> list:
    """The same function called in every way."""
    return [
        parameters(1), parameters(1, 5), parameters(1, c=7), parameters(1, d="x"), parameters(b=3, a=4),
        parameters(1, 2, d="y", c=0), parameters(a=0, d=None), division(b=4, a=3),
    ]  # fmt: skip


def loops() -> list:
    """break, continue, loop variables after the loop and changed in it, nested loops."""
    found = []
    for i in range(10):
        if i == 2:
            continue
        if i > 4:
            break
        found.append(i)
    after = i
    for j in range(3):
        j = j * 10
        found.append(j)
    for k in range(3):
        found.append(k)
    n = 3
    for m in range(n):
        n = 1
        found.append(m)
    for i in range(3):
        for j in range(i, 3):
            if j == 2:
                break
            found.append([i, j])
    for i in range(6, 0, -2):
        found.append(i)
    count = 0
    while True:
        count = count + 1
        if count % 2 == 0:
            continue
        if count > 6:
            break
    return [found, after, k, n, count, i]


def inner_functions() -> list:
    """Closures see the latest value; functions are handed on."""
    base = 10
    calls_made = []

    def add(x: float) -> float:
        calls_made.append(x)
        return x + base

    base = 20
    later = [lambda x: x + base, add]
    adders = []
    for step in [1, 2]:
        adders.append(lambda x: x + step)
    handed_on = [apply(add, 1), apply(lambda x: x * 2, 4), apply(doubled, 5)]
    return [handed_on, [f(1) for f in later], [g(0) for g in adders], calls_made]


def apply(f, x):
    """Call what was handed on."""
    return f(x)


def doubled(x: float) -> float:
    """Twice."""
    return x * 2


def nothing():
    """Returns None."""
    doubled(1)


def returns() -> list:
    """None where nothing is returned, early returns, conditional values."""
    return [
        nothing(), early(1), early(-1), [1 if x > 1 else 2 if x > 0 else 3 for x in [0, 1, 2]],
        (early(2) if LATER > 6 else "") + "!", NAMES["one"],
    ]  # fmt: skip


def early(x: float) -> str | None:
    """Return in the middle."""
    if x > 0:
        return "positive"
    if x == 0:
        return


def recursion(depth: int) -> int:
    """Calls itself."""
    return 1 if depth == 0 else recursion(depth - 1) * 2


def recursion_called() -> list:
    """A few levels."""
    return [recursion(0), recursion(10)]


def logic() -> list:
    """and, or, not: values and order of evaluation."""
    seen = []

    def note(x, result):
        seen.append(x)
        return result

    if note(1, False) and note(2, True):
        seen.append("never")
    if note(3, True) or note(4, True):
        seen.append("once")
    a = 0 or "text"
    b = "" or None
    c = 1 and 2
    d = not (1 > 2) and 3 >= 3
    return [seen, a, b, c, d, not 0, not "x", 1 < 2 and 2 < 3 or 5, (1 or 0) and 7]


def fails(value):
    """Always ends in an error."""
    if value > 0:
        raise EngineError("too_" + "much", value)
    raise EngineError("too_little", [value])


def fails_much():
    """With a number."""
    fails(3)


def fails_little():
    """With a list."""
    fails(-1)


def random_numbers() -> list:
    """A generator whose products stay below 2**53."""
    state = 12345
    found = []
    for _ in range(50):
        state = state * 48271 % 2147483647
        found.append(state / 2147483647)
    return found + [math.floor(sum(found))]


def words_of_javascript(case: float, default: float = 2, *, switch: float = 3) -> list:
    """Good names in Python, words with a meaning in JavaScript or for the translator."""
    new = case + default
    time = [new * this for this in [1, 2]]
    var, let = time

    def void(function: float) -> float:
        return function + let

    for const in [1]:
        time.append(void(const))
    box = {"case": case, "new": new}
    return [box["case"], box["new"], sorted(time, key=lambda export: -export), var, switch, max([delete for delete in time])]


def words_called() -> list:
    """With keywords."""
    return [words_of_javascript(1), words_of_javascript(default=5, case=4, switch=0)]
