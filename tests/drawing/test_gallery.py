"""The gallery: every kind of figure as a file, to be looked at.

With SEAMBOARD_GALLERY set to a folder the files stay there.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from builder.drawing import draw_figure, png_of, raster_available
from tests.drawing.figures import GALLERY


@pytest.fixture
def gallery(tmp_path: Path) -> Path:
    """Where the gallery goes."""
    folder = Path(os.environ.get("SEAMBOARD_GALLERY", tmp_path))
    folder.mkdir(parents=True, exist_ok=True)
    return folder


def test_the_gallery_is_written(gallery: Path) -> None:
    """At least ten kinds of figure, each its own file, and each a picture where PNGs can be made."""
    for make in GALLERY:
        view = make()
        svg = draw_figure(view)
        (gallery / f"{view.name}.svg").write_text(svg, encoding="utf-8")
        if raster_available():
            (gallery / f"{view.name}.png").write_bytes(png_of(svg, 760))
    assert len(list(gallery.glob("*.svg"))) >= 10
    if raster_available():
        assert all(path.stat().st_size > 2000 for path in gallery.glob("*.png"))
