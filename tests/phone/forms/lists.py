"""Lists and tuples: operators, methods, comprehensions, iteration."""

EMPTY = []
TABLE = [[1, 2], [3, 4, 5]]


def joined(known: list, unknown) -> list:
    """Lists put together and repeated, their kinds known, half known, not known at all."""
    box = {"one": known, "two": unknown}
    sums = [known + [1], [1] + unknown, unknown + unknown, box["one"] + box["two"], (1, 2) + (3,)]
    return [sums, known * 2, 2 * unknown, [0] * 3, box["one"] * 2, [] * 5]


def joined_called() -> list:
    """The same with numbers."""
    return joined([7, 8], [9])


def slices(xs: list) -> list:
    """Slices and items, from either end, beyond the end."""
    return [
        xs[1:], xs[:2], xs[1:3], xs[:], xs[-2:], xs[:-1], xs[5:], xs[:99], xs[2:1], xs[-1], xs[-2], xs[0], "abcdef"[1:4],
        "abc"[-1], "abc"[0],
    ]  # fmt: skip


def slices_called() -> list:
    """The same with numbers."""
    return slices([1, 2, 3, 4])


def truths(known: list, unknown, nothing) -> list:
    """Truth of lists, dicts, texts, numbers and None."""
    found = []
    for thing in [known, unknown, nothing, [], [0], {}, {"a": 0}, "", "a", 0, 0.0, 1, None, True, False, (), (0,)]:
        if thing:
            found.append("yes")
        elif not thing:
            found.append("no")
    values = [[] or 3, known or 3, nothing or [1], known and 4, nothing and 5]
    return found + [bool_of(known), not known, not unknown, not nothing, "x" if unknown else "y", values]


def bool_of(x: list | None) -> bool:
    """Whether there is anything in a list."""
    return True if x else False


def truths_called() -> list:
    """With something and with nothing in the lists."""
    return [truths([], [], None), truths([1], {"a": 1}, 0), truths([0], "", "text")]


def while_there_is_any() -> list:
    """A loop until a list is empty, and conditions in comprehensions."""
    queue = [1, 2, 3]
    taken = []
    while queue:
        taken.append(queue.pop())
    return taken + [x for x in [[], [1], {}, None, 0, 2] if x] + [x for x in [1, 2, 3, 4] if x > 1 if x < 4]


def equalities(a: list, b, c) -> list:
    """Lists and dicts compare by what is in them."""
    return [
        a == b, a != b, b == c, b != c, a == [1, 2], {"x": [1]} == {"x": [1]}, {"x": 1} == {"y": 1},
        {"x": 1} == {"x": 1, "y": 2}, (1, 2) == (1, 2), a == None, b == "text",
    ]  # fmt: skip


def equalities_called() -> list:
    """Equal and unequal ones."""
    return [
        equalities([1, 2], [1, 2], [1, 2]), equalities([1, 2], [1, 3], [1]), equalities([], None, None),
        equalities([1], {}, "text"),
    ]  # fmt: skip


def orders(a: tuple, b, c) -> list:
    """Tuples compare item by item."""
    return [a < b, a <= b, a > b, a >= b, b < c, b <= c, b > c, b >= c, (a, 1) < (b, 0), (1, "b") < (1, "c"), [1] < [1, 0]]


def orders_called() -> list:
    """Smaller, equal, longer."""
    return [
        orders((1, 2), (1, 3), (1, 2)), orders((1, 2), (1, 2), (1, 2)), orders((2, 0), (1, 9), (1,)),
        orders((10, 2), (9, 1), (9, 10)),
    ]  # fmt: skip


def sorting() -> list:
    """Numbers sort as numbers; equal keys keep their order, reversed too."""
    pairs = [("b", 2), ("a", 10), ("c", 2), ("d", 10), ("e", 9)]
    xs = [10, 9, 1, 100, -2, 2.5]
    ys = xs[:]
    ys.sort()
    zs = pairs[:]
    zs.sort(key=lambda pair: pair[1], reverse=True)
    return [
        sorted(xs), xs, ys, zs, sorted(pairs), sorted(["b", "B", "a", "10", "9"]), sorted(xs, reverse=True),
        sorted(pairs, key=lambda pair: (pair[1], pair[0])), sorted(pairs, key=lambda pair: -pair[1]),
        sorted(pairs, key=lambda pair: pair[1], reverse=True), sorted({"b": 1, "a": 2}),
        list(reversed(xs)), [x for x in reversed(xs)],
    ]  # fmt: skip


