"""Pleats, darts, zips and elastic on a flat part, and what they take of its edges."""

from __future__ import annotations

import math
from pathlib import Path as Folder
from typing import ClassVar

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.geometry import PartShape, Path, ShapeBook, Vertex, finished_edge, polygon, stretch, taken_at
from builder.geometry.shaping import dart_shape
from builder.model import Dart, Quantity
from tests.geometry.test_shapes import features
from tests.plants import linked


def fault(text: str, folder: Folder, more: str = "") -> str:
    """The words of the only fault of the small plant's panel, 300 × 200 mm, with further features."""
    found = linked(f"{more}\nparts/panel.yaml: {{features: {text}}}", folder)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    book.shape("panel", found.dimensions.values)
    (one,) = book.faults.values()
    return one.message


def lines(built: PartShape, name: str, role: str) -> list[Path]:
    """The marks of a feature in one role."""
    return [path for mark, path in built.features[name].marks if mark == role]


def xs(built: PartShape, name: str, role: str) -> list[float]:
    """Where upright lines stand."""
    return [round(path.start[0], 9) for path in lines(built, name, role)]


def test_the_outer_crease_of_a_knife_pleat_moves_two_depths_the_way_it_points(tmp_path: Folder) -> None:
    """Towards the left: it is laid on the line left of it, and the inner crease lies half way."""
    text = "{a: {pleat: 12 mm, at: {left: 40 mm}}, b: {pleat: 12 mm, at: {left: 100 mm}, towards: right}}"
    built = features(text, tmp_path)
    assert [xs(built, "a", f"pleat {role}") for role in ("meets", "inner", "outer")] == [[40], [52], [64]]
    assert [xs(built, "b", f"pleat {role}") for role in ("meets", "inner", "outer")] == [[124], [112], [100]]
    arrow = lines(built, "a", "pleat arrow")[0]
    assert (arrow.start[0], arrow.end[0]) == (64, 40)
    assert built.features["a"].size == (12, 24)


def test_box_pleats_meet_behind_and_inverted_ones_in_front(tmp_path: Folder) -> None:
    """Folded, both inner creases of a box pleat lie on one line, and both outer creases of an inverted one."""
    text = "{a: {pleat: 10 mm, at: {left: 20 mm}, kind: box}, b: {pleat: 10 mm, at: {left: 150 mm}, kind: inverted}}"
    built = features(text, tmp_path)
    left, right = xs(built, "a", "pleat inner")
    # The left crease keeps its place to the cloth left of it, the right one to the cloth right of it, 40 mm nearer.
    assert left == right - 40
    assert xs(built, "b", "pleat meets") == [170]
    assert xs(built, "b", "pleat outer") == [150, 190]
    assert taken_at(built, "bottom") == 80


def test_a_pleat_goes_from_edge_to_edge_or_part_way(tmp_path: Folder) -> None:
    """Near a rounded corner it ends on the arc; with a length it begins where it is placed."""
    text = """{a: {pleat: 2 mm, at: {left: 2 mm}}, b: {pleat: 12 mm, at: {centre: 0 mm, top: 0 mm}, length: 80 mm},
      c: {pleat: 5 mm, along: across, at: {bottom: 50 mm}}}"""
    built = features(text, tmp_path)
    near = lines(built, "a", "pleat meets")[0]
    assert near.start[1] == pytest.approx(10 - math.sqrt(10**2 - 8**2))
    assert built.features["b"].paths[0].bounds() == (150, 120, 150, 200)
    assert xs(built, "b", "pleat meets") == [138]
    assert built.features["c"].paths[0].bounds() == (0, 55, 300, 55)
    assert taken_at(built, "top") == 24
    # What ends in a rounded corner takes nothing of the edges beside it.
    assert taken_at(built, "bottom") == 0
    assert (taken_at(built, "left"), finished_edge(built, "left")) == (10, 170)


