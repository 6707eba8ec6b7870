"""What a coach prints or shows on the gym's screen."""

import io

import segno
from flask import Blueprint, Response, render_template, request, url_for
from flask_babel import gettext
from markupsafe import Markup

from webapp import briefing, lane_sheets, print_type
from webapp.views.connection import shown_or_gone

bp = Blueprint("sheets", __name__, url_prefix="/w/<code>")

QR_BORDER_MODULES = 4  # the quiet zone that ISO/IEC 18004 asks for

# Of a lane sheet on one page, A4 or Letter: rows in ordinary print; rows and lines of loads in the largest. Tried in print.
MOST_ROWS_IN_LARGE_PRINT = 14
MOST_LINES_IN_LARGEST_PRINT = 11


@bp.after_request
def asked_again(response):
    """Sheets follow the workout; search engines are asked to stay away."""
    response.headers["Cache-Control"] = "no-cache"
    response.headers["X-Robots-Tag"] = "noindex"
    return response


@bp.get("/qr.svg")
def qr_image(code):
    """The class link as a picture a phone can read."""
    shown_or_gone(code)
    picture = io.BytesIO()
    segno.make(_class_link(code), error="m").save(
        picture, kind="svg", border=QR_BORDER_MODULES, light="#fff", dark="#000",
        omitsize=True, title=gettext("QR code of the class link"),
    )
    return Response(picture.getvalue(), mimetype="image/svg+xml")


@bp.get("/qr")
def qr_page(code):
    """The picture, as large as the gym's screen allows."""
    workout = shown_or_gone(code).published
    return render_template("sheets/qr.html", workout=workout, code=code, class_link=_class_link(code))


@bp.get("/lane-sheet")
def lane_sheet(code):
    """For the judge in the lane: what to count, row by row."""
    workout = shown_or_gone(code).published
    option = _chosen(workout["options"], "option")
    shown = briefing.option_briefing(workout, option)
    made = lane_sheets.of(workout, option["key"])
    rows = sum(len(sheet["rows"]) for sheet in made)
    loads = sum(bool(block["loads"] or block["heights"] or block["targets"]) for part in shown["parts"] for block in part["blocks"])
    is_short = rows + loads <= MOST_LINES_IN_LARGEST_PRINT
    print_class = "sheet--long" if rows > MOST_ROWS_IN_LARGE_PRINT else "sheet--short" if is_short else ""
    return render_template(
        "sheets/lane_sheet.html", workout=workout, code=code, option=shown, sheets=zip(made, shown["parts"]), print_class=print_class
    )


@bp.get("/sheet")
def briefing_sheet(code):
    """The whole briefing on one page, with a table for people without a phone."""
    workout = shown_or_gone(code).published
    option = _chosen(workout["options"], "option")
    division = _chosen(workout["divisions"], "division")
    shown = {"workout": workout, "division": division, "option": briefing.option_briefing(workout, option)}
    body = render_template(
        "sheets/_briefing.html", all=briefing.of(workout), tables=briefing.class_tables_of(workout, option, division), **shown
    )
    return render_template("sheets/briefing_sheet.html", body=Markup(body), print_classes=print_type.classes(body), **shown)


def _class_link(code):
    return url_for("athlete.class_page", code=code, _external=True)


def _chosen(items, name):
    """The one asked for in the address, else the first."""
    return next((item for item in items if item["key"] == request.args.get(name)), items[0])
