"""Figures of pleats, darts, zips, elastic and seams beside something, made by the view room from the small panel."""

from __future__ import annotations

from collections.abc import Iterator

from builder.view import FigureView
from tests.drawing.panel_figure import panel_figure

GOODS = """
materials/shaping.yaml:
  materials:
    zip-5-black: {title: Zip, form: zip, width: 32 mm, composition: [polyester]}
    elastic-20: {title: Elastic, form: tape, width: 20 mm, composition: [polyester]}
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 120 mm, height: 80 mm}}}
"""

KNIFE = """
    pleats: {pleat: 12 mm, at: {left: 60 mm}, count: 3, pitch: 70 mm}
"""
BOXES = """
    box-pleat: {pleat: 14 mm, kind: box, at: {left: 30 mm}, length: 130 mm}
    inverted: {pleat: 14 mm, kind: inverted, at: {left: 190 mm, top: 0 mm}, length: 120 mm, label: inverted pleat}
"""
DARTS = """
    dart-left: {dart: 24 mm, depth: 90 mm, edge: bottom, at: {left: 90 mm}, label: dart}
    dart-right: {dart: 24 mm, depth: 90 mm, edge: bottom, at: {right: 90 mm}, label: dart}
"""
ZIPS = """
    front-zip: {zip: zip-5-black, along: top, inset: 50 mm, length: 220 mm, ends: 12 mm, label: zip}
    side-zip: {zip: zip-5-black, points: [{left: 40 mm, bottom: 50 mm}, {right: 60 mm, bottom: 50 mm}],
      slider: middle, open: yes, ends: 12 mm}
"""
ELASTIC = """
    waist: {elastic: elastic-20, along: bottom, inset: 30 mm, start gap: 30 mm, length: 240 mm, relaxed: 180 mm,
      label: elastic}
"""
BESIDE = """
    pocket: {strip: patch, at: {left: 60 mm, bottom: 40 mm}}
    pocket-edge: {seam: along, of: pocket, off: 3 mm, sides: [left, bottom, right]}
    zip: {zip: zip-5-black, along: top, inset: 40 mm, length: 200 mm, ends: 12 mm}
    zip-low: {seam: along, of: zip, off: 3 mm, sides: [bottom]}
    zip-high: {seam: along, of: zip, off: 3 mm, sides: [top]}
"""


def made(name: str, text: str, now: tuple[str, ...] = (), size: tuple[float, float] = (98.0, 72.0)) -> FigureView:
    """The panel with features worked now: all typed, or those named, the others before."""
    return panel_figure(name, text, now, size, GOODS)


def shaping_figures() -> Iterator[FigureView]:
    """One of each, worked now; pleats, darts and zips also as earlier work."""
    yield made("knife-pleats", KNIFE)
    yield made("box-pleats", BOXES)
    yield made("darts", DARTS, ("dart-right",))
    yield made("zips", ZIPS, ("front-zip",))
    yield made("open-zip", ZIPS, ("side-zip",))
    yield made("elastic-band", ELASTIC)
    yield made("pocket-edge-stitching", BESIDE, ("pocket-edge",))
    yield made("zip-seams", BESIDE, ("zip-low", "zip-high"))
    yield made(
        "all-earlier",
        KNIFE
        + "    waist: {elastic: elastic-20, along: bottom, inset: 30 mm, relaxed: 180 mm}\n"
        + "    a: {hole: 9 mm, at: {left: 20 mm, top: 30 mm}}\n",
        ("a",),
    )
