"""Line work of a PDF page as it is on paper: paths under the transformation they are drawn with, in mm."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from pypdf import PageObject
from pypdf.generic import ContentStream

XY = tuple[float, float]
Matrix = tuple[float, float, float, float, float, float]

_MM = 25.4 / 72
_STROKED, _CLOSING = {b"S", b"s", b"B", b"b", b"B*", b"b*"}, {b"s", b"b", b"b*"}
_ENDING = _STROKED | {b"f", b"F", b"f*", b"n"}


@dataclass(frozen=True)
class Vector:
    """A path: its corners in mm from the lower left of the page, width of its line in mm, 0 when it is only filled."""

    points: tuple[XY, ...]
    width: float

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top."""
        xs, ys = [x for x, _ in self.points], [y for _, y in self.points]
        return min(xs), min(ys), max(xs), max(ys)

    @property
    def size(self) -> XY:
        """Width and height of its box."""
        left, bottom, right, top = self.box
        return right - left, top - bottom


def vectors(page: PageObject) -> list[Vector]:
    """All paths of a page, in the order drawn; ends of curves stand for the curves."""
    return list(_Reader(page.pdf).read(page.get_contents(), page["/Resources"], (1, 0, 0, 1, 0, 0)))


def _times(a: Matrix, b: Matrix) -> Matrix:
    """a first, then b."""
    return (
        a[0] * b[0] + a[1] * b[2],
        a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2],
        a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4],
        a[4] * b[1] + a[5] * b[3] + b[5],
    )


class _Reader:
    def __init__(self, pdf: Any) -> None:
        self.pdf = pdf

    def read(self, stream: Any, resources: Any, start: Matrix) -> Iterator[Vector]:
        state: tuple[Matrix, float] = (start, 1.0)
        stack: list[tuple[Matrix, float]] = []
        pieces: list[list[XY]] = []
        for operands, operator in ContentStream(stream, self.pdf).operations:
            numbers = [float(one) for one in operands if isinstance(one, int | float)]
            ctm, width = state
            if operator == b"q":
                stack.append(state)
            elif operator == b"Q":
                state = stack.pop()
            elif operator == b"cm":
                state = (_times(tuple(numbers), ctm), width)  # type: ignore[arg-type]
            elif operator == b"w":
                state = (ctm, numbers[0])
            elif operator == b"m":
                pieces.append([self.at(numbers, ctm)])
            elif operator in (b"l", b"c", b"v", b"y"):
                pieces[-1].append(self.at(numbers[-2:], ctm))
            elif operator == b"re":
                x, y, w, h = numbers
                corners = ((x, y), (x + w, y), (x + w, y + h), (x, y + h), (x, y))
                pieces.append([self.at(corner, ctm) for corner in corners])
            elif operator == b"h":
                pieces[-1].append(pieces[-1][0])
            elif operator in _ENDING:
                scale = abs(ctm[0] * ctm[3] - ctm[1] * ctm[2]) ** 0.5
                for piece in pieces if operator != b"n" else ():
                    closed = [*piece, piece[0]] if operator in _CLOSING else piece
                    yield Vector(tuple(closed), width * scale * _MM if operator in _STROKED else 0.0)
                pieces = []
            elif operator == b"Do":
                yield from self.form(resources["/XObject"][operands[0]], ctm)

    def form(self, form: Any, ctm: Matrix) -> Iterator[Vector]:
        """What a picture that is itself a drawing holds."""
        if form["/Subtype"] == "/Form":
            matrix = tuple(float(one) for one in form.get("/Matrix", (1, 0, 0, 1, 0, 0)))
            yield from self.read(form, form.get("/Resources", {}), _times(matrix, ctm))  # type: ignore[arg-type]

    @staticmethod
    def at(point: Any, ctm: Matrix) -> XY:
        x, y = point
        return (x * ctm[0] + y * ctm[2] + ctm[4]) * _MM, (x * ctm[1] + y * ctm[3] + ctm[5]) * _MM
