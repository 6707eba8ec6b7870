"""A workout in parts, set with the form: parts come and go with plain submits, and nothing typed is lost."""

from contextlib import closing
from urllib.parse import urlencode

import pytest
from form_reader import errors, fields, words
from sample_workout import small_workout

from webapp.store import database, workouts
from webapp.workouts import checked, completed, parts_of

pytestmark = pytest.mark.slow

FIRST, SECOND = "options-0-blocks-0-", "parts-0-options-0-blocks-0-"
NOT_TYPED = ("csrf_token", "revision")


def press(client, typed, do="save", address="/new"):
    return client.post(address, data=typed | {"do": do})


def kept(typed):
    """What was typed, without what a page brings along."""
    return {name: value for name, value in typed.items() if name not in NOT_TYPED}


@pytest.fixture
def one(client):
    """A workout in one part, ready to be saved."""
    return fields(client.get("/new")) | {"title": "Two Lamps", "shape": "amrap", "time": "5:00", FIRST + "movement": "Push-up", FIRST + "amount": "8"}


@pytest.fixture
def two(client, one):
    """Rounds in five minutes, three minutes of rest, a heaviest lift."""
    return fields(press(client, one, "add-part")) | {
        "part_title": "First lamp", "rest_after": "3:00", "parts-0-part_title": "Second lamp", "parts-0-shape": "load",
        "parts-0-time": "6:00", SECOND + "movement": "Front squat", SECOND + "amount": "1",
    }


def saved(client, typed):
    """The address of the coach's page after saving."""
    answer = press(client, typed)
    assert answer.status_code == 303, errors(answer)
    return answer.location


def published(client, typed):
    """Save and publish; the workout as the class gets it."""
    address = saved(client, typed)
    assert client.post(address, data=fields(client.get(address)) | {"do": "publish"}).status_code == 303
    return client.get(address.replace("/c/", "/w/") + "/json").get_json()


def stored_by(client, app, workout):
    """Put a workout into the store as a file brings it; the coach's page, opened by the coach link, and how to look at the row."""
    with closing(database.connect(app.config["DATABASE"])) as db:
        stored, secret = workouts.create(db, completed(checked(workout)))
    address = f"/c/{stored.code}"
    client.post(address + "/enter", data=fields(client.get(address)) | {"secret": secret})

    def row():
        with closing(database.connect(app.config["DATABASE"])) as db:
            return workouts.get(db, stored.code).draft
    return address, row


def test_a_workout_in_one_part_is_asked_nothing_about_parts(client):
    page = client.get("/new")
    assert "Part 1" not in words(page) and "Name of this part" not in words(page) and "Rest before" not in words(page)
    assert 'value="add-part"' in page.text and 'value="remove-part' not in page.text


def test_what_is_said_of_one_part_is_stored_as_ever(client, one):
    workout = published(client, one)
    assert "parts" not in workout and (workout["shape"], workout["time_s"]) == ("amrap", 300)


def test_two_parts_are_stored_each_with_its_work_and_the_rest_between(client, two):
    workout = published(client, two | {FIRST + "advice": "Hands under the shoulders.", SECOND + "advice": "Open light."})
    first, second = workout["parts"]
    assert {name: first[name] for name in ("title", "shape", "time_s", "rest_after_s")} == {
        "title": "First lamp", "shape": "amrap", "time_s": 300, "rest_after_s": 180,
    }
    assert {name: second[name] for name in ("title", "shape", "time_s")} == {"title": "Second lamp", "shape": "load", "time_s": 360}
    assert [part["options"][0]["blocks"][0]["movement"] for part in (first, second)] == ["push-up", "front-squat"]
    assert [part["advice"][0]["text"] for part in (first, second)] == ["Hands under the shoulders.", "Open light."]
    assert set(workout["movements"]) == {"push-up", "front-squat"} and workout["title"] == "Two Lamps"


def test_a_part_says_all_of_itself_and_takes_no_time_from_another(client, two):
    """The engine lets a part without a cap have the whole workout's."""
    workout = published(client, two | {"shape": "for_time", "cap": "9:00", "parts-0-shape": "for_time", "parts-0-cap": ""})
    assert [part["cap_s"] for part in parts_of(workout)] == [540, None]


