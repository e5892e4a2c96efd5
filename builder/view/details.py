"""Pictures that explain one thing of a step, beside the part as it stands: which maker draws which kind.

A maker is a function of a `DetailAsk`; it returns None where there is nothing to show. Each is a file of its own.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from builder.geometry import ShapeBook
from builder.model import Shown, ShownKind, Step
from builder.view.figure import FigureView
from builder.view.figures import Studio
from builder.view.scene import Work
from builder.view.stitch import stitch_figure


@dataclass(frozen=True, slots=True)
class DetailAsk:
    """What a picture is asked for.

    shown  : the kind and the name typed
    name   : of the figure, unique in the plant
    studio : dimensions and values of the size drawn, and the stitches of all seams
    work   : what the operation makes, step by step; `step` is the one it is for
    size   : printed width, most height and capital height, mm
    """

    shown: Shown
    name: str
    studio: Studio
    book: ShapeBook
    work: Work
    step: Step
    size: tuple[float, float, float]


Maker = Callable[[DetailAsk], FigureView | None]

MAKERS: Mapping[ShownKind, Maker] = {"stitch": stitch_figure}


def details(step: Step, stem: str, studio: Studio, book: ShapeBook, work: Work, text_mm: float) -> Iterator[FigureView]:
    """The pictures a step shows beside its part, in the order typed."""
    for number, shown in enumerate(step.pictures, start=1):
        maker = MAKERS.get(shown.kind)
        if maker is None:
            continue
        figure = maker(
            DetailAsk(shown, f"{stem}-{shown.kind}-{number}", studio, book, work, step, (98.0, 62.0, text_mm))
        )
        if figure is not None:
            yield figure
