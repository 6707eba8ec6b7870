"""How large a briefing sheet is printed: as large as one page allows, reckoned from how much text there is.

The room that text takes grows with its characters and with the square of its type size. Measured on the demo workouts in both languages
on 2026-11-25: a page of 192 by 261 mm, the lesser of A4 and Letter both ways, is filled to `BARE_SHARE + SHARE_PER_CHARACTER · characters · pt²`.
"""

import re

from markupsafe import Markup

BARE_SHARE = 0.12  # of the page: title, gaps, the edges of tables
SHARE_PER_CHARACTER = 2.35e-6  # of the page, at 1 pt
FULL = 0.96  # of the page, the rest is for fonts wider than ours; chosen
A5_ROOM = 0.46  # 130 by 192 mm against 192 by 261, less what narrow columns waste
SIZES_PT = [6, 6.5, 7, 7.5, 8, 8.5, 9, 9.5, 10, 10.5, 11, 11.5, 12]
COMFORTABLE_PT = 8  # below, what tells look-alikes apart makes room: it is on the class page; chosen

DIFFERENCE = re.compile(r'<p class="sheet__difference">.*?</p>', re.S)
STANDARD = re.compile(r'<section class="sheet__standard">.*?</section>', re.S)


def classes(body):
    """Classes of the article that holds `body`, its markup: the type size on large and on small paper, and what is left out."""
    size_pt = largest(characters(body), 1)
    left_out = size_pt < COMFORTABLE_PT
    if left_out:
        size_pt = largest(characters(DIFFERENCE.sub("", body)), 1)
    small_pt = largest(characters(STANDARD.sub("", body)), A5_ROOM)
    return f"sheet--{in_name(size_pt)} sheet--a5-{in_name(small_pt)}{' sheet--brief' if left_out else ''}"


def largest(count, room):
    """The largest size at which so many characters fit into a share of the page, the least there is if none does. [pt]"""
    fitting = [pt for pt in SIZES_PT if BARE_SHARE + SHARE_PER_CHARACTER * count * pt**2 / room <= FULL]
    return fitting[-1] if fitting else SIZES_PT[0]


def characters(markup):
    """How many characters a reader sees."""
    return len(Markup(markup).striptags())


def in_name(size_pt):
    """A size as it stands in the name of a class: half points."""
    return f"{size_pt * 2:.0f}"
