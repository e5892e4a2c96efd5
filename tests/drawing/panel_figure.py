"""A figure of the small plant's panel with typed features, made by the view room."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

from builder.geometry import ShapeBook
from builder.view import FigureView
from builder.view.asking import Ask
from builder.view.figures import Studio
from tests.plants import linked


def panel_figure(
    name: str,
    text: str,
    now: tuple[str, ...] = (),
    size: tuple[float, float] = (98.0, 72.0),
    goods: str = "",
    others: bool = True,
) -> FigureView:
    """The panel with features worked now: all typed, or those named.

    goods  : what else the plant has, as an overlay
    others : the features not worked now are there already; without, they are still to come
    """
    with TemporaryDirectory() as folder:
        found = linked(f"{goods}parts/panel.yaml:\n  features:{text}", Path(folder))
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    shape = book.shape("panel", found.dimensions.values)
    assert not book.faults, book.faults
    assert shape is not None
    studio = Studio(found.model, found.dimensions, found.dimensions.values, frozenset(), {})
    typed = [one.strip().partition(":")[0] for one in text.splitlines() if one.startswith("    ") and one[4] != " "]
    working = frozenset(("panel", one) for one in (now or typed))
    before = frozenset(("panel", one) for one in typed) - working if others else frozenset()
    ask = Ask(name, name.replace("-", " "), "panel", before, working, size=(*size, 2.8))
    return studio.figure(ask, shape)