@settings(max_examples=20, deadline=None)
@given(
    depth=st.integers(1, 10),
    count=st.integers(1, 4),
    kind=st.sampled_from(("knife", "box", "inverted")),
    spare=st.integers(0, 9),
)
def test_the_take_up_of_a_row(depth: int, count: int, kind: str, spare: int, tmp_path_factory: object) -> None:
    """Twice the depth for each fold of each pleat, as its dimension `take` and as what its edge loses."""
    extent = {"knife": 2, "box": 6, "inverted": 4}[kind] * depth
    pitch = extent + spare
    if (count - 1) * pitch + extent > 290:
        return
    folder = tmp_path_factory.mktemp("pleats")  # type: ignore[attr-defined]
    row = f"{{pleat: {depth} mm, kind: {kind}, count: {count}, pitch: {pitch} mm, at: {{left: 5 mm}}}}"
    example = f"parts/panel.yaml: {{outline: {{rectangle: {{width: 300 mm, height: 200 mm}}}}, features: {{a: {row}}}}}"
    example = example.replace("height: 200 mm", "height: 200 mm, corner: 0.001 mm")
    found = linked(example, folder)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    built = book.shape("panel", found.dimensions.values)
    assert built is not None
    take = count * depth * (2 if kind == "knife" else 4)
    assert float(found.dimensions.values["panel/a.take"].value) == take
    assert taken_at(built, "bottom") == pytest.approx(take)
    assert finished_edge(built, "top", features=()) == pytest.approx(300, abs=0.01)


def test_pleats_that_share_cloth_are_refused(tmp_path: Folder) -> None:
    """A row needs at least the cloth of each pleat from one to the next, and ends on the part."""
    assert "repeats after 20 mm" in fault("{a: {pleat: 12 mm, count: 2, pitch: 20 mm}}", tmp_path / "1")
    assert "leaves the part" in fault("{a: {pleat: 12 mm, at: {left: 290 mm}}}", tmp_path / "2")


@settings(max_examples=15, deadline=None)
@given(width=st.integers(2, 60), depth=st.integers(10, 150), place=st.integers(60, 240))
def test_the_legs_of_a_dart(width: int, depth: int, place: int, tmp_path_factory: object) -> None:
    """Pythagoras: half its width and its depth; both legs are as long, and meet at its point."""
    folder = tmp_path_factory.mktemp("darts")  # type: ignore[attr-defined]
    built = features(f"{{a: {{dart: {width} mm, depth: {depth} mm, edge: top, at: {{left: {place} mm}}}}}}", folder)
    sewn, other = built.features["a"].paths[0], lines(built, "a", "dart leg")[0]
    assert sewn.length == pytest.approx(math.hypot(depth, width / 2)) == pytest.approx(other.length)
    assert sewn.end == other.end == pytest.approx((place, 200 - depth))
    assert built.features["a"].regions[0].area() == pytest.approx(width * depth / 2)
    assert taken_at(built, "top") == width


def test_the_mark_of_a_dart_lies_before_its_point(tmp_path: Folder) -> None:
    """12 mm when nobody says, half way in a short one."""
    text = """{a: {dart: 20 mm, depth: 80 mm, edge: left, at: {middle: 0 mm}, drill: 15 mm},
      b: {dart: 8 mm, depth: 20 mm, edge: bottom, at: {left: 150 mm}}}"""
    built = features(text, tmp_path)
    assert built.features["a"].points[0] == pytest.approx((65, 100))
    assert built.features["b"].points[0] == pytest.approx((150, 10))
    assert "beyond the end of edge top" in fault(
        "{a: {dart: 20 mm, depth: 80 mm, edge: top, at: {left: 15 mm}}}", tmp_path / "1"
    )


class Typed:
    """Lengths as typed, without names."""

    values: ClassVar[dict[str, object]] = {}

    def mm(self, typed: object, default: float = 0.0, short: str = "") -> float:
        """A typed length in mm."""
        return float(typed.value) if isinstance(typed, Quantity) else default


