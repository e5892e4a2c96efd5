"""Drawings read into lines and arcs: every kind of entity, units, layers, blocks, and files meant to do harm."""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path
from typing import Any

import ezdxf
import pytest
from ezdxf import units

from builder.reading import DrawingFault, DrawingLines, Piece, read_drawing
from builder.reading.dxf_scan import MOST_ENTITIES

CUT = {"layer": "CUT"}
SQUARE = [(0, 0), (100, 0), (100, 50), (0, 50)]


def drawn(folder: Path, draw: Callable[[Any, Any], None], unit: int = units.MM, version: str = "R2010") -> Path:
    """A DXF file with what `draw` puts into its model space (and its blocks)."""
    document = ezdxf.new(version)
    document.header["$INSUNITS"] = unit
    draw(document.modelspace(), document)
    path = folder / "x.dxf"
    document.saveas(path)
    return path


def read(folder: Path, draw: Callable[[Any, Any], None], unit: int = units.MM) -> DrawingLines:
    """Its lines on the layer CUT."""
    return read_drawing(drawn(folder, draw, unit), "CUT")


def area(lines: DrawingLines) -> float:
    """Area of pieces that follow each other: the polygon of their ends and each arc's segment."""
    total = 0.0
    for piece in lines.pieces:
        (ax, ay), (bx, by), bulge = piece.start, piece.end, piece.bulge
        angle = 4 * math.atan(bulge)
        chord = math.hypot(bx - ax, by - ay)
        radius = chord / (2 * math.sin(angle / 2)) if bulge else 0.0
        total += (ax * by - ay * bx) / 2 + radius * radius / 2 * (angle - math.sin(angle))
    return total


def points_near(lines: DrawingLines, f: Callable[[float, float], float]) -> float:
    """The greatest value of a function of the place, over points of all pieces."""
    worst = 0.0
    for piece in lines.pieces:
        (ax, ay), (bx, by), bulge = piece.start, piece.end, piece.bulge
        for step in range(9):
            angle = 4 * math.atan(bulge)
            if bulge:
                rise = (1 - bulge * bulge) / (4 * bulge)
                cx, cy = (ax + bx) / 2 - (by - ay) * rise, (ay + by) / 2 + (bx - ax) * rise
                turn = angle * step / 8
                dx, dy = ax - cx, ay - cy
                x, y = cx + dx * math.cos(turn) - dy * math.sin(turn), cy + dx * math.sin(turn) + dy * math.cos(turn)
            else:
                x, y = ax + (bx - ax) * step / 8, ay + (by - ay) * step / 8
            worst = max(worst, abs(f(x, y)))
    return worst


def test_lines_arcs_and_circles_are_exact(tmp_path: Path) -> None:
    """A circle is two half circles; an arc over half a turn is two arcs."""

    def draw(space: Any, _: Any) -> None:
        space.add_line((1, 2), (30, 4), dxfattribs=CUT)
        space.add_arc((0, 0), 10, 90, 30, dxfattribs=CUT)
        space.add_circle((5, 5), 20, dxfattribs=CUT)

    lines = read(tmp_path, draw)
    assert lines.pieces[0] == Piece((1, 2), (30, 4))
    assert [piece.bulge for piece in lines.pieces[1:3]] == pytest.approx([math.tan(math.radians(300 / 8))] * 2)
    assert lines.pieces[1].start == pytest.approx((0, 10))
    assert lines.pieces[2].end == pytest.approx((10 * math.cos(math.pi / 6), 5))
    assert [piece.bulge for piece in lines.pieces[3:]] == pytest.approx([1, 1])
    assert lines.pieces[4].end == lines.pieces[3].start


@pytest.mark.parametrize("heavy", [False, True])
def test_polylines_keep_their_bulges(tmp_path: Path, heavy: bool) -> None:
    """Both kinds, closed."""
    points = [(0, 0, 0), (100, 0, 0.5), (100, 50, 0), (0, 50, 0)]

    def draw(space: Any, _: Any) -> None:
        add = space.add_polyline2d if heavy else space.add_lwpolyline
        add(points, format="xyb", close=True, dxfattribs=CUT)

    lines = read(tmp_path, draw)
    assert [piece.bulge for piece in lines.pieces] == [0, 0.5, 0, 0]
    angle = 4 * math.atan(0.5)
    radius = 50 / (2 * math.sin(angle / 2))
    assert area(lines) == pytest.approx(5000 + radius * radius / 2 * (angle - math.sin(angle)))


