"""Which maker draws which kind of picture beside a step's part; each is a file of its own."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from builder.geometry import ShapeBook
from builder.model import ShownKind, Step
from builder.view.details import DetailAsk, Maker
from builder.view.exploded import layers_figure
from builder.view.figures import Studio
from builder.view.nest import nest_figure
from builder.view.panel import panel_figure
from builder.view.panel_view import AnyFigure
from builder.view.scene import Work
from builder.view.section import section_figure
from builder.view.stitch import stitch_figure

MAKERS: Mapping[ShownKind, Maker] = {
    "layers": layers_figure,
    "nest": nest_figure,
    "section": section_figure,
    "settings": panel_figure,
    "stitch": stitch_figure,
}


def details(step: Step, stem: str, studio: Studio, book: ShapeBook, work: Work, text_mm: float) -> Iterator[AnyFigure]:
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
