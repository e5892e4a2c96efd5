"""A whole machine needle for a broken one to be laid on: its outline at true size, and a large one with its parts.

Length, shank and blade are the view's. Where shoulder, eye and scarf lie between them is art: needles of one length
differ in it, so the outline tells whether a needle is whole, not which make it is.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.drawing import look
from builder.drawing.drawn import Drawing
from builder.drawing.font import Lettering
from builder.drawing.raster import ready
from builder.drawing.svg import XY, document, element, lines_d, num, stroke, words
from builder.model import spoken_family
from builder.view import NeedleUse

_CAPITALS = 2.6
_PAD = 2.0
_LARGE_MM = 150.0
_SHAPE = (38.0, 2.0, 1.1)  # of the large picture: any needle's, since it names parts and measures nothing
# Shares of the whole length: end of the shank, begin of the blade, ends of the groove, middle of the eye.
_SHANK, _BLADE, _GROOVE, _EYE = 0.31, 0.36, 0.385, 0.885
_BUTT = 0.25  # of the shank's diameter: the bevel at the end that goes in first


@dataclass(frozen=True, slots=True)
class _Shape:
    """A needle lying along x with its butt at `x`, its axis at `y`; all mm on paper."""

    x: float
    y: float
    length: float
    shank: float
    blade: float

    def at(self, share: float) -> float:
        """A place along it, by the share of its length."""
        return self.x + share * self.length

    @property
    def outline(self) -> str:
        """Butt, shank, shoulder, blade and point as one closed path."""
        big, thin, bevel = self.shank / 2, self.blade / 2, self.shank * _BUTT
        slim = self.at(1.0) - 3.4 * self.blade  # from here the blade runs out into the point
        upper = [(self.x, big - bevel), (self.x + bevel, big), (self.at(_SHANK), big), (self.at(_BLADE), thin)]
        path = "M" + "L".join(f"{num(x)} {num(self.y - up)}" for x, up in [*upper, (slim, thin)])
        path += f"Q{num(self.at(1.0) - self.blade)} {num(self.y - thin * 0.72)} {num(self.at(1.0))} {num(self.y)}"
        path += f"Q{num(self.at(1.0) - self.blade)} {num(self.y + thin * 0.72)} {num(slim)} {num(self.y + thin)}"
        return path + "".join(f"L{num(x)} {num(self.y + up)}" for x, up in reversed(upper)) + "Z"

    @property
    def eye(self) -> tuple[float, float]:
        """Half its length and half its width."""
        return 0.85 * self.blade, 0.2 * self.blade

    @property
    def groove(self) -> tuple[XY, XY]:
        """The line of the long groove."""
        return (self.at(_GROOVE), self.y), (self.at(_EYE) - self.eye[0] * 1.3, self.y)

    def svg(self, line: float, fill: str) -> str:
        """Outline, groove and eye."""
        half, high = self.eye
        eye = element(
            "rect",
            x=self.at(_EYE) - half,
            y=self.y - high,
            width=2 * half,
            height=2 * high,
            rx=high,
            fill=look.GROUND,
            stroke=look.INK,
            stroke_width=line,
        )
        body = stroke(self.outline, look.INK, line, join="round", fill=fill)
        return body + stroke(lines_d([self.groove]), look.INK, line, cap="round") + eye


def needle_outline(use: NeedleUse, alt: str) -> Drawing:
    """A needle's outline at true size between marks of its ends. Raises ValueError where nobody typed its size."""
    if use.length is None or use.shank is None:
        raise ValueError(f"nobody typed how long {use.text} is")
    length, shank, blade = float(use.length), float(use.shank), use.size / 100
    height = 9.0
    shape = _Shape(_PAD, height / 2, length, shank, blade)
    ends = lines_d([((x, 0.6), (x, height - 0.6)) for x in (shape.x, shape.at(1.0))])
    art = stroke(ends, look.EARLIER, look.HAIR) + shape.svg(look.HAIR, look.GROUND)
    width = length + 2 * _PAD
    return Drawing(document(use.text, alt, width, height, art), width, height, 1.0, (), ())


def needle_parts_figure(parts: Sequence[str], alt: str) -> Drawing:
    """A large needle with the names of shank, blade, long groove, eye and point, in this order."""
    length, shank, blade = _SHAPE
    scale = (_LARGE_MM - 2 * _PAD) / length
    lettering = Lettering(spoken_family(), _CAPITALS)
    above = lettering.above + lettering.below + 2.0
    tall = shank * scale
    height = 2 * above + tall + 1.0
    shape = _Shape(_PAD, height / 2, length * scale, tall, blade * scale)
    art = shape.svg(look.THIN, look.MANILA_PALE) + "".join(_labels(shape, parts, lettering, height))
    svg = ready(document(alt, alt, _LARGE_MM, height, art), lettering.family)
    return Drawing(svg, _LARGE_MM, height, scale, (), ())


def _labels(shape: _Shape, parts: Sequence[str], lettering: Lettering, height: float) -> Iterator[str]:
    """Names over and under the needle, by turns, each with a line to its part."""
    thin = shape.blade / 2
    ends = (
        (shape.at(_SHANK / 2), -shape.shank / 2, -1),
        (shape.at(0.47), thin, 1),
        (shape.at(0.62), -thin * 0.1, -1),
        (shape.at(_EYE), shape.eye[1], 1),
        (shape.at(0.985), -thin * 0.3, -1),
    )
    for name, (x, off, way) in zip(parts, ends, strict=True):
        base = lettering.above if way < 0 else height - lettering.below
        tip = shape.y + off
        near = base + lettering.below + 0.3 if way < 0 else base - lettering.above - 0.3
        yield stroke(lines_d([((x, near), (x, tip))]), look.INK, look.HAIR)
        half = lettering.width(name, True) / 2
        middle = min(max(x, half), _LARGE_MM - half)
        yield element(
            "text",
            words(name),
            x=middle,
            y=base,
            font_family=lettering.family.name,
            font_size=lettering.em(True),
            font_weight="700",
            text_anchor="middle",
            fill=look.INK,
        )