def test_a_dart_in_a_curved_edge_is_as_wide_along_it() -> None:
    """Measured on the edge, whatever its curve, and square to it: a half circle of 100 mm."""
    ground = polygon([Vertex((0, 0)), Vertex((200, 0), bulge=1.0), Vertex((0, 0.001))], ["bottom", "round", "side"])
    dart = Dart(dart="30 mm", depth="60 mm", edge="round")  # type: ignore[arg-type]
    built = dart_shape("a", dart, ground, (100.0, 100.0005), Typed())  # type: ignore[arg-type]
    start, end = built.paths[0].start, built.marks[0][1].start
    angle = math.degrees(math.acos((start[0] - 100) / 100)) - math.degrees(math.acos((end[0] - 100) / 100))
    assert abs(math.radians(angle)) * 100 == pytest.approx(30, abs=0.01)
    assert built.paths[0].end == pytest.approx((100, 40), abs=0.01)


ZIP = """
materials/zips.yaml:
  materials:
    zip-5: {title: Zip, form: zip, width: 30 mm, composition: [polyester]}
    elastic-20: {title: Elastic, form: tape, width: 20 mm, composition: [polyester]}
parts/panel.yaml:
  features:
    """


def zipped(text: str, folder: Folder) -> PartShape:
    """The panel with a feature of a zip 30 mm wide or an elastic 20 mm wide."""
    found = linked(ZIP + text, folder)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    built = book.shape("panel", found.dimensions.values)
    assert not book.faults, book.faults
    assert built is not None
    return built


def test_a_zip_is_as_wide_as_its_material_and_as_long_as_its_line(tmp_path: Folder) -> None:
    """Along the top it runs from left to right; its tapes lie half to either side of its chain."""
    one = zipped(
        "a: {zip: zip-5, along: top, inset: 40 mm, length: 180 mm, ends: 10 mm, slider: start, open: yes}", tmp_path
    )
    zip_ = one.features["a"]
    assert zip_.paths[0].bounds() == pytest.approx((60, 160, 240, 160))
    assert zip_.paths[0].start[0] == pytest.approx(60)
    assert zip_.regions[0].bounds() == pytest.approx((50, 145, 250, 175))
    assert zip_.regions[0].edge("top")[0].start[1] == pytest.approx(175)
    marks = {role: path for role, path in zip_.marks if role != "zip stop"}
    # The slider stands behind its stop; what lies before it is no longer than that.
    assert marks["zip chain"].length == pytest.approx(marks["zip slider"].length / 4)
    assert marks["zip parted"].end == pytest.approx((240, 160))


def test_a_zip_may_lie_beyond_the_edge_it_is_sewn_to(tmp_path: Folder) -> None:
    """Below 0 its chain lies outside the part."""
    one = zipped("a: {zip: zip-5, along: left, inset: -8 mm, start gap: 20 mm, length: 100 mm}", tmp_path)
    assert one.features["a"].paths[0].bounds() == pytest.approx((-8, 30, -8, 130))


def test_elastic_is_stretched_to_its_line(tmp_path: Folder) -> None:
    """240 mm from 180 mm is four thirds."""
    text = (
        "a: {elastic: elastic-20, relaxed: 180 mm, points: [{left: 20 mm, middle: 0 mm}, {left: 260 mm, middle: 0 mm}]}"
    )
    one = zipped(text, tmp_path)
    assert stretch(one.features["a"]) == pytest.approx(4 / 3)
    assert one.features["a"].size == (20, 180)


def test_what_lies_nowhere_or_is_not_stretched_is_refused(tmp_path: Folder) -> None:
    """An edge or points, a corner that is round enough, and elastic shorter than its line."""
    line = "points: [{left: 20 mm, middle: 0 mm}, {left: 260 mm, middle: 0 mm}]"
    assert "lies nowhere" in fault("{a: {zip: cloth}}", tmp_path / "1")
    assert "isn't stretched" in fault(f"{{a: {{elastic: cloth, relaxed: 250 mm, {line}}}}}", tmp_path / "2")
    corner = line[:-1] + ", {left: 260 mm, bottom: 20 mm}]"
    assert "corner of 90°" in fault(f"{{a: {{zip: cloth, {corner}}}}}", tmp_path / "3")
