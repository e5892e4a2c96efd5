"""Which features may not lie on one another, and where two of them do.

Only pairs in the table can collide. Left out on purpose: a seam across a seam, a bartack at the end of its seam or on
a box, a box or a seam on its own strip, a fold through a seam,
a seam across the end of a zip or along its tapes, a pleat sewn over: all of these are sewn every day.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from builder.finding import Severity
from builder.geometry import (
    Bounds,
    FeatureShape,
    Outline,
    Placing,
    Point,
    Segment,
    discs_of,
    distance_point_segment,
    notch_tip,
    piece_turn,
)
from builder.model import Hole

MARK_MM = 3.0
"""Drill holes up to this size are marks: they are covered or sewn over. Common practice, no source."""

_BITE_MM = 0.1
"""Less than this on one another is touching."""
_SAME_CENTRE_MM = 1.0
"""Hardware sits in a hole whose centre is as near as this. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Cell:
    """What happens when {a} lies on {b}; `later` when {a} is set after {b} is sewn."""

    severity: Severity
    words: str
    later: str = ""


_NEEDLE = Cell(
    Severity.error, "the needle strikes {a} while {b} is sewn", "{a} is set on the stitches of {b} and cuts them"
)
_TEARS = Cell(Severity.warning, "{a} and {b} run into one another and tear into one")
_FALLS = Cell(Severity.warning, "stitches of {b} fall into the hole {a}")

TABLE: dict[tuple[str, str], Cell] = {
    ("hardware", "seam"): _NEEDLE,
    ("hardware", "box"): _NEEDLE,
    ("hardware", "bartack"): _NEEDLE,
    ("hardware", "zip"): Cell(Severity.warning, "{a} lies on the chain of {b}, which can't be opened past it"),
    ("hole", "zip"): Cell(Severity.warning, "{a} lies under the chain of {b}"),
    ("hardware", "hardware"): Cell(Severity.warning, "{a} and {b} lie on one another, one can't be set flat"),
    ("hardware", "fold"): Cell(Severity.warning, "{a} lies on the fold {b}, which can't be closed over it"),
    ("hole", "hardware"): Cell(Severity.warning, "{b} closes over the rim of {a} and sits on nothing there"),
    ("hole", "seam"): _FALLS,
    ("hole", "box"): _FALLS,
    ("hole", "bartack"): _FALLS,
    ("hole", "hole"): _TEARS,
    ("notch", "hole"): Cell(Severity.warning, "{a} runs into {b}, and the edge is open there"),
    ("notch", "hardware"): Cell(Severity.warning, "{a} runs under {b}, which tears out of the cut"),
    ("notch", "notch"): Cell(Severity.warning, "{a} and {b} are cut into one another, and neither is a mark"),
    ("slot", "seam"): _FALLS,
    ("slot", "box"): _FALLS,
    ("slot", "bartack"): _FALLS,
    ("slot", "slot"): _TEARS,
    ("slot", "hardware"): Cell(Severity.warning, "{b} sits on the slot {a}, and on nothing there"),
    ("notch", "slot"): Cell(Severity.warning, "{a} runs into {b}, and the edge is open there"),
    ("bartack", "bartack"): Cell(Severity.warning, "{a} and {b} lie on one another and cut the cloth like a stamp"),
    ("box", "box"): Cell(Severity.warning, "{a} and {b} lie over one another and cut the cloth like a stamp"),
}


@dataclass(frozen=True, slots=True)
class Mark:
    """One piece of a feature: a disc (`centre`, `radius`), lines, or a rectangle (its `bounds` alone).

    chain      : of a long piece, the centres of discs of its radius that fill it
    part, rank : whose file it is in, and its place there; its own part's features have rank 0 and up
    """

    part: str
    name: str
    kind: str
    rank: int
    bounds: Bounds
    centre: Point | None = None
    radius: float = 0.0
    lines: tuple[Segment, ...] = ()
    chain: tuple[Point, ...] = ()

    @property
    def discs(self) -> tuple[Point, ...]:
        """Centres of the discs of its radius that fill it, none for what isn't made of discs."""
        return self.chain or ((self.centre,) if self.centre is not None else ())


def marks_of(part: str, feature: FeatureShape, rank: int, placing: Placing | None = None) -> Iterator[Mark]:
    """The pieces of a feature that can collide, where the part is placed; none for strips and drill marks."""
    if feature.kind == "notch":
        run = feature.paths[0]
        closed = len(run.runs) > 1
        middle = ((run.start[0] + run.end[0]) / 2, (run.start[1] + run.end[1]) / 2) if closed else run.start
        tip = notch_tip(feature)
        centre = ((middle[0] + tip[0]) / 2, (middle[1] + tip[1]) / 2)
        yield _disc(part, feature, rank, centre, feature.size[0] / 2, placing)
    elif feature.kind in ("hole", "hardware"):
        if feature.kind == "hole" and feature.size[0] <= MARK_MM:
            return
        if feature.regions:
            yield from (Mark(part, feature.name, "hardware", rank, _placed(one, placing)) for one in feature.regions)
            return
        for point in feature.points:
            yield _disc(part, feature, rank, point, feature.size[0] / 2, placing)
    elif feature.kind == "slot" or (feature.kind == "bartack" and piece_turn(feature.feature) % 90):  # type: ignore[arg-type]
        yield from (_chain(part, feature, rank, number) for number in range(len(feature.points)))
    elif feature.kind == "bartack":
        for region in feature.regions:
            yield Mark(part, feature.name, "bartack", rank, region.bounds())
    elif feature.kind in _LINES:
        for path in feature.paths:
            runs = tuple(run for run, _ in path.distinct())
            yield Mark(part, feature.name, _LINES[feature.kind], rank, path.bounds(), lines=runs)


