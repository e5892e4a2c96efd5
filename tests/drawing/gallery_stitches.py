"""Close-ups of every stitch type drawn, for the gallery: fictional settings, nothing of a plant.

`python -m tests.drawing.gallery_stitches FOLDER` writes them as SVG.
"""

from __future__ import annotations

import sys
from pathlib import Path

from builder.drawing import draw_figure
from builder.geometry import STITCHES_DRAWN
from builder.model import parse_quantity, read_settings
from builder.view import FigureView
from builder.view.stitch import Sewn, close_up

SETTINGS = {
    "stitch length": "3.2 mm ± 0.2",
    "needle": "Nm 110 R",
    "top tension": "1.4 N ± 0.2",
    "bobbin tension": "0.25 N ± 0.05",
}
PAPER = (98.0, 62.0, 2.8)
THREAD = "Bonded nylon thread, tex 70"


def sewn(stitch: str, typed: dict[str, str] = SETTINGS) -> Sewn:
    """A stitch with settings as an operation types them."""
    settings, faults = read_settings({**typed, "stitch": stitch}, "lockstitch", {})
    assert not faults
    return Sewn(stitch, settings, {"needle": THREAD, "bobbin": THREAD}, "mm")


def tack() -> Sewn:
    """A bartack of 28 stitches, 12 by 2.5 mm."""
    size = [parse_quantity(text, "length") for text in ("12 mm", "2.5 mm")]
    one = sewn("304", {key: text for key, text in SETTINGS.items() if key != "stitch length"})
    return Sewn(one.stitch, one.settings, one.threads, one.units, (size[0], size[1], 28))


def stitch_gallery() -> list[FigureView]:
    """All types, and a bartack."""
    return [
        *(close_up(sewn(one), f"stitch-{one}", PAPER) for one in STITCHES_DRAWN),
        close_up(tack(), "bartack", PAPER),
    ]


if __name__ == "__main__":
    for view in stitch_gallery():
        Path(sys.argv[1], f"{view.name}.svg").write_text(draw_figure(view), encoding="utf-8")
