"""Places for the words of callouts: near what they are about, inside the picture, off each other and off the marks.

Every way to stand is listed with its cost; words with the fewest clear ways choose first, then each looks again.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.drawing.box import Box, box_about
from builder.drawing.font import Lettering
from builder.drawing.lettered import TextBlock, block_size
from builder.drawing.svg import XY, lines_d

_PLATE = 0.75
_CLEAR = 0.6
_EDGE = 0.9
_WAYS = tuple((math.cos(math.radians(angle)), math.sin(math.radians(angle))) for angle in range(0, 360, 15))
_OFFS = (1.2, 3.0, 5.5, 8.5, 12.0, 16.0, 22.0)
_OVERLAP, _COVERS = 1000.0, 60.0
_MOST_LINES = 4
_FAR = 2.0  # farther from what they are about, words have a leader


@dataclass(frozen=True, slots=True)
class Pointed:
    """Words and what they are about.

    at     : the place, `radius` round it kept free
    away   : the direction they would rather stand in
    frame  : a box they are about
    fixed  : they stand on the place itself; leader_to : what they then point to
    """

    words: str
    at: XY
    radius: float
    away: XY | None
    frame: Box | None = None
    fixed: bool = False
    leader_to: XY | None = None


@dataclass(frozen=True, slots=True)
class Label:
    """Words placed, with the ends of their leader."""

    block: TextBlock
    ends: tuple[XY, XY] | None = None

    def leader(self) -> str:
        """Path data of the leader, '' for none."""
        return lines_d([self.ends]) if self.ends is not None else ""


@dataclass(frozen=True, slots=True)
class _Way:
    box: Box
    lines: tuple[str, ...]
    cost: float


def placed_words(
    wishes: Sequence[Pointed], taken: Sequence[Box], paper: Box, lettering: Lettering
) -> tuple[list[Label], list[str]]:
    """The words placed, in the order of the wishes, and in words what found no clear place."""
    ways = [list(_ways(wish, taken, paper, lettering)) for wish in wishes]
    chosen: dict[int, _Way] = {}
    order = sorted(range(len(wishes)), key=lambda at: sum(way.cost < _COVERS for way in ways[at]))
    for _ in range(3):
        for at in order:
            others = [way.box for number, way in chosen.items() if number != at]
            chosen[at] = min(ways[at], key=lambda way: way.cost + _clash(way.box, others))
    labels, problems = [], []
    for at, wish in enumerate(wishes):
        way = chosen[at]
        others = [other.box for number, other in chosen.items() if number != at]
        if _clash(way.box, others) or not way.box.grown(_PLATE - 0.01).inside(paper):
            problems.append(f"the words “{wish.words}” find no room in the picture")
        labels.append(Label(TextBlock(way.lines, way.box, bold=False), _ends(wish, way.box)))
    return labels, problems


def _clash(box: Box, others: Sequence[Box]) -> float:
    return _OVERLAP * sum(box.overlaps(other, 2 * _PLATE + _CLEAR) for other in others)


def _ways(wish: Pointed, taken: Sequence[Box], paper: Box, lettering: Lettering) -> Iterator[_Way]:
    """Every way to stand. There is always one, if a bad one."""
    inner = paper.grown(-_EDGE - _PLATE)
    for lines in _broken(wish.words, lettering):
        width, height = block_size(lines, False, lettering)
        lined = 1.2 * (len(lines) - 1)
        for box, cost in _places(wish, width, height):
            box = _pushed_in(box, inner)
            covers = sum(box.grown(_PLATE).overlaps(one) for one in taken)
            outside = 0.0 if box.inside(inner.grown(0.01)) else _OVERLAP
            # The words of an arrow belong at its tail: a leader to it would look like a bend of the arrow.
            moved = (0.4 if wish.away is None else 4.0) * _apart(wish, box)
            yield _Way(box, lines, cost + lined + moved + covers * _COVERS + outside)


def _places(wish: Pointed, width: float, height: float) -> Iterator[tuple[Box, float]]:
    if wish.fixed:
        yield box_about(wish.at, width, height), 0.0
        for off in (3.0, 6.0, 9.0):
            for x, y in _WAYS[::3]:
                yield box_about((wish.at[0] + x * off, wish.at[1] + y * off), width, height), off
        return
    for off in _OFFS:
        for way in _WAYS:
            reach = off + _PLATE + _start(wish, way) + abs(way[0]) * width / 2 + abs(way[1]) * height / 2
            turned = 0.0 if wish.away is None else 3 * (1 - way[0] * wish.away[0] - way[1] * wish.away[1])
            centre = (wish.at[0] + way[0] * reach, wish.at[1] + way[1] * reach)
            yield box_about(centre, width, height), off + turned


def _start(wish: Pointed, way: XY) -> float:
    return wish.frame.reach(way) if wish.frame is not None else wish.radius


def _pushed_in(box: Box, inner: Box) -> Box:
    dx = max(inner.x0 - box.x0, 0.0) - max(box.x1 - inner.x1, 0.0)
    dy = max(inner.y0 - box.y0, 0.0) - max(box.y1 - inner.y1, 0.0)
    return box.moved(dx, dy)


def _apart(wish: Pointed, box: Box) -> float:
    """From the words to what they are about."""
    x, y = box.grown(_PLATE).nearest(wish.at)
    return max(0.0, math.dist((x, y), wish.at) - wish.radius)


def _ends(wish: Pointed, box: Box) -> tuple[XY, XY] | None:
    """Both ends of the leader, None where the words stand close by."""
    plate = box.grown(_PLATE)
    if wish.fixed:
        return None if wish.leader_to is None else (plate.nearest(wish.leader_to), wish.leader_to)
    if wish.frame is not None:
        start = plate.nearest(wish.frame.centre)
        end = wish.frame.nearest(start)
    else:
        start = plate.nearest(wish.at)
        gone = math.dist(start, wish.at)
        share = wish.radius / gone if gone > wish.radius else 1.0
        end = (wish.at[0] + (start[0] - wish.at[0]) * share, wish.at[1] + (start[1] - wish.at[1]) * share)
    return (start, end) if math.dist(start, end) > _FAR or (wish.radius == 0 and wish.frame is None) else None


def _broken(text: str, lettering: Lettering) -> Iterator[tuple[str, ...]]:
    """The words in one line, in two, in three and four of nearly the same length."""
    words = text.split()
    seen = set()
    for count in range(1, min(_MOST_LINES, len(words)) + 1):
        lines = _in_lines(words, count, lettering)
        if lines not in seen:
            seen.add(lines)
            yield lines


def _in_lines(words: Sequence[str], count: int, lettering: Lettering) -> tuple[str, ...]:
    """Words in at most `count` lines, the longest as short as can be."""
    low, high = max(lettering.width(word) for word in words), lettering.width(" ".join(words))
    for _ in range(12):
        middle = (low + high) / 2
        low, high = (low, middle) if len(_filled(words, middle, lettering)) <= count else (middle, high)
    return _filled(words, high, lettering)


def _filled(words: Sequence[str], width: float, lettering: Lettering) -> tuple[str, ...]:
    lines: list[str] = []
    for word in words:
        if lines and lettering.width(f"{lines[-1]} {word}") <= width + 1e-9:
            lines[-1] = f"{lines[-1]} {word}"
        else:
            lines.append(word)
    return tuple(lines)
