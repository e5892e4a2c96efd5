"""Times in words: how long, how often, where a time comes from, what a place can give."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from builder.model import (
    EACH_PIECE,
    FROM_FACTS,
    Frequency,
    OperationTime,
    PlantModel,
    RouteLine,
    Step,
    StepTime,
    show_number,
    show_percent,
    show_seconds,
)

_PLAIN = 2000
"""A share with a larger denominator was calculated, and is shown as once in so many."""

_SOURCES = {
    "study": "readings",
    "element": "element table",
    "estimate": "estimate",
    "model": "machine model",
    "carried over": "carried over from other conditions",
    "stale": "readings of other work",
    "none": "none",
}


def from_facts(step: Step) -> bool:
    """Whether how often it is done follows from facts typed elsewhere, so that only the times know it."""
    return step.per is not None and step.per.per in FROM_FACTS


def action_line(step: Step, shares: Sequence[Fraction] = ()) -> str:
    """What to do, with how often; `shares` as for `often`."""
    words = often(step, shares)
    return f"{step.do} *{words}.*" if words else step.do


def often(step: Step, shares: Sequence[Fraction] = ()) -> str:
    """How often a step is done, when that is not once a piece: printed behind its action line.

    shares : times per piece in each size, to say what a bobbin, a cone, a needle or a sheet comes to
    """
    words = ""
    if step.per is not None and step.per != EACH_PIECE:
        words = _of_lot(step.per, shares) if step.per.per in FROM_FACTS else _of_pieces(step.per)
    if step.during is not None:
        words = f"{words}, while it runs" if words else "While it runs"
    return words


def _of_pieces(per: Frequency) -> str:
    one = {"pieces": f"{per.n} pieces"}.get(per.per, per.per)
    if per.count == 1:
        return f"Every {one}"
    return f"{int(per.count)} times {'per' if per.per == 'pieces' else 'a'} {one}"


def _of_lot(per: Frequency, shares: Sequence[Fraction]) -> str:
    """`At each new bobbin (about every 13 pieces)`; `Every sheet (20 pieces)`, whose number was typed."""
    every = sorted({_number(per.count / share) for share in shares if share > 0})
    ends = [show_number(one, 0 if one >= 10 or one.denominator == 1 else 1) for one in (*every[:1], *every[-1:])]
    number = " to ".join(dict.fromkeys(ends))
    if per.per == "sheet":
        words, pieces = _of_pieces(per), f" ({number} pieces)"
    else:
        words = f"At each new {per.per}" if per.count == 1 else f"{int(per.count)} times at each new {per.per}"
        pieces = f" (about every {'piece' if number == '1' else f'{number} pieces'})"
    return words + (pieces if number else "")


def _number(pieces: Fraction) -> Fraction:
    """To two digits above a hundred: nobody counts to 5 746 to change a cone."""
    if pieces < 100 or (pieces.denominator == 1 and pieces < 1000):
        return pieces
    scale = Fraction(10) ** (len(str(int(pieces))) - 2)
    return round(pieces / scale) * scale


def pieces_an_hour(time: OperationTime | None, pieces: int) -> str:
    """What one place can give: limited by labour or by the time its machine is held, whichever is more."""
    longest = max(time.labour_min, time.machine_min) if time is not None else 0.0
    return show_number(60 * pieces / longest, 0) if longest else ""


def seconds_words(time: StepTime | None) -> str:
    if time is None:
        return ""
    words = show_seconds(time.total_s)
    if time.share in (0, 1):
        return words
    if time.share.denominator < _PLAIN:
        return f"{words}, {time.share.numerator} in {time.share.denominator}"
    return f"{words}, 1 in {show_number(1 / time.share, 1)}"


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
    if line.run_share < 1:
        words.append(f"{show_percent(line.run_share, 0)} of the run by cut length")
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
