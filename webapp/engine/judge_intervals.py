"""An athlete's own sets within the intervals: the margin in each, and the first interval that breaks."""

from .checks import listing
from .errors import EngineError
from .intervals import interval_count, interval_length, with_rests
from .prepare import Case, stints_of
from .score import full_count


def own_intervals(case: Case, given: list) -> list:
    """Return the stints of as many intervals as own blocks are given for, at least one, with the rests between them."""
    blocks = len(listing("no_blocks", case.option.get("blocks")))
    if len(given) > blocks * interval_count(case):
        raise EngineError("too_many_blocks", len(given))
    rounds = max(1, (len(given) + blocks - 1) // max(1, blocks))
    return with_rests(stints_of(case, {**case.option, "rounds": rounds, "rep_scheme": None}), blocks, interval_length(case))


def with_gaps(stints: list, given: list) -> list:
    """Return own blocks in line with the stints: None for the rests between intervals."""
    lined = []
    place = 0
    for stint in stints:
        if stint["block"] == 0:
            lined.append(None)
        else:
            lined.append(given[place] if place < len(given) else None)
            place = place + 1
    return lined


def own_margins(stints: list, course: dict, interval_s: float) -> dict:
    """Return how the intervals of a course go: intervals, one mapping each with interval, work_s, margin_s up to the first that breaks;
    breaks, that one, None for none; end_s, the end of the last of them. [s]

    One in which a repetition fails breaks, with what the work took up to there.
    """
    made = []
    last_s = 0.0
    for index, went in enumerate(course["stints"]):
        interval = stints[index]["round"]
        begun_s = (interval - 1) * interval_s
        failed = went["failed_at"] > 0
        if stints[index]["block"] == 0 or failed:
            work_s = (went["end_s"] if failed else last_s) - begun_s
            made.append({"interval": interval, "work_s": work_s, "margin_s": interval_s - work_s})
            if failed or work_s > interval_s:
                return {"intervals": made, "breaks": interval, "end_s": interval * interval_s}
        last_s = went["end_s"]
    return {"intervals": made, "breaks": None, "end_s": max(1, len(made)) * interval_s}


def interval_verdict(case: Case, stints: list, verdict: dict, margins: dict) -> dict:
    """Return the verdict on intervals: the blocks without the rests between them, with `intervals`, `breaks` and `margin_s`, the least."""
    count = interval_count(case)
    blocks = len(case.option["blocks"])
    gated = len([1 for stint in stints if stint["kind"] == "gate"]) > 0
    kept = []
    for index, block in enumerate(verdict["blocks"]):
        if stints[index]["block"] > 0:
            kept.append(block)
    least = [one["margin_s"] for one in margins["intervals"]]
    return {
        **verdict,
        "time_s": None,
        "finishes": margins["breaks"] is None and not gated and len(margins["intervals"]) == count,
        "count_in_all": count * full_count(stints[:blocks], case.workout),
        "blocks": kept,
        "intervals": margins["intervals"],
        "breaks": margins["breaks"],
        "margin_s": min(least) if len(least) > 0 else None,
    }
