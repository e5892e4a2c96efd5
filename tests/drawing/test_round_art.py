"""Holes, hardware, labels and notches on paper."""

from __future__ import annotations

import math
import re

import pytest

from builder.drawing import draw, look
from builder.drawing.area import Area
from builder.drawing.box import Box
from builder.drawing.field import Field
from builder.drawing.font import Lettering
from builder.drawing.frame import Frame
from builder.drawing.notch import cut_of, notched
from builder.drawing.round_art import drilled, hardware, holed
from builder.drawing.run import Run, run_of
from builder.drawing.tag_art import tag_ways
from builder.model import ATKINSON
from tests.drawing.array_figures import LABELS, NOTCHES, array_figures, made
from tests.drawing.figures import circle, line_of, rectangle

FRAME = Frame((0, 0, 100, 100), 1.0, 0.0, 0.0)
LETTERING = Lettering(ATKINSON, 2.8)


def radii(art: str) -> list[float]:
    """Radii of the circles drawn."""
    return [float(one) for one in re.findall(r' r="([0-9.]+)"', art)]


def on_paper(*segments) -> list[Run]:  # type: ignore[no-untyped-def]
    """Segments at full size."""
    return [run_of(one, FRAME) for one in segments]


@pytest.mark.parametrize("radius", [1.2, 3.0, 10.0])
def test_a_hole_is_drawn_at_its_size(radius: float) -> None:
    """Where the scale lets it be seen; labels keep off it and no more."""
    art, box = holed((50, 50), radius, look.INK, 0.35)
    assert radii(art) == [radius]
    assert box.width == pytest.approx(2 * radius)


def test_a_hole_too_small_is_drawn_as_the_drill_hole() -> None:
    """Circle and cross of the least size."""
    assert holed((50, 50), 0.2, look.INK, 0.35) == drilled((50, 50), 0.2, look.INK, 0.35)
    assert radii(drilled((50, 50), 0.2, look.INK, 0.35)[0]) == [look.HOLE_RADIUS]


def test_an_eyelet_is_a_ring_with_its_opening() -> None:
    """Both true to scale; the opening keeps its share where the whole is drawn larger."""
    ring = on_paper(*circle((50, 50), 9.5))
    assert radii(hardware(ring, "eyelet", 10.0, look.INK, 0.45)[0]) == pytest.approx([9.5, 5.0], abs=0.05)
    small = on_paper(*circle((50, 50), 0.5))
    outer, inner = radii(hardware(small, "eyelet", 0.5, look.INK, 0.45)[0])
    assert outer == look.HARDWARE_RADIUS
    assert inner == pytest.approx(look.HARDWARE_RADIUS / 2, abs=0.05)


def test_each_look_is_told_from_the_others() -> None:
    """In black and white too: by rings, dots and fills, not by colour."""
    ring = on_paper(*circle((50, 50), 6))
    drawn = {kind: hardware(ring, kind, 0.0, look.INK, 0.45)[0] for kind in ("", "eyelet", "snap", "rivet", "buckle")}
    assert len(set(drawn.values())) == 5
    assert [len(radii(drawn[kind])) for kind in ("", "eyelet", "snap", "rivet")] == [1, 2, 2, 2]


def test_a_buckle_keeps_its_shape_and_has_a_bar() -> None:
    """Across its long sides, wherever it is turned."""
    art, box = hardware(on_paper(*rectangle(20, 30, 40, 20)), "buckle", 0.0, look.INK, 0.45)
    assert "M40 70L40 50" in art or "M40 50L40 70" in art
    assert box.width == pytest.approx(41.3)


@pytest.mark.parametrize(
    ("kind", "points", "corners"), [("slit", ((50, 0), (50, 5)), 3), ("castle", None, 4), ("", None, 3)]
)
def test_a_notch_opens_the_edge_as_it_is_cut(
    kind: str, points: tuple[tuple[float, float], ...] | None, corners: int
) -> None:
    """The edge goes in and out again, as deep as the notch."""
    castle = ((47.5, 0), (47.5, 5), (52.5, 5), (52.5, 0))
    path = line_of(*(points or (castle if kind == "castle" else ((47.5, 0), (50, 5), (52.5, 0)))))
    edge = on_paper(*line_of((0, 0), (100, 0)))
    cut = cut_of(on_paper(*path), "now", edge, kind)
    assert len(cut.v) == corners
    pieces, done = notched(edge[0], [cut])
    assert done == [cut]
    assert len(pieces) == corners + 1
    assert min(point[1] for piece in pieces for point in piece.points) == pytest.approx(95)
    assert math.dist(pieces[0].start, edge[0].start) < 1e-9


def test_small_notches_are_drawn_large_enough() -> None:
    """A slit or a castle of 0.5 mm printed is drawn as deep as a V is."""
    edge = on_paper(*line_of((0, 0), (100, 0)))
    slit = cut_of(on_paper(*line_of((50, 0), (50, 0.5))), "now", edge, "slit")
    castle = cut_of(on_paper(*line_of((49.9, 0), (49.9, 0.5), (50.1, 0.5), (50.1, 0))), "now", edge, "castle")
    for cut in (slit, castle):
        assert math.dist(cut.mouth, (cut.mouth[0], cut.v[1][1])) == pytest.approx(look.NOTCH_DEPTH)


def test_words_stand_in_their_label_level_or_upward_or_not_at_all() -> None:
    """Never smaller than other text."""
    field = Field(Box(0, 0, 100, 100), [], [])
    width = LETTERING.width("THORNQUAY", False)
    for label, turned in ((Box(20, 20, 22 + width, 30), False), (Box(20, 20, 30, 22 + width), True)):
        (_, way), *_ = tag_ways("THORNQUAY", label, LETTERING, field)
        assert way.art().texts[0].turned == turned  # type: ignore[union-attr]
        assert Area(label.corners()).holds_box(way.box)  # type: ignore[union-attr]
    assert not list(tag_ways("THORNQUAY", Box(20, 20, 20 + width, 30), LETTERING, field))


def test_a_label_says_its_words_on_the_sheet() -> None:
    """The wide one does; the small one, which they don't fit in, is named beside it alone."""
    texts = [one.text for one in draw(made("labels", LABELS)).texts]
    assert "THORNQUAY" in texts
    assert "SIZE M" not in texts
    assert {"brand", "size label", "care label"} <= set(texts)


def test_all_figures_of_arrays_are_drawn_without_a_problem() -> None:
    """And those of notches differ from one another by their cut."""
    assert [drawing.problems for drawing in map(draw, array_figures())] == [()] * 7
    cuts = {made("cut", NOTCHES.replace("cut: slit", f"cut: {cut}")).strokes for cut in ("v", "slit", "castle")}
    assert (
        len({draw(made("cut", NOTCHES.replace("cut: slit", f"cut: {cut}"))).svg for cut in ("v", "slit", "castle")})
        == 3
    )
    assert len(cuts) == 3
