"""learn(): what a logged heat says about the numbers."""

import copy
import json

import pytest
from engine_samples import able, block, workout
from phones_engine import learn, plan

from webapp.engine import EngineError

pytestmark = pytest.mark.slow
ASKED = workout([block("handstand-push-up", 30), block("sit-up", 20), block("pull-up", 24)])
KNOWN = able("keen", handstand_push_up=12, pull_up=15)


@pytest.fixture(scope="module")
def made():
    """The plan that was followed."""
    return plan(ASKED, KNOWN, {"style": "even"})


def ends(made, slower=1.0):
    """Ends of all blocks, all as planned or slower by a factor."""
    return [each["end_s"] * slower for each in made["blocks"]]


def change(went, movement):
    """The change of one movement."""
    return next(each for each in went["changes"] if each["movement"] == movement)


def factors(made, movement, shares, numbers=KNOWN):
    """The factors learnt for one movement from heats that went these shares of the planned time."""
    return [change(learn(numbers, {"plan": made, "ends_s": ends(made, share)}), movement)["factor"] for share in shares]


@pytest.mark.parametrize("movement", ["handstand-push-up", "pull-up"])
def test_slower_than_planned_means_less_quicker_means_more(made, movement):
    learnt = factors(made, movement, [0.8, 1.0, 1.25])
    assert learnt == sorted(learnt, reverse=True)
    assert learnt[0] > 1.02
    assert learnt[-1] < 0.98


def test_as_planned_changes_little(made):
    """Within one standard deviation of a self-test, 8 %."""
    for movement in ("handstand-push-up", "pull-up"):
        assert factors(made, movement, [1.0])[0] == pytest.approx(1.0, abs=0.08)


def test_a_surer_number_moves_less(made):
    """A tested largest set (8 %) against the same one taken from the level (25 %)."""
    guessed = {"level": "keen", "movements": {"handstand-push-up": {"max_unbroken": 12}}}
    loose = plan(ASKED, guessed, {"style": "even"})
    tested = factors(made, "pull-up", [0.8, 1.25])
    from_level = factors(loose, "pull-up", [0.8, 1.25], guessed)
    assert from_level[0] > tested[0] > 1 > tested[1]
    assert from_level[1] < 1


def test_one_block_s_time_speaks_of_its_own_movement(made):
    late = ends(made)
    slow = [late[0] * 1.3, late[1] + late[0] * 0.3, late[2] + late[0] * 0.3]
    went = learn(KNOWN, {"plan": made, "ends_s": slow})
    assert change(went, "handstand-push-up")["factor"] < 0.97
    assert change(went, "pull-up")["factor"] == pytest.approx(factors(made, "pull-up", [1.0])[0], abs=0.01)


def test_a_failed_repetition_says_less(made):
    whole = learn(KNOWN, {"plan": made, "ends_s": ends(made)})
    failed = learn(KNOWN, {"plan": made, "ends_s": ends(made), "failed": [0]})
    assert change(failed, "handstand-push-up")["factor"] < change(whole, "handstand-push-up")["factor"]
    assert change(failed, "pull-up")["factor"] == pytest.approx(change(whole, "pull-up")["factor"], abs=1e-9)


def test_what_is_believed_is_believed_more_afterwards(made):
    for each in learn(KNOWN, {"plan": made, "ends_s": ends(made)})["changes"]:
        before = next(stint["sd"] for stint in made["basis"]["stints"] if stint["movement"] == each["movement"])
        assert 0 < each["sd"] <= before * 1.05


def test_the_change_is_explained_and_taken_over(made):
    went = learn(KNOWN, {"plan": made, "ends_s": ends(made, 1.2)})
    pulled = change(went, "pull-up")
    assert pulled["before"] == pytest.approx(15)
    assert pulled["after"] == pytest.approx(15 * pulled["factor"])
    assert went["numbers"]["movements"]["pull-up"]["max_unbroken"] == pytest.approx(pulled["after"])
    assert pulled["took_s"] == pytest.approx((made["blocks"][2]["end_s"] - made["blocks"][1]["end_s"]) * 1.2)


def test_learning_again_goes_the_same_way(made):
    """Twice slower than planned lowers it twice; the plan made with what was learnt comes nearer to what happened."""
    slow = {"plan": made, "ends_s": ends(made, 1.25)}
    learnt = learn(KNOWN, slow)["numbers"]
    again = plan(ASKED, learnt, {"style": "even"})
    happened_s = made["score"]["likely"] * 1.25
    assert abs(again["score"]["likely"] - happened_s) < abs(made["score"]["likely"] - happened_s)


def test_a_one_rep_max_moves_along_instead():
    lifted = workout([block("deadlift", 30, load_kg=80)])
    numbers = {"movements": {"deadlift": {"one_rep_max_kg": 120}}}
    made = plan(lifted, numbers, {})
    slower = learn(numbers, {"plan": made, "ends_s": [made["blocks"][0]["end_s"] * 1.3]})["numbers"]["movements"]["deadlift"]
    assert slower["one_rep_max_kg"] < 120
    assert "max_unbroken" not in slower


def test_blocks_not_reached_say_nothing(made):
    went = learn(KNOWN, {"plan": made, "ends_s": ends(made)[:1]})
    assert [each["movement"] for each in went["changes"]] == ["handstand-push-up"]
    assert learn(KNOWN, {"plan": made, "ends_s": []}) == {"numbers": KNOWN, "changes": []}


def test_absurd_times_move_it_only_so_far(made):
    """A tap forgotten: the belief stays within the shares that are weighed, 0.6 to 1/0.6."""
    for share in (0.001, 30):
        assert all(0.6 <= each["factor"] <= 1 / 0.6 for each in learn(KNOWN, {"plan": made, "ends_s": ends(made, share)})["changes"])


def test_nothing_is_changed_and_it_is_json(made):
    given = [copy.deepcopy(KNOWN), {"plan": copy.deepcopy(made), "ends_s": ends(made)}]
    kept = copy.deepcopy(given)
    json.dumps(learn(*given), allow_nan=False)
    assert given == kept


@pytest.mark.parametrize(("result", "code"), [({"plan": 3}, "plan_not_a_plan"), ({"ends_s": [60, 50]}, "ends_out_of_order"), ({"ends_s": "soon"}, "ends_not_a_list")])
def test_what_is_no_result_is_refused(made, result, code):
    with pytest.raises(EngineError) as error:
        learn(KNOWN, {"plan": made, **result})
    assert error.value.code == code
