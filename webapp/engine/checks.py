"""Input checks that several doors of the engine share."""

import math

from .errors import EngineError


def number(code: str, value, low: float, high: float) -> float:
    """Return `value` as a number within low..high, or raise EngineError(code)."""
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise EngineError(code, value)
    if not math.isfinite(value) or value < low or value > high:
        raise EngineError(code, value)
    return value


def optional(code: str, value, low: float, high: float, otherwise: float) -> float:
    """Return `value` checked as a number, or `otherwise` where it is None."""
    if value is None:
        return otherwise
    return number(code, value, low, high)


def mapping(code: str, value) -> dict:
    """Return `value` if it is a mapping, an empty one for None, or raise EngineError(code)."""
    if value is None:
        return {}
    if not isinstance(value, dict):
        raise EngineError(code, 0)
    return value


def listing(code: str, value) -> list:
    """Return `value` if it is a list, an empty one for None, or raise EngineError(code)."""
    if value is None:
        return []
    if not isinstance(value, list):
        raise EngineError(code, 0)
    return value


def whole_number(code: str, value, low: int, high: int) -> int:
    """Return `value` as a whole number within low..high, or raise EngineError(code)."""
    number(code, value, low, high)
    if math.floor(value) != value:
        raise EngineError(code, value)
    return int(value)


def choice(code: str, value, choices: list) -> str:
    """Return `value` if it is one of the texts in `choices`, the first for None, or raise EngineError(code)."""
    if value is None:
        return choices[0]
    if not isinstance(value, str) or value not in choices:
        raise EngineError(code, value)
    return value
