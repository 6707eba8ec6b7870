"""Comparing what two engines say."""

import math

RELATIVE = 1e-9  # numbers: math.exp, log and pow may differ in the last bit between C and JavaScript
ABSOLUTE = 1e-12  # the same near zero, where 1 - depth cancels


def differences(server, phone, path=""):
    """Yield every place where two answers differ: decisions exactly, numbers beyond the last few bits."""
    if _is_number(server) and _is_number(phone):
        if not math.isclose(server, phone, rel_tol=RELATIVE, abs_tol=ABSOLUTE):
            yield f"{path}: {server!r} on the server, {phone!r} on the phone"
    elif isinstance(server, dict) and isinstance(phone, dict) and sorted(server) == sorted(phone):
        for key in server:
            yield from differences(server[key], phone[key], f"{path}/{key}")
    elif isinstance(server, list) and isinstance(phone, list) and len(server) == len(phone):
        for index, (one, other) in enumerate(zip(server, phone)):
            yield from differences(one, other, f"{path}/{index}")
    elif type(server) is not type(phone) or server != phone:
        yield f"{path}: {_short(server)} on the server, {_short(phone)} on the phone"


def _is_number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def _short(value):
    """A value, or its keys, in a line."""
    return f"keys {sorted(value)}" if isinstance(value, dict) else repr(value)[:120]
