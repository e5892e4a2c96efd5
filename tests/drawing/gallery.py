"""Everything that can be drawn, by kind: what the gallery page shows and the checker of figures looks at."""

from __future__ import annotations

from collections.abc import Iterator

from builder.view import AnyFigure
from tests.drawing.array_figures import array_figures
from tests.drawing.figures import GALLERY
from tests.drawing.gallery_assemblies import assembly_gallery
from tests.drawing.gallery_layers import layers_gallery
from tests.drawing.gallery_panels import panel_gallery
from tests.drawing.gallery_sections import section_gallery
from tests.drawing.gallery_stitches import stitch_gallery
from tests.drawing.shaping_figures import shaping_figures


def gallery() -> Iterator[tuple[str, list[AnyFigure]]]:
    """Headings with their figures."""
    yield "Features on a flat part", [make() for make in GALLERY]
    yield "Slots, grids, hardware, labels and notches", [*array_figures()]
    yield "Pleats, darts, zips, elastic, seams beside them", [*shaping_figures()]
    yield "Sections across seams", [*section_gallery()]
    yield "Stitches close up", [*stitch_gallery()]
    yield "Assemblies taken apart, and nests", [*layers_gallery()]
    yield "Folded, turned and nested", [*assembly_gallery()]
    yield "Settings of machines", [*panel_gallery()]
