"""A poster: one step of an operation as a sheet of its own, laid out for a reader farther away and a larger paper."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import partial
from typing import Any

from builder.geometry import ShapeBook
from builder.model import PAPER_MM, SHEET_EDGE_MM, Dimensions, PlantModel, Quantity, Results
from builder.view.figure import FigureView
from builder.view.sheet import SheetView
from builder.view.sheets import SheetMaker

_LETTERS = 0.45  # of a figure, over those of the action line


def poster_of(
    model: PlantModel,
    dimensions: Dimensions,
    book: ShapeBook,
    results: Results,
    usable: frozenset[str],
    photo_sizes: Mapping[str, tuple[int, int]],
    operation: str,
    step: str,
    distance: Quantity,
    paper: str,
) -> SheetView:
    """The sheet of an operation with one of its steps, and nothing that is read close by.

    Its letters and its figure are those of the distance and the paper; its code is that of the operation's sheet.
    Raises KeyError for a step the operation hasn't got.
    """
    station = model.operations[operation].station
    far = model.stations[station].model_copy(update={"distance": distance, "paper": paper})
    own = replace(model, stations={**model.stations, station: far}, memo={})
    _, view = next(iter(SheetMaker(own, dimensions, book, results, usable, photo_sizes).sheets(operation)))
    found = [one for one in view.steps if one.name == step]
    if not found:
        raise KeyError(step)
    width, height = PAPER_MM[paper]
    room = (width / 2, height * 0.6) if width > height else (width - 2 * SHEET_EDGE_MM, height * 0.4)
    large = partial(_laid_out, room=room, letters=_LETTERS * view.capital_mm)
    details = tuple(large(one) for one in found[0].details[:1])
    return replace(
        view,
        steps=(replace(found[0], why="", figure=large(found[0].figure), details=details),),
        settings=(),
        measures=(),
        faults=(),
        notices=(),
        protection=(),
        sizes=(),
        colours=(),
        incoming=(),
        outgoing=(),
        picture=None,
    )


def _laid_out(figure: Any, room: tuple[float, float], letters: float) -> Any:
    """A figure for the room it has. Its words are half as high as the action: they name what is pointed at."""
    if not isinstance(figure, FigureView):
        return figure
    strong = tuple(line for line in figure.dimensions if line.strong)
    return replace(figure, width_mm=room[0], height_mm=room[1], text_mm=letters, dimensions=strong or figure.dimensions)
