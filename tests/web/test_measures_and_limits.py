"""Numbers as people type and read them; limits as they count."""

import pytest

from webapp import measures
from webapp.limits import Limiter


@pytest.mark.parametrize("text, value", [
    ("12", 12), ("2,5", 2.5), ("2.5", 2.5), (" 7 ", 7), ("-3", -3), ("10,0", 10), ("007", 7), ("0", 0),
])
def test_numbers_are_read(text, value):
    assert measures.parsed_number(text) == value


@pytest.mark.parametrize("text", ["", "dieciséis", "1e400", "NaN", "inf", "1,000,000", "١٢", "12 kg", "--3", "1" * 13, "0x10", "5."])
def test_what_is_no_number_is_refused(text):
    with pytest.raises(ValueError):
        measures.parsed_number(text)


@pytest.mark.parametrize("text, seconds", [("12", 720), ("12:30", 750), ("0:45", 45), ("0", 0)])
def test_times_are_read(text, seconds):
    assert measures.parsed_clock(text) == seconds


@pytest.mark.parametrize("text", ["12:60", "12:5", "1:00:00", "soon", "-1", "12.5"])
def test_what_is_no_time_is_refused(text):
    with pytest.raises(ValueError):
        measures.parsed_clock(text)


# Conversions: NIST SP 811 App. B.8, lb 0.45359237 kg, ft 0.3048 m, in 0.0254 m, all exact.
@pytest.mark.parametrize("text, language, shown", [
    (lambda: measures.load_text(43.09127515), "en", "43.1 kg (95 lb)"),
    (lambda: measures.load_text(20), "en", "20 kg (44.1 lb)"),
    (lambda: measures.load_text(22.5), "es", "22,5 kg (49,6 lb)"),
    (lambda: measures.length_text(60.96), "en", "61 m (200 ft)"),
    (lambda: measures.length_text(3), "en", "3 m (9.8 ft)"),
    (lambda: measures.height_text(0.6096), "en", "61 cm (24 in)"),
    (lambda: measures.height_text(3.048), "es", "3,05 m (10 ft)"),
    (lambda: measures.amount_text(1, "reps"), "en", "1 rep"),
    (lambda: measures.amount_text(24, "reps"), "en", "24 reps"),
    (lambda: measures.amount_text(15, "cal"), "en", "15 calories"),
])
def test_measures_are_shown_both_ways_in_the_readers_language(app, text, language, shown):
    with app.test_request_context(f"/?lang={language}"):
        assert text().replace(measures.UNIT_SPACE, " ") == shown


def test_a_limiter_counts_per_address_and_forgives_with_time():
    limiter = Limiter({"x": 2}, window_s=10)
    assert [limiter.allows("x", "a", now) for now in (0, 1, 2)] == [True, True, False]
    assert limiter.allows("x", "b", 2)
    assert limiter.allows("x", "a", 10)


def test_a_limiter_forgets_old_addresses():
    limiter = Limiter({"x": 2}, window_s=10)
    for number in range(10_001):
        limiter.allows("x", number, 0)
    limiter.allows("x", "late", 100)
    assert list(limiter.seen) == [("x", "late")]
