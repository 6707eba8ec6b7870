"""Conversions and rounding. Nothing else in the project converts.

Inside the engine everything is in seconds, metres and kilograms.
"""

import math

KG_PER_LB = 0.45359237  # exact, NIST SP 811 App. B.8
M_PER_FT = 0.3048  # exact, NIST SP 811 App. B.8
M_PER_INCH = 0.0254  # exact, NIST SP 811 App. B.8
J_PER_KCAL = 4184.0  # thermochemical, NIST SP 811 App. B.8


def whole(value):
    """Return the whole number nearest to `value`, halves upwards: the one rounding rule, the same on server and phone."""
    return int(math.floor(value + 0.5))


def rounded(value, step):
    """Return `value` rounded to a multiple of `step` (> 0), halves upwards."""
    return whole(value / step) * step


def remainder(value, divisor):
    """Return what is left of `value` >= 0 after taking out whole multiples of `divisor` > 0."""
    return value - divisor * math.floor(value / divisor)


def clamp(value, low, high):
    """Return `value`, or the bound it lies beyond."""
    return max(low, min(high, value))
