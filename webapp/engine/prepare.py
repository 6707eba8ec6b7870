"""From what was handed in to what planning needs: settings, caps, the person's recovery, the case to plan."""

from .asked import division_of, option_of
from .checks import choice, mapping, number, optional, whole_number
from .lungs import lungs_of
from .parameters import BAR_STEP_KG, FAIL_RISK, STYLES
from .reserve import slow_gain
from .stints import make_stints


class Case:
    """One athlete at one option of one workout.

    Attributes
    ----------
    workout, option, division : as handed in. wanted : settings with defaults filled in.
    gain : the person's g. [0.2–1.6] lungs : cp_w [W], w_prime_j [J], sd, filled. cap_s : time cap, None without one. [s]
    stints : every block in every round; see `stints`. round : break-ups of one round of even sets, for most rounds in a time; see `amrap`.
    most_risk : share of people who may fail: the style's, or the least there is where nothing is so calm. [0–1]
    """

    def __init__(self, workout: dict, numbers: dict, settings: dict):
        self.workout = mapping("workout_not_a_mapping", workout)
        self.numbers = mapping("numbers_not_a_mapping", numbers)
        check_lane(self.workout)
        self.wanted = settings_of(settings)
        self.option = option_of(self.workout, self.wanted["option"])
        choice("option_unknown", self.option.get("key"), [self.option.get("key")])  # a text, as the plan carries it along
        self.division = division_of(self.workout, self.wanted["division"])
        self.gain = gain_from(self.numbers)
        self.lungs = lungs_of(self.numbers)
        self.cap_s = cap_of(self.workout, self.option)
        self.stints = []
        self.round = []
        self.most_risk = FAIL_RISK[self.wanted["style"]]


def check_lane(workout: dict):
    """Raise EngineError where the lane is none; the plan carries it along."""
    lane = mapping("lane_not_a_mapping", workout.get("lane"))
    optional("lane_out_of_range", lane.get("length_m"), 0.1, 1000, 10)


def stints_of(case: Case, option: dict) -> list:
    """Return the stints of an option (the case's own, or one derived from it) for the case's athlete.

    Of work for time a rest after the last of it is none: the clock stops before.
    """
    stints = make_stints(case.workout, option, case.division, case.numbers, case.wanted["form"], case.gain, case.lungs)
    if case.workout.get("shape", "for_time") == "for_time":
        while len(stints) > 1 and stints[len(stints) - 1]["kind"] == "rest":
            stints.pop()
    return stints


def settings_of(settings) -> dict:
    """Return the settings that planning needs, checked, with defaults filled in."""
    given = mapping("settings_not_a_mapping", settings)
    form = 1.0 if given.get("form") is None else number("form_out_of_range", given.get("form"), 0.5, 1.5)
    seed = 1 if given.get("seed") is None else whole_number("seed_out_of_range", given.get("seed"), 0, 1000000)
    style = "steady" if given.get("style") is None else choice("style_unknown", given.get("style"), STYLES)
    step_kg = optional("bar_step_out_of_range", given.get("bar_step_kg"), 0.25, 50, BAR_STEP_KG)
    return {"form": form, "seed": seed, "style": style, "option": given.get("option"), "division": given.get("division"), "bar_step_kg": step_kg}


def cap_of(workout: dict, option: dict) -> float | None:
    """Return the time cap of an option, None without one. [s]"""
    cap_s = workout.get("cap_s") if option.get("cap_s") is None else option.get("cap_s")
    return None if cap_s is None else number("cap_out_of_range", cap_s, 1, 6 * 3600)


def gain_from(numbers: dict) -> float:
    """Return the athlete's own g from the repeat test of any movement, the mean over those tested, or the population's."""
    movements = mapping("numbers_not_a_mapping", numbers.get("movements"))
    gains = []
    for movement in sorted(list(movements.keys())):
        given = mapping("numbers_not_a_mapping", movements[movement])
        if given.get("repeat_test") is not None and given.get("max_unbroken") is not None:
            first = number("max_unbroken_out_of_range", given.get("max_unbroken"), 0, 20000)
            again = number("repeat_test_out_of_range", given.get("repeat_test"), 0, 20000)
            if first >= 1:
                gains.append(slow_gain([min(first, 1000.0), min(again, 1000.0)], 2.0))
    return sum(gains) / len(gains) if len(gains) > 0 else slow_gain(None, 2.0)