def test_every_part_is_briefed_and_judged(client, two):
    address = saved(client, two)
    client.post(address, data=fields(client.get(address)) | {"do": "publish"})
    for page in ("", "/sheet", "/lane-sheet"):
        text = words(client.get(address.replace("/c/", "/w/") + page))
        assert "First lamp" in text and "Second lamp" in text, page


def test_what_was_saved_comes_back_and_saving_it_again_changes_nothing(client, two):
    two |= {FIRST + "unit": "reps", "options-0-name": "As written", SECOND + "note": "Collars on.", "lane_unit": "m"}
    address = saved(client, two)
    again = fields(client.get(address + "/edit"))
    wanted = kept(two) | {"parts-0-options-0-name": "As written"}
    assert {name: again[name] for name in kept(two)} == {name: wanted[name] for name in kept(two)}
    before = published(client, two)
    assert press(client, again, address=address + "/edit").status_code == 303
    client.post(address, data=fields(client.get(address)) | {"do": "publish"})
    after = client.get(address.replace("/c/", "/w/") + "/json").get_json()
    assert {**after, "revision": 0} == {**before, "revision": 0}


OPTIONS = small_workout()["options"]
LIFT = [{"key": "prescribed", "name": "As prescribed", "blocks": [{"movement": "front-squat", "amount": 1, "unit": "reps"}]}]
FEET = [{"key": "prescribed", "name": "As prescribed", "rounds": 2, "cap_s": 100, "blocks": [
    {"movement": "sandbag-carry", "amount": 30.48, "unit": "m", "mark_every": 7.62, "as_written": "100 ft · ↦ 25 ft"}]}]
OF_A_FILE = small_workout() | {"shape": "for_time", "advice": [], "cap_s": 720, "parts": [
    {"title": "Early", "shape": "for_time", "options": OPTIONS, "rest_after_s": 0, "advice": [{"option": "prescribed", "block": 2, "text": "Hug it."}]},
    {"shape": "intervals", "interval_s": 90, "interval_count": 4, "options": FEET, "rest_after_s": 90},
    {"title": "Late", "shape": "load", "time_s": 480, "options": LIFT},
]}


TIMES = {"for_time": ["cap_s"], "intervals": ["interval_s", "interval_count"], "load": ["time_s"]}


def test_a_file_in_parts_opens_with_everything_in_its_fields(client, app):
    address, _ = stored_by(client, app, OF_A_FILE)
    shown = fields(client.get(address + "/edit"))
    expected = {
        "part_title": "Early", "rest_after": "0:00", "cap": "12:00", "options-0-blocks-1-advice": "Hug it.", "options-0-tie_break": "1",
        "parts-0-part_title": "", "parts-0-shape": "intervals", "parts-0-interval": "1:30", "parts-0-interval_count": "4", "parts-0-rest_after": "1:30",
        SECOND + "amount": "100", SECOND + "unit": "ft", SECOND + "mark_every": "25", "lane_length": "12", "lane_unit": "m",
        "parts-1-part_title": "Late", "parts-1-shape": "load", "parts-1-time": "8:00", "parts-1-options-0-blocks-0-movement": "Front squat",
    }
    assert {name: shown[name] for name in expected} == expected


def test_a_file_in_parts_saved_unchanged_means_the_same(client, app):
    address, row = stored_by(client, app, OF_A_FILE)
    before = row()
    assert press(client, fields(client.get(address + "/edit")), address=address + "/edit").status_code == 303
    once = row()
    for name in ("title", "divisions", "lane", "ranking", "movements", "source", "notes"):
        assert once[name] == before[name], name
    for old, new in zip(parts_of(before), parts_of(once), strict=True):
        work = ("title", "shape", "rest_after_s", "advice", *TIMES[old["shape"]])
        assert [new.get(name) for name in work] == [old.get(name) for name in work]
        for was, now in zip(old["options"], new["options"], strict=True):
            assert (now["name"], now["blocks"]) == (was["name"], was["blocks"])
    assert press(client, fields(client.get(address + "/edit")), address=address + "/edit").status_code == 303
    assert {**row(), "revision": 0} == {**once, "revision": 0}


