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
    phrase,
    say,
    show_number,
    show_percent,
    show_seconds,
)

_PLAIN = 2000
"""A share with a larger denominator was calculated, and is shown as once in so many."""

_SOURCES = {
    "study": phrase("readings"),
    "element": phrase("element table"),
    "estimate": phrase("estimate"),
    "model": phrase("machine model"),
    "carried over": phrase("carried over from other conditions"),
    "stale": phrase("readings of other work"),
    "none": phrase("none"),
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
        words = say("{often}, while it runs", often=words) if words else say("While it runs")
    return words


def _of_pieces(per: Frequency) -> str:
    one = say("{count} pieces", count=per.n) if per.per == "pieces" else say(per.per)
    if per.count == 1:
        return say("Every {lot}", lot=one)
    if per.per == "pieces":
        return say("{times} times per {lot}", times=int(per.count), lot=one)
    return say("{times} times a {lot}", times=int(per.count), lot=one)


def _of_lot(per: Frequency, shares: Sequence[Fraction]) -> str:
    """`At each new bobbin (about every 13 pieces)`; `Every sheet (20 pieces)`, whose number was typed."""
    every = sorted({_number(per.count / share) for share in shares if share > 0})
    ends = [show_number(one, 0 if one >= 10 or one.denominator == 1 else 1) for one in (*every[:1], *every[-1:])]
    ends = list(dict.fromkeys(ends))
    number = ends[0] if len(ends) == 1 else say("{low} to {high}", low=ends[0], high=ends[1]) if ends else ""
    if per.per == "sheet":
        words, pieces = _of_pieces(per), say("{count} pieces", count=number)
    else:
        words = say("At each new {lot}", lot=say(per.per))
        if per.count != 1:
            words = say("{times} times at each new {lot}", times=int(per.count), lot=say(per.per))
        pieces = say("about every piece") if number == "1" else say("about every {count} pieces", count=number)
    return f"{words} ({pieces})" if number else words


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
        return say("{time}, {times} in {pieces}", time=words, times=time.share.numerator, pieces=time.share.denominator)
    return say("{time}, {times} in {pieces}", time=words, times=1, pieces=show_number(1 / time.share, 1))


def step_source(time: StepTime | None) -> str:
    if time is None:
        return ""
    words = " + ".join(source_words(one) for one in time.source.split(" + "))
    return f"{time.readings} {words}" if time.readings else words


def source_words(source: str) -> str:
    """A source of time in words."""
    return say(_SOURCES[source])


def origin_words(line: RouteLine, time: OperationTime | None) -> str:
    """Where an operation's time comes from, surest first: readings, element table, machine model, estimates."""
    if time is None:
        return ""
    readings = sum(step.readings for step in time.steps)
    found = {one for step in time.steps for one in step.source.split(" + ")}
    words = [say("{count} readings", count=readings)] if readings else []
    words += [source_words(one) for one in ("carried over", "stale", "element", "model") if one in found]
    if line.run_share < 1:
        words.append(say("{share} of the run by cut length", share=show_percent(line.run_share, 0)))
    if line.estimate_share > 0:
        words.append(say("{share} estimated", share=show_percent(line.estimate_share, 0)))
    return ", ".join(words)


def time_source_words(source: str, model: PlantModel) -> str:
    """A source of time, as the interval of a product names it, in words."""
    kind, _, name = source.partition(":")
    operation, _, step = name.partition("/")
    if kind == "study":
        return say("readings of {operation}, step {step}", operation=operation, step=step)
    if kind == "estimate":
        return say("estimate of {operation}, step {step}", operation=operation, step=step)
    if kind == "element":
        return say("element {name}", name=model.elements[name].title if name in model.elements else name)
    if kind == "model":
        return say("machine model of {station}", station=model.stations[name].title if name in model.stations else name)
    return {"allowances": say("allowances"), "ratings": say("ratings, all observers alike")}[kind]
