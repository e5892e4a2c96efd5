"""Paths: what is sewn, what is drawn, how many stitches."""

from __future__ import annotations

import itertools
import math
from collections import Counter

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from builder.geometry.path import (
    Path,
    StartCorner,
    bartack_zigzag,
    box,
    box_and_cross,
    needle_points,
    polyline,
    stitches_per_run,
)
from builder.geometry.segment import Arc, Line, arc_from_bulge
from builder.geometry.vector import GeometryFault, Point, distance

sizes = st.floats(1, 300)
corners: st.SearchStrategy[StartCorner] = st.sampled_from(["bottom-left", "bottom-right", "top-right", "top-left"])


@st.composite
def paths(draw: st.DrawFn) -> Path:
    """Paths of 1 to 6 lines and arcs."""
    number = st.floats(-200, 200)
    points = draw(st.lists(st.tuples(number, number), min_size=2, max_size=7))
    assume(all(distance(a, b) > 1 for a, b in itertools.pairwise(points)))
    bulges = st.sampled_from([0.0, 0.3, -0.8, 1.5])
    return Path(tuple(arc_from_bulge(a, b, draw(bulges)) for a, b in itertools.pairwise(points)))


def test_box_and_cross_of_the_worked_example() -> None:
    """38.1 × 30 mm: drawn 233.2 mm, sewn 263.2, because one 30 mm side is gone over twice."""
    path = box_and_cross(38.1, 30)
    assert path.drawn_length == pytest.approx(233.2, abs=0.05)
    assert path.length == pytest.approx(263.2, abs=0.05)
    twice = [run for run, orders in path.distinct() if len(orders) == 2]
    assert [run.length for run in twice] == [30]


@given(sizes, sizes, corners)
def test_box_and_cross_has_the_closed_form_length_from_every_corner(w: float, h: float, corner: StartCorner) -> None:
    path = box_and_cross(w, h, corner)
    diagonals = 2 * math.hypot(w, h)
    assert path.length == pytest.approx(2 * (w + h) + diagonals + min(w, h))
    assert path.drawn_length == pytest.approx(2 * (w + h) + diagonals)
    assert path.bounds() == (0, 0, w, h)


@given(sizes, sizes, corners)
def test_box_and_cross_sews_all_six_lines_and_starts_where_asked(w: float, h: float, corner: StartCorner) -> None:
    path = box_and_cross(w, h, corner)
    drawn = {frozenset((run.start, run.end)) for run, _ in path.distinct()}
    places = {"bottom-left": (0, 0), "bottom-right": (w, 0), "top-right": (w, h), "top-left": (0, h)}
    four = list(places.values())
    assert drawn == {frozenset((a, b)) for a in four for b in four if a != b}
    assert path.start == places[corner]


def test_no_shorter_way_over_box_and_cross_exists() -> None:
    """Of all walks of 7 runs over the six lines, tried one by one, none is shorter."""
    w, h = 38.1, 30.0
    places = [(0.0, 0.0), (w, 0.0), (w, h), (0.0, h)]
    best = math.inf
    for code in range(4 * 3**7):
        here, code = divmod(code, 3**7)
        walked, seen = 0.0, set()
        for _ in range(7):
            code, step = divmod(code, 3)
            there = (here + 1 + step) % 4
            walked += distance(places[here], places[there])
            seen.add(frozenset((here, there)))
            here = there
        if len(seen) == 6:
            best = min(best, walked)
    assert box_and_cross(w, h).length == pytest.approx(best)


def test_order_numbers_tell_when_each_line_is_sewn() -> None:
    orders = [numbers for _, numbers in box_and_cross(38.1, 30).distinct()]
    assert orders == [(1,), (2, 6), (3,), (4,), (5,), (7,)]


