"""How warm a room feels: the heat index of the US National Weather Service (NWS), by its own algorithm.

Rothfusz 1990, NWS Technical Attachment SR 90-23, after Steadman 1979; branch rule and adjustments as on the weather service's page
"The Heat Index Equation". The chart printed by the same service leaves out the humid adjustment, and Anderson et al. 2013 switch
branches by another rule; from 82 °F (27.8 °C) on the two rules agree. The regression's stated error is 1.3 °F. This is not a wet-bulb
globe temperature: that needs a globe.
"""

import math

from .parameters import HEAT_CAUTION_C, HEAT_DANGER_C, HEAT_EXTREME_CAUTION_C


def heat_index_f(air_f: float, humidity_percent: float) -> float:
    """Return the heat index of air at `air_f` [°F] and relative humidity 0–100 [%]. [°F]"""
    simple = 0.5 * (air_f + 61.0 + (air_f - 68.0) * 1.2 + humidity_percent * 0.094)
    mean = (simple + air_f) / 2
    if mean < 80:
        return mean
    return rothfusz_f(air_f, humidity_percent) + rothfusz_adjustment_f(air_f, humidity_percent)


def rothfusz_f(air_f: float, humidity_percent: float) -> float:
    """Return Rothfusz's regression without adjustments; t and h are his T and RH. [°F]"""
    t = air_f
    h = humidity_percent
    linear = -42.379 + 2.04901523 * t + 10.14333127 * h - 0.22475541 * t * h
    squares = -0.00683783 * t * t - 0.05481717 * h * h
    return linear + squares + 0.00122874 * t * t * h + 0.00085282 * t * h * h - 0.00000199 * t * t * h * h


def rothfusz_adjustment_f(air_f: float, humidity_percent: float) -> float:
    """Return what the weather service adds to the regression in very dry and very humid air. [°F]"""
    if humidity_percent < 13 and air_f >= 80 and air_f <= 112:
        return -(13 - humidity_percent) / 4 * math.sqrt((17 - abs(air_f - 95)) / 17)
    if humidity_percent > 85 and air_f >= 80 and air_f <= 87:
        return (humidity_percent - 85) / 10 * ((87 - air_f) / 5)
    return 0.0


def heat_index_c(air_c: float, humidity_percent: float) -> float:
    """Return the heat index of air at `air_c` [°C] and relative humidity 0–100 [%]. [°C]"""
    return (heat_index_f(air_c * 9 / 5 + 32, humidity_percent) - 32) * 5 / 9


def heat_category(index_c: float) -> str:
    """Return the current NWS category of a heat index, "danger" and above taken together: usual, caution, extreme_caution, danger."""
    if index_c >= HEAT_DANGER_C:
        return "danger"
    if index_c >= HEAT_EXTREME_CAUTION_C:
        return "extreme_caution"
    return "caution" if index_c >= HEAT_CAUTION_C else "usual"
