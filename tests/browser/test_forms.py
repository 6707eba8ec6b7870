"""Every form of Python the engine may use means the same on the phone."""

import inspect
import json
from pathlib import Path

import pytest
from parity.compare import differences
from parity.page import engine_page
from phone import forms
from webapp.phone import build_engine

pytestmark = pytest.mark.browser

NAMES = sorted(name for name, thing in vars(forms).items() if inspect.isfunction(thing))
ASK = """name => {
  try { return JSON.stringify(window.engine[name]()); }
  catch (error) { return JSON.stringify({ code: error.code, value: error.value, name: error.name }); }
}"""


@pytest.fixture(scope="module")
def phone_forms(browser):
    """The forms on the phone."""
    with engine_page(browser, build_engine(Path(forms.__file__).parent)) as page:
        yield page


def on_the_server(name):
    """The result, as the phone would hand it over."""
    try:
        return json.loads(json.dumps(getattr(forms, name)()))
    except forms.EngineError as error:
        return {"code": error.code, "value": error.value, "name": "EngineError"}


@pytest.mark.parametrize("name", NAMES)
def test_same_in_both_places(phone_forms, name):
    """Results item by item; lists put tuples, and nothing else, out of sight."""
    assert list(differences(on_the_server(name), json.loads(phone_forms.evaluate(ASK, name)))) == []