def test_distinct_counts_a_line_sewn_back_and_an_arc_sewn_back_once() -> None:
    arc = Arc((10.0, 0.0), (0.0, 10.0), (0.0, 0.0), clockwise=False)
    other = Arc((0.0, 10.0), (10.0, 0.0), (0.0, 0.0), clockwise=False)
    path = Path((Line((0.0, 0.0), (10.0, 0.0)), arc, arc.reversed(), Line((10.0, 0.0), (0.0, 0.0))))
    assert [numbers for _, numbers in path.distinct()] == [(1, 4), (2, 3)]
    assert len(Path((arc, other)).distinct()) == 2
    assert len(Path((arc, Line(arc.end, arc.start))).distinct()) == 2


@given(paths())
def test_there_and_back_draws_each_run_once_and_sews_it_twice(path: Path) -> None:
    once = Counter(len(numbers) for _, numbers in path.distinct())
    both = Path(path.runs + path.reversed().runs)
    assert both.length == pytest.approx(2 * path.length)
    assert both.drawn_length == pytest.approx(path.drawn_length)
    assert sum(len(numbers) for _, numbers in both.distinct()) == 2 * len(path.runs)
    assert sum(once.values()) == len(both.distinct())


def test_a_box_turns_left_three_times_and_closes() -> None:
    path = box(40, 20)
    assert path.corner_angles() == pytest.approx((90, 90, 90))
    assert path.run_lengths == (40, 20, 40, 20)
    assert path.closed
    assert not box_and_cross(40, 20).closed


def test_corner_angles_of_a_reversal_and_of_a_smooth_join() -> None:
    assert polyline([(0, 0), (10, 0), (0, 0)]).corner_angles() == (180,)
    smooth = Path((Line((0.0, 0.0), (10.0, 0.0)), arc_from_bulge((10.0, 0.0), (10.0, 20.0), 1)))
    assert smooth.corner_angles() == pytest.approx((0,), abs=1e-9)
    assert polyline([(0, 0), (10, 0), (10, -5)]).corner_angles() == pytest.approx((-90,))


@given(paths())
def test_reversing_turns_the_corners_round(path: Path) -> None:
    angles, back = path.corner_angles(), path.reversed().corner_angles()
    # Straight back is 180 from either end, so the sum may be a whole turn.
    sums = [math.remainder(a + b, 360) for a, b in zip(angles, back[::-1], strict=True)]
    assert sums == pytest.approx([0] * len(sums), abs=1e-6)
    assert (path.reversed().start, path.reversed().end) == (path.end, path.start)


def test_a_path_with_a_gap_or_without_runs_is_refused() -> None:
    with pytest.raises(GeometryFault, match=r"ends at \(5, 0\), the next starts at \(5, 1\)"):
        Path((Line((0.0, 0.0), (5.0, 0.0)), Line((5.0, 1.0), (9.0, 0.0))))
    with pytest.raises(GeometryFault, match="at least one run"):
        Path(())
    with pytest.raises(GeometryFault, match="at least 2 points, not 1"):
        polyline([(0, 0)])


@pytest.mark.parametrize("size", [(0, 10), (10, -2), (math.nan, 3)])
def test_a_box_without_a_size_is_refused(size: tuple[float, float]) -> None:
    with pytest.raises(GeometryFault, match="can't be sewn"):
        box_and_cross(*size)
    with pytest.raises(GeometryFault, match="no corner middle"):
        box(10, 10, "middle")  # type: ignore[arg-type]


def test_stitches_are_whole_in_every_run() -> None:
    """38.1/3.2 = 11.9, 30/3.2 = 9.4, diagonal 48.49/3.2 = 15.2: each rounded up."""
    assert stitches_per_run(box_and_cross(38.1, 30), 3.2) == (12, 10, 12, 10, 16, 10, 16)


@given(st.integers(1, 2000), st.floats(0.5, 8))
def test_an_exact_multiple_gets_no_extra_stitch(count: int, stitch: float) -> None:
    """Each length is the multiple but for a few last digits, as unit conversion leaves it."""
    for rounding in (1 - 4e-16, 1, 1 + 4e-16, 1 + 5e-10):
        path = polyline([(0, 0), (count * stitch * rounding, 0)])
        assert stitches_per_run(path, stitch) == (count,)


