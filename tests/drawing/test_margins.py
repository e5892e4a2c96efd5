"""Space kept free round the part."""

from __future__ import annotations

from dataclasses import replace

import pytest

from builder.drawing import look
from builder.drawing.box import Box
from builder.drawing.font import Lettering
from builder.drawing.layout import lay_out
from builder.drawing.margins import Margins, estimated, frame_within, used
from builder.model import ATKINSON
from builder.view import Callout, DimensionLine, FigureView
from tests.drawing.figures import PANEL, figure

LETTERING = Lettering(ATKINSON, 2.8)
PLAIN = figure("plain", [PANEL], (0, 0, 310, 155))
PAPER = Box(0, 0, PLAIN.width_mm, PLAIN.height_mm)
BELOW = DimensionLine((0.0, 0.0), (310.0, 0.0), (0.0, -1.0), "310 mm (12.2 in)")
FAR_IN = DimensionLine((10.0, 150.0), (40.0, 150.0), (0.0, -1.0), "30 mm (1.18 in)")


def margins_of(view: FigureView, wary: bool = False) -> Margins:
    """Estimated for a figure on its paper."""
    return estimated(view, LETTERING, PAPER, wary)


def test_only_a_ring_over_the_edge_asks_for_room_on_its_side() -> None:
    """One in the middle asks for none."""
    least = margins_of(PLAIN)
    assert margins_of(replace(PLAIN, ring=((150.0, 80.0),))) == least
    over = margins_of(replace(PLAIN, ring=((0.0, 80.0),)))
    assert over.left == pytest.approx(look.RING_RADIUS + look.RING / 2 + look.PAD)
    assert (over.top, over.right, over.bottom) == (least.top, least.right, least.bottom)


def test_a_dimension_asks_for_room_on_its_side_unless_it_can_stand_inside() -> None:
    """A wary estimate keeps the room all the same."""
    view = replace(PLAIN, dimensions=(BELOW,))
    assert margins_of(view).bottom > margins_of(PLAIN).bottom + LETTERING.cap_mm
    inside = replace(PLAIN, dimensions=(FAR_IN,))
    assert margins_of(inside).bottom == margins_of(PLAIN).bottom
    assert margins_of(inside, wary=True).bottom == margins_of(view).bottom


def test_the_estimate_suffices_for_a_dimension_below_the_part() -> None:
    """So that one layout is enough."""
    view = replace(PLAIN, dimensions=(BELOW,))
    layout = lay_out(view, frame_within(view, margins_of(view), PAPER), PAPER, LETTERING)
    assert layout.clear
    assert used(view, layout, margins_of(view), LETTERING, PAPER).bottom <= margins_of(view).bottom + 1e-9


def test_more_room_is_kept_where_a_label_found_none() -> None:
    """On every side, a text line each."""
    notes = tuple(Callout((10.0 + i, 20.0), f"a long label with number {i} in it") for i in range(40))
    view = replace(PLAIN, callouts=notes)
    before = margins_of(view)
    layout = lay_out(view, frame_within(view, before, PAPER), PAPER, LETTERING)
    assert layout.problems
    after = used(view, layout, before, LETTERING, PAPER)
    assert all(now >= old + LETTERING.pitch for now, old in zip(after.sides, before.sides, strict=True))


def test_the_part_keeps_its_share_of_the_paper() -> None:
    """However much the labels ask for, and it stays on the paper."""
    frame = frame_within(PLAIN, Margins(80, 40, 80, 40), PAPER)
    assert frame.box.width >= 0.37 * PAPER.width or frame.box.height >= 0.37 * PAPER.height
    assert frame.box.inside(PAPER)
