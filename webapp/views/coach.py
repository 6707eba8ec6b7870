"""The coach's side: setting a workout, its texts, publishing, the coach link."""

import secrets

from flask import Blueprint, abort, redirect, render_template, request, session, url_for
from flask_babel import gettext

from webapp import as_typed, briefing, class_tables, forms, typed
from webapp.coach_texts import FIELDS, LONGEST_TEXT, changed, shown_lines
from webapp.field_names import field_name, messages, place
from webapp.languages import LANGUAGES
from webapp.limits import count
from webapp.names import Finder, all_names, shown_name
from webapp.problems import WorkoutError
from webapp.store import workouts
from webapp.store.database import StoreBusy, StoreFull
from webapp.views.connection import db, stored_or_404
from webapp.wording import say
from webapp.workouts import PARTS

bp = Blueprint("coach", __name__)

# One browser is the coach of so many workouts; beyond that the oldest asks for its link again.
MOST_REMEMBERED = 25
HASH_KEPT = 20


@bp.after_request
def never_stored(response):
    """A coach's page holds a token and may hold a secret: nobody keeps it."""
    response.headers["Cache-Control"] = "no-store"
    response.headers["X-Robots-Tag"] = "noindex"
    return response


@bp.route("/new", methods=["GET", "POST"])
def new():
    """A new workout."""
    if request.method == "GET":
        return _form_page(forms.empty_workout(_last_gym()), 0)
    return _answer_form(None)


@bp.route("/c/<code>/edit", methods=["GET", "POST"])
def edit(code):
    """The blocks of a workout again; what the class sees changes only by publishing."""
    stored = _own_workout(code)
    if not as_typed.holds(stored.draft):
        abort(404)  # saving it from the form would lose something
    if request.method == "GET":
        return _form_page(as_typed.from_workout(stored.draft, shown_name), stored.revision, stored)
    return _answer_form(stored)


@bp.get("/c/<code>")
def page(code):
    """Standards and cautions to check, publishing, links."""
    stored = stored_or_404(code)
    if not _is_coach(stored):
        return _enter_page(code), 403
    return _coach_page(stored)


@bp.post("/c/<code>/enter")
def enter(code):
    """Exchange the coach link for a cookie."""
    stored = stored_or_404(code)
    form = forms.EnterForm()
    if not form.validate():
        return _enter_page(code, gettext("This page had been open too long. Please try once more.")), 400
    secret = form.secret.data.strip().rpartition("#")[2]
    if not workouts.secret_fits(stored, secret):
        count("wrong coach link")
        return _enter_page(code, gettext("This is not the coach link of this workout.")), 403
    _remember(stored)
    return redirect(url_for(".page", code=code), 303)


@bp.post("/c/<code>")
def act(code):
    """Keep the texts and do what the button says."""
    stored = _own_workout(code)
    form = forms.ActionForm()
    do, _, language = request.form.get("do", "save").partition(":")
    if not form.validate():
        return _coach_page(stored, gettext("This page had been open too long. Please press the button once more.")), 400
    if do == "kept":
        session["fresh"] = {other: link for other, link in session.get("fresh", {}).items() if other != code}
        return redirect(url_for(".page", code=code), 303)
    if any(len(text) > LONGEST_TEXT for text in request.form.values()):
        return _coach_page(stored, gettext("One of the texts is too long.")), 400
    refused = class_tables.refusal(stored.draft) if do == "publish" else None
    if refused:
        return _coach_page(stored, gettext("No plan can be made for this workout yet. %(why)s", why=say(refused))), 422
    try:
        _carry_out(stored, do, form.revision.data)
    except workouts.Conflict as conflict:
        return _coach_page(conflict.stored, gettext(
            "Somebody else changed this workout meanwhile. "
            "Your texts are still below; look at theirs in another tab, then save again."
        )), 409
    except (StoreFull, StoreBusy):
        return _coach_page(stored, _nothing_saved()), 507
    return redirect(url_for(".page", code=code, lang=language if language in LANGUAGES else None), 303)


def _carry_out(stored, do, revision):
    """Save the texts first where they changed, so that publishing shows what is on the screen."""
    if do in ("save", "publish", "language"):
        entries = _entries_from(request.form, stored.draft)
        if entries != stored.draft["movements"]:
            stored = workouts.save_draft(db(), stored.code, stored.draft | {"movements": entries}, revision)
            revision = stored.revision
    actions = {"publish": workouts.publish, "withdraw": workouts.withdraw, "put_back": workouts.put_back}
    if do in ("withdraw", "put_back") and stored.state == workouts.DRAFT:
        abort(400)
    if do in actions:
        actions[do](db(), stored.code, revision)
    if do == "publish":
        class_tables.prepare(stored.draft)