def test_an_ellipse_becomes_arcs_within_the_tolerance(tmp_path: Path) -> None:
    """Its equation holds at every point, to 0.05 mm across."""
    lines = read(tmp_path, lambda space, _: space.add_ellipse((0, 0), (60, 0), 0.4, dxfattribs=CUT))
    assert area(lines) == pytest.approx(math.pi * 60 * 24, rel=1e-4)
    # The distance of a point near the curve: its equation's value over the length of its gradient.
    far = points_near(
        lines,
        lambda x, y: ((x / 60) ** 2 + (y / 24) ** 2 - 1) / math.hypot(2 * x / 60**2, 2 * y / 24**2),
    )
    assert far < 0.05
    assert len(lines.pieces) < 60


def test_a_spline_becomes_arcs_within_the_tolerance(tmp_path: Path) -> None:
    """A parabola as a spline of second degree: y = x²/100."""

    def draw(space: Any, _: Any) -> None:
        spline = space.add_spline(degree=2, dxfattribs=CUT)
        spline.set_open_uniform([(-100, 100, 0), (0, -100, 0), (100, 100, 0)], degree=2)

    lines = read(tmp_path, draw)
    assert lines.pieces[0].start == pytest.approx((-100, 100))
    assert lines.pieces[-1].end == pytest.approx((100, 100))
    assert points_near(lines, lambda x, y: (y - x * x / 100) / math.hypot(1, x / 50)) < 0.05
    assert len(lines.pieces) < 40


@pytest.mark.parametrize(
    ("unit", "mm"), [(units.MM, 1.0), (units.IN, 25.4), (units.CM, 10.0), (units.M, 1000.0), (units.FT, 304.8)]
)
def test_units_of_the_file(tmp_path: Path, unit: int, mm: float) -> None:
    """By $INSUNITS."""
    lines = read(tmp_path, lambda space, _: space.add_line((0, 0), (2, 1), dxfattribs=CUT), unit)
    assert lines.pieces[0].end == pytest.approx((2 * mm, mm))


def test_a_curve_is_as_fine_in_any_unit(tmp_path: Path) -> None:
    """The tolerance is in millimetres: an ellipse of 6 in has as many arcs as one of 152.4 mm."""
    inch = read(tmp_path, lambda space, _: space.add_ellipse((0, 0), (6, 0), 0.5, dxfattribs=CUT), units.IN)
    mm = read(tmp_path, lambda space, _: space.add_ellipse((0, 0), (152.4, 0), 0.5, dxfattribs=CUT))
    assert len(inch.pieces) == len(mm.pieces)
    assert inch.digest == mm.digest


def test_a_file_without_unit_goes_by_its_measurement_system(tmp_path: Path) -> None:
    """$MEASUREMENT 0 is inches, 1 millimetres; without both, `unit:` is asked for."""
    path = drawn(tmp_path, lambda space, _: space.add_line((0, 0), (2, 0), dxfattribs=CUT), 0)
    text = path.read_text()
    metric = text.replace("$MEASUREMENT\n 70\n0\n", "$MEASUREMENT\n 70\n1\n")
    english = text.replace("$MEASUREMENT\n 70\n1\n", "$MEASUREMENT\n 70\n0\n")
    path.write_text(metric)
    assert read_drawing(path, "CUT").pieces[0].end == (2, 0)
    path.write_text(english)
    assert read_drawing(path, "CUT").pieces[0].end == (50.8, 0)
    path.write_text(text.replace("$MEASUREMENT", "$NOTHING").replace("$INSUNITS", "$NOUNIT"))
    with pytest.raises(DrawingFault, match="doesn't say its unit") as found:
        read_drawing(path, "CUT")
    assert found.value.key == "unit"
    assert read_drawing(path, "CUT", "cm").pieces[0].end == (20, 0)


def test_a_typed_unit_that_contradicts_the_file_is_refused(tmp_path: Path) -> None:
    """Neither is passed over in silence; the same one twice does no harm."""
    path = drawn(tmp_path, lambda space, _: space.add_line((0, 0), (2, 0), dxfattribs=CUT))
    with pytest.raises(DrawingFault, match="its unit is 1 mm, not in"):
        read_drawing(path, "CUT", "in")
    assert read_drawing(path, "CUT", "mm").pieces[0].end == (2, 0)


