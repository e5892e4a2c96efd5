"""Cuts across seams, against shapely and counted by hand."""

from __future__ import annotations

import math
from itertools import pairwise
from pathlib import Path

import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from builder.geometry import CutAsk, PartShape, Ray, Section, ShapeBook, plies_along, polygon, section_of, sewn_by
from builder.geometry.cross_cut import done_folds
from builder.geometry.sections_sewn import sections_by, tape_width
from builder.model import Linked, Part, link
from builder.reading import read_folder
from tests.plants import linked

TAPE = "materials/all.yaml: {materials: {tape: {title: Tape, form: tape, width: 22 mm}}}\n"
STRAP = """
materials/all.yaml: {materials: {webbing: {title: Webbing, form: webbing, width: 25 mm}}}
parts/strap.yaml: {part: strap, title: Strap, material: webbing, outline: {strip: {length: 100 mm}}}
"""
ALONE = CutAsk(frozenset(), lambda name: None, lambda tape: None)


def cut(folder: Path, features: str, seam: str, done: str, more: str = "") -> Section:
    """The section of a feature of the small plant's panel (300 × 200 mm, corners 10 mm)."""
    found = linked(f"parts/panel.yaml: {{features: {features}}}\n{more}", folder)
    return of(found, "panel", seam, done)


def of(found: Linked, part: str, seam: str, done: str) -> Section:
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    values = found.dimensions.values
    shape = book.shape(part, values)
    assert shape is not None, book.faults
    work = {(part, name) for name in (*done.split(), seam)}
    ask = CutAsk(work, lambda name: book.shape(name, values), lambda tape: tape_width(found.model, tape))
    section = section_of(shape, seam, ask)
    assert section is not None
    return section


def rows(section: Section, reach: float = 60.0) -> list[tuple[str, float, str, float, str, bool]]:
    """Plies from the lowest: part, ends, right side up; places beyond the reach as infinite."""

    def place(at: float) -> float:
        return round(at, 3) if abs(at) < reach else math.copysign(math.inf, at)

    return [
        (one.part, place(one.low.at), one.low.kind, place(one.high.at), one.high.kind, one.right_up)
        for one in section.goods.plies
    ]


def test_a_plain_seam_is_one_ply_with_its_edge_to_the_right(tmp_path: Path) -> None:
    """12 mm inside the top edge of a panel 200 mm high."""
    found = cut(tmp_path, "{top-seam: {seam: top, inset: 12 mm}}", "top-seam", "")
    assert rows(found) == [("panel", -math.inf, "cut", 12.0, "cut", True)]


@pytest.mark.parametrize("edge", ["top", "bottom", "left", "right"])
def test_every_edge_comes_to_the_right(edge: str, tmp_path: Path) -> None:
    """Whichever way the edge runs."""
    found = cut(tmp_path, f"{{one: {{seam: {edge}, inset: 9 mm}}}}", "one", "")
    assert rows(found)[0][3:5] == (9.0, "cut")


def test_a_hem_turned_to_the_wrong_side_lies_on_top_of_a_seam_worked_there(tmp_path: Path) -> None:
    """Fold 15 mm from the raw edge, seam 27 mm: 12 mm to the fold, 3 mm to the raw edge, two plies, one bend."""
    features = """{hem-fold: {fold: top, inset: 15 mm, side: wrong}, hem: {seam: top, inset: 27 mm, side: wrong}}"""
    found = cut(tmp_path, features, "hem", "hem-fold")
    assert rows(found) == [
        ("panel", -math.inf, "cut", 12.0, "fold", False),
        ("panel", -3.0, "cut", 12.0, "fold", True),
    ]
    assert [(one.at, one.way) for one in found.goods.bends] == [(12.0, 1)]
    assert len(found.seam.plies) == 2
    assert len(found.held()) == 1


def test_the_side_a_fold_is_worked_on_says_where_it_lies(tmp_path: Path) -> None:
    """Folded to the right side, seen with the right side up: the turned ply is the upper one, its wrong side up."""
    features = """{hem-fold: {fold: top, inset: 15 mm}, hem: {seam: top, inset: 27 mm}}"""
    found = cut(tmp_path, features, "hem", "hem-fold")
    assert [one.right_up for one in found.goods.plies] == [True, False]