# A dart is sewn as a seam is, a pleat is folded. Elastic is left out: it bends round whatever lies there.
_LINES = {"seam": "seam", "box": "box", "fold": "fold", "dart": "seam", "pleat": "fold", "zip": "zip"}


def _placed(region: Outline, placing: Placing | None) -> Bounds:
    return (region if placing is None else placing.outline(region)).bounds()


def _chain(part: str, feature: FeatureShape, rank: int, number: int) -> Mark:
    points, radius = discs_of(feature, number)
    bounds = feature.regions[number].bounds()
    return Mark(part, feature.name, feature.kind, rank, bounds, feature.points[number], radius, chain=points)


def _disc(part: str, feature: FeatureShape, rank: int, centre: Point, radius: float, placing: Placing | None) -> Mark:
    x, y = centre if placing is None else placing.point(centre)
    bounds = (x - radius, y - radius, x + radius, y + radius)
    return Mark(part, feature.name, feature.kind, rank, bounds, (x, y), radius)


def colliding(marks: Iterable[Mark]) -> Iterator[tuple[Mark, Mark, Cell]]:
    """Pairs that lie on one another, in the order of the table's keys. A sweep from left to right."""
    every = list(marks)
    punched = _punched(every)
    active: list[Mark] = []
    for mark in sorted(every, key=lambda one: one.bounds[0]):
        active = [one for one in active if one.bounds[2] > mark.bounds[0] + _BITE_MM]
        for other in active:
            for a, b in ((mark, other), (other, mark)):
                cell = TABLE.get((a.kind, b.kind))
                if cell is not None and not _meant(a, b, punched) and _meet(a, b):
                    yield a, b, cell
                    break
        active.append(mark)


def _meant(a: Mark, b: Mark, punched: set[tuple[str, str]]) -> bool:
    """A hole is filled by what sits in it; a ring lies in its fold, only what is pressed through can't be folded."""
    filled = (a.part, a.name) in punched
    return filled if a.kind == "hole" else b.kind == "fold" and not filled


def _punched(marks: list[Mark]) -> set[tuple[str, str]]:
    """Holes punched for hardware, and that hardware: one centre, the hole smaller than what sits in it."""
    centres: dict[tuple[int, int], list[Mark]] = {}
    for mark in marks:
        if mark.kind == "hardware" and mark.centre is not None:
            centres.setdefault((round(mark.centre[0]), round(mark.centre[1])), []).append(mark)
    found: set[tuple[str, str]] = set()
    for mark in marks:
        if mark.kind == "hole" and mark.centre is not None:
            x, y = round(mark.centre[0]), round(mark.centre[1])
            near = (one for dx in (-1, 0, 1) for dy in (-1, 0, 1) for one in centres.get((x + dx, y + dy), ()))
            sits = [one for one in near if _one_centre(mark, one) and one.radius > mark.radius]
            if sits:
                found.update((one.part, one.name) for one in (mark, *sits))
    return found


def _one_centre(a: Mark, b: Mark) -> bool:
    return a.centre is not None and b.centre is not None and math.dist(a.centre, b.centre) <= _SAME_CENTRE_MM


def _meet(a: Mark, b: Mark) -> bool:
    if a.bounds[1] > b.bounds[3] - _BITE_MM or b.bounds[1] > a.bounds[3] - _BITE_MM:
        return False
    if a.discs and b.discs:
        # A cap and its socket are typed as two: one centre is one snap.
        one_snap = a.kind == b.kind == "hardware" and _one_centre(a, b)
        apart = min(math.dist(one, other) for one in a.discs for other in b.discs)
        return not one_snap and apart < a.radius + b.radius - _BITE_MM
    if a.discs:
        return any(_disc_meets(one, a.radius, b) for one in a.discs)
    if b.discs:
        return any(_disc_meets(one, b.radius, a) for one in b.discs)
    if b.lines and a.kind == "hardware":
        return any(_line_meets(a.bounds, line) for line in b.lines)
    # Two rectangles: a box inside another is a second line of stitching, not a collision.
    return a.kind == "bartack" or _holds(a.bounds, b.bounds) == _holds(b.bounds, a.bounds)


def _disc_meets(centre: Point, radius: float, other: Mark) -> bool:
    least = radius - _BITE_MM
    if other.lines:
        return any(distance_point_segment(centre, line) < least for line in other.lines)
    left, bottom, right, top = other.bounds
    dx = max(left - centre[0], 0.0, centre[0] - right)
    dy = max(bottom - centre[1], 0.0, centre[1] - top)
    return math.hypot(dx, dy) < least


def _line_meets(box: Bounds, line: Segment) -> bool:
    """Does a line run through a box? By its points, a millimetre apart."""
    steps = max(math.ceil(line.length), 1)
    points = (line.point_at(step / steps) for step in range(steps + 1))
    return any(
        box[0] + _BITE_MM < x < box[2] - _BITE_MM and box[1] + _BITE_MM < y < box[3] - _BITE_MM for x, y in points
    )


def _holds(outer: Bounds, inner: Bounds) -> bool:
    return (
        outer[0] <= inner[0] + _BITE_MM
        and outer[1] <= inner[1] + _BITE_MM
        and outer[2] >= inner[2] - _BITE_MM
        and outer[3] >= inner[3] - _BITE_MM
    )


def covered(feature: FeatureShape, strips: Iterable[Outline]) -> bool:
    """Is a hole a mark that a strip is laid over?"""
    if not isinstance(feature.feature, Hole):
        return False
    return any(all(strip.contains(point) for point in feature.points) for strip in strips)
