"""Every entry of the movement library has every field, of the right type, in a sensible range."""

import json

import pytest

from webapp import movements

GROUPS = {"push", "pull", "grip", "overhead", "legs", "hinge", "trunk"}
UNITS = {"reps", "m", "cal", "s"}
LEVELS = ["new", "regular", "keen", "expert"]
number = (int, float)

TYPES = {
    "name": str, "also": list, "family": str, "unit": str, "units": list, "other_units": dict, "limit": str, "ask": (str, type(None)),
    "hint": (str, type(None)), "seconds_per_unit": number, "fast_seconds_per_unit": number, "seconds_source": str, "primary": str, "shares": dict,
    "share_reasons": dict, "set_up_s": number, "entry_units": number, "change_s": number, "max_by_level": dict,
    "typical_load_kg": (dict, type(None)), "load_kind": (str, type(None)), "implements": int, "one_rep_max_of_body": (dict, type(None)),
    "gate": bool, "inverted": bool, "sides": str, "switch": (dict, type(None)), "failing_harmless": bool, "fail_cost_s": number,
    "keep_reserve": number, "quick_singles": bool, "reset_s": (*number, type(None)), "mechanics": (dict, type(None)), "energy": (dict, type(None)), "standards": list,
    "measures": list, "no_reps": list, "equipment": list, "lane": str, "holds": list, "easier": list, "drills": list,
    "confused_with": (dict, type(None)), "loosen": list, "cue": str, "cautions": list,
}

BY_FAMILY = {
    "press": "push-up ring-dip handstand-push-up wall-walk strict-press push-press push-jerk bench-press",
    "hang": "pull-up chest-to-bar-pull-up toes-to-bar hanging-knee-raise ring-row rope-climb ring-muscle-up",
    "squat": "air-squat goblet-squat front-squat thruster wall-throw walking-lunge overhead-lunge step-up box-jump",
    "hinge": "deadlift kettlebell-swing power-clean power-snatch dumbbell-snatch",
    "jump": "burpee rope-single double-under",
    "carry": "sandbag-carry farmer-carry handstand-walk",
    "machine": "row bike run",
    "trunk": "sit-up plank",
}

each_entry = pytest.mark.parametrize("key, entry", movements.library().items(), ids=list(movements.library()))


def test_the_library_holds_the_movements_agreed_on_family_by_family():
    found = {}
    for key, entry in movements.library().items():
        found.setdefault(entry["family"], []).append(key)
    assert {family: set(keys) for family, keys in found.items()} == {family: set(keys.split()) for family, keys in BY_FAMILY.items()}


@pytest.mark.parametrize("family", movements.FAMILIES)
def test_no_key_stands_twice_in_a_file(family):
    pairs = []
    text = (movements.FOLDER / f"{family}.json").read_text(encoding="utf-8")
    json.loads(text, object_pairs_hook=lambda found: pairs.append([key for key, _ in found]))
    assert all(len(keys) == len(set(keys)) for keys in pairs)


@each_entry
def test_every_field_is_there_and_of_its_type(key, entry):
    assert list(entry) == list(TYPES)
    for field, kinds in TYPES.items():
        is_bool_for_number = isinstance(entry[field], bool) and kinds is not bool
        assert isinstance(entry[field], kinds) and not is_bool_for_number, field


@each_entry
def test_units_and_the_number_asked_fit_together(key, entry):
    assert entry["unit"] in entry["units"] and set(entry["units"]) <= UNITS
    assert set(entry["other_units"]) == set(entry["units"]) - {entry["unit"]}
    assert all(worth > 0 for worth in entry["other_units"].values())
    assert entry["limit"] in {"local", "lungs", "skill", "strength"}
    assert entry["ask"] in {"max_unbroken", "one_rep_max", "effort", None}
    assert (entry["hint"] is None) == (entry["ask"] is None)
    if entry["limit"] == "lungs":
        assert entry["ask"] in {"effort", None}
    if entry["ask"] == "one_rep_max":
        assert entry["one_rep_max_of_body"] and entry["load_kind"] == "barbell"


@each_entry
def test_times_lie_in_a_sensible_range(key, entry):
    assert 0 < entry["fast_seconds_per_unit"] <= entry["seconds_per_unit"] <= 15
    assert 0 <= entry["set_up_s"] <= 10
    assert 0 <= entry["entry_units"] <= 5
    assert 5 <= entry["change_s"] <= 20
    assert 0 <= entry["fail_cost_s"] <= 30


