"""The time to expect over all the draws of the numbers, those who fail included: what a style's plan minimises."""

from webapp.engine.choose import best_layout, expected
from webapp.engine.draws import draw_people, outcomes
from webapp.engine.prepare import Case, stints_of


def case_of(asked, numbers, style):
    """The case of a workout for time, its stints set."""
    case = Case(asked, numbers, {"style": style})
    case.stints = stints_of(case, case.option)
    return case


def expected_of(case, breakups):
    """What break-ups of all the work are expected to take. [s]"""
    people = draw_people(case.stints, 1, case.gain)
    return expected(case.stints, outcomes(case.stints, breakups, people, None, len(people)))


def planned(case):
    """The layout a case gets."""
    return best_layout(case, None, None)


def expected_s(asked, numbers, style):
    """What the plan that a style gets is expected to take. [s]"""
    case = case_of(asked, numbers, style)
    return expected_of(case, planned(case)["breakups"])
