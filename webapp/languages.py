"""Which language a person reads, and the catalogues behind it.

    python -m webapp.languages update     extract every text and bring all catalogues up to date
    python -m webapp.languages check      say what is missing in them

The English text is the key; `translations/<language>/LC_MESSAGES/messages.po` holds the others.
"""

import sys
from pathlib import Path

from babel import Locale, negotiate_locale
from flask import request
from flask_babel import Babel, get_locale, gettext

ROOT = Path(__file__).resolve().parent.parent
TRANSLATIONS = ROOT / "translations"
LANGUAGES = {"en": "English", "es": "Español"}
DEFAULT = "en"
COOKIE = "language"
COOKIE_AGE_S = 365 * 24 * 3600


def init_app(app):
    """Choose the language of every answer and tell templates about it."""
    from webapp.catalogues import compile_catalogues

    compile_catalogues()
    app.config["BABEL_TRANSLATION_DIRECTORIES"] = str(TRANSLATIONS)
    app.config["BABEL_DEFAULT_LOCALE"] = DEFAULT
    Babel(app, locale_selector=choose)
    app.jinja_env.filters["translated"] = translated
    app.context_processor(_page_language)
    app.after_request(_remember)


def choose():
    """The language asked for in the address, chosen before, or preferred by the browser."""
    for wish in (request.args.get("lang"), request.cookies.get(COOKIE)):
        if wish in LANGUAGES:
            return wish
    preferred = [tag.replace("-", "_") for tag in request.accept_languages.values()]
    return negotiate_locale(preferred, list(LANGUAGES)) or DEFAULT


def current():
    """The code of the language of this answer."""
    return str(get_locale() or DEFAULT)


def direction(language):
    """`ltr` or `rtl`."""
    return Locale.parse(language).text_direction


def translated(text):
    """A text of the library in this language. A text the coach wrote is in no catalogue and stays as it is.

    Unlike `_` in a template this takes no parameters, so a text may contain a percent sign.
    """
    return gettext(text) if text else text


def _page_language():
    return {"lang": current(), "dir": direction(current()), "languages": LANGUAGES}


def _remember(response):
    """Keep a language chosen by its link.

    Only when a person went there: the phone also fetches pages in every language to keep them, and that
    must not change the language anybody reads.
    """
    if not request.path.startswith("/static/"):
        response.vary.update(["Accept-Language", "Cookie"])
    wish = request.args.get("lang")
    went_there = request.headers.get("Sec-Fetch-Mode", "navigate") == "navigate"
    if wish in LANGUAGES and went_there and response.mimetype == "text/html":
        response.set_cookie(
            COOKIE, wish, max_age=COOKIE_AGE_S, httponly=True, samesite="Lax", secure=request.is_secure
        )
    return response


if __name__ == "__main__":
    from webapp.catalogues import main

    sys.exit(main(sys.argv[1:]))