@given(st.integers(1, 2000), st.floats(0.5, 8), st.floats(1e-3, 0.999))
def test_a_part_of_a_stitch_is_a_stitch(count: int, stitch: float, part: float) -> None:
    assert stitches_per_run(polyline([(0, 0), ((count + part) * stitch, 0)]), stitch) == (count + 1,)


def test_the_shortest_run_has_one_stitch_and_no_length_is_refused() -> None:
    assert stitches_per_run(polyline([(0, 0), (1e-6, 0)]), 3) == (1,)
    with pytest.raises(GeometryFault, match="above 0"):
        stitches_per_run(box(10, 10), 0)


@given(paths(), st.floats(1, 10))
def test_the_needle_goes_down_at_every_run_end_and_never_farther_than_a_stitch(path: Path, stitch: float) -> None:
    points = needle_points(path, stitch)
    assert len(points) == 1 + sum(stitches_per_run(path, stitch))
    assert set(points) >= {path.start, *(run.end for run in path.runs)}
    assert all(distance(a, b) <= stitch * (1 + 1e-6) for a, b in itertools.pairwise(points))


@given(paths(), st.floats(0, 0.6), st.floats(0, 0.6))
def test_shortening_takes_the_gaps_off_the_length_and_stays_on_the_path(path: Path, first: float, last: float) -> None:
    start_gap, end_gap = first * path.length, last * path.length
    if first + last > 0.999:
        assume(first + last > 1)
        with pytest.raises(GeometryFault, match="leave nothing"):
            path.shortened(start_gap, end_gap)
        return
    shorter = path.shortened(start_gap, end_gap)
    assert shorter.length == pytest.approx(path.length - start_gap - end_gap, abs=1e-5)
    assert shorter.start == pytest.approx(_along(path, start_gap), abs=1e-5)
    assert shorter.end == pytest.approx(_along(path, path.length - end_gap), abs=1e-5)


def _along(path: Path, way: float) -> Point:
    """The point a length from the start."""
    for run in path.runs[:-1]:
        if way <= run.length:
            return run.point_at(way / run.length)
        way -= run.length
    return path.runs[-1].point_at(way / path.runs[-1].length)


def test_shortening_by_nothing_changes_nothing_and_below_nothing_is_refused() -> None:
    assert box(10, 20).shortened(0, 0) == box(10, 20)
    with pytest.raises(GeometryFault, match="below 0"):
        box(10, 20).shortened(-1, 0)


def test_a_gap_to_a_corner_drops_the_whole_run() -> None:
    shorter = polyline([(0, 0), (10, 0), (10, 8)]).shortened(10, 3)
    assert shorter.runs == (Line((10, 0), (10, 5)),)


def test_the_polyline_of_a_path_follows_its_arcs() -> None:
    path = Path((Line((0.0, 0.0), (10.0, 0.0)), arc_from_bulge((10.0, 0.0), (10.0, 20.0), 1)))
    line = path.to_polyline(0.01)
    walked = sum(distance(a, b) for a, b in itertools.pairwise(line))
    assert walked == pytest.approx(10 + 10 * math.pi, rel=1e-3)
    assert line[:2] == [(0, 0), (10, 0)]


def test_a_bartack_goes_from_side_to_side_evenly() -> None:
    points = bartack_zigzag(10, 2, 4)
    assert points == [(0, -1), (2.5, 1), (5, -1), (7.5, 1), (10, -1)]


@given(st.floats(1, 40), st.floats(0.5, 10), st.integers(1, 80))
def test_a_bartack_has_the_cover_length_of_its_stitches(long: float, wide: float, stitches: int) -> None:
    """n · √(W² + (L/n)²), the cover in the thread formula."""
    points = bartack_zigzag(long, wide, stitches)
    expected = stitches * math.hypot(wide, long / stitches)
    assert polyline(points).length == pytest.approx(expected)


def test_a_bartack_without_stitches_is_refused() -> None:
    with pytest.raises(GeometryFault, match="0 stitches"):
        bartack_zigzag(10, 2, 0)