@pytest.mark.parametrize("do, titles", [
    ("add-part", ["First lamp", "Second lamp", ""]), ("remove-part:1", ["First lamp"]), ("remove-part:0", ["Second lamp"]),
    ("remove-part:7", ["First lamp", "Second lamp"]), ("remove-part", ["First lamp", "Second lamp"]), ("parts-9-add-block:0", ["First lamp", "Second lamp"]),
    ("parts-0-add-part", ["First lamp", "Second lamp"]), ("parts-0-remove-part:0", ["First lamp", "Second lamp"]), ("parts-x-up:0:1", ["First lamp", "Second lamp"]),
])
def test_parts_come_and_go_and_nothing_else_changes(client, two, do, titles):
    after = fields(press(client, two, do))
    names = ["part_title", *(f"parts-{number}-part_title" for number in range(len(titles) - 1))]
    assert [after[name] for name in names] == titles
    assert f"parts-{len(titles) - 1}-part_title" not in after
    assert after["title"] == "Two Lamps"


def test_the_second_part_takes_the_place_of_the_first(client, two):
    after = fields(press(client, two, "remove-part:0"))
    assert (after["shape"], after["time"], after[FIRST + "movement"]) == ("load", "6:00", "Front squat")
    workout = published(client, after)
    assert "parts" not in workout and workout["options"][0]["key"] == "prescribed"


def test_what_a_part_was_called_is_kept_while_it_is_the_only_one(client, two):
    alone = fields(press(client, two, "remove-part:1"))
    again = fields(press(client, alone, "add-part"))
    assert (again["part_title"], again["rest_after"]) == ("First lamp", "3:00")


def test_a_fifth_part_is_not_offered(client, two):
    page = press(client, fields(press(client, two, "add-part")), "add-part")
    assert 'value="add-part"' not in page.text
    assert "parts-3-part_title" not in fields(press(client, fields(page), "add-part"))


@pytest.mark.parametrize("do, expected", [
    ("parts-0-add-block:0", ["Ring dip", "Row", ""]), ("parts-0-remove-block:0:0", ["Row"]), ("parts-0-up:0:1", ["Row", "Ring dip"]),
    ("parts-0-down:0:0", ["Row", "Ring dip"]),
])
def test_the_blocks_of_a_further_part_change_by_themselves(client, two, do, expected):
    typed = fields(press(client, two | {SECOND + "movement": "Ring dip"}, "parts-0-add-block:0")) | {"parts-0-options-0-blocks-1-movement": "Row"}
    after = fields(press(client, typed, do))
    assert [after[f"parts-0-options-0-blocks-{number}-movement"] for number in range(len(expected))] == expected
    assert f"parts-0-options-0-blocks-{len(expected)}-movement" not in after
    assert after[FIRST + "movement"] == "Push-up" and "options-0-blocks-1-movement" not in after


def test_an_option_comes_and_goes_in_every_part_and_is_named_once(client, two):
    page = press(client, two, "add-option")
    after = fields(page)
    assert (after["options-1-blocks-0-movement"], after["parts-0-options-1-blocks-0-movement"]) == ("Push-up", "Front squat")
    assert "parts-0-options-0-name" not in after and "parts-0-options-0-key" not in after
    workout = published(client, after | {"options-1-name": "Lighter"})
    assert [[(option["key"], option["name"]) for option in part["options"]] for part in workout["parts"]] == [
        [("prescribed", "As prescribed"), ("scaled", "Lighter")]] * 2
    gone = fields(press(client, after, "remove-option:1"))
    assert not [name for name in gone if "options-1-" in name]


def test_a_new_part_has_the_options_there_are(client, one):
    after = fields(press(client, fields(press(client, one, "add-option")), "add-part"))
    assert "parts-0-options-1-blocks-0-movement" in after and "parts-0-options-2-blocks-0-movement" not in after


