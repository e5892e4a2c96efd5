"""Figures of outlines: the centre line of a mirrored piece, allowances beside a seam, the line that is typed."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.geometry import PartShape
from builder.pipeline import check_plant, plant_views_of
from builder.view import PlantViews
from builder.view.dimension_line import dimension_points
from tests.checking.overlay import lay_over
from tests.geometry.test_outline_shape import panel

FLAP = """
parts/flap.yaml:
  part: flap
  title: Flap
  material: cloth
  outline:
    half:
      - {x: 0 mm, y: 0 mm, edge: bottom}
      - {x: 70 mm, y: 0 mm, edge: side-right, bow: -4 mm}
      - {x: 90 mm, y: 130 mm, edge: top}
      - {x: 0 mm, y: 130 mm}
    allowance: {all: 8 mm, top: 20 mm}
    typed: seam line
  features:
    mid-notch: {notch: top, at: {centre: 0 mm}, depth: 4 mm}
    edge-seam: {seam: [side-right, top]}
operations/cut-flap.yaml:
  operation: cut-flap
  title: Cut the flap
  code: CUT-20
  station: laser
  makes: flap
  settings: {speed: 200 mm/s, power: 40 %, focus: 3 mm}
  steps: [{step: cut, cut: flap, do: Close the lid and start.}]
operations/sew-flap.yaml:
  operation: sew-flap
  title: Sew the flap
  code: SEW-20
  station: lockstitch
  needs: {flap: 1}
  makes: flap-sewn
  settings: {stitch: 301, stitch length: 3 mm, thread: thread-70, needle: Nm 100 R}
  steps: [{step: one, sew: edge-seam, do: Sew side and top., time: 2 s}]
products/flap.yaml: {product: flap, title: Flap, route: [cut-flap, sew-flap]}
"""


@pytest.fixture(scope="module")
def views(tmp_path_factory: pytest.TempPathFactory) -> PlantViews:
    """The small plant with a mirrored flap."""
    checked = check_plant(lay_over(FLAP, tmp_path_factory.mktemp("flap") / "plant"))
    assert checked.findings == ()
    return plant_views_of(checked)


def strokes(views: PlantViews, operation: str) -> list[str]:
    """Roles of the strokes of an operation's first figure."""
    return [stroke.role for stroke in figure(views, operation).strokes]


def figure(views: PlantViews, operation: str):  # type: ignore[no-untyped-def]
    """Its first figure."""
    sheet = next(one for one in views.sheets if one.operation == operation)
    return next(step.figure for step in sheet.steps if step.figure is not None)


def test_a_mirrored_piece_is_cut_with_its_centre_line(views: PlantViews) -> None:
    """Where nothing but notches lies on it; it reaches a little beyond the piece."""
    line = next(stroke for stroke in figure(views, "cut-flap").strokes if stroke.role == "centre line")
    (start,) = line.path
    assert start.start[0] == pytest.approx(0)
    assert start.start[1] < -8
    assert start.end[1] > 150


def test_a_sewn_one_shows_no_centre_line(views: PlantViews) -> None:
    """It would cross the work."""
    assert "centre line" not in strokes(views, "sew-flap")


def test_a_seam_with_two_allowances_shows_both(views: PlantViews) -> None:
    """Each across from the seam to the cut edge of its edge."""
    texts = [line.text for line in figure(views, "sew-flap").dimensions]
    assert [text.partition(" (")[0] for text in texts] == ["8 mm", "20 mm"]


def test_corners_are_facts_of_the_method(views: PlantViews) -> None:
    """A corner moved is another sheet."""
    facts = dict(figure(views, "cut-flap").facts)
    assert facts["flap/corner-2.bow"] == "-4 length in mm"
    assert "flap.allowance" in facts


def square(folder: Path, more: str) -> PartShape:
    """200 × 100 mm."""
    return panel(f"{{rectangle: {{width: 200 mm, height: 100 mm}}, {more}}}", folder)


def test_the_typed_width_is_measured_where_it_is_typed(tmp_path: Path) -> None:
    """On the seam line, not on the larger cut edge."""
    typed_seam = dimension_points(square(tmp_path / "a", "allowance: 10 mm, typed: seam line"), "width")
    typed_cut = dimension_points(square(tmp_path / "b", "allowance: 10 mm"), "width")
    assert typed_seam is not None
    assert typed_cut is not None
    assert typed_seam[:2] == ((0, 0), (200, 0))
    assert typed_cut[:2] == ((0, 0), (200, 0))


def test_an_allowance_is_drawn_across_its_edge(tmp_path: Path) -> None:
    """From the seam line to the cut edge; nothing where there is none."""
    shape = square(tmp_path, "allowance: {all: 10 mm, top: 25 mm, left: 0 mm}")
    for short, size in (("allowance", 10), ("allowance.top", 25)):
        drawn = dimension_points(shape, short)
        assert drawn is not None
        (ax, ay), (bx, by), _ = drawn
        assert abs(ax - bx) + abs(ay - by) == pytest.approx(size)
    assert dimension_points(shape, "allowance.left") is None
