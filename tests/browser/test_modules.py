"""The pure modules: what goes in, what comes out."""

import pytest

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def run(browser, server):
    """A function that calls an export of a module under js/lib with plain values."""
    context = browser.new_context(locale="en-GB", timezone_id="Europe/Berlin")
    page = context.new_page()
    page.goto(server)
    base = page.evaluate("document.querySelector('script[src*=\"/static/\"]').src.split('/js/')[0]")

    def call(module, name, *values):
        return page.evaluate(
            "async ([address, name, values]) => (await import(address))[name](...values)",
            [f"{base}/js/lib/{module}.js", name, list(values)],
        )

    yield call
    context.close()


@pytest.mark.parametrize("typed, expected", [
    ("8", 8), ("2,5", 2.5), ("2.5", 2.5), (" 12 ", 12), ("7:40", 460), ("0", 0), (".5", 0.5),
    ("", None), ("-3", -3), ("9" * 12, 999999999999), ("1e400", None), ("NaN", None), ("dieciséis", None), ("1,234.5", None), ("7:75", None), ("9" * 400, None),
])
def test_typed_numbers_are_read_or_refused(run, typed, expected):
    assert run("format", "readNumber", typed) == expected


@pytest.mark.parametrize("seconds, expected", [(0, "0:00"), (59.6, "1:00"), (754, "12:34"), (3754, "1:02:34"), (-5, "0:00")])
def test_clock(run, seconds, expected):
    assert run("format", "clock", seconds) == expected


# Exact factors: NIST SP 811, appendix B: 1 lb = 0.45359237 kg, 1 ft = 0.3048 m.
@pytest.mark.parametrize("value, unit, units, expected", [
    (0.45359237, "kg", {"mass": "lb", "length": "m"}, 1), (0.3048, "m", {"mass": "kg", "length": "ft"}, 1), (20, "kg", {"mass": "kg", "length": "ft"}, 20),
])
def test_units_turn_there_and_back(run, value, unit, units, expected):
    shown = run("format", "toShown", value, unit, units)
    assert shown == pytest.approx(expected, rel=1e-12)
    assert run("format", "fromShown", shown, unit, units) == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize("language, mass, length", [
    ("en-US", "lb", "ft"), ("es-US", "lb", "ft"), ("en-LR", "lb", "ft"), ("my-MM", "lb", "ft"), ("en-GB", "kg", "m"), ("en", "kg", "m"), ("", "kg", "m"),
])
def test_first_units_go_by_the_region_of_the_language(run, language, mass, length):
    assert run("format", "unitsFor", language) == {"mass": mass, "length": length}


@pytest.mark.parametrize("value, direction, expected", [(38, 1, 40), (40, 1, 45), (38, -1, 35), (0, -1, 0), (100, 1, 100), (97, 1, 100)])
def test_stepper_lands_on_its_grid_and_stays_between_its_ends(run, value, direction, expected):
    assert run("numbers", "stepped", value, direction, {"low": 0, "high": 100, "step": 5}) == expected


@pytest.mark.parametrize("typed, fault", [("-3", "too_low"), ("4", "too_low"), ("9" * 12, "too_high"), ("many", "no_number"), ("40", None)])
def test_a_number_out_of_range_is_told_from_no_number(run, typed, fault):
    assert run("numbers", "faultOf", run("format", "readNumber", typed), {"low": 5, "high": 400}) == fault


def test_every_kept_answer_is_taken_whatever_the_option_asks(run):
    """Keys are those under which the answers are kept; a null is "not sure"."""
    athlete = {"level": "keen", "answers": {"row.effort.2000": 460, "run.effort.5000": None, "body_mass": 70}}
    answers = {"push-up.max_unbroken": 30, "push-up.repeat_test": 21, "front-squat.one_rep_max": 90, "pull-up.max_unbroken": None, "unknown": 4}
    assert run("numbers", "gatherNumbers", athlete, answers) == {
        "level": "keen", "body_mass_kg": 70, "efforts": [{"kind": "row", "m": 2000, "s": 460}],
        "movements": {"push-up": {"max_unbroken": 30, "repeat_test": 21}, "front-squat": {"one_rep_max_kg": 90}},
    }


@pytest.mark.parametrize("answers, missing", [
    ({"push-up.repeat_test": 9}, "max_unbroken"), ({"push-up.repeat_test": 9, "push-up.max_unbroken": None}, "max_unbroken"),
    ({"push-up.repeat_test": 9, "push-up.max_unbroken": 20}, None), ({}, None), ({"push-up.repeat_test": None}, None),
])
def test_a_repeat_test_counts_only_beside_its_first_set(run, answers, missing):
    asked = [{"kind": "max_unbroken", "movement": "push-up"}, {"kind": "repeat_test", "movement": "push-up"}]
    found = run("numbers", "missingBeside", asked[1], answers, asked)
    assert (found and found["kind"]) == missing


