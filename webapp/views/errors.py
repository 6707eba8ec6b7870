"""Pages for everything that can go wrong, in the person's language, never a traceback."""

from flask import render_template, request
from flask_babel import lazy_gettext
from werkzeug.exceptions import HTTPException

from webapp.store.database import StoreBusy, StoreFull

# status: (title, what to do)
PAGES = {
    400: (lazy_gettext("That did not arrive in one piece"),
          lazy_gettext("Go back, reload the page and try again.")),
    403: (lazy_gettext("This page is for the coach"),
          lazy_gettext("Open it with the coach link that was shown when the workout was made.")),
    404: (lazy_gettext("There is nothing at this address"),
          lazy_gettext("Check the link letter by letter, or ask your coach for it again.")),
    405: (lazy_gettext("This address cannot be used that way"),
          lazy_gettext("Go back and use the buttons on the page.")),
    410: (lazy_gettext("The coach has withdrawn this workout"),
          lazy_gettext("Ask your coach. What you entered is still on your phone.")),
    413: (lazy_gettext("That is too much at once"),
          lazy_gettext("Nothing was saved. Go back and shorten what you typed.")),
    429: (lazy_gettext("Too many tries"),
          lazy_gettext("Wait ten minutes, then try again.")),
    500: (lazy_gettext("Something went wrong on our side"),
          lazy_gettext("What was saved before is safe. Go back and try again.")),
    503: (lazy_gettext("Too busy just now"),
          lazy_gettext("Nothing was saved. Go back and try again in a moment.")),
    507: (lazy_gettext("There is no room left to save"),
          lazy_gettext("Nothing was saved and nothing was lost. Whoever runs this server has to make room.")),
}


def init_app(app):
    """One page for every status, and for what the store could not do."""
    app.register_error_handler(HTTPException, lambda error: _page(error.code, error))
    app.register_error_handler(StoreFull, lambda error: _page(507))
    app.register_error_handler(StoreBusy, lambda error: _page(503))


def _page(status, error=None):
    if status not in PAGES:
        return error
    title, advice = PAGES[status]
    if request.path.endswith((".json", "/json")):
        return {"status": status, "message": str(title)}, status
    response = render_template("error.html", title=title, advice=advice), status
    return response