def test_a_seam_beyond_the_fold_is_where_it_comes_to_lie(tmp_path: Path) -> None:
    """5 mm from the raw edge, on what is folded over: 10 mm from the fold."""
    features = """{hem-fold: {fold: top, inset: 15 mm, side: wrong}, hem: {seam: top, inset: 5 mm, side: wrong}}"""
    found = cut(tmp_path, features, "hem", "hem-fold")
    assert sorted(row[3] for row in rows(found)) == [10.0, 10.0]
    assert sorted(row[1] for row in rows(found)) == [-math.inf, -5.0]


def test_a_fold_not_yet_made_bends_nothing(tmp_path: Path) -> None:
    """The hem lies flat."""
    features = """{hem-fold: {fold: top, inset: 15 mm, side: wrong}, hem: {seam: top, inset: 27 mm, side: wrong}}"""
    found = cut(tmp_path, features, "hem", "")
    assert rows(found) == [("panel", -math.inf, "cut", 27.0, "cut", False)]


def test_a_hem_folded_twice_has_three_plies_in_one_piece(tmp_path: Path) -> None:
    """10 mm, then 25 mm from the raw edge: the raw edge lies inside."""
    features = """{first: {fold: top, inset: 10 mm, side: wrong}, second: {fold: top, inset: 25 mm, side: wrong},
      hem: {seam: top, inset: 38 mm, side: wrong}}"""
    found = cut(tmp_path, features, "hem", "first second")
    assert rows(found) == [
        ("panel", -math.inf, "cut", 13.0, "fold", False),
        ("panel", -2.0, "fold", 8.0, "cut", False),
        ("panel", -2.0, "fold", 13.0, "fold", True),
    ]
    assert sorted((one.at, one.way) for one in found.goods.bends) == [(-2.0, -1), (13.0, 1)]
    assert len(found.goods.pieces()) == 1


def test_a_tape_wraps_the_edge_by_half_its_width(tmp_path: Path) -> None:
    """22 mm round an edge 8 mm from the seam: 11 mm above and below."""
    features = "{edge: {seam: all, inset: 8 mm, binding: tape}}"
    found = cut(tmp_path, features, "edge", "", TAPE)
    near = [row for row in rows(found) if row[1] > -60]
    assert near == [("tape", -3.0, "woven", 8.0, "fold", False), ("tape", -3.0, "woven", 8.0, "fold", True)]
    assert [one.part for one in found.goods.plies if one.name in found.seam.plies] == ["tape", "panel", "tape"]


def test_a_folded_end_lies_under_its_strip(tmp_path: Path) -> None:
    """30 mm of a strap under, a line 3 mm inside its fold."""
    features = """{patch: {strip: strap, at: {left: 40 mm, bottom: 40 mm}, folded under: 30 mm},
      line: {seam: line, points: [{left: 43 mm, bottom: 42 mm}, {left: 43 mm, bottom: 62 mm}]}}"""
    found = cut(tmp_path, features, "line", "patch", STRAP)
    assert rows(found, 80) == [
        ("panel", -math.inf, "cut", 43.0, "cut", True),
        ("strap", -27.0, "cut", 3.0, "fold", False),
        ("strap", -67.0, "cut", 3.0, "fold", True),
    ]


def test_webbing_has_woven_edges_along(tmp_path: Path) -> None:
    """Cut across a strap 25 mm wide."""
    features = """{patch: {strip: strap, at: {left: 40 mm, bottom: 40 mm}},
      line: {seam: line, points: [{left: 50 mm, bottom: 44 mm}, {left: 130 mm, bottom: 44 mm}]}}"""
    found = cut(tmp_path, features, "line", "patch", STRAP)
    assert rows(found)[1] == ("strap", -21.0, "woven", 4.0, "woven", True)


def test_a_strip_on_the_wrong_side_lies_below(tmp_path: Path) -> None:
    """Seen with the right side up, its own right side down."""
    features = """{patch: {strip: strap, side: wrong, at: {left: 40 mm, bottom: 40 mm}},
      line: {seam: line, points: [{left: 50 mm, bottom: 44 mm}, {left: 130 mm, bottom: 44 mm}]}}"""
    found = cut(tmp_path, features, "line", "patch", STRAP)
    assert [(row[0], row[-1]) for row in rows(found)] == [("strap", False), ("panel", True)]


def test_earlier_seams_are_met_where_they_cross(tmp_path: Path) -> None:
    """Two rows 6 mm apart."""
    features = "{one: {seam: top, inset: 6 mm}, two: {seam: top, inset: 12 mm}}"
    found = cut(tmp_path, features, "two", "one")
    assert [(one.feature, round(one.at, 6)) for one in found.others] == [("one", 6.0)]


