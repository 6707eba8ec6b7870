"""The warm-up ladders start below the first full rep, leave no gap, and stay within the published doses."""

import pytest

from webapp import movements

FAR = 10**6
PHASES = {"loosen", "build", "burst"}

each_entry = pytest.mark.parametrize("key, entry", movements.library().items(), ids=list(movements.library()))


def covers(drill, maximum):
    return drill["from_max"] <= maximum and (drill["to_max"] is None or maximum <= drill["to_max"])


def ladder_at(entry, phase, maximum):
    return [drill for drill in entry["drills"] if drill["phase"] == phase and covers(drill, maximum)]


def edges(entry):
    """Every maximum at which the ladder changes, and the ones beside it."""
    marks = {0, 1, FAR}
    for drill in entry["drills"]:
        for mark in (drill["from_max"], drill["to_max"] or 0):
            marks |= {mark, mark + 1}
    return sorted(marks)


@each_entry
def test_every_drill_is_complete(key, entry):
    for drill in entry["drills"]:
        assert set(drill) == {"phase", "name", "amount", "unit", "from_max", "to_max", "partner", "load_share"}
        assert drill["phase"] in PHASES and drill["unit"] in {"reps", "m", "cal", "s"}
        assert drill["amount"] > 0 and drill["from_max"] >= 0
        assert drill["to_max"] is None or drill["to_max"] >= drill["from_max"]
        assert drill["load_share"] is None or (0 < drill["load_share"] <= 1 and entry["load_kind"])
    assert {drill["phase"] for drill in entry["drills"]} == PHASES


@each_entry
def test_somebody_with_any_maximum_can_build_up_alone(key, entry):
    for maximum in edges(entry):
        assert any(not drill["partner"] for drill in ladder_at(entry, "build", maximum)), maximum


@each_entry
def test_every_partner_drill_has_a_solo_one_over_the_same_range(key, entry):
    for partnered in (drill for drill in entry["drills"] if drill["partner"]):
        for maximum in edges(entry):
            if covers(partnered, maximum):
                assert any(not drill["partner"] for drill in ladder_at(entry, partnered["phase"], maximum))


@each_entry
def test_without_a_rep_the_ladder_of_a_gate_never_asks_for_the_full_rep(key, entry):
    if entry["gate"]:
        begun = [drill for phase in ("build", "burst") for drill in ladder_at(entry, phase, 0)]
        assert begun and all(drill["name"] != entry["name"] for drill in begun)


@each_entry
def test_a_limiting_skill_is_rehearsed_in_few_reps(key, entry):
    # Dose of the warm-up model: min(4, max(1, floor(M/4))) reps a round; distances, seconds and rope turns are not reps of that kind.
    if entry["gate"] and entry["unit"] == "reps" and entry["family"] != "jump":
        for drill in (found for found in entry["drills"] if found["name"] == entry["name"]):
            assert drill["amount"] <= min(4, max(1, drill["from_max"] // 4)), drill


@each_entry
def test_a_ramp_has_at_most_fifteen_reps(key, entry):
    # Ramp of the warm-up model: at most 15 reps per movement, 40 % for 6, 60-80 % for 3-5, 100 % for 2-3.
    for maximum in edges(entry):
        loaded = [drill for phase in PHASES for drill in ladder_at(entry, phase, maximum) if drill["load_share"] and drill["unit"] == "reps"]
        assert sum(drill["amount"] for drill in loaded) <= 15


@each_entry
def test_inverted_work_starts_the_right_way_up(key, entry):
    if entry["inverted"]:
        for drill in ladder_at(entry, "build", 0):
            assert not drill["name"].startswith(("Handstand", "Slow lowering at the wall"))
