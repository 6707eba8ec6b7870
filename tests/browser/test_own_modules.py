"""The pure modules behind an own break-up: what goes in, what comes out."""

import pytest

from .test_modules import run  # noqa: F401 (a fixture)

pytestmark = pytest.mark.browser
PLACE = {"total": 20, "grain": 1, "largest": 12, "least_rest_s": 4}


def block(sets, rests_s):
    return {"sets": sets, "rests_s": rests_s}


@pytest.mark.parametrize("sets, left", [([8, 6, 6], 0), ([8, 6], 6), ([8, 6, 8], -2), ([6.4, 6.4, 7.2], 0)])
def test_what_is_missing_or_too_much(run, sets, left):  # noqa: F811
    assert run("own", "gap", block(sets, []), PLACE) == left


@pytest.mark.parametrize("given, fitted", [
    (block([8, 6, 6], [10, 15]), block([8, 6, 6], [10, 15])),
    (block([8, 6, 8], [10, 15]), block([8, 6, 6], [10, 15])),
    (block([18, 6, 6], [10, 15]), block([18, 2], [10])),
    (block([8, 5], [10]), block([8, 5, 5, 2], [10, 10, 10])),
    (block([15], []), block([15, 5], [10])),
])
def test_sets_are_made_to_fit_at_the_end(run, given, fitted):  # noqa: F811
    assert run("own", "fitted", given, PLACE) == fitted


def test_edits_change_only_what_was_picked(run):  # noqa: F811
    own = block([8, 6, 6], [10, 15])
    first = {"from": 0, "to": 0}
    assert run("own-edits", "resized", own, first, 9, PLACE) == block([9, 6, 6], [10, 15])
    assert run("own-edits", "rested", own, first, 2, PLACE) == block([8, 6, 6], [4, 15])
    assert run("own-edits", "added", block([8, 6], [10]), 1, PLACE) == block([8, 6, 6], [10, 10])
    assert run("own-edits", "removed", own, 0) == block([6, 6], [15])
    assert run("own-edits", "removed", own, 2) == block([8, 6], [10])
    assert run("own-edits", "removed", block([20], []), 0) == block([20], [])
    assert run("own-edits", "alike", block([8, 4, 4, 4], [10, 15, 15]), 2) == {"from": 1, "to": 3}


@pytest.mark.parametrize("rest_s, direction, expected", [(12, 1, 15), (12, -1, 10), (5, -1, 4), (4, -1, 4), (4, 1, 5), (300, 1, 300)])
def test_rests_go_to_the_next_five_seconds_but_not_under_the_set_up(run, rest_s, direction, expected):  # noqa: F811
    assert run("own-edits", "nextRest", rest_s, direction, PLACE) == expected


def test_examples_of_a_start_too_quick(run):  # noqa: F811
    own = block([5, 5, 5, 5], [12, 12, 15])
    assert run("own-examples", "outHot", own, PLACE) == block([12, 5, 3], [12, 12])
    assert run("own-examples", "inHalves", own, PLACE) == block([10, 10], [15])


def timed(sets, rests_s, start_s, seconds_each, **more):
    """A block as a plan has it: sets at an even pace, hand-made so that the times can be added up by hand."""
    starts, clock_s = [], start_s
    for index, size in enumerate(sets):
        starts.append(clock_s)
        clock_s += size * seconds_each + (rests_s[index] if index < len(rests_s) else 0)
    whole = {"block": 1, "round": 1, "movement": "push-up", "unit": "reps", "amount": sum(sets), "expected_at_cap": sum(sets), "count_at_cap": sum(sets)}
    return whole | {"sets": sets, "rests_s": rests_s, "set_starts_s": starts, "start_s": start_s, "end_s": clock_s} | more


def test_splits_are_the_ends_of_blocks_and_the_quarters_between(run):  # noqa: F811
    """20 reps of 2 s with 10 s after ten, then 20 of 1 s: ten are done at 20 s, twenty at 50 s, thirty at 60 s; half falls on the end."""
    plan = {"blocks": [timed([10, 10], [10], 0, 2), timed([20], [], 50, 1, block=2, movement="air-squat")]}
    found = run("splits", "splits", plan)
    assert [(one["at_s"], one.get("share"), one.get("quarter")) for one in found] == [(20, 0.25, None), (50, None, 0.5), (60, 0.75, None), (70, None, None)]
    assert [one["done"] for one in found if one.get("share")] == [10, 10]


def test_set_ends_are_the_next_start_less_the_rest(run):  # noqa: F811
    spans = run("curve", "setSpans", timed([10, 10], [10], 0, 2))
    assert spans == [{"start_s": 0, "end_s": 20}, {"start_s": 30, "end_s": 50}]


ATTEMPTS = [{"load_kg": 80, "rest_s": 120}, {"load_kg": 90, "rest_s": 0}]


def test_attempts_are_added_a_step_heavier_and_the_only_one_stays(run):  # noqa: F811
    assert run("own-attempts", "added", ATTEMPTS, 1, 2.5) == [*ATTEMPTS[:1], {"load_kg": 90, "rest_s": 120}, {"load_kg": 92.5, "rest_s": 0}]
    assert run("own-attempts", "added", ATTEMPTS, 0, 2.5)[1] == {"load_kg": 82.5, "rest_s": 120}
    assert run("own-attempts", "removed", ATTEMPTS, 0) == ATTEMPTS[1:]
    assert run("own-attempts", "removed", ATTEMPTS[:1], 0) == ATTEMPTS[:1]
    assert [one["load_kg"] for one in run("own-attempts", "startHeavy", ATTEMPTS, 2.5)] == [90, 92.5]