def _entries_from(posted, draft):
    entries = dict(draft["movements"])
    for key in entries:
        for field in FIELDS:
            text = posted.get(f"{key}:{field}")
            if text is not None and text.split() != "\n".join(shown_lines(entries[key], field)).split():
                entries[key] = changed(entries[key], field, text)
    return entries


def _answer_form(stored):
    """What a button of the structured form does."""
    if forms.too_large(request.form):
        abort(413)
    form = forms.WorkoutForm()
    content, revision = forms.typed_in(form), _number(form.revision.data)
    if not form.validate():
        if "csrf_token" not in form.errors:
            abort(400)  # a choice that is on no list: not typed into this form
        notice = gettext("This page had been open too long. Everything you typed is still here: press the button once more.")
        return _form_page(content, revision, stored, notice=notice, status=400)
    finder = Finder(_own_entries(stored))
    content = finder.with_choices(content)
    do = request.form.get("do", "save")
    if do != "save":
        return _form_page(forms.edited(content, do), revision, stored)
    try:
        workout = typed.to_workout(content, finder, stored.draft["movements"] if stored else {})
        saved = _save(stored, workout, revision)
    except WorkoutError as error:
        return _form_page(content, revision, stored, problems=error.problems, finder=finder, status=422)
    except workouts.Conflict as conflict:
        notice = gettext("Somebody else changed this workout meanwhile. Yours is still below: saving again replaces theirs.")
        return _form_page(content, conflict.stored.revision, conflict.stored, notice=notice, status=409)
    except (StoreFull, StoreBusy):
        return _form_page(content, revision, stored, notice=_nothing_saved(), status=507)
    return redirect(url_for(".page", code=saved.code), 303)


def _save(stored, workout, revision):
    if stored:
        return workouts.save_draft(db(), stored.code, workout, revision)
    count("new workout")
    saved, secret = workouts.create(db(), workout)
    _remember(saved)
    session["fresh"] = dict(list(session.get("fresh", {}).items())[-2:]) | {saved.code: secret}
    return saved


def _form_page(content, revision, stored=None, *, problems=None, finder=None, notice=None, status=200):
    """The structured form with what was typed, a fresh token, and every problem at its field."""
    form = forms.shown(content, revision)
    problems = problems or {}
    unclear = {
        field_name(path): finder.candidates(parameters["value"])
        for path, (code, parameters) in problems.items() if code in ("unknown_movement", "ambiguous_movement")
    }
    found = messages(problems)
    return render_template(
        "coach/form.html", form=form, errors=found, places={name: place(name, form) for name in found},
        candidates=unclear, names=all_names(), stored=stored, notice=notice, most_further=PARTS[1] - 1,
    ), status


def _coach_page(stored, notice=None):
    """What the coach sees of a workout; texts that were just typed are shown again."""
    texts = {
        key: [(field, label, request.form.get(f"{key}:{field}", "\n".join(shown_lines(entry, field))))
              for field, label in FIELDS.items()]
        for key, entry in stored.draft["movements"].items()
    }
    secret = session.get("fresh", {}).get(stored.code)
    coach_link = secret and url_for(".page", code=stored.code, _anchor=secret, _external=True)
    published = stored.published or {}
    unpublished = {**stored.draft, "revision": 0} != {**published, "revision": 0}
    return render_template(
        "coach/page.html", stored=stored, texts=texts, coach_link=coach_link, notice=notice,
        likenesses={key: briefing.likeness(entry) for key, entry in stored.draft["movements"].items()},
        form=forms.ActionForm(formdata=None, revision=stored.revision), unpublished=unpublished, editable=as_typed.holds(stored.draft),
        class_link=url_for("athlete.class_page", code=stored.code, _external=True),
    )


def _nothing_saved():
    return gettext("Nothing could be saved just now. What you typed is still here; try again in a moment.")


def _enter_page(code, notice=None):
    return render_template("coach/enter.html", form=forms.EnterForm(formdata=None), code=code, notice=notice)


def _own_workout(code):
    stored = stored_or_404(code)
    if not _is_coach(stored):
        abort(403)
    return stored


def _own_entries(stored):
    entries = stored.draft["movements"] if stored else {}
    return {key: entry for key, entry in entries.items() if entry.get("family") == typed.OWN}


def _remember(stored):
    session.permanent = True
    known = {code: mark for code, mark in session.get("coach", {}).items() if code != stored.code}
    session["coach"] = dict(list(known.items())[1 - MOST_REMEMBERED:]) | {stored.code: stored.secret_hash[:HASH_KEPT]}


def _last_gym():
    """What the gym has, as this browser's coach said last."""
    stored = workouts.latest(db(), session.get("coach", {}))
    return stored.draft.get("gym") if stored and _is_coach(stored) else None


def _is_coach(stored):
    mark = session.get("coach", {}).get(stored.code, "")
    return secrets.compare_digest(mark, stored.secret_hash[:HASH_KEPT])


def _number(text):
    return int(text) if str(text or "").isdecimal() and len(str(text)) < 10 else 0