def test_one_long_effort_counts_only_beside_the_other(run):
    asked = [{"kind": "long_effort", "movement": "sit-up", "s": seconds} for seconds in (90, 300)]
    for index, answers in enumerate([{"sit-up.long_effort.90": 40}, {"sit-up.long_effort.300": 110}]):
        found = run("numbers", "missingBeside", asked[index], answers, [{**one} for one in asked])
        assert found["s"] == asked[1 - index]["s"]


def test_equal_sets_are_counted_together(run):
    block = {"sets": [8, 5, 5, 5, 4], "rests_s": [15, 12, 12, 12], "rests_breaths": [5, 4, 4, 4]}
    assert [(tier["size"], tier["times"], tier["rest_s"]) for tier in run("tiers", "tiers", block)] == [(8, 1, 15), (5, 3, 12), (4, 1, None)]
    assert run("tiers", "counted", []) == []


KILOS = {"mass": "kg", "length": "m"}


@pytest.mark.parametrize("sets, rests_s, unit, expected", [
    ([5, 4, 4, 4, 4, 3, 3, 3], [12] * 7, "reps", "5, then 4 \u00d7 4, then 3s, rest about 12\u00a0s: four breaths"),
    ([5, 4, 4, 3, 3, 3, 2], [12] * 6, "reps", "5, then 2 \u00d7 4, then 3s, 2 to finish, rest about 12\u00a0s: four breaths"),
    ([4, 4, 4], [9, 9], "reps", "3 \u00d7 4, rest about 9\u00a0s: three breaths"),
    ([12, 8], [20], "reps", "12, then 8, rest about 20\u00a0s: seven breaths"),
    ([8, 5, 5], [15, 9], "reps", "8, rest about 15\u00a0s: five breaths; then 2 \u00d7 5, rest about 9\u00a0s: three breaths"),
    ([1, 1, 1, 1, 3], [24, 24, 30, 36], "reps", "4 \u00d7 1, then 3, rest about 24\u00a0s, then 30\u00a0s, 36\u00a0s: 8 to 12 breaths"),
    ([2, 1, 1, 1], [20] * 3, "reps", "2, then singles, rest about 20\u00a0s: seven breaths"),
    ([1, 1], [110], "reps", "2 \u00d7 1, rest about 1:50"),
    ([1, 1, 2], [60, 30], "reps", "2 \u00d7 1, then 2, rest about 1:00, then 30\u00a0s"),
    ([20, 20, 20], [6, 6], "m", "3 \u00d7 20\u00a0m, rest about 6\u00a0s: two breaths"),
    ([30], [], "reps", "30"),
])
def test_sets_are_said_as_a_coach_says_them(run, sets, rests_s, unit, expected):
    """A breath takes three seconds, as in the engine (BREATH_S)."""
    assert run("set-words", "setsInWords", {"sets": sets, "rests_s": rests_s, "unit": unit}, KILOS) == expected


# Exact factor: NIST SP 811, appendix B: 1 ft = 0.3048 m.
@pytest.mark.parametrize("size, unit, length, expected", [(30.48, "m", "ft", "100\u00a0ft"), (7.5, "m", "m", "7.5\u00a0m"), (12, "reps", "ft", "12")])
def test_sets_of_a_distance_are_named_in_the_persons_unit(run, size, unit, length, expected):
    assert run("format", "setName", size, unit, {"mass": "kg", "length": length}) == expected


def test_sizes_in_a_sentence_of_the_engine_have_the_unit_they_are_counted_in(run):
    """Without words loaded a code stands for itself; parameters are shaped by `say` all the same, so the template is a text here."""
    coded = {"code": "{opening} of {max}", "opening": 25, "max": 75, "unit": "m"}
    assert run("words", "say", coded) == "25\u00a0m of 75\u00a0m"
    assert run("words", "say", coded | {"unit": "reps"}) == "25 of 75"


CARRY = {
    "block": 1, "round": 1, "movement": "farmer-carry", "amount": 60.96, "unit": "m", "mode": "sets", "sets": [30.48, 30.48], "rests_s": [10],
    "rests_breaths": [3], "start_s": 0, "end_s": 60, "expected_at_cap": 60.96, "reasons": [], "cue": None, "hold": None, "load_kg": None, "switch_every": None,
}