@each_entry
def test_shares_have_a_primary_of_one_and_a_reason_each(key, entry):
    assert set(entry["shares"]) <= GROUPS
    assert entry["shares"][entry["primary"]] == 1.0
    assert all(0 < share <= 1 for share in entry["shares"].values())
    assert set(entry["share_reasons"]) == set(entry["shares"])
    assert all(reason.endswith(".") for reason in entry["share_reasons"].values())


@each_entry
def test_maxima_grow_with_the_level_and_only_gates_start_at_none(key, entry):
    maxima = [entry["max_by_level"][level] for level in LEVELS]
    assert list(entry["max_by_level"]) == LEVELS
    assert all(isinstance(value, int) for value in maxima)
    assert maxima == sorted(maxima) and maxima[1] > 0
    assert maxima[0] > 0 or entry["gate"]


@each_entry
def test_loads_name_both_divisions_and_what_is_loaded(key, entry):
    assert entry["load_kind"] in {"barbell", "dumbbell", "kettlebell", "sandbag", "ball", None}
    assert entry["implements"] in {1, 2}
    if entry["typical_load_kg"]:
        assert entry["load_kind"] and entry["typical_load_kg"]["a"] > entry["typical_load_kg"]["b"] > 0
    if entry["one_rep_max_of_body"]:
        shares = [entry["one_rep_max_of_body"][level] for level in LEVELS]
        assert shares == sorted(shares) and 0.2 < shares[0] and shares[-1] <= 2.5


@each_entry
def test_sides_and_switch_fit_together(key, entry):
    assert entry["sides"] in {"both", "one", "alternating"}
    if entry["sides"] == "one":
        assert entry["switch"]
    if entry["switch"]:
        expected = {"marks": {"rule", "min_m", "max_m"}, "reps": {"rule", "every"}, "sets": {"rule"}}
        assert set(entry["switch"]) == expected[entry["switch"]["rule"]]


@each_entry
def test_reserve_is_kept_exactly_where_failing_is_not_harmless_for_weight_or_height(key, entry):
    assert entry["keep_reserve"] in {0.0, 0.15}
    if entry["keep_reserve"] or entry["inverted"] or entry["limit"] == "strength" or entry["primary"] == "overhead":
        assert entry["keep_reserve"] == 0.15 and not entry["failing_harmless"]
    if entry["quick_singles"]:
        assert entry["load_kind"] == "barbell" and entry["family"] == "hinge"
        assert 1 <= entry["reset_s"] <= entry["set_up_s"]
        assert entry["entry_units"] == 0
    else:
        assert entry["reset_s"] is None


@each_entry
def test_work_is_told_by_mechanics_or_by_energy_never_both(key, entry):
    assert (entry["mechanics"] is None) != (entry["energy"] is None)
    if entry["mechanics"]:
        assert set(entry["mechanics"]) == {"load_travel", "body_travel", "body_share", "reason"}
        assert 0 <= entry["mechanics"]["load_travel"] <= 1.25
        assert 0 <= entry["mechanics"]["body_travel"] <= 2.0
        assert 0 <= entry["mechanics"]["body_share"] <= 1
        assert bool(entry["mechanics"]["load_travel"]) == bool(entry["typical_load_kg"])
    else:
        assert set(entry["energy"]) == {"kind", "watts_per_kg", "reason"}
        assert entry["energy"]["kind"] in {"flywheel", "running", "carry", "hold"}


@each_entry
def test_holds_carry_weights_for_every_group_of_the_movement(key, entry):
    for hold in entry["holds"]:
        assert set(hold) == {"key", "name", "why", "shares"}
        assert set(hold["shares"]) <= GROUPS
        if entry["typical_load_kg"] or not entry["load_kind"]:
            assert set(hold["shares"]) >= set(entry["shares"])
        assert all(0 <= share <= 1 for share in hold["shares"].values())
    assert len({hold["key"] for hold in entry["holds"]}) == len(entry["holds"]) != 1


@each_entry
def test_easier_forms_exist_or_are_plain_names(key, entry):
    assert 2 <= len(entry["easier"]) <= 3
    for form in entry["easier"]:
        assert set(form) == {"movement", "name", "why", "dose"}
        assert form["movement"] is None or form["movement"] in movements.library()
        assert form["movement"] != key and form["dose"] > 0
    first = entry["easier"][0]["movement"]
    assert first is None or not movements.library()[first]["gate"]


@each_entry
def test_likenesses_are_keys_or_plain_names(key, entry):
    if entry["confused_with"]:
        assert set(entry["confused_with"]) == {"movement", "difference"}
        other = entry["confused_with"]["movement"]
        assert other != key
        assert other in movements.library() or (other[0].isupper() and not movements.find(other)[:1] == [other])