def methods() -> list:
    """Everything a list can be told to do."""
    xs = [3, 1]
    xs.append(2)
    xs.extend([5, 1])
    xs.extend((8,))
    xs.insert(0, 9)
    xs.insert(2, 7)
    last = xs.pop()
    first = xs.pop(0)
    second_last = xs.pop(-2)
    xs.remove(1)
    copy = xs.copy()
    xs.reverse()
    doubled = [4, 6]
    doubled.extend(doubled)
    letters = ["a"]
    letters.extend("bc")
    letters.extend({"d": 1})
    return [doubled, letters, xs, copy, last, first, second_last, xs.index(3), [1, 2, 1].count(1), [1, 2].count(7), list(xs), tuple(xs), len(xs)]


def membership(unknown) -> list:
    """in and not in, for lists, dicts and texts."""
    return [
        1 in [1, 2], 3 not in [1, 2], "a" in {"a": 1}, "b" not in {"a": 1}, "constructor" in {"a": 1}, "ell" in "hello",
        "x" in unknown, None in [None], 2 in (1, 2),
    ]  # fmt: skip


def membership_called() -> list:
    """The same in each kind of box."""
    return [membership(["x"]), membership({"y": 1}), membership("axe"), membership([])]


def iteration() -> list:
    """enumerate, zip, range, any, all, and comprehensions over them."""
    xs = ["a", "b", "c"]
    found = []
    for i, x in enumerate(xs):
        found.append([i, x])
    for a, b in zip(xs, [1, 2]):
        found.append([a, b])
    for a, b, c in zip([1], [2], [3]):
        found.append([a, b, c])
    for i, x in enumerate(xs, 1):
        found.append([i, x])
    return [
        found, [i * 2 for i in range(3)], list(range(2, 8, 3)), list(range(5, 0, -2)), [x for row in TABLE for x in row],
        [[x + 1 for x in row] for row in TABLE], [(i, x) for i, x in enumerate(xs) if i > 0], any([x > 4 for x in [1, 5]]),
        all([]), any([]), all([1, 0]), any(["", "a"]), [len(row) for row in TABLE], len(range(4)),
        [[x, y] for x in range(3) for y in range(x)],
    ]  # fmt: skip


def comprehension_variables() -> list:
    """The variables of a comprehension and of a lambda are its own."""
    x = 5
    rows = [x for x in [1, 2]]
    doubled = list([x * y for y in rows])
    by = sorted([3, 1], key=lambda x: -x)
    again = [x + sum([x for x in [10, 20]]) for x in rows]
    return [x, rows, doubled, by, again, [TABLE[x - 4] for y in [1]]]


def unpacking() -> list:
    """Pairs taken apart, names swapped, items swapped."""
    a, b = 1, 2
    a, b = b, a
    xs = [1, 2, 3]
    xs[0], xs[2] = xs[2], xs[0]
    c, d = [x * 2 for x in [a, b]]
    e, f, g = "xyz"
    return [a, b, xs, c, d, e, f, g]


def grown_while_looping() -> list:
    """The end of a range stands fixed; a list that grows is followed."""
    xs = [1, 2, 3]
    for i in range(len(xs)):
        xs.append(i)
    ys = [3]
    for y in ys:
        if y > 0:
            ys.append(y - 1)
    return [xs, ys]


def rows_share(rows: list[list[float]]) -> list:
    """Items of items, changed in place; copies stay as they were."""
    copy = [row[:] for row in rows]
    same = rows
    rows[0][0] = 99
    rows[1].append(rows[0][1] + rows[1][0] * 2)
    return [rows, copy, same]


def rows_share_called() -> list:
    """The same with numbers."""
    return rows_share([[1, 2], [3]])