def test_a_unit_of_the_stars_is_refused(tmp_path: Path) -> None:
    """Number 20 of the list is parsecs."""
    path = drawn(tmp_path, lambda space, _: space.add_line((0, 0), (2, 0)), 20)
    with pytest.raises(DrawingFault, match="the number 20"):
        read_drawing(path)


def test_blocks_nested_scaled_turned_and_mirrored(tmp_path: Path) -> None:
    """Area and place as computed by hand; what lies on layer 0 follows the insert."""

    def draw(space: Any, document: Any) -> None:
        inner = document.blocks.new("INNER")
        inner.add_lwpolyline([(0, 0, 0), (100, 0, 0.5), (100, 50, 0), (0, 50, 0)], format="xyb", close=True)
        outer = document.blocks.new("OUTER")
        outer.add_blockref("INNER", (10, 0), dxfattribs={"xscale": -1})
        space.add_blockref("OUTER", (5, 5), dxfattribs=CUT | {"xscale": 2, "yscale": 2, "rotation": 90})

    lines = read(tmp_path, draw)
    angle = 4 * math.atan(0.5)
    radius = 50 / (2 * math.sin(angle / 2))
    assert abs(area(lines)) == pytest.approx(4 * (5000 + radius * radius / 2 * (angle - math.sin(angle))))
    assert lines.pieces[0].start == pytest.approx((5, 25))
    assert lines.pieces[0].end == pytest.approx((5, -175))


def test_a_block_stretched_in_one_direction(tmp_path: Path) -> None:
    """A circle becomes an ellipse."""

    def draw(space: Any, document: Any) -> None:
        document.blocks.new("ROUND").add_circle((0, 0), 10)
        space.add_blockref("ROUND", (0, 0), dxfattribs=CUT | {"xscale": 3})

    assert area(read(tmp_path, draw)) == pytest.approx(math.pi * 300, rel=1e-4)


def test_a_row_of_inserts(tmp_path: Path) -> None:
    """Rows and columns of one insert."""

    def draw(space: Any, document: Any) -> None:
        document.blocks.new("DOT").add_line((0, 0), (1, 0))
        spaced = {"column_spacing": 10, "row_spacing": 5}
        space.add_blockref("DOT", (0, 0), dxfattribs=CUT | {"column_count": 3, "row_count": 2} | spaced)

    assert len(read(tmp_path, draw).pieces) == 6


def test_what_is_seen_from_below_is_mirrored(tmp_path: Path) -> None:
    """An extrusion of −z, as mirroring leaves it."""
    below = CUT | {"extrusion": (0, 0, -1)}

    def draw(space: Any, _: Any) -> None:
        space.add_arc((10, 0), 5, 0, 90, dxfattribs=below)
        space.add_lwpolyline([(1, 1, 0.5), (3, 1, 0)], format="xyb", dxfattribs=below)

    arc, bowed = read(tmp_path, draw).pieces
    assert arc.start == pytest.approx((-15, 0))
    assert arc.end == pytest.approx((-10, 5))
    assert arc.bulge < 0
    assert bowed == Piece((-1, 1), (-3, 1), -0.5)


def test_what_stands_on_its_edge_is_refused(tmp_path: Path) -> None:
    """A circle seen from the side is no circle."""
    path = drawn(tmp_path, lambda space, _: space.add_circle((0, 0), 5, dxfattribs=CUT | {"extrusion": (1, 0, 0)}))
    with pytest.raises(DrawingFault, match="tilted"):
        read_drawing(path, "CUT")


def test_texts_and_hatches_are_passed_over(tmp_path: Path) -> None:
    """On the layer and in blocks."""

    def draw(space: Any, document: Any) -> None:
        block = document.blocks.new("LABEL")
        block.add_text("cut 2")
        block.add_line((0, 0), (1, 1))
        space.add_blockref("LABEL", (0, 0), dxfattribs=CUT)
        space.add_text("front", dxfattribs=CUT)
        space.add_hatch(dxfattribs=CUT).paths.add_polyline_path(SQUARE)
        space.add_point((4, 4), dxfattribs=CUT)

    assert read(tmp_path, draw).pieces == (Piece((0, 0), (1, 1)),)


