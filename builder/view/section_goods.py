"""The plies of a section as drawn: how thick, how high each lies, and the outline of each piece with its bends.

Coordinates are printed mm of a figure drawn at its wanted size: along the cut true to one scale, thickness enlarged.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from builder.geometry import Arc, Bend, Line, Plies, Ply, Point, Segment

GAP = 0.9
_THINNEST, _THICKEST, _LEAST = 1.9, 5.2, 1.1
_MOST_TALL, _LEAST_TALL = 21.0, 5.2
# Bends round more than this have a straight side.
_ROUND = 2.6
_CLEAR = 0.9
# What is left of a ply whose bends meet.
_SHORTEST = 0.05


@dataclass(frozen=True, slots=True)
class Placed:
    """A ply on the drawing: its ends along x, middle height and thickness."""

    ply: Ply
    low: float
    high: float
    middle: float
    thick: float

    @property
    def bottom(self) -> float:
        """Its lower face."""
        return self.middle - self.thick / 2

    @property
    def top(self) -> float:
        """Its upper face."""
        return self.middle + self.thick / 2


@dataclass(frozen=True, slots=True)
class Band:
    """A piece of goods as a band.

    ring  : its outline
    wrong : the face that is its wrong side, the goods to the left of it
    raw   : its cut ends; on: where only the picture ends
    """

    names: tuple[str, ...]
    part: str
    thick: float
    ring: tuple[Segment, ...]
    wrong: tuple[Segment, ...]
    raw: tuple[Line, ...]


@dataclass(slots=True)
class Goods:
    """All plies of a window, placed."""

    plies: Plies
    scale: float
    placed: dict[str, Placed] = field(default_factory=dict)
    _turns: dict[tuple[str, str], tuple[float, float]] = field(default_factory=dict)

    def bands(self) -> Iterator[Band]:
        """Each piece of goods, the lowest first."""
        for group in self.plies.pieces():
            yield _band(self._chain(group), self)

    def turn(self, bend: Bend) -> tuple[float, float]:
        """Where a bend begins, and how far it reaches out from there."""
        return self._turns[bend.first, bend.second]

    def _chain(self, group: Sequence[str]) -> list[tuple[Ply, Bend | None]]:
        """The plies of a piece from one free end to the other, each with the bend to the next."""
        bends = [one for one in self.plies.bends if one.first in group]
        met = {name: [one for one in bends if name in (one.first, one.second)] for name in group}
        name: str | None = min((one for one in group if len(met[one]) < 2), key=group.index, default=group[0])
        used: set[int] = set()
        chain: list[tuple[Ply, Bend | None]] = []
        while name is not None:
            bend = next((one for one in met[name] if id(one) not in used), None)
            chain.append((self.plies.ply(name), bend))
            if bend is None or len(chain) > len(group):
                break
            used.add(id(bend))
            name = bend.second if bend.first == name else bend.first
        return chain


def goods_of(plies: Plies, scale: float, thickness: Callable[[str], float | None]) -> Goods:
    """Plies placed as low as they go on each other.

    scale     : printed mm for a mm along the cut
    thickness : of a ply by its part, mm, None where nobody typed it
    """
    thick = _thicknesses(plies, thickness)
    goods = Goods(plies, scale)
    tops: list[tuple[float, float, float]] = []
    for one in plies.plies:
        low, high = one.low.at * scale, one.high.at * scale
        under = max((top for a, b, top in tops if a < high - 1e-6 and b > low + 1e-6), default=-GAP)
        bottom = under + GAP
        tops.append((low, high, bottom + thick[one.part]))
        goods.placed[one.name] = Placed(one, low, high, bottom + thick[one.part] / 2, thick[one.part])
    _place_bends(goods)
    return goods


def _thicknesses(plies: Plies, thickness: Callable[[str], float | None]) -> Mapping[str, float]:
    """Printed thickness of each part: in proportion, but never so thin or so thick that it can't be read."""
    known = {one.part: thickness(one.part) for one in plies.plies}
    least = min((one for one in known.values() if one), default=1.0)
    drawn = {
        part: min(max(_THINNEST * (value or least) / least, _THINNEST), _THICKEST) for part, value in known.items()
    }
    tall = sum(drawn[one.part] + GAP for one in plies.plies)
    # Not so tall that it takes the page, nor so low that two threads can't be seen to link in it.
    share = min(max(tall, _LEAST_TALL), _MOST_TALL) / tall if tall else 1.0
    return {part: max(value * share, _LEAST) for part, value in drawn.items()}


def _place_bends(goods: Goods) -> None:
    """Bends round each other share their middle line; the outermost touches the place of the fold."""
    groups: dict[tuple[float, int], list[Bend]] = {}
    for bend in goods.plies.bends:
        groups.setdefault((round(bend.at, 3), bend.way), []).append(bend)
    for (at, way), bends in groups.items():
        halves = {id(bend): _half(goods, bend) for bend in bends}
        smallest = min(halves.values())
        thick = max(goods.placed[bend.first].thick for bend in bends)
        round_ = min(smallest, max(_ROUND, (thick + GAP) / 2))
        reach = {key: round_ + half - smallest for key, half in halves.items()}
        start = at * goods.scale - way * (max(reach.values()) + thick / 2)
        if any(_between(goods, bend, one) for bend in bends for one in goods.plies.plies):
            # What is wrapped ends at the fold's place; the goods go round outside it.
            start = at * goods.scale + way * _CLEAR
        for bend in bends:
            goods._turns[bend.first, bend.second] = start, reach[id(bend)]


