"""A part folded across: what moves over as a piece of its own, in front of the rest or behind it.

Only what stays is folded again by the next fold; a part folded in four is drawn folded in two.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace

from builder.geometry import (
    FeatureShape,
    Line,
    PartShape,
    Path,
    Placing,
    Point,
    fold_across,
    left_half,
    lies_left,
    mirrored_over,
)
from builder.view.turned import closing_seams

_THROUGH = frozenset({"seam", "box", "bartack", "dart", "hardware"})


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of a folded part: its shape in the flat part's coordinates, how it lies, whether it is turned over.

    closing : seams that close the part, where they go through this piece
    """

    shape: PartShape
    placing: Placing
    turned: bool
    closing: tuple[Path, ...] = ()


@dataclass(frozen=True, slots=True)
class Lying:
    """A part as it lies folded: its pieces from the lowest to the highest, seen from its right side.

    through : what is sewn through all of them, on the shape of what stayed; None for a flat part
    """

    pieces: tuple[Piece, ...]
    through: PartShape | None = None


def made_folds(shape: PartShape, before: frozenset[tuple[str, str]]) -> list[tuple[FeatureShape, Line]]:
    """Folds across the part that are made, with their lines, in the order of the file."""
    found = ((one, fold_across(one)) for name, one in shape.features.items() if (shape.name, name) in before)
    return [(one, line) for one, line in found if line is not None]


def as_folded(shape: PartShape, before: frozenset[tuple[str, str]], inside_out: bool) -> Lying:
    """The part in its pieces. What stands below a fold in the part's file is sewn after it, through all layers.

    inside_out : turned after it was folded and closed, so that what moved over now lies on the other side
    """
    folds, sewn = made_folds(shape, before), {one.name for one in closing_seams(shape, before)}
    if not folds:
        return Lying((Piece(shape, Placing(), False, _paths(shape, sewn)),))
    later = _later(shape, folds[-1][0].name)
    flat = replace(shape, features={name: one for name, one in shape.features.items() if name not in later})
    body, whole = flat, replace(shape, features=later)
    below: list[Piece] = []
    above: list[Piece] = []
    for fold, line in folds:
        stays, moves = left_half(body, line, fold.name), left_half(body, Line(line.end, line.start), fold.name)
        if stays is None or moves is None:
            continue
        body, whole = stays, left_half(whole, line) or whole
        behind = (fold.feature.side == "wrong") != inside_out
        (below if behind else above).append(Piece(moves, mirrored_over(line), True))
    found = [*reversed(below), Piece(body, Placing(), False), *above]
    closing = _paths(whole, sewn)
    return Lying(tuple(_closed(one, closing) for one in found), whole)


def _later(shape: PartShape, fold: str) -> dict[str, FeatureShape]:
    """What is sewn or set after a fold, as the file has it."""
    names = list(shape.features)
    after = names[names.index(fold) + 1 :]
    return {name: shape.features[name] for name in after if shape.features[name].kind in _THROUGH}


def _paths(shape: PartShape, names: Collection[str]) -> tuple[Path, ...]:
    return tuple(path for name, one in shape.features.items() if name in names for path in one.paths)


def _closed(piece: Piece, closing: Sequence[Path]) -> Piece:
    back = piece.placing.inverse()
    return replace(piece, closing=tuple(back.path(path) for path in closing))


def where(shape: PartShape, before: frozenset[tuple[str, str]], point: Point) -> tuple[int, Point]:
    """A place of the flat part on the folded one: the number of the piece it is on, 0 for what stays, and the place."""
    for number, (_, line) in enumerate(made_folds(shape, before), start=1):
        if not lies_left(line, point):
            return number, mirrored_over(line).point(point)
    return 0, point


def where_line(
    shape: PartShape, before: frozenset[tuple[str, str]], line: tuple[Point, Point, Point]
) -> tuple[Point, Point, Point] | None:
    """A dimension's start, end and direction away, on the folded part; None where a fold has come between its ends."""
    start, end, away = line
    middle = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
    number, _ = where(shape, before, middle)
    if number == 0:
        folds = made_folds(shape, before)
        inside = all(lies_left(fold, point) for _, fold in folds for point in (start, end))
        return line if inside else None
    fold = made_folds(shape, before)[number - 1][1]
    if any(lies_left(fold, point) and not _on(fold, point) for point in (start, end)):
        return None
    move = mirrored_over(fold)
    origin, tip = move.point((0.0, 0.0)), move.point(away)
    return move.point(start), move.point(end), (tip[0] - origin[0], tip[1] - origin[1])


def _on(line: Line, point: Point) -> bool:
    return lies_left(line, point) and lies_left(Line(line.end, line.start), point)
