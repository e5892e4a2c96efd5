"""Training sheets as PDF: the view through the theme's `training.typ`, one sheet or a booklet of many."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from builder.model import say
from builder.rendering.card_words import training_words
from builder.rendering.sheet import SheetPress, day_of
from builder.rendering.sheet_data import Json, Pens, sheet_data
from builder.rendering.sheet_text import SheetText

if TYPE_CHECKING:
    from builder.view import TrainingView

TRAINING_ENTRY = "training.typ"
"""The theme's file that sets training sheets."""


def render_training(
    views: Iterable[TrainingView], press: SheetPress, title: str = "", *, duplex: bool = False
) -> bytes:
    """Training sheets as one tagged PDF (PDF/UA-1); with a title, a contents page before them.

    title  : of the contents page and the file, a station's or a product's; '' for one sheet alone
    duplex : to print on both sides: each sheet begins on the front of a leaf
    Raises ValueError without a sheet, SheetFault when the typesetter refuses.
    """
    kept = list(views)
    if not kept:
        raise ValueError("nothing to train")
    return press.press(
        training_document(kept, press.pens, title, duplex=duplex), max(day_of(one.sheet.date) for one in kept)
    )


def training_document(views: Sequence[TrainingView], pens: Pens, title: str, *, duplex: bool = False) -> Json:
    """Everything the template prints of training sheets."""
    first = views[0].sheet
    alone = say("Training sheet {code} {title}", code=first.code, title=first.title)
    return {
        "title": title or alone,
        "author": first.plant,
        "keywords": [word for view in views for word in (view.sheet.code, view.sheet.tag) if word],
        "words": {**pens.words, **training_words()},
        "contents": bool(title),
        "duplex": duplex,
        "sheets": [_training(view, pens) for view in views],
    }


def _training(view: TrainingView, pens: Pens) -> Json:
    """The sheet's own data with its steps' small figures, and what the training adds."""
    steps = (replace(one.step, figure=one.figure, details=(), photos=(), sizes=()) for one in view.steps)
    brand = replace(view.sheet.brand, logo=None) if view.sheet.brand is not None else None  # no pictures are kept here
    data = sheet_data(replace(view.sheet, steps=tuple(steps), brand=brand), {}, pens)
    for step, one in zip(data["steps"], view.steps, strict=True):
        step |= {"seconds": pens.text(one.seconds, bold=True), "estimated": one.estimated}
    place = (say("Training sheet"), view.sheet.station_title, ", ".join(view.sheet.products))
    return {
        **data,
        "place": pens.text(" · ".join(filter(None, place))),
        "output": [_pair(name, value, pens) for name, value in view.minutes],
        "gauges": [pens.text(one) for one in view.gauges],
        "lessons": [{"name": pens.text(name, bold=True), "how": pens.text(how)} for name, how in view.lessons],
        "alone": [pens.text(one) for one in view.alone],
        "pace": pens.text(view.pace),
    }


def _pair(name: str, value: str, pens: Pens) -> dict[str, SheetText]:
    return {"name": pens.text(name), "value": pens.text(value, bold=True), "other": pens.text("")}