def _half(goods: Goods, bend: Bend) -> float:
    return abs(goods.placed[bend.first].middle - goods.placed[bend.second].middle) / 2


def _between(goods: Goods, bend: Bend, one: Ply) -> bool:
    """Does another ply end inside a bend?"""
    if any(one.name in (other.first, other.second) and other.at == bend.at for other in goods.plies.bends):
        return False
    middles = sorted((goods.placed[bend.first].middle, goods.placed[bend.second].middle))
    near = abs((one.high if bend.way > 0 else one.low).at - bend.at) < 2.0
    return near and middles[0] < goods.placed[one.name].middle < middles[1]


def _band(chain: Sequence[tuple[Ply, Bend | None]], goods: Goods) -> Band:
    """The outline of a chain of plies and bends, its wrong side and its ends."""
    first = chain[0][0]
    ahead = chain[0][1].way if chain[0][1] is not None else 1
    sides: tuple[list[Segment], list[Segment]] = ([], [])
    way, before = ahead, None
    raw: list[Line] = []
    for ply, bend in chain:
        here = goods.placed[ply.name]
        begin = before if before is not None else _free(here, way < 0)
        finish = goods.turn(bend)[0] if bend is not None else _free(here, way > 0)
        finish = begin + way * max(way * (finish - begin), _SHORTEST)
        for side, sign in zip(sides, (1, -1), strict=True):
            y = here.middle + sign * way * here.thick / 2
            side.append(Line((begin, y), (finish, y)))
        if bend is None:
            break
        other = bend.second if bend.first == ply.name else bend.first
        for side, sign in zip(sides, (1, -1), strict=True):
            side += _bend(goods, bend, here, goods.placed[other], sign)
        before, way = finish, -way
    thick = goods.placed[first.name].thick
    starts, ends = (sides[0][0].start, sides[1][0].start), (sides[0][-1].end, sides[1][-1].end)
    back = [one.reversed() for one in reversed(sides[1])]
    start_end = first.low if ahead > 0 else first.high
    last = chain[-1][0]
    last_end = last.high if way > 0 else last.low
    head, foot = list(_cap(ends[0], ends[1], last_end.kind)), list(_cap(starts[1], starts[0], start_end.kind))
    for end, cap in ((last_end, head), (start_end, foot)):
        raw += [one for one in cap if end.kind == "cut" and isinstance(one, Line)]
    left_is_right = (ahead > 0) == first.right_up
    wrong = tuple(sides[1]) if left_is_right else tuple(one.reversed() for one in reversed(sides[0]))
    return Band(
        tuple(ply.name for ply, _ in chain), first.part, thick, (*sides[0], *head, *back, *foot), wrong, tuple(raw)
    )


def _free(here: Placed, high: bool) -> float:
    """Where the straight faces of a ply end; a woven edge is round, and reaches its place with its roundness."""
    end = here.ply.high if high else here.ply.low
    round_ = here.thick / 2 if end.kind == "woven" else 0.0
    return here.high - round_ if high else here.low + round_


def _bend(goods: Goods, bend: Bend, here: Placed, there: Placed, sign: int) -> Iterator[Segment]:
    """One face of a bend: a quarter, what is straight, a quarter. `sign` 1 is the face to the left on the way."""
    x, reach = goods.turn(bend)
    way, up = bend.way, 1 if there.middle > here.middle else -1
    turn = way * up
    radius = reach - sign * turn * here.thick / 2
    low, high = here.middle + up * reach, there.middle - up * reach
    points: tuple[Point, ...] = (
        (x, low - up * radius),
        (x + way * radius, low),
        (x + way * radius, high),
        (x, high + up * radius),
    )
    yield Arc(points[0], points[1], (x, low), turn < 0)
    if abs(high - low) > 1e-6:
        yield Line(points[1], points[2])
    yield Arc(points[2], points[3], (x, high), turn < 0)


def _cap(start: Point, end: Point, kind: str) -> Iterator[Segment]:
    """An end of a band: cut straight, woven round, or a wave where the goods go on. Its outline runs clockwise."""
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    if kind == "woven":
        yield Arc(start, end, middle, clockwise=True)
    elif kind == "on":
        for a, b, side in ((start, middle, 1.0), (middle, end, -1.0)):
            yield _bulged(a, b, side)
    else:
        yield Line(start, end)


def _bulged(a: Point, b: Point, side: float) -> Arc:
    """A flat arc between two points, `side` 1 curved to the left."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    centre = ((a[0] + b[0]) / 2 + side * dy * 0.35, (a[1] + b[1]) / 2 - side * dx * 0.35)
    return Arc(a, b, centre, clockwise=side > 0)
