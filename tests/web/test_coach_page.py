"""The coach's page: who may open it, what its buttons change, and what happens when something is in the way."""

import pytest
from form_reader import fields, words

from webapp.store import workouts
from webapp.store.database import StoreFull


def page_of(client, published):
    return client.get(f"/c/{published.code}")


def act(client, published, do, **changed):
    typed = fields(page_of(client, published)) | changed
    return client.post(f"/c/{published.code}", data=typed | {"do": do})


@pytest.mark.parametrize("page", ["", "/qr", "/warm-up", "/sheet", "/lane-sheet"])
def test_a_published_workout_leads_to_all_that_a_class_needs(coach, published, page):
    address = f"/w/{published.code}{page}"
    assert f'href="{address}"' in page_of(coach, published).text or f'href="http://localhost{address}"' in page_of(coach, published).text
    assert coach.get(address).status_code == 200


def test_without_the_coach_link_there_is_only_the_question_for_it(client, published):
    answer = page_of(client, published)
    assert answer.status_code == 403
    assert published.row().draft["title"] not in answer.text


@pytest.mark.parametrize("address", ["/c/{code}/edit", "/c/{code}"])
def test_without_the_coach_link_nothing_can_be_changed(client, published, address):
    before = published.row()
    answer = client.post(address.format(code=published.code), data={"do": "withdraw", "revision": before.revision})
    assert answer.status_code == 403
    assert published.row() == before


def test_a_wrong_secret_is_refused(client, published):
    typed = fields(page_of(client, published)) | {"secret": published.secret[::-1]}
    answer = client.post(f"/c/{published.code}/enter", data=typed)
    assert answer.status_code == 403 and "not the coach link" in words(answer)
    assert page_of(client, published).status_code == 403


def test_guessing_secrets_is_stopped(client, published, app):
    app.extensions["limiter"].most = {"wrong coach link": 2}
    typed = fields(page_of(client, published)) | {"secret": "guess"}
    statuses = [client.post(f"/c/{published.code}/enter", data=typed).status_code for _ in range(3)]
    assert statuses == [403, 403, 429]


def test_the_whole_link_may_be_pasted(client, published):
    link = f"https://example.org/c/{published.code}#{published.secret}"
    typed = fields(page_of(client, published)) | {"secret": f" {link}\n"}
    assert client.post(f"/c/{published.code}/enter", data=typed).status_code == 303
    assert page_of(client, published).status_code == 200


@pytest.mark.parametrize("address", ["/c/{code}/enter", "/w/{code}", "/w/{code}/json", "/w/{code}/sheet"])
def test_a_wrong_method_is_refused(client, published, address):
    method = client.get if address.endswith("enter") else client.post
    assert method(address.format(code=published.code)).status_code == 405


def test_entering_needs_a_token(client, published):
    assert client.post(f"/c/{published.code}/enter", data={"secret": published.secret}).status_code == 400


def test_the_coach_link_is_shown_until_it_is_kept(client):
    typed = fields(client.get("/new")) | {
        "title": "Brass Bell", "options-0-blocks-0-movement": "Ring dip", "options-0-blocks-0-amount": "24",
    }
    address = client.post("/new", data=typed).location
    page = client.get(address)
    assert f"{address}#" in page.text
    client.post(address, data=fields(page) | {"do": "kept"})
    assert f"{address}#" not in client.get(address).text


def test_texts_left_alone_stay_english_keys_and_changed_ones_are_the_coachs(coach, published):
    key = "ring-dip:standards"
    before = published.row().draft["movements"]["ring-dip"]
    text = fields(page_of(coach, published))[key]
    assert act(coach, published, "publish", **{key: text + "\nTouch the bell.\n\n"}).status_code == 303
    after = published.row().published["movements"]["ring-dip"]
    assert after["standards"] == [*before["standards"], "Touch the bell."]
    assert after["cautions"] == before["cautions"]
    assert after["holds"] == before["holds"]


def test_holds_can_be_reordered_reworded_and_taken_out(coach, published):
    key = "sandbag-carry:holds"
    before = published.row().draft["movements"]["sandbag-carry"]["holds"]
    lines = fields(page_of(coach, published))[key].strip().splitlines()
    act(coach, published, "save", **{key: "\n".join([lines[1], "On the hip | Short and quick."])})
    after = published.row().draft["movements"]["sandbag-carry"]["holds"]
    assert after[0] == before[1]
    assert (after[1]["name"], after[1]["why"], after[1]["shares"]) == ("On the hip", "Short and quick.", before[0]["shares"])


def test_saving_without_publishing_leaves_the_class_page_alone(coach, published):
    seen = published.row().published
    act(coach, published, "save", **{"ring-dip:standards": "Only this."})
    row = published.row()
    assert row.published == seen
    assert row.draft["movements"]["ring-dip"]["standards"] == ["Only this."]
    assert "does not see yet" in words(page_of(coach, published))