def card_rows(run, *blocks):
    """What the card says of some blocks, lengths in feet."""
    plan = {"score": {"kind": "time", "finishes": True, "likely": 60}, "deciding": None, "intervals": None, "blocks": list(blocks)}
    return run("card-model", "cardModel", plan, "Lantern Hall winter day", {"mass": "lb", "length": "ft"})["rows"]


def test_card_shows_sets_of_a_distance_in_feet(run):
    one_go = CARRY | {"block": 2, "mode": "unbroken", "sets": [60.96], "rests_s": [], "rests_breaths": []}
    rows = card_rows(run, CARRY, one_go)
    assert [([tier["text"] for tier in row["tiers"]], row["unit"]) for row in rows] == [(["100"], "ft"), (["200"], "ft, in one go")]


@pytest.mark.parametrize("misses, expected", [(1.4, "until you miss"), (0.6, "in one go")])
def test_a_skill_with_stops_to_expect_is_not_in_one_go(run, misses, expected):
    block = CARRY | {
        "unit": "reps", "amount": 50, "mode": "unbroken", "sets": [50], "rests_s": [], "rests_breaths": [],
        "reasons": [{"code": "skill_until_miss", "misses": misses}],
    }
    assert card_rows(run, block)[0]["unit"] == expected


def test_rounds_done_alike_are_shown_once(run):
    one = {"movement": "row", "amount": 10, "mode": "sets", "sets": [5, 5], "rests_s": [5], "hold": None}
    other = one | {"sets": [4, 6]}
    blocks = [one | {"round": 1}, one | {"round": 2}, other | {"round": 3}]
    assert [group["rounds"] for group in run("tiers", "byRounds", blocks)] == [[1, 2], [3]]


HOUR_MS = 3_600_000


@pytest.mark.parametrize("hours, close", [(71.9, True), (72.1, False), (0, True)])
def test_seventy_two_hours_before_the_heat_it_is_close(run, hours, close):
    assert run("heat", "isClose", {"at_ms": hours * HOUR_MS}, 0) is close


def test_without_a_heat_nothing_is_close(run):
    assert run("heat", "isClose", {"kind": "none"}, 0) is False


def test_heat_is_written_with_its_offset(run):
    # 28 November 2026 is winter time in Berlin, one hour ahead of UTC (IANA time zone data).
    assert run("heat", "toIso", 1795858800000) == "2026-11-28T10:40:00+01:00"
    assert run("heat", "toField", 1795858800000) == "2026-11-28T10:40"


PLAN = {
    "score": {"kind": "count", "finishes": False, "likely": 60, "low": 50, "high": 66, "tie_break_s": None},
    "deciding": {"block": 2, "round": 1, "start_s": 200},
    "blocks": [
        {"block": 1, "round": 1, "movement": "row", "amount": 500, "unit": "m", "expected_at_cap": 500, "reasons": []},
        {"block": 2, "round": 1, "movement": "push-up", "amount": 40, "unit": "reps", "expected_at_cap": 31, "reasons": []},
    ],
}


def test_headline_says_where_the_cap_finds_one_and_when_to_be_there(run):
    told = run("headline", "headline", PLAN)
    assert (told["end"]["movement"], told["end"]["done"], told["end"]["amount"]) == ("push-up", 31, 40)
    assert told["reach"] == {"movement": "push-up", "at_s": 200}


def test_plans_side_by_side_show_the_whole_count(run):
    plan = PLAN | {"score": PLAN["score"] | {"count_in_all": 90}, "intervals": None}
    assert run("score-words", "barestScore", plan) == "60 of 90"
    assert run("score-words", "shortScore", plan).startswith("31 of 40 reps, ")


def test_headline_of_somebody_who_finishes_is_a_time(run):
    plan = PLAN | {"score": PLAN["score"] | {"kind": "time", "finishes": True, "likely": 540}}
    assert run("headline", "headline", plan)["end"] is None


CURVE = [{"t_s": 0, "push": 1, "legs": 1}, {"t_s": 50, "push": 0.2, "legs": 0.7}, {"t_s": 100, "push": 0.5, "legs": 0.6}]


def test_curve_names_the_lowest_first(run):
    assert [(low["group"], low["reserve"], low["t_s"]) for low in run("curve", "lows", CURVE)] == [("push", 0.2, 50), ("legs", 0.6, 100)]


@pytest.mark.parametrize("score, cap_s, band", [
    ({"kind": "time", "low": 500, "high": 560}, 600, {"low_s": 500, "high_s": 560, "to_cap": False}),
    ({"kind": "time", "low": 570, "high": None, "high_count": 90}, 600, {"low_s": 570, "high_s": 600, "to_cap": True}),
    ({"kind": "count", "low": 80, "high": 100, "high_s": 590}, 600, {"low_s": 590, "high_s": 600, "to_cap": True}),
    ({"kind": "count", "low": 80, "high": 95, "high_s": None}, 600, None),
])
def test_the_band_of_the_finish_reaches_to_the_cap_where_a_bad_day_does(run, score, cap_s, band):
    assert run("curve", "finishBand", {"score": score}, cap_s) == band


