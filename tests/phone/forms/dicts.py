"""Dicts and texts."""


def made(name: str) -> list:
    """Displays, merges, copies."""
    a = {"x": 1, "two words": 2, "ring-dip": [3]}
    b = {name: 5, "x": 6}
    c = {**a, "y": 7}
    d = {"z": 0, **a, **b, "w": 8}
    e = dict(a)
    e["x"] = 100
    f = a.copy()
    f["ring-dip"] = None
    return [a, b, c, d, e, f, {}, dict([("k", 1), ("l", 2)]), {"default": 1, "new": 2}]


def made_called() -> list:
    """The same with a key."""
    return made("key")


def looked_up(d: dict, e) -> list:
    """What is there, what is missing, what every JavaScript object has."""
    return [
        d.get("a"), d.get("b"), d.get("b", 3), d.get("n"), d.get("n", 4), e.get("toString"), e.get("constructor", 1),
        "toString" in e, e.get("a", {}), len(d), len(e), d["a"],
    ]  # fmt: skip


def looked_up_called() -> list:
    """The same with something in them."""
    return looked_up({"a": 1, "n": None}, {"a": {"b": 2}})


def changed() -> list:
    """Everything a dict can be told to do."""
    d = {"a": 1, "b": 2, "c": 3}
    d["d"] = 4
    d["a"] += 10
    taken = d.pop("b")
    missing = d.pop("zz", None)
    other = d.pop("zz", 5)
    d.update({"e": 5, "a": 0})
    d.setdefault("list", []).append(1)
    d.setdefault("list", []).append(2)
    return [d, taken, missing, other, list(d.keys()), list(d.values()), list(d.items()), list(d)]


def walked(d: dict) -> list:
    """Loops over keys, values and items, comprehensions too."""
    found = []
    for key in d:
        found.append(key)
    for key in sorted(d.keys()):
        found.append(key)
    for key, value in d.items():
        found.append([key, value])
    for value in d.values():
        found.append(value)
    return found + [key + "!" for key in d] + [[value, key] for key, value in sorted(d.items())] + [sum(d.values()), max(d.values())]


def walked_called() -> list:
    """The same with something in it."""
    return walked({"b": 1, "a": 2, "hasOwnProperty": 3})


def texts(name: str, other) -> list:
    """Texts joined, searched, cut, repeated."""
    line = "  A-b-c "
    return [
        name + "-" + other, other + other, name == "x", name != other, name < "y", name * 2, other * 2, len(name), len(other), line.strip(), line.lower(), line.upper(),
        "a-b-c".split("-"), "-".join(["x", "y"]), "".join([]), "abc".startswith("ab"), "abc".endswith("bc"), "abc".endswith("abcd"), "a.b.c".replace(".", "-"),
        name.startswith(other), [c for c in "abc"], "é" + "”", 'quote " and \\ back', "line\nbreak",
    ]  # fmt: skip


def texts_called() -> list:
    """The same with texts."""
    return texts("x", "longer")


def kinds(things: list) -> list:
    """isinstance of several."""
    return [kinds_of(x) for x in things]


def kinds_of(x) -> list:
    """Every test there is."""
    tests = [isinstance(x, str), isinstance(x, dict), isinstance(x, list), isinstance(x, bool), isinstance(x, (int, float))]
    return tests + [x is None, x is not None]


def kinds_called() -> list:
    """Of one of each."""
    return kinds([1, 1.5, "1", True, None, [1], {"a": 1}, "", 0, {}, []])
