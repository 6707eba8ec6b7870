"""What is asked of the engine about a workout: once for each content, and never an error of ours in anybody's face."""

import itertools
import threading
import time

import pytest
from form_reader import fields, words
from sample_workout import small_workout

from webapp import briefing, class_tables
from webapp.class_tables import prepare
from webapp.engine import EngineError
from webapp.workouts import completed

pytestmark = pytest.mark.slow

caps_s = itertools.count(901)


@pytest.fixture
def fresh():
    """A workout nobody has asked about yet."""
    return completed(small_workout() | {"cap_s": next(caps_s)})


def ask(workout):
    option, division = workout["options"][0], workout["divisions"][0]
    return briefing.class_tables_of(workout, option, division)


@pytest.fixture
def asked(monkeypatch):
    """How often the engine was asked for plans and tables."""
    calls = []
    for name in ("plan", "class_table"):
        monkeypatch.setattr(class_tables.engine, name, counted(getattr(class_tables.engine, name), calls, name))
    return calls


def counted(function, calls, name):
    def call(*parameters):
        calls.append(name)
        return function(*parameters)
    return call


def test_each_answer_is_worked_out_once(fresh, asked):
    for _ in range(3):
        assert ask(fresh) and briefing.of(fresh)
    assert sorted(asked) == ["class_table", "plan"]


def test_texts_and_the_count_of_saves_do_not_make_it_another_workout(fresh, asked):
    for changed in ({"revision": 1}, {"revision": 7}, {"notes": "Bring a towel."}, {"title": "Tin Bell"}):
        briefing.of(fresh | changed)
    assert asked == ["plan"]


def test_other_work_is_another_workout(fresh, asked):
    before = ask(fresh)
    fresh["options"][0]["blocks"][0]["amount"] = 60
    assert ask(fresh) != before and asked.count("class_table") == 2


def test_whoever_asks_meanwhile_waits_for_the_same_answer(fresh):
    started, calls = threading.Barrier(4), []

    def slow(workout):
        calls.append(workout)
        time.sleep(0.05)
        return "answer"

    once, answers = class_tables.Once(slow), []

    def one_of_the_class():
        started.wait()
        answers.append(once(fresh))

    people = [threading.Thread(target=one_of_the_class) for _ in range(4)]
    for person in people:
        person.start()
    for person in people:
        person.join()
    assert answers == ["answer"] * 4 and len(calls) == 1


def test_a_fault_is_not_kept_as_an_answer(fresh):
    answers = iter([MemoryError, 5])

    def work(workout):
        answer = next(answers)
        if answer is MemoryError:
            raise MemoryError
        return answer

    once = class_tables.Once(work)
    with pytest.raises(MemoryError):
        once(fresh)
    assert once(fresh) == 5


def test_only_so_many_answers_are_kept(fresh, monkeypatch):
    monkeypatch.setattr(class_tables, "MOST_KEPT", 3)
    once = class_tables.Once(lambda workout, key: key)
    assert [once(fresh, key) for key in range(9)] == list(range(9)) and len(once.answers) == 3


def test_publishing_begins_with_the_tables(coach, published, prepared):
    page = coach.get(f"/c/{published.code}")
    for do, number in (("save", 0), ("publish", 1)):
        coach.post(f"/c/{published.code}", data=fields(page) | {"do": do})
        assert len(prepared) == number


def test_tables_are_prepared_for_every_option_and_division(fresh, asked):
    prepare(fresh)
    deadline = time.monotonic() + 20
    while asked.count("class_table") < 2 and time.monotonic() < deadline:
        time.sleep(0.02)
    assert asked.count("class_table") == 2  # one option, two divisions


def broken(*_):
    raise ZeroDivisionError("a fault in the engine")


def refusing(*_):
    raise EngineError("amount_out_of_range", 7)


@pytest.mark.parametrize("fault, logged", [(broken, True), (refusing, False)])
def test_a_class_page_stands_without_what_the_engine_cannot_say(client, published, monkeypatch, caplog, fault, logged):
    for once in (class_tables.planned, class_tables.rows):
        once.answers.clear()
    monkeypatch.setattr(class_tables.engine, "plan", fault)
    monkeypatch.setattr(class_tables.engine, "class_table", fault)
    for page in ("", "/sheet", "/lane-sheet"):
        answer = client.get(f"/w/{published.code}{page}")
        assert answer.status_code == 200 and "Ring dip" in words(answer)
    assert "Largest set" not in words(client.get(f"/w/{published.code}/sheet"))
    assert bool(caplog.records) == logged
    for once in (class_tables.planned, class_tables.rows):
        once.answers.clear()


@pytest.mark.parametrize("fault, said", [
    (broken, "not in a form a plan can be made from"), (refusing, "outside what a plan can be made for: 7"),
    (lambda *_: refuse("a_code_nobody_worded"), "not in a form a plan can be made from"),
])
def test_what_cannot_be_planned_is_not_published_and_the_coach_is_told(coach, published, monkeypatch, fault, said):
    class_tables.planned.answers.clear()
    before = published.row().published
    monkeypatch.setattr(class_tables.engine, "plan", fault)
    page = coach.get(f"/c/{published.code}")
    answer = coach.post(f"/c/{published.code}", data=fields(page) | {"do": "publish", "ring-dip:standards": "Mine."})
    assert answer.status_code == 422 and said in words(answer)
    assert fields(answer)["ring-dip:standards"].strip() == "Mine."
    assert published.row().published == before
    class_tables.planned.answers.clear()


def refuse(code):
    raise EngineError(code, 0)


def test_every_division_is_planned_before_publishing(fresh):
    """A load that only one division cannot lift by any measure the engine has."""
    fresh["options"][0]["blocks"][1]["load_kg"] = {"a": 40, "b": 10**6}
    assert class_tables.refusal(fresh)["code"] == "load_out_of_range"