@pytest.mark.parametrize("finishes, cap_s, shown", [(True, 110, 110), (True, 130, None), (False, 130, 130)])
def test_the_cap_is_drawn_where_it_is_near_or_ends_the_work(run, finishes, cap_s, shown):
    plan = {"reserve_curve": CURVE, "score": {"kind": "count", "finishes": finishes}}
    assert run("curve", "extent", plan, cap_s)["cap_s"] == shown


@pytest.mark.parametrize("unit, seconds, expected", [("reps", 2.4, "one every 2.4\u00a0s"), ("cal", 3.75, "16 calories a minute"), ("m", 0.25, None)])
def test_a_pace_is_said_in_its_own_unit(run, unit, seconds, expected):
    """A minute by 3.75 s is 16; of a movement nobody paces by the metre nothing is said."""
    assert run("pace", "pace", {"movement": "farmer-carry", "unit": unit, "seconds_per_unit": seconds}, KILOS) == expected


BEYOND = CARRY | {
    "block": 2, "movement": "pull-up", "amount": 20, "unit": "reps", "sets": [], "rests_s": [], "rests_breaths": [], "start_s": None, "end_s": None,
    "expected_at_cap": 0, "reached": False, "uncut": {"sets": [4, 4, 3, 3, 3, 3], "rests_s": [9] * 5},
}


def card_of(run, *blocks, **more):
    plan = {"score": {"kind": "time", "finishes": True, "likely": 60}, "deciding": None, "intervals": None, "blocks": list(blocks)} | more
    return run("card-model", "cardModel", plan, "Lantern Hall winter day", KILOS)


def test_card_says_small_what_to_do_beyond_the_cap(run):
    after = card_of(run, CARRY, BEYOND)["after"]
    assert after == {"title": "If you get there", "lines": ["pull-up: 2 \u00d7 4, then 3s, rest about 9\u00a0s: three breaths"]}


def test_card_of_an_own_plan_that_fails_keeps_what_comes_later(run):
    mine = {"verdict": {"fails": {"block": 1, "round": 1, "rep": 9, "at_s": 40}}, "before": {}}
    after = card_of(run, CARRY, BEYOND, mine=mine)["after"]
    assert (after["title"], len(after["lines"])) == ("If you get past it", 1)


@pytest.mark.parametrize("sets, onward", [([4, 4, 3], "and on: 3 \u00d7 3"), ([4, 5], "and on: 2, then 3s"), ([4, 4, 9], "and on: 3")])
def test_card_goes_on_small_in_the_block_the_cap_cuts(run, sets, onward):
    """Of 4, 4, 3, 3, 3, 3 what is left after so many, from the end: 9, 11 and 3, by hand."""
    cut = BEYOND | {"block": 1, "sets": sets, "rests_s": [9] * (len(sets) - 1), "rests_breaths": [3] * (len(sets) - 1), "start_s": 0, "end_s": 60}
    assert card_of(run, cut)["rows"][0]["onward"] == onward


@pytest.mark.parametrize("agent, standalone, inside", [
    ("Mozilla/5.0 (Linux; Android 14; Phone; wv) AppleWebKit/537.36", False, True),
    ("Mozilla/5.0 (Linux; Android 14; Phone) AppleWebKit/537.36 Chrome/156.0 Mobile Safari/537.36", False, False),
    ("Mozilla/5.0 (iPhone; CPU iPhone OS 18_4 like Mac OS X) AppleWebKit/605.1.15 Mobile/15E148", False, True),
    ("Mozilla/5.0 (iPhone; CPU iPhone OS 18_4 like Mac OS X) AppleWebKit/605.1.15 Mobile/15E148", True, False),
    ("Mozilla/5.0 (iPhone; CPU iPhone OS 18_4 like Mac OS X) AppleWebKit/605.1.15 Version/18.4 Mobile/15E148 Safari/604.1", False, False),
])
def test_embedded_browsers_are_known_by_their_marks(run, agent, standalone, inside):
    assert run("offline", "isInsideAnotherApp", agent, standalone) is inside


def test_what_is_kept_comes_back_and_can_be_removed(run):
    run("store", "set", "probe", {"a": [1, 2]})
    assert run("store", "get", "probe") == {"a": [1, 2]}
    run("store", "del", "probe")
    assert run("store", "get", "probe") is None
