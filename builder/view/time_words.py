"""Times in words: how long, how often, where a time comes from, what a place can give."""

from __future__ import annotations

from builder.model import EACH_PIECE, OperationTime, Step, StepTime, show_number, show_seconds

_SOURCES = {
    "study": "readings",
    "element": "element table",
    "estimate": "estimate",
    "model": "machine model",
    "carried over": "carried over from other conditions",
    "stale": "readings of other work",
    "none": "none",
}


def often(step: Step) -> str:
    """How often a step is done, when that is not once a piece: printed behind its action line."""
    words = ""
    if step.per is not None and step.per != EACH_PIECE:
        count = int(step.per.count)
        one = {"pieces": f"{step.per.n} pieces"}.get(step.per.per, step.per.per)
        per = f"per {one}" if step.per.per == "pieces" else f"a {one}"
        words = f"Every {one}" if count == 1 else f"{count} times {per}"
    if step.during is not None:
        words = f"{words}, while it runs" if words else "While it runs"
    return words


def pieces_an_hour(time: OperationTime | None, pieces: int) -> str:
    """What one place can give: limited by labour or by the time its machine is held, whichever is more."""
    longest = max(time.labour_min, time.machine_min) if time is not None else 0.0
    return show_number(60 * pieces / longest, 0) if longest else ""


def seconds_words(time: StepTime | None) -> str:
    if time is None:
        return ""
    words = show_seconds(time.total_s)
    return words if time.share == 1 else f"{words}, {time.share.numerator} in {time.share.denominator}"


def step_source(time: StepTime | None) -> str:
    if time is None:
        return ""
    words = " + ".join(source_words(one) for one in time.source.split(" + "))
    return f"{time.readings} {words}" if time.readings else words


def source_words(source: str) -> str:
    """A source of time in words."""
    return _SOURCES[source]