def test_an_empty_layer_names_those_with_lines(tmp_path: Path) -> None:
    """So that the right one can be typed; small and capital letters are one."""
    path = drawn(tmp_path, lambda space, _: space.add_line((0, 0), (2, 0), dxfattribs={"layer": "Marks"}))
    with pytest.raises(DrawingFault, match="no lines on a layer CUT; layers with lines: Marks") as found:
        read_drawing(path, "CUT")
    assert found.value.key == "layer"
    assert read_drawing(path, "MARKS").layer == "Marks"


def test_the_only_layer_needs_no_name(tmp_path: Path) -> None:
    """Two do."""

    def draw(space: Any, _: Any) -> None:
        space.add_line((0, 0), (2, 0), dxfattribs=CUT)
        space.add_line((0, 0), (2, 0), dxfattribs={"layer": "MARK"})

    with pytest.raises(DrawingFault, match="2 layers: CUT, MARK"):
        read_drawing(drawn(tmp_path, draw))
    assert read_drawing(drawn(tmp_path, lambda space, _: space.add_line((0, 0), (2, 0)))).layer == "0"
    with pytest.raises(DrawingFault, match="has no lines"):
        read_drawing(drawn(tmp_path, lambda space, _: space.add_text("x")))


def test_saving_again_keeps_the_hash_and_moving_a_corner_changes_it(tmp_path: Path) -> None:
    """A hundredth of a millimetre counts, the time in the head of the file doesn't."""

    def square(x: float) -> Callable[[Any, Any], None]:
        return lambda space, _: space.add_lwpolyline([*SQUARE[:3], (x, 50)], close=True, dxfattribs=CUT)

    assert read(tmp_path, square(0)).digest == read(tmp_path, square(0.0001)).digest
    assert read(tmp_path, square(0)).digest != read(tmp_path, square(0.02)).digest


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "is empty"),
        (b"part: x\ntitle: y\n", "line 1 should be a group code"),
        (b"0\nHELLO\n", "doesn't begin with a section"),
        (b"\x89PNG\0\0", "binary"),
        (b"0\nSECTION\n2\nHEADER\n0\nENDSEC\n", "cut off after line 6"),
        (b"0\nSECTION\n2\nENTITIES\nfront\nx\n", "line 5 should be a group code"),
        ("0\nSECTION\n2\nÜ\n²\nx\n".encode(), "line 5 should be a group code"),
    ],
)
def test_what_is_no_dxf(tmp_path: Path, content: bytes, words: str) -> None:
    """With the line it shows at."""
    path = tmp_path / "x.dxf"
    path.write_bytes(content)
    with pytest.raises(DrawingFault, match=words):
        read_drawing(path, "CUT")


@pytest.mark.parametrize("share", [0.2, 0.5, 0.8, 0.99])
def test_a_file_cut_off_anywhere_is_refused(tmp_path: Path, share: float) -> None:
    """A copy that didn't finish."""
    path = drawn(tmp_path, lambda space, _: space.add_line((0, 0), (2, 0), dxfattribs=CUT))
    content = path.read_bytes()
    path.write_bytes(content[: int(len(content) * share)])
    with pytest.raises(DrawingFault):
        read_drawing(path, "CUT")


def test_a_damaged_coordinate_is_a_fault_of_the_drawing(tmp_path: Path) -> None:
    """Whatever the library says of it."""
    path = drawn(tmp_path, lambda space, _: space.add_line((0, 0), (777.5, 0), dxfattribs=CUT))
    text = path.read_text()
    for damage in ("seven", "nan", "1e300"):
        path.write_text(text.replace("777.5", damage))
        with pytest.raises(DrawingFault):
            read_drawing(path, "CUT")