def test_withdrawing_and_putting_back(coach, client, published):
    act(coach, published, "withdraw")
    gone = client.get(f"/w/{published.code}")
    assert gone.status_code == 410 and "withdrawn" in words(gone)
    assert client.get(f"/w/{published.code}/json").status_code == 410
    act(coach, published, "put_back")
    assert client.get(f"/w/{published.code}").status_code == 200


def test_changing_the_blocks_keeps_the_coachs_texts_and_raises_the_revision(coach, published):
    act(coach, published, "publish", **{"ring-dip:standards": "Only this."})
    old = published.row().published["revision"]
    typed = fields(coach.get(f"/c/{published.code}/edit")) | {"options-0-blocks-0-amount": "30"}
    assert coach.post(f"/c/{published.code}/edit", data=typed | {"do": "save"}).status_code == 303
    act(coach, published, "publish")
    new = published.row().published
    assert new["options"][0]["blocks"][0]["amount"] == 30
    assert new["movements"]["ring-dip"]["standards"] == ["Only this."]
    assert new["revision"] > old


def test_of_two_coaches_saving_blocks_the_later_is_told_and_loses_nothing(coach, published):
    address = f"/c/{published.code}/edit"
    mine, theirs = (fields(coach.get(address)) for _ in range(2))
    assert coach.post(address, data=theirs | {"title": "Theirs"}).status_code == 303
    answer = coach.post(address, data=mine | {"title": "Mine"})
    assert answer.status_code == 409
    assert "Somebody else changed" in words(answer)
    assert fields(answer)["title"] == "Mine" and published.row().draft["title"] == "Theirs"
    assert coach.post(address, data=fields(answer)).status_code == 303
    assert published.row().draft["title"] == "Mine"


def test_of_two_coaches_saving_texts_the_later_is_told_and_loses_nothing(coach, published):
    address, key = f"/c/{published.code}", "ring-dip:standards"
    mine, theirs = (fields(page_of(coach, published)) for _ in range(2))
    coach.post(address, data=theirs | {key: "Theirs.", "do": "save"})
    answer = coach.post(address, data=mine | {key: "Mine.", "do": "publish"})
    assert answer.status_code == 409
    assert fields(answer)[key].strip() == "Mine."
    assert published.row().draft["movements"]["ring-dip"]["standards"] == ["Theirs."]


@pytest.mark.parametrize("do", ["save", "publish"])
def test_a_full_disk_keeps_what_was_typed_on_the_page(coach, published, monkeypatch, do):
    def full(*_):
        raise StoreFull
    monkeypatch.setattr(workouts, "save_draft", full)
    answer = act(coach, published, do, **{"ring-dip:standards": "Mine."})
    assert answer.status_code == 507 and fields(answer)["ring-dip:standards"].strip() == "Mine."
    typed = fields(coach.get(f"/c/{published.code}/edit")) | {"title": "Mine"}
    answer = coach.post(f"/c/{published.code}/edit", data=typed)
    assert answer.status_code == 507 and fields(answer)["title"] == "Mine"


def test_a_stale_token_keeps_the_texts(coach, published):
    answer = act(coach, published, "save", csrf_token="stale", **{"ring-dip:standards": "Mine."})
    assert answer.status_code == 400 and fields(answer)["ring-dip:standards"].strip() == "Mine."


def test_a_draft_cannot_be_withdrawn(client):
    typed = fields(client.get("/new")) | {
        "title": "Brass Bell", "options-0-blocks-0-movement": "Ring dip", "options-0-blocks-0-amount": "24",
    }
    address = client.post("/new", data=typed).location
    assert client.post(address, data=fields(client.get(address)) | {"do": "withdraw"}).status_code == 400


def test_the_movement_it_is_taken_for_is_named(client):
    typed = fields(client.get("/new")) | {
        "title": "Brass Bell", "options-0-blocks-0-movement": "Push press", "options-0-blocks-0-amount": "24",
    }
    page = client.get(client.post("/new", data=typed).location)
    assert "Not the same as: Push jerk." in words(page)


def test_coach_pages_are_never_kept(coach, published):
    answer = page_of(coach, published)
    assert answer.headers["Cache-Control"] == "no-store"
    assert "Content-Encoding" not in answer.headers


def test_another_language_saves_the_texts_first_and_changes_no_other(coach, published):
    before = published.row().draft["movements"]
    answer = act(coach, published, "language:es", **{"ring-dip:standards": "Mine."})
    assert answer.status_code == 303 and answer.location == f"/c/{published.code}?lang=es"
    page = coach.get(answer.location)
    assert '<html lang="es"' in page.text and fields(page)["ring-dip:standards"].strip() == "Mine."
    after = published.row().draft["movements"]
    assert after["ring-dip"] == before["ring-dip"] | {"standards": ["Mine."]}
    assert after["sandbag-carry"] == before["sandbag-carry"]


def test_a_language_nobody_speaks_is_only_a_save(coach, published):
    assert act(coach, published, "language:xx").location == f"/c/{published.code}"
