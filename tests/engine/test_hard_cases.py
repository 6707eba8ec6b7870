"""Small workouts where the right plan is known: by hand, or by looking at every plan there is (`all_plans`).

Planned for the athlete exactly as given. "Right" is: no plan on the countable grid, of any sets the half rule allows, is 2 % quicker; where the cap
comes first, none counts one more.
"""

import pytest
from all_plans import AllPlans, layout_of, seconds_of, with_steps
from engine_samples import able, block, workout

from webapp.engine import plan

pytestmark = pytest.mark.slow
NEARLY = 1.02
REST = block("rest", 60, "s")


def sets_of(layout):
    """Sets of every block."""
    return [breakup["sets"] for breakup in layout["breakups"]]


def assert_nothing_quicker(asked, numbers):
    """Every plan there is, by brute force; the layout."""
    layout, gain = layout_of(asked, numbers)
    ours_s = seconds_of(layout, gain)
    stints = [stint for stint in layout["stints"][: len(layout["breakups"])] if stint["kind"] != "gate"]
    found = AllPlans(stints, gain, ours_s / NEARLY)
    assert found.sets is None, (sets_of(layout), ours_s, found.sets, found.best_s)
    return layout


def assert_nothing_counts_more(asked, numbers):
    """The layout ends at the cap, and no plan there is gets one more repetition by then: brute force over as many and one."""
    layout, gain = layout_of(asked, numbers)
    assert layout["capped"]
    assert seconds_of(layout, gain) <= asked["cap_s"] + 1e-9
    last = len(layout["breakups"]) - 1
    more = with_steps(layout["stints"], last, layout["stints"][last]["steps"] + 1)
    found = AllPlans(more, gain, asked["cap_s"])
    assert found.sets is None, (sets_of(layout), found.sets, found.best_s)
    return layout


def test_unbroken_where_nothing_follows():
    """Six of eight: by hand, a break costs its 4 s of set-up, and all six unbroken lose less than six times 0.4 of 2.0 s by slowing, 4.8 s: at depth
    0.75 at the end it is a tenth of that. So one set; and by brute force."""
    assert sets_of(assert_nothing_quicker(workout([block("pull-up", 6)]), able("keen", pull_up=8))) == [[6]]


@pytest.mark.parametrize("cap_s", [30, 45])
def test_a_cap_in_the_middle_of_a_block(cap_s):
    """Handstand push-ups for somebody with eight: the count at the cap. Brute force over one more."""
    assert_nothing_counts_more(workout([block("handstand-push-up", 20)], cap_s=cap_s), able("keen", handstand_push_up=8))


def test_what_cannot_be_finished_is_planned_to_where_it_ends():
    """A second block of the same group, cut by the cap. Brute force over both blocks with one more repetition."""
    layout = assert_nothing_counts_more(workout([block("ring-dip", 5), block("handstand-push-up", 30)], cap_s=60), able("keen", ring_dip=10, handstand_push_up=8))
    assert len(layout["breakups"]) == 2


def test_one_hurries_to_a_gate_whatever_follows_it():
    """Push-ups before handstand push-ups nobody can do: only the time to the gate counts, so the push-ups are as quick as alone. Brute force."""
    asked, numbers = workout([block("push-up", 8), block("handstand-push-up", 20)], cap_s=300), able("keen", push_up=10, handstand_push_up=0)
    layout = assert_nothing_quicker(asked, numbers)
    assert sets_of(layout)[0] == [8]
    assert plan(asked, numbers, {})["score"]["likely"] == 8


def test_the_tie_break_is_as_early_as_it_can_be():
    """Ten sit-ups, then more handstand push-ups than the cap allows: sit-ups tax nothing of them, so the tie-break is ten sit-ups in one go. By hand,
    2.2 s each at the level's pace of 0.93, slowing at most 0.4 of it: 20.5 to 28.7 s."""
    asked = workout([block("sit-up", 10), block("handstand-push-up", 30)], cap_s=75, tie_break_after_block=1)
    numbers = able("keen", sit_up=40, handstand_push_up=8)
    layout, _gain = layout_of(asked, numbers)
    assert layout["capped"]
    assert sets_of(layout)[0] == [10]
    assert 20.4 <= plan(asked, numbers, {})["score"]["tie_break_s"] <= 28.7



def test_singles_wait_as_long_as_one_says():
    """Four for somebody with two who waits 40 s between good singles: by hand, four sets of one, three rests of 40 s, and four repetitions."""
    numbers = able("keen", pull_up=2)
    numbers["movements"]["pull-up"] |= {"wait_between_singles_s": 40, "seconds_per_unit": 2.0}
    layout, gain = layout_of(workout([block("pull-up", 4)]), numbers)
    assert sets_of(layout) == [[1, 1, 1, 1]]
    assert layout["breakups"][0]["rests_s"] == [40, 40, 40]
    assert 120 + 8.0 <= seconds_of(layout, gain) <= 120 + 8.0 * 1.4


def test_broken_where_the_same_group_follows():
    """The same six of eight, with eight handstand push-ups to come: at most three at a time, and the second block is not paid for. Brute force."""
    layout = assert_nothing_quicker(workout([block("ring-dip", 6), block("handstand-push-up", 4)]), able("keen", ring_dip=8, handstand_push_up=8))
    assert max(sets_of(layout)[0]) <= 3


def test_two_blocks_of_one_group():
    """Pull-ups after ring rows, neither to be had in one. Brute force over both together."""
    assert_nothing_quicker(workout([block("ring-row", 6), block("pull-up", 5)]), able("keen", ring_row=8, pull_up=6))


def test_a_rest_between_is_used():
    """Five and five for somebody with six, a minute between: by hand, exp(-60/30) = 0.14 of quick fatigue is left, so both go in one; e^-2 of 0.9 and a
    little slow fatigue leave over 0.7. The half rule knows no rest, so the first is in twos. Brute force."""
    layout = assert_nothing_quicker(workout([block("pull-up", 5), REST, block("pull-up", 5)]), able("keen", pull_up=6))
    assert sets_of(layout)[2] == [5]


def test_a_ladder_is_climbed_unbroken_until_it_bites():
    """Two, four, six for somebody with nine, 8 s between: brute force over all rounds together."""
    asked = workout([block("pull-up", 2, step=2)], rounds=3)
    layout = assert_nothing_quicker(asked, able("keen", pull_up=9))
    assert sets_of(layout)[0] == [2]


def test_the_count_after_a_tie_break():
    """Brute force over one more: five, 5 s, two are seven by 51.8 s."""
    asked = workout([block("sit-up", 10), block("handstand-push-up", 30)], cap_s=55, tie_break_after_block=1)
    assert_nothing_counts_more(asked, able("keen", sit_up=40, handstand_push_up=8))