# Exact factor: NIST SP 811, appendix B: 1 lb = 0.45359237 kg.
@pytest.mark.parametrize("mass, step", [("kg", 2.5), ("lb", 5 * 0.45359237)])
def test_loads_go_by_what_the_bar_can_make(run, mass, step):  # noqa: F811
    asked = run("own-attempts", "loadQuestion", 100, {"mass": mass})
    assert asked["step"] == pytest.approx(step)
    assert asked["low"] == pytest.approx(40, abs=step) and asked["high"] == pytest.approx(125, abs=step)


def stint(number, steps, interval):
    return {"block": number, "round": interval, "steps": steps, "step_units": 1, "kind": "local", "unit": "reps", "max_steps": 12, "set_up_s": 3, "cadence": 1}


def test_own_intervals_go_on_to_the_last_and_a_ladder_goes_on_climbing(run):  # noqa: F811
    """Two intervals planned of four, with 4 and 6 repetitions: the next have 8 and 10, by hand, in sets like the last; rests between intervals are left out."""
    stints = [stint(1, 4, 1), stint(0, 0, 1), stint(1, 6, 2), stint(0, 0, 2)]
    blocks = [{"block": 1, "round": number, "sets": sets, "rests_s": [], "lead_s": 0, "reached": True} for number, sets in ((1, [4]), (2, [6]))]
    plan = {"basis": {"stints": stints, "cap_s": None}, "blocks": blocks, "intervals": [{}, {}], "score": {"kind": "count"}}
    judged = run("to-judge", "toJudge", [block([4], []), block([3, 3], [10])], plan, {"interval_count": 4})
    assert [one["sets"] for one in judged] == [[4], [3, 3], [3, 3, 2], [3, 3, 2, 2]]


def test_what_was_kept_before_there_were_parts_is_the_first_part(run):  # noqa: F811
    old = {"option": "prescribed", "blocks": [None]}
    assert run("own", "keptBlocks", old, "prescribed", 0) == [None]
    assert run("own", "keptBlocks", old, "scaled", 0) is None
    assert run("own", "withKept", old, "prescribed", 2, [1]) == {"option": "prescribed", "parts": [[None], None, [1]]}


@pytest.mark.parametrize("score, intervals, counted", [
    ({"kind": "count", "likely": 100}, None, 100),
    ({"kind": "count", "likely": 104}, None, 102),
    ({"kind": "rounds", "likely": 6, "likely_count": 98}, None, 98),
    ({"kind": "time", "likely": 300}, None, 102),
    ({"kind": "count", "likely": 50}, [], 102),
])
def test_a_plan_that_stops_short_of_the_end_is_held_against_at_what_it_counts(run, score, intervals, counted):  # noqa: F811
    """The judge goes on to 102; of intervals both count to the end of the one that breaks, by another rule each."""
    assert run("mine", "asTold", {"score": score, "intervals": intervals}, {"count": 102}) == {"count": counted}


@pytest.mark.parametrize("brings, better", [
    ({"slower_s": -2}, True), ({"slower_s": -0.4}, False), ({"fewer": -1}, True), ({"fewer": 0, "finishes": True}, True), ({"fails": {}}, False),
    ({"breaks": None, "broke": None, "less_s": -15}, True), ({"breaks": None, "broke": None, "less_s": 5}, False),
    ({"breaks": None, "broke": 7, "less_s": 0}, True), ({"breaks": 8, "broke": 7, "less_s": 0}, True), ({"breaks": 7, "broke": 7, "less_s": -9}, False),
    ({"breaks": 6, "broke": None, "less_s": 9}, False),
])
def test_what_is_better_than_the_plan(run, brings, better):  # noqa: F811
    assert run("mine", "isBetter", brings) == better


def planned(amount, sets, rests_s):
    """A plan of one block of reps, as far as its small changes need it."""
    stint = {"block": 1, "round": 1, "movement": "push-up", "unit": "reps", "steps": amount, "step_units": 1, "piece_steps": 1, "kind": "local", "max_steps": 12, "set_up_s": 4, "cadence": 1}
    return {"basis": {"stints": [stint]}, "blocks": [{"sets": sets, "rests_s": rests_s, "lead_s": 0}]}


@pytest.mark.parametrize("shown, own, kinds", [
    ([5, 5], block([5, 5], [12]), ["opening", "rests"]),
    ([5, 3], block([5, 5], [12]), ["opening", "rests"]),
    ([10], block([10], []), ["two_sets"]),
    ([4], block([5, 5], [12]), []),
    ([7], block([7, 3], [12]), []),
])
def test_of_a_block_that_the_cap_cuts_only_what_is_shown_is_changed(run, shown, own, kinds):  # noqa: F811
    """A set that the end cuts short cannot open larger, and has no rests after it."""
    assert [edit["kind"] for edit in run("what-if", "smallEdits", planned(10, shown, own["rests_s"]), [own], [0])] == kinds


@pytest.mark.parametrize("keep, round_, amount, left", [
    ({"code": "keep_reps", "count": 3, "all": 8}, 7, 8, 3), ({"code": "keep_reps", "count": 3, "all": 8}, 6, 8, None),
    ({"code": "keep_share", "share_fraction": 0.65}, 7, 4, 2), ({"code": "keep_share", "share_fraction": 0.1}, 8, 5, 1),
])
def test_from_the_interval_that_breaks_on_less_is_to_do(run, keep, round_, amount, left):  # noqa: F811
    """0.65 of 4 is 2.6: two whole ones; of little one is left."""
    plan = {"reasons": [{"code": "interval_breaks", "interval": 7, "keep": keep}]}
    assert run("keep", "kept", plan, {"round": round_, "movement": "pull-up", "amount": amount}) == left
    assert run("keep", "kept", {"reasons": []}, {"round": 9, "movement": "pull-up", "amount": amount}) is None
