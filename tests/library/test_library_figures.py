"""Numbers of the library against published figures, and against each other."""

import pytest

from webapp import movements

# Time-motion studies, seconds per repetition: (lowest, highest) of the means or test rates read; best: the quickest value reported.
# Burpee: Podstawski 2019, J Hum Kinet 69:137-147, doi 10.2478/hukin-2019-0021: 56.69 and 48.84 in 3 min, best 82.
# Push-up: Rozenek 2022, J Strength Cond Res 36:3324: 49.9 and 42.8 a minute.
# Kettlebell swing: university poster, 36.75-37.08 a minute unbroken; Farrar 2010, J Strength Cond Res 24:1034: 265 in 12 min; thesis, 12 in 15 s.
# Step-up cycle: step-test protocols of 30, 24 and 22 cycles a minute.
# Rope single: test rate 120 a minute (PMC7449324); 180 a minute studied (Bioengineering 2025, 12:162).
# Double-under: two rope turns of 0.25 s each (school study), a lower bound.
PUBLISHED = {
    "burpee": (180 / 56.69, 180 / 48.84, 180 / 82),
    "push-up": (60 / 49.9, 60 / 42.8, None),
    "kettlebell-swing": (60 / 37.08, 12 * 60 / 265, 15 / 12),
    "step-up": (60 / 30, 60 / 22, None),
    "rope-single": (60 / 120, 60 / 120, 60 / 180),
}
printed_to_s = 0.01  # the library writes seconds to two places
DOUBLE_UNDER_LOWER_BOUND_S = 2 * 0.25

# Body mass of a heavier and a lighter athlete [kg], chosen: round figures.
BODY_KG = {"a": 75, "b": 60}


@pytest.mark.parametrize("key, figures", PUBLISHED.items(), ids=list(PUBLISHED))
def test_usual_time_lies_within_the_published_range(key, figures):
    lowest_s, highest_s, _ = figures
    assert lowest_s - printed_to_s <= movements.entry(key)["seconds_per_unit"] <= highest_s + printed_to_s


@pytest.mark.parametrize("key, figures", PUBLISHED.items(), ids=list(PUBLISHED))
def test_quickest_time_does_not_beat_the_quickest_published(key, figures):
    lowest_s, _, best_s = figures
    assert movements.entry(key)["fast_seconds_per_unit"] >= (best_s or lowest_s) - printed_to_s


@pytest.mark.parametrize("key", [*PUBLISHED, "double-under"])
def test_published_times_name_their_source(key):
    assert movements.entry(key)["seconds_source"] != "common practice, no source"


def test_double_under_is_no_quicker_than_the_rope_can_turn():
    assert movements.entry("double-under")["fast_seconds_per_unit"] >= DOUBLE_UNDER_LOWER_BOUND_S


def test_every_other_time_admits_that_it_has_no_source():
    sourced = {*PUBLISHED, "double-under", "plank"}
    for key, entry in movements.library().items():
        if key not in sourced:
            assert entry["seconds_source"] == "common practice, no source"


def test_push_up_hands_carry_the_published_share_of_the_body():
    # Mier 2014, Int J Exerc Sci 7:161: 65-67 % of body mass at the top, 70-75 % at the bottom.
    assert 0.65 <= movements.entry("push-up")["mechanics"]["body_share"] <= 0.75


def epley_reps(one_rep_max_kg, load_kg):
    """Repetitions at a load: r = 30 (1RM / w - 1), the Epley formula solved for r."""
    return max(0.0, 30 * (one_rep_max_kg / load_kg - 1))


@pytest.mark.parametrize("key", [key for key, entry in movements.library().items() if entry["one_rep_max_of_body"]])
def test_largest_sets_agree_with_the_one_rep_maxima(key):
    # Wide on purpose: both are rough defaults, and the formula is loose beyond 15 repetitions.
    entry = movements.entry(key)
    for level, share in entry["one_rep_max_of_body"].items():
        expected = sum(epley_reps(share * BODY_KG[side], load) for side, load in entry["typical_load_kg"].items()) / 2
        assert abs(entry["max_by_level"][level] - expected) <= max(3, 0.5 * expected), (level, expected)


def test_running_energy_is_the_textbook_cost_at_the_stated_efficiency():
    # 4.2 J per kg and metre (textbook, from memory) x 3 m/s x 0.22 = 2.77 W per kg.
    assert movements.entry("run")["energy"]["watts_per_kg"] == pytest.approx(4.2 * 3 * 0.22, abs=0.05)


def test_row_calories_match_the_flywheel_law_at_the_usual_pace():
    # P = 2.80 v^3; food energy at 22 % efficiency plus 0.35 kW of standing cost (both chosen; screens differ, so the check is wide); 4186 J a kilocalorie.
    row = movements.entry("row")
    speed_m_s = 1 / row["seconds_per_unit"]
    kilocalories_per_s = (2.80 * speed_m_s**3 / 0.22 + 350) / 4186
    assert speed_m_s / kilocalories_per_s == pytest.approx(row["other_units"]["cal"], rel=0.25)
