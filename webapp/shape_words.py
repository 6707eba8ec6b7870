"""A workout's shape in words, and what its blocks ask for round by round."""

from flask_babel import gettext, ngettext

from webapp.measures import amount_text, load_text
from webapp.wording import clock, number

SECONDS_PER_MINUTE = 60
MOST_NUMBERS = 8  # of a ladder or of rounds, told one by one; of more only how they begin and end


def init_app(app):
    """Give templates `shape_words`, `work_text`, `load_step_text`, `span_text`."""
    app.jinja_env.globals |= {
        "shape_words": shape_words, "work_text": work_text, "load_step_text": load_step_text, "span_text": span_text,
    }


def shape_words(short):
    """The shape of an option in a few phrases; `short` is one of a briefing, or a summary."""
    return [_score_words(short), *_rounds_words(short)]


def work_text(block):
    """What a block asks for: 40 reps, 17 – 13 – 9 reps, 2 – 4 – 6 … reps."""
    amounts = block["amounts"]
    if len(set(amounts)) == 1:
        return amount_text(amounts[0], block["unit"])
    shown = [amount_text(amount, "m") if block["unit"] == "m" else number(amount) for amount in amounts]
    if len(shown) > MOST_NUMBERS:
        shown = [*shown[:3], "…", shown[-1]]
    numbers = " – ".join(shown) + (" …" if block["goes_on"] else "")
    return {
        "reps": gettext("%(numbers)s reps", numbers=numbers), "m": numbers,
        "cal": gettext("%(numbers)s calories", numbers=numbers), "s": gettext("%(numbers)s seconds", numbers=numbers),
    }[block["unit"]]


def load_step_text(load_step_kg):
    """2.5 kg (5.5 lb) heavier each round."""
    if load_step_kg < 0:
        return gettext("%(load)s lighter each round", load=load_text(-load_step_kg))
    return gettext("%(load)s heavier each round", load=load_text(load_step_kg))


def span_text(seconds):
    """12 minutes, or 12:30."""
    if seconds % SECONDS_PER_MINUTE:
        return clock(seconds)
    return ngettext("%(num)s minute", "%(num)s minutes", seconds // SECONDS_PER_MINUTE)


def _score_words(short):
    shape = short["shape"]
    if shape == "amrap" and short["ladder"]:
        return gettext("A ladder, as far as you get in %(time)s", time=span_text(short["time_s"]))
    if shape == "amrap":
        return gettext("Most rounds in %(time)s", time=span_text(short["time_s"]))
    if shape == "load":
        return gettext("Heaviest lift in %(time)s", time=span_text(short["time_s"]))
    if shape == "intervals":
        return _every(short["interval_s"])
    return gettext("For time")


def _every(interval_s):
    if interval_s % SECONDS_PER_MINUTE:
        return gettext("Every %(time)s", time=clock(interval_s))
    return ngettext("Every minute", "Every %(num)s minutes", interval_s // SECONDS_PER_MINUTE)


def _rounds_words(short):
    words = []
    if short["shape"] == "intervals":
        words.append(ngettext("%(num)s interval", "%(num)s intervals", short["interval_count"]))
    elif short["rep_scheme"]:
        words.append(gettext("rounds of %(numbers)s", numbers=", ".join(map(str, short["rep_scheme"]))))
    elif short["rounds"] > 1:
        words.append(ngettext("%(num)s round", "%(num)s rounds", short["rounds"]))
    if short["shape"] == "for_time" and short["cap_s"]:
        words.append(gettext("time cap %(time)s", time=clock(short["cap_s"])))
    return words
