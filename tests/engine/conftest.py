"""What the engine works out from a few numbers alone is worked out once for all tests here: the same numbers in, the same cost out.

Finding a cost takes most of the time of a warm-up, and random athletes share their largest sets and seconds. The functions themselves are tested
as they are (`test_reserve`), since only the names that others look up are replaced.
"""

import functools

import pytest

from webapp.engine import breakups, stints

PLACES = [(stints, "cost_per_rep"), (stints, "cost_of_singles"), (breakups, "cost_per_rep"), (breakups, "cost_reaching")]
REMEMBERED = [(module, name, functools.cache(getattr(module, name))) for module, name in PLACES]


@pytest.fixture(scope="module", autouse=True)
def costs_found_once():
    """Costs are remembered from one call to the next; a module that changes the model's parameters has a fixture of this name that does not."""
    with pytest.MonkeyPatch.context() as patch:
        for module, name, remembering in REMEMBERED:
            patch.setattr(module, name, remembering)
        yield
