"""Figures of slots, grids, hardware, labels and notches, made by the view room from the small plant's panel."""

from __future__ import annotations

from collections.abc import Iterator

from builder.view import FigureView
from tests.drawing.panel_figure import panel_figure

GRIDS = """
    vents: {slot: 16 mm, width: 4 mm, turn: 30 deg, at: {left: 110 mm, bottom: 60 mm}, count: 4, pitch: 25 mm,
      rows: 3, row pitch: 20 mm, stagger: 12.5 mm, label: vents}
    cord-holes: {hole: 6 mm, at: {left: 30 mm, bottom: 55 mm}, count: 3, pitch: 25 mm, angle: 60 deg}
    pocket-marks: {drill hole: 1 mm, at: {right: 40 mm, bottom: 50 mm}, count: 2, pitch: 60 mm, direction: up}
"""

HARDWARE = """
    eyelets: {hardware: snap, look: eyelet, diameter: 19 mm, inner: 10 mm, at: {left: 40 mm, bottom: 60 mm}, count: 3,
      pitch: 32 mm, label: eyelet}
    snaps: {hardware: snap, look: snap, diameter: 15 mm, at: {left: 150 mm, bottom: 50 mm}, count: 2, pitch: 40 mm,
      rows: 2, row pitch: 60 mm, label: snap}
    rivets: {hardware: snap, look: rivet, diameter: 9 mm, at: {left: 40 mm, bottom: 120 mm}, count: 4, pitch: 25 mm,
      label: rivet}
    slider: {hardware: snap, look: buckle, width: 46 mm, height: 28 mm, label: buckle,
      at: {from: snaps, right of: 50 mm, middle: 0 mm}}
"""

LABELS = """
    brand: {tag: snap, width: 60 mm, height: 24 mm, at: {left: 30 mm, top: 60 mm}, folded: ends, text: THORNQUAY}
    care: {tag: snap, width: 20 mm, height: 45 mm, in: bottom, at: {left: 60 mm}, overhang: 5 mm, folded: centre,
      text: M, label: care label}
    size: {tag: snap, width: 30 mm, height: 12 mm, in: right, at: {bottom: 60 mm}, overhang: 9 mm, folded: centre,
      text: SIZE M, label: size label}
    corner-tacks: {bartack: 28, length: 12 mm, width: 2.5 mm, turn: 45 deg, stands: across,
      at: {from: brand, right of: 20 mm, bottom: 0 mm}, count: 2, pitch: 40 mm, label: bartack}
"""

NOTCHES = """
    slit: {notch: bottom, cut: slit, at: {left: 60 mm}}
    castle: {notch: bottom, cut: castle, at: {left: 150 mm}}
    vee: {notch: bottom, at: {left: 240 mm}}
"""


def made(name: str, text: str, window: tuple[str, ...] = ()) -> FigureView:
    """The panel with features worked now: all typed, or those named."""
    return panel_figure(name, text, window, (150.0, 110.0), others=False)


def array_figures() -> Iterator[FigureView]:
    """All of them."""
    yield made("slots-and-grids", GRIDS)
    yield made("one-grid", GRIDS, ("vents",))
    yield made("hardware", HARDWARE)
    yield made("hardware-beside", HARDWARE, ("slider",))
    yield made("labels", LABELS)
    yield made("tacks-beside", LABELS, ("corner-tacks",))
    yield made("notches", NOTCHES)
