"""Times in words: how long, how often, where a time comes from, what a place can give."""

from __future__ import annotations

from builder.model import (
    EACH_PIECE,
    OperationTime,
    PlantModel,
    RouteLine,
    Step,
    StepTime,
    show_number,
    show_percent,
    show_seconds,
)

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


def origin_words(line: RouteLine, time: OperationTime | None) -> str:
    """Where an operation's time comes from, surest first: readings, element table, machine model, estimates."""
    if time is None:
        return ""
    readings = sum(step.readings for step in time.steps)
    found = {one for step in time.steps for one in step.source.split(" + ")}
    words = [f"{readings} readings"] if readings else []
    words += [source_words(one) for one in ("carried over", "stale", "element", "model") if one in found]
    if line.estimate_share > 0:
        words.append(f"{show_percent(line.estimate_share, 0)} estimated")
    return ", ".join(words)


def time_source_words(source: str, model: PlantModel) -> str:
    """A source of time, as the interval of a product names it, in words."""
    kind, _, name = source.partition(":")
    operation, _, step = name.partition("/")
    if kind == "study":
        return f"readings of {operation}, step {step}"
    if kind == "estimate":
        return f"estimate of {operation}, step {step}"
    if kind == "element":
        return f"element {model.elements[name].title if name in model.elements else name}"
    if kind == "model":
        return f"machine model of {model.stations[name].title if name in model.stations else name}"
    return {"allowances": "allowances", "ratings": "ratings, all observers alike"}[kind]