@pytest.mark.parametrize("changed, field, said", [
    ({"rest_after": "soon"}, "rest_after", "Part 1 · Rest before the next part: Write minutes"),
    ({"rest_after": "90"}, "rest_after", "Part 1 · Rest before the next part: Between 0:00 and 60:00"),
    ({"part_title": "x" * 81}, "part_title", "Part 1 · Name of this part: At most 80"),
    ({"time": ""}, "time", "Part 1 · Time: Please"),
    ({FIRST + "amount": "0"}, FIRST + "amount", "Part 1 · Option 1, block 1 · How many: Between"),
    ({"parts-0-part_title": "x" * 81}, "parts-0-part_title", "Part 2 · Name of this part: At most 80"),
    ({"parts-0-time": "later"}, "parts-0-time", "Part 2 · Time: Write minutes"),
    ({"parts-0-shape": "for_time", "parts-0-options-0-tie_break": "7"}, "parts-0-options-0-tie_break", "Part 2 · Option 1 · Tie-break"),
    ({"parts-0-shape": "amrap", SECOND + "load_b": "x"}, SECOND + "load_b", "Part 2 · Option 1, block 1 · Load, Women: “x”"),
    ({SECOND + "movement": "flurble"}, SECOND + "movement", "Part 2 · Option 1, block 1 · Movement: We do not know"),
    ({SECOND + "movement": "press"}, SECOND + "movement", "Part 2 · Option 1, block 1 · Movement: “press” fits"),
    ({SECOND + "advice": "x" * 501}, SECOND + "advice", "Part 2 · Option 1, block 1 · Your own advice: At most 500"),
    ({FIRST + "advice": "x" * 501}, FIRST + "advice", "Part 1 · Option 1, block 1 · Your own advice: At most 500"),
    ({"title": ""}, "title", "Name of the workout: Please"),
])
def test_each_mistake_is_said_at_its_field_and_loses_nothing(client, two, changed, field, said):
    typed = two | changed
    answer = press(client, typed)
    assert answer.status_code == 422 and list(errors(answer)) == [field]
    assert said in words(answer)
    again = fields(answer)
    assert {name: again[name].strip("\n") if isinstance(again[name], str) else again[name] for name in kept(typed)} == kept(typed)


def test_mistakes_are_listed_in_the_order_of_the_form(client, two):
    answer = press(client, two | {"title": "", "time": "", FIRST + "movement": "", FIRST + "amount": "", "parts-0-time": "", SECOND + "amount": ""})
    assert [link.partition('"')[0] for link in answer.text.split('<li><a href="#')[1:]] == [
        "title", "time", FIRST + "movement", FIRST + "amount", "parts-0-time", SECOND + "amount"]


def test_a_rest_after_the_last_part_is_nobodys_business(client, two):
    workout = published(client, two | {"parts-0-rest_after": "x"})
    assert "rest_after_s" not in workout["parts"][1]


def test_which_movement_is_meant_is_asked_in_its_part(client, two):
    asked = press(client, two | {SECOND + "movement": "press", "parts-0-shape": "amrap", SECOND + "amount": "5"})
    assert f'name="{SECOND}choice" value="push-press"' in asked.text and f'name="{FIRST}choice"' not in asked.text
    after = fields(press(client, fields(asked) | {SECOND + "choice": "push-press"}, "add-part"))
    assert after[SECOND + "movement"] == "Push press"


def test_a_movement_of_ones_own_may_be_in_any_part(client, two):
    two |= {"parts-0-shape": "amrap", SECOND + "amount": "4", SECOND + "movement": "Tyre flip", SECOND + "choice": "own", SECOND + "own_seconds": "5", SECOND + "own_group": "legs"}
    assert published(client, two)["parts"][1]["options"][0]["blocks"][0]["movement"] == "own-tyre-flip"


def test_in_spanish(client, two):
    answer = press(client, two | {"rest_after": "luego", "parts-0-time": ""}, address="/new?lang=es")
    text = words(answer)
    assert "Parte 1 · Descanso antes de la parte siguiente: Escribe minutos" in text and "Parte 2 · Tiempo: Completa" in text
    for said in ("Nombre de esta parte", "Quitar esta parte", "Añadir una parte"):
        assert said in text
    spanish = fields(answer) | {"rest_after": "3:00", "parts-0-time": "6:00", FIRST + "movement": "Flexión", SECOND + "movement": "Sentadilla frontal"}
    assert press(client, spanish, address="/new?lang=es").status_code == 303


def many(typed, number, **more):
    """So many further parts like the second."""
    own = {name.removeprefix("parts-0-"): value for name, value in (typed | more).items() if name.startswith("parts-0-") and value}
    return typed | {f"parts-{index}-{name}": value for index in range(number) for name, value in own.items()}


def test_fifty_parts_are_too_many_and_all_of_them_come_back(client, two):
    answer = press(client, many(two, 49))
    assert answer.status_code == 422 and errors(answer)["parts"] == "A workout in parts has 2 to 4 of them."
    assert fields(answer)["parts-48-part_title"] == "Second lamp"


