"""Panels of settings: band and pointer lie where the values lie, texts apart from each other."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from builder.drawing import draw
from builder.view import PanelRow, PanelView, Span
from tests.drawing.gallery_panels import SEWING


def panel(*rows: PanelRow) -> PanelView:
    return PanelView("p", "Settings: lockstitch", rows, (), "Lockstitch is set.")


def test_texts_of_a_panel_keep_apart() -> None:
    drawing = draw(panel(*SEWING))
    assert drawing.problems == ()
    boxes = [text.box for text in drawing.texts]
    for a, b in combinations(boxes, 2):
        assert a.x1 <= b.x0 or b.x1 <= a.x0 or a.y1 <= b.y0 + 0.3 or b.y1 <= a.y0 + 0.3
    assert all(box.y1 < drawing.height_mm for box in boxes)


@given(st.floats(0, 1), st.floats(0, 1), st.floats(0, 1))
def test_the_pointer_stands_between_the_ends(one: float, two: float, three: float) -> None:
    """Left of the pointer lies the share of the track that the value has of its range."""
    least, value, most = sorted((one, two, three))
    span = Span(100, 300, 100 + 200 * value, 100 + 200 * least, 100 + 200 * most, "low", "high")
    svg = draw(panel(PanelRow("tension", "x", "", span))).svg
    track = svg.split("<rect")[2]
    left, width = (float(track.split(f'{name}="')[1].split('"')[0]) for name in ("x", "width"))
    tip = float(svg.rsplit('<path d="M', 1)[1].split(" ")[0])
    assert abs(tip - (left + width * value)) < 0.01


def test_a_text_too_long_for_the_panel_is_told() -> None:
    assert draw(panel(PanelRow("guide", "x" * 90))).problems
