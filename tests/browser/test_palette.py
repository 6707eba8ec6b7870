"""Contrast of every pair the palette lists, light and dark, by the WCAG formula."""

import re
from pathlib import Path

import pytest

TOKENS = (Path(__file__).resolve().parents[2] / "static/css/tokens.css").read_text("utf-8")
COLOUR = r"#[0-9a-f]{3}(?:[0-9a-f]{3})?"
PAIRS = re.findall(r"@pair (--[\w-]+) (--[\w-]+) ([\d.]+)", TOKENS)


def colours():
    """{name: (light, dark)} of every colour in tokens.css."""
    found = {}
    for name, value in re.findall(r"(--[\w-]+): ([^;]+);", TOKENS):
        values = re.findall(COLOUR, value)
        if values:
            found[name] = (values[0], values[-1])
    return found


def luminance(colour):
    """Relative luminance, WCAG 2.2: https://w3c.github.io/wcag/guidelines/relative-luminance.html"""
    digits = colour[1:] if len(colour) == 7 else "".join(2 * digit for digit in colour[1:])
    channels = [int(digits[place:place + 2], 16) / 255 for place in (0, 2, 4)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one, other):
    """Contrast ratio of two colours, 1 to 21."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


# Ratios as PyPI's wcag-contrast-ratio 0.9 gives them.
@pytest.mark.parametrize("one, other, expected", [
    ("#000", "#fff", 21.0), ("#767676", "#ffffff", 4.5422), ("#0000ff", "#ffffff", 8.5925), ("#ffa500", "#000000", 10.6341),
])
def test_formula_agrees_with_an_outside_one(one, other, expected):
    assert contrast(one, other) == pytest.approx(expected, abs=0.00005)


@pytest.mark.parametrize("theme", [0, 1], ids=["light", "dark"])
@pytest.mark.parametrize("front, ground, least", PAIRS, ids=[f"{front} on {ground}" for front, ground, _ in PAIRS])
def test_pair_has_its_contrast(front, ground, least, theme):
    palette = colours()
    assert contrast(palette[front][theme], palette[ground][theme]) >= float(least)


def test_text_on_card_and_clock_is_listed_with_seven_to_one():
    listed = {(front, ground): float(least) for front, ground, least in PAIRS}
    assert listed["--ink", "--ground"] >= 7
    assert listed["--rest", "--ground"] >= 7
    assert listed["--on-tape", "--tape"] >= 7
