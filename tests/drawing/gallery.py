"""Everything that can be drawn, by kind: what the gallery page shows and the checker of figures looks at."""

from __future__ import annotations

from collections.abc import Iterator

from builder.view import FigureView
from tests.drawing.figures import GALLERY


def gallery() -> Iterator[tuple[str, list[FigureView]]]:
    """Headings with their figures."""
    yield "Features on a flat part", [make() for make in GALLERY]
