"""Laying sheets of paper over something larger than one of them, so that it can be printed at its true size.

Windows of one size in columns and rows, each overlapping its neighbours; crosses and lines in the overlaps, by which
the sheets are joined. Pure arithmetic in mm: what is drawn in a window, and on what paper, is not known here.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, product

from builder.geometry.clip import clip_area
from builder.geometry.outline import Outline
from builder.geometry.placing import Placing
from builder.geometry.segment import Bounds
from builder.geometry.vector import TOUCH, GeometryFault, Point

OVERLAP_MM = 15.0
"""What a sheet shares with its neighbour. Common practice, no source."""

_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # no I and no O, which read as 1 and 0
_HAIR = 0.2  # an arc bulges less than this beyond the polyline it is cut as


@dataclass(frozen=True, slots=True)
class Tile:
    """One sheet: its number, its place (column 1 leftmost, row 1 the top one), and the piece of the plane it shows."""

    number: int
    column: int
    row: int
    window: Bounds


@dataclass(frozen=True, slots=True)
class Joint:
    """Where two sheets meet.

    letter        : the same on both
    first, second : numbers of the sheets; the second is cut along the line and laid on the first
    line          : through the middle of the overlap, from cross to cross
    """

    letter: str
    first: int
    second: int
    line: tuple[Point, Point]

    @property
    def middle(self) -> Point:
        """The middle of the line."""
        (ax, ay), (bx, by) = self.line
        return (ax + bx) / 2, (ay + by) / 2


@dataclass(frozen=True, slots=True)
class Tiling:
    """All sheets of one thing, in reading order, with their joints and crosses. One sheet alone has neither."""

    tiles: tuple[Tile, ...]
    joints: tuple[Joint, ...]
    crosses: tuple[Point, ...]
    columns: int
    rows: int

    def joints_of(self, tile: Tile) -> tuple[Joint, ...]:
        """The joints of one sheet."""
        return tuple(one for one in self.joints if tile.number in (one.first, one.second))

    def crosses_of(self, tile: Tile) -> tuple[Point, ...]:
        """The crosses in the window of one sheet."""
        return tuple(point for point in self.crosses if holds(tile.window, point))

    def longest(self, axis: int) -> tuple[Point, Point] | None:
        """The two crosses farthest apart on one line along x (0) or y (1): what a rule can measure once all is joined.

        None where no line holds two crosses of different sheets.
        """
        lines: dict[float, list[Point]] = {}
        for point in self.crosses:
            lines.setdefault(round(point[1 - axis], 6), []).append(point)
        spans = [(min(row, key=lambda p: p[axis]), max(row, key=lambda p: p[axis])) for row in lines.values()]
        spans = [
            (a, b) for a, b in spans if not any(holds(one.window, a) and holds(one.window, b) for one in self.tiles)
        ]
        return max(spans, key=lambda span: span[1][axis] - span[0][axis], default=None)


def holds(box: Bounds, point: Point) -> bool:
    """Does a point lie in a box, its border included?"""
    return box[0] - TOUCH <= point[0] <= box[2] + TOUCH and box[1] - TOUCH <= point[1] <= box[3] + TOUCH


def tiled(
    areas: Sequence[Outline],
    width_mm: float,
    height_mm: float,
    *,
    overlap_mm: float = OVERLAP_MM,
    margin_mm: float = 0.0,
) -> Tiling:
    """Sheets over some areas, each with a window of that size; those no area reaches are left out.

    margin_mm : clear space kept about the areas inside the windows
    Raises GeometryFault without an area, or for a window that is all overlap.
    """
    if not areas:
        raise GeometryFault("There is nothing to lay sheets over.")
    if not min(width_mm, height_mm) > 2 * overlap_mm:
        raise GeometryFault("The paper leaves nothing between the overlaps.")
    boxes = [area.bounds() for area in areas]
    low = [min(box[axis] for box in boxes) - margin_mm for axis in (0, 1)]
    high = [max(box[axis + 2] for box in boxes) + margin_mm for axis in (0, 1)]
    across = _windows(low[0], high[0], width_mm, overlap_mm)
    up = _windows(low[1], high[1], height_mm, overlap_mm)
    tiles = tuple(_tiles(areas, across, up, margin_mm))
    if len(tiles) == 1:
        return Tiling(tiles, (), (), 1, 1)
    xs, ys = _lines(across, overlap_mm), _lines(up, overlap_mm)
    crosses = tuple(point for point in product(xs, ys) if any(holds(tile.window, point) for tile in tiles))
    return Tiling(tiles, tuple(_joints(tiles, xs, ys, len(up))), crosses, len(across), len(up))


def fewest_sheets(
    areas: Sequence[Outline], width_mm: float, height_mm: float, *, overlap_mm: float, margin_mm: float
) -> tuple[float, Tiling]:
    """The turn, 0 or 90 degrees, that needs fewer sheets, and the sheets laid over the areas turned so.

    Only quarter turns, so that straight edges stay parallel to the paper's; as they lie when both need as many.
    """
    ways = []
    for turn in (0.0, 90.0):
        turned = [Placing(turn_deg=turn).outline(area) for area in areas]
        ways.append((turn, tiled(turned, width_mm, height_mm, overlap_mm=overlap_mm, margin_mm=margin_mm)))
    return min(ways, key=lambda way: len(way[1].tiles))


def _windows(low: float, high: float, size: float, overlap: float) -> list[tuple[float, float]]:
    """Windows along one axis, the spare shared out to both ends."""
    length = high - low
    count = 1 if length <= size else math.ceil((length - overlap) / (size - overlap) - TOUCH)
    start = low - (count * size - (count - 1) * overlap - length) / 2
    return [(start + n * (size - overlap), start + n * (size - overlap) + size) for n in range(count)]


def _lines(windows: Sequence[tuple[float, float]], overlap: float) -> list[float]:
    """Where crosses stand along one axis: half an overlap inside both ends, and in the middle of each overlap."""
    middles = [(after[0] + before[1]) / 2 for before, after in pairwise(windows)]
    return [windows[0][0] + overlap / 2, *middles, windows[-1][1] - overlap / 2]


def _tiles(
    areas: Sequence[Outline], across: Sequence[tuple[float, float]], up: Sequence[tuple[float, float]], margin: float
) -> Iterator[Tile]:
    number, reach = 0, max(margin, _HAIR)
    for row, (bottom, top) in enumerate(reversed(up), start=1):
        for column, (left, right) in enumerate(across, start=1):
            window = (left, bottom, right, top)
            wide = (left - reach, bottom - reach, right + reach, top + reach)
            if any(clip_area(area.segments, wide) for area in areas):
                number += 1
                yield Tile(number, column, row, window)


def _joints(tiles: Sequence[Tile], xs: Sequence[float], ys: Sequence[float], rows: int) -> Iterator[Joint]:
    """Joints in the order of the sheets: to the right neighbour, then to the one below."""
    at = {(tile.column, tile.row): tile for tile in tiles}
    count = 0
    for tile in tiles:
        bottom, top = ys[rows - tile.row], ys[rows - tile.row + 1]
        left, right = xs[tile.column - 1], xs[tile.column]
        beside, below = at.get((tile.column + 1, tile.row)), at.get((tile.column, tile.row + 1))
        if beside is not None:
            yield Joint(_letter(count), tile.number, beside.number, ((right, bottom), (right, top)))
            count += 1
        if below is not None:
            yield Joint(_letter(count), tile.number, below.number, ((left, bottom), (right, bottom)))
            count += 1


def _letter(number: int) -> str:
    """A, B … Z, AA, AB …, without I and O."""
    first, last = divmod(number, len(_LETTERS))
    return (_LETTERS[first - 1] if first else "") + _LETTERS[last]