def the_fullest():
    """Four parts of four options of twenty blocks, every note and advice as long as it may be."""
    note, advice = ("Sube la barbilla por encima de la barra, sí, y baja con los brazos largos. " * 8)[:500], ("Abre pequeño; después sacude los brazos. " * 14)[:500]
    blocks = [{"movement": "push-up", "amount": 5, "unit": "reps", "note": note}] * 20
    options = [{"key": f"option-{number}", "name": f"Way {number}", "rounds": 1, "blocks": blocks} for number in range(4)]
    spoken = [{"option": option["key"], "block": place + 1, "text": advice} for option in options for place in range(20)]
    part = {"shape": "for_time", "cap_s": 900, "options": options, "advice": spoken}
    return small_workout() | {"options": options, "advice": [], "parts": [part | {"title": f"Lamp {number}"} for number in range(4)]}


def test_what_the_form_itself_can_make_is_taken(client, app):
    """Larger than half a megabyte, Flask's own limit for a form; nothing of it is refused or cut."""
    address, row = stored_by(client, app, the_fullest())
    typed = fields(client.get(address + "/edit"))
    assert 500_000 < len(urlencode(typed)) < app.config["MAX_CONTENT_LENGTH"]
    before = row()
    assert press(client, typed | {"title": "Four Lamps"}, address=address + "/edit").status_code == 303
    assert (row()["title"], row()["parts"]) == ("Four Lamps", before["parts"])


@pytest.mark.parametrize("field", ["parts-{}-part_title", "parts-{}-options-0-rounds", "parts-0-options-{}-rounds", "parts-0-options-0-blocks-{}-note"])
def test_more_than_anybody_types_is_refused_before_it_is_read(client, two, field):
    assert press(client, two | {field.format(number): "1" for number in range(400)}).status_code == 413


@pytest.mark.parametrize("do", ["save", "add-part", "add-option", "remove-option:0", "remove-part:0", "parts-0-add-block:0", "language"])
@pytest.mark.parametrize("odd", [
    {"parts-0-part_title": "alone"}, {"parts-7-shape": "amrap"}, {"parts-0-options-0-rounds": "1"}, {"parts-0-options-3-name": "x"},
    {"parts-0-parts-0-part_title": "nested"}, {"parts-0-parts-0-options-0-blocks-0-movement": "Row", "parts-0-part_title": "x"},
    {"parts-": "x", "parts--1-part_title": "x", "parts-0": "x"}, {"parts-99999999999999999999-part_title": "x"},
])
def test_half_a_part_gets_a_page(client, one, odd, do):
    assert press(client, one | odd, do).status_code in (200, 303, 422)


@pytest.mark.parametrize("odd, field, said", [
    ({"parts-0-part_title": "alone"}, "parts-0-options", "A workout needs at least one option."),
    ({"parts-0-options-0-rounds": "1"}, "parts-0-options-0-blocks", "Add at least one block."),
])
def test_a_part_without_options_or_blocks_is_refused_where_they_go(client, one, odd, field, said):
    answer = press(client, one | odd)
    assert answer.status_code == 422 and errors(answer)[field] == said


def test_a_part_with_an_option_more_than_the_first_is_refused(client, two):
    typed = two | {name.replace("options-0", "options-1"): value for name, value in two.items() if name.startswith("parts-0-options-0")}
    assert errors(press(client, typed))["parts-0-options"] == "Every part must have the same options."


def test_a_shape_that_is_on_no_list_is_not_ours(client, two):
    assert press(client, two | {"parts-0-shape": "sideways"}).status_code == 400


@pytest.mark.parametrize("more", [{"lane": {"length_m": 5, "turn": False}}, {"divisions": [{"key": "z", "name": "All"}]}, {"team": 2}])
def test_a_file_whose_parts_say_more_than_the_form_asks_is_not_cut_down(client, app, more):
    parts = [{"shape": "for_time", "options": OPTIONS}, {"shape": "for_time", "options": OPTIONS, **more}]
    blocks = [{"movement": "ring-dip", "amount": 5, "unit": "reps"}]
    parts[1]["options"] = [OPTIONS[0] | {"blocks": blocks}]
    address, _ = stored_by(client, app, small_workout() | {"parts": parts})
    assert f"{address}/edit" not in client.get(address).text
    assert client.get(address + "/edit").status_code == 404
