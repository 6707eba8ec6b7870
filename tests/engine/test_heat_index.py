"""The heat index against MetPy, against exact values, and against the printed chart where chart and algorithm agree.

Algorithm: US National Weather Service, "The Heat Index Equation" (Rothfusz 1990, SR 90-23). Three traps: the printed chart is the raw
regression without the humid adjustment; MetPy (Anderson et al. 2013) switches branches by another rule below 82 °F; two schemes of
categories circulate, we keep the current one (80/90/103/125 °F).
"""

import math

import pytest

from webapp.engine.heat_index import heat_category, heat_index_c, heat_index_f, rothfusz_adjustment_f, rothfusz_f

EXACT_F = 1e-4  # °F; the values below are given to four decimals or more

# Rows of the chart, https://www.srh.noaa.gov/tsa/?n=heatindex, °F, from 40 % in steps of 5 %.
CHART_F = {
    110: [136], 108: [130, 137], 106: [124, 130, 137], 104: [119, 124, 131, 137], 102: [114, 119, 124, 130, 137],
    100: [109, 114, 118, 124, 129, 136], 98: [105, 109, 113, 117, 123, 128, 134], 96: [101, 104, 108, 112, 116, 121, 126, 132],
    94: [97, 100, 103, 106, 110, 114, 119, 124, 129, 135], 92: [94, 96, 99, 101, 105, 108, 112, 116, 121, 126, 131],
    90: [91, 93, 95, 97, 100, 103, 106, 109, 113, 117, 122, 127, 132], 88: [88, 89, 91, 93, 95, 98, 100, 103, 106, 110, 113, 117, 121],
    86: [85, 87, 88, 89, 91, 93, 95, 97, 100, 102], 84: [83, 84, 85, 86, 88, 89, 90, 92, 94, 96],
    82: [81, 82, 83, 84, 84, 85, 86, 88, 89, 90], 80: [80, 80, 81, 81, 82, 82, 83, 84, 84, 85],
}  # fmt: skip
MISPRINTED = [(90, 45)]  # prints 93, the regression gives 92.49


@pytest.mark.parametrize(
    "air_f, humidity, expected_f",
    [
        (90, 90, 121.901204),  # MetPy's documentation
        (60, 90, 59.965),  # simple branch by the weather service's own rule, by hand: (0.5(60 + 61 - 9.6 + 8.46) + 60)/2
        (95, 10, 89.4496),  # this and the rest: the published formula worked out independently, equal to MetPy 1.7.1
        (100, 5, 92.5040), (95, 0, 87.3160), (95, 12, 90.0741), (112, 12, 108.2114), (80, 90, 86.3419), (84, 90, 98.3425),
        (86, 100, 111.8495), (85, 87, 100.1610), (87, 100, 116.2828),
    ],
)  # fmt: skip
def test_exact_values(air_f, humidity, expected_f):
    assert heat_index_f(air_f, humidity) == pytest.approx(expected_f, abs=EXACT_F)


@pytest.mark.parametrize("air_c, humidity, expected_c, tolerance_c", [
    (30, 90, 40.774647, 1e-6),  # MetPy's documentation
    (35, 60, 45.05, 0.005), (32, 50, 34.36, 0.005), (28, 80, 32.10, 0.005), (25, 50, 24.93, 0.005),  # formula worked out independently
])  # fmt: skip
def test_exact_values_in_celsius(air_c, humidity, expected_c, tolerance_c):
    assert heat_index_c(air_c, humidity) == pytest.approx(expected_c, abs=tolerance_c)


def test_the_adjustments_vanish_at_their_edges():
    """The square root is zero at 112 °F, the humid factor at 87 °F and 85 %, the dry one at 13 %: by hand from the published text."""
    assert rothfusz_adjustment_f(112, 12) == 0
    assert rothfusz_adjustment_f(87, 100) == 0
    assert rothfusz_adjustment_f(82, 85) == 0
    assert rothfusz_adjustment_f(95, 13) == 0
    assert rothfusz_adjustment_f(95, 0) == pytest.approx(-3.25)
    assert rothfusz_adjustment_f(95, 12) == pytest.approx(-0.25)


def test_agrees_with_metpy_from_82_fahrenheit():
    """Below 82 °F the two branch rules differ by up to 3.24 °F, so the comparison begins there."""
    metpy = pytest.importorskip("metpy.calc")
    units = pytest.importorskip("metpy.units").units
    cases = [(air_f, humidity) for air_f in range(82, 116) for humidity in range(0, 101, 4)]
    air = [air_f for air_f, _ in cases] * units.degF
    theirs = metpy.heat_index(air, [humidity / 100 for _, humidity in cases] * units.dimensionless, mask_undefined=False)
    for (air_f, humidity), expected in zip(cases, theirs.to("degF").magnitude):
        assert heat_index_f(air_f, humidity) == pytest.approx(float(expected), abs=1e-9)


def test_matches_the_printed_chart_where_it_prints_the_algorithm():
    """RH up to 85 % or 88 °F and more: elsewhere the chart leaves out the humid adjustment."""
    for air_f, row in CHART_F.items():
        for index, printed in enumerate(row):
            humidity = 40 + 5 * index
            if (air_f, humidity) not in MISPRINTED:
                assert math.floor(heat_index_f(air_f, humidity) + 0.5) == printed, (air_f, humidity)


def test_the_chart_is_the_raw_regression_where_it_departs():
    """86 °F at 95 %: the chart prints 108, the raw regression 107.9, the algorithm more."""
    assert math.floor(rothfusz_f(86, 95) + 0.5) == 108
    assert heat_index_f(86, 95) == pytest.approx(108.53, abs=0.005)


def test_warmer_or_more_humid_air_never_feels_cooler_from_82_to_112():
    for air_f in range(82, 112):
        for humidity in range(40, 100, 5):
            assert heat_index_f(air_f + 1, humidity) > heat_index_f(air_f, humidity) - 1e-9
            assert heat_index_f(air_f, humidity + 5) > heat_index_f(air_f, humidity) - 1e-9


@pytest.mark.parametrize("index_f, category", [(79.9, "usual"), (80.1, "caution"), (89.9, "caution"), (90.1, "extreme_caution"),
                                               (104, "danger"), (126, "danger")])  # fmt: skip
def test_categories_are_the_current_ones(index_f, category):
    """80/90/103 °F; by the older scheme 104 °F would still be extreme caution. "Extreme danger" is danger to us: stop either way."""
    assert heat_category((index_f - 32) * 5 / 9) == category