def test_a_million_entities_are_refused_before_they_are_parsed(tmp_path: Path) -> None:
    """By the size of the file, or by counting where each is short."""
    path = tmp_path / "x.dxf"
    entity = "0\nLINE\n8\nCUT\n10\n0\n20\n0\n11\n1\n21\n1\n"
    path.write_text("0\nSECTION\n2\nENTITIES\n" + entity * 1_000_000 + "0\nENDSEC\n0\nEOF\n")
    with pytest.raises(DrawingFault, match="MB; at most 20"):
        read_drawing(path, "CUT")
    path.write_text("0\nSECTION\n2\nENTITIES\n" + "0\nLINE\n" * 1_000_000 + "0\nENDSEC\n0\nEOF\n")
    with pytest.raises(DrawingFault, match="over 50,000 entities"):
        read_drawing(path, "CUT")


def test_a_value_without_end_costs_no_memory(tmp_path: Path) -> None:
    """One line of many megabytes."""
    path = tmp_path / "x.dxf"
    path.write_bytes(b"0\nSECTION\n2\n" + b"x" * 15_000_000 + b"\n0\nEOF\n")
    with pytest.raises(DrawingFault):
        read_drawing(path, "CUT")


def test_a_block_that_contains_itself_is_refused(tmp_path: Path) -> None:
    """Through another one, its ring named."""

    def draw(space: Any, document: Any) -> None:
        one, other = document.blocks.new("ONE"), document.blocks.new("OTHER")
        one.add_blockref("OTHER", (1, 0))
        other.add_blockref("ONE", (1, 0))
        space.add_blockref("ONE", (0, 0), dxfattribs=CUT)

    with pytest.raises(DrawingFault, match="contains itself: one → other → one"):
        read(tmp_path, draw)


def test_blocks_that_grow_without_bound_are_refused(tmp_path: Path) -> None:
    """Ten deep, ten times each: ten thousand million lines from a small file; and a grid of inserts."""

    def nested(space: Any, document: Any) -> None:
        document.blocks.new("B0").add_line((0, 0), (1, 0))
        for level in range(1, 11):
            block = document.blocks.new(f"B{level}")
            for number in range(10):
                block.add_blockref(f"B{level - 1}", (number, 0))
        space.add_blockref("B10", (0, 0), dxfattribs=CUT)

    def grid(space: Any, document: Any) -> None:
        document.blocks.new("DOT").add_line((0, 0), (1, 0))
        space.add_blockref("DOT", (0, 0), dxfattribs=CUT | {"column_count": 30_000, "row_count": 30_000})

    def deep(space: Any, document: Any) -> None:
        document.blocks.new("B0").add_line((0, 0), (1, 0))
        for level in range(1, 2000):
            document.blocks.new(f"B{level}").add_blockref(f"B{level - 1}", (0, 0))
        space.add_blockref("B1999", (0, 0), dxfattribs=CUT)

    for draw in (nested, grid):
        with pytest.raises(DrawingFault, match=f"over {MOST_ENTITIES:,} points"):
            read(tmp_path, draw)
    with pytest.raises(DrawingFault, match="deep in each other"):
        read(tmp_path, deep)


def test_a_scan_of_thousands_of_lines_is_no_outline(tmp_path: Path) -> None:
    """A polyline of 10,000 points."""
    points = [(math.cos(n), n / 10) for n in range(10_000)]
    with pytest.raises(DrawingFault, match="over 1,000 lines and arcs"):
        read(tmp_path, lambda space, _: space.add_lwpolyline(points, dxfattribs=CUT))


def test_without_the_library_one_clear_message(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It says what to install."""
    import sys

    path = drawn(tmp_path, lambda space, _: space.add_line((0, 0), (2, 0), dxfattribs=CUT))
    monkeypatch.setitem(sys.modules, "ezdxf.filemanagement", None)
    with pytest.raises(DrawingFault, match="needs the library ezdxf") as found:
        read_drawing(path, "CUT")
    assert "pip install" in found.value.remedy


def test_a_file_that_is_gone(tmp_path: Path) -> None:
    """Between listing and reading."""
    with pytest.raises(DrawingFault, match="can't be opened"):
        read_drawing(tmp_path / "gone.dxf")


@pytest.mark.parametrize("version", ["R12", "R2000", "R2018"])
def test_old_and_new_versions(tmp_path: Path, version: str) -> None:
    """R12 has heavy polylines only."""

    def draw(space: Any, _: Any) -> None:
        space.add_polyline2d(SQUARE, close=True, dxfattribs=CUT)

    assert area(read_drawing(drawn(tmp_path, draw, version=version), "CUT", "mm")) == pytest.approx(5000)
