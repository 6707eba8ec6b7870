"""The warm-up of the class for the gym's screen."""


def test_page_holds_the_workout_and_stays_out_of_search_engines(client, published):
    answer = client.get(f"/w/{published.code}/warm-up")
    assert answer.status_code == 200
    assert b'id="workout"' in answer.data and b"class-warm-up.js" in answer.data
    assert answer.headers["X-Robots-Tag"] == "noindex"


def test_unknown_class_has_none(client):
    assert client.get("/w/nothere/warm-up").status_code == 404