def test_a_seam_along_the_cut_is_not_met(tmp_path: Path) -> None:
    """A divider that ends at the middle of the seam and runs along the cut from there."""
    features = """{one: {seam: line, points: [{centre: 0 mm, bottom: 20 mm}, {centre: 0 mm, top: 20 mm}]},
      two: {seam: top, inset: 12 mm}}"""
    assert cut(tmp_path, features, "two", "one").others == ()


@given(
    radii=st.lists(st.floats(20, 100), min_size=3, max_size=9),
    turn=st.floats(0, 360),
    off=st.floats(-60, 60),
)
@settings(deadline=None)
def test_a_flat_part_is_met_where_shapely_meets_it(radii: list[float], turn: float, off: float) -> None:
    """A star-shaped part and any straight cut: the same stretches, from the cut's own origin."""
    step = 2 * math.pi / len(radii)
    corners = [(r * math.cos(n * step), r * math.sin(n * step)) for n, r in enumerate(radii)]
    shape = PartShape("star", Part(title="Star"), polygon(corners), {})
    way = (math.cos(math.radians(turn)), math.sin(math.radians(turn)))
    ray = Ray((-way[1] * off, way[0] * off), way)
    ours = [(one.low.at, one.high.at) for one in plies_along(shape, ray, ALONE).plies]
    line = shapely.LineString([ray.at(-500), ray.at(500)])
    met = shapely.intersection(shapely.Polygon(corners), line)
    theirs = [
        tuple(sorted((ray.place(one.coords[0]), ray.place(one.coords[-1]))))
        for one in getattr(met, "geoms", [met])
        if one.geom_type == "LineString" and one.length > 1e-2
    ]
    # Cuts that only graze an edge count as going on; how near is grazing isn't asked here.
    assume(all(b[0] - a[1] > 0.01 for a, b in pairwise(sorted(theirs))))
    long = [place for one in ours if one[1] - one[0] > 1e-2 for place in one]
    assert long == pytest.approx([place for one in sorted(theirs) for place in one], abs=1e-6)


@pytest.fixture(scope="module")
def demo() -> Linked:
    found = link(read_folder(Path(__file__).parents[2] / "instructions"))
    assert isinstance(found, Linked)
    return found


def test_every_seam_of_the_demo_goes_through_a_stack_known_to_lie_there(demo: Linked) -> None:
    """By another way of counting: areas and walls. Tapes on strips, and folds that only mark a formed part, apart."""
    book = ShapeBook(demo.model.parts, demo.model.states, demo.dimensions.definitions)
    counted = 0
    for name in demo.model.operations:
        stacks = {(one.step, one.index): one for one in sewn_by(demo.model, book, name, demo.dimensions.values)}
        for one in sections_by(demo.model, book, name, demo.dimensions.values):
            known = stacks[one.step, one.index]
            held = [ply for ply in one.section.goods.plies if ply.name in one.section.seam.plies]
            formed = any((part := demo.model.parts.get(ply.part)) is not None and part.formed_from for ply in held)
            if formed or one.section.joined or one.section.feature == "pocket-foot":
                continue
            counted += 1
            assert sorted(ply.part for ply in held) in [sorted(stack) for stack in known.stacks], (
                name,
                one.section.feature,
            )
    assert counted > 25


def test_joined_parts_lie_right_sides_together(demo: Linked) -> None:
    """The bar bag's end under its panel, edges even."""
    book = ShapeBook(demo.model.parts, demo.model.states, demo.dimensions.definitions)
    found = [one.section for one in sections_by(demo.model, book, "join-bar-ends", demo.dimensions.values)]
    assert [one.joined for one in found] == [True, True]
    near = {one.part: (one.right_up, round(one.high.at, 3)) for one in found[0].goods.plies}
    assert near["bar-end"] == (True, 7.0)
    assert near["bar-panel"] == (False, 7.0)


def test_done_folds_keep_the_part_to_their_left(tmp_path: Path) -> None:
    """The middle of the panel stays."""
    found = linked("parts/panel.yaml: {features: {hem-fold: {fold: top, inset: 15 mm}}}", tmp_path)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    shape = book.shape("panel", found.dimensions.values)
    assert shape is not None
    (line,) = done_folds(shape, CutAsk({("panel", "hem-fold")}, lambda name: None, lambda tape: None))
    assert line.start[0] > line.end[0]
    assert line.start[1] == pytest.approx(185.0)
