"""Pen: what the pictograms are drawn with. It writes path elements with finished coordinates.

Not a general SVG library: absolute commands M L C Q A Z only, two colours, no transform attribute, so that
every number in the file can be checked against the view box.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

Point = tuple[float, float]

_TOKEN = re.compile(r"[A-Za-z]|-?\d*\.?\d+(?:e-?\d+)?")
_PAIRS = {"M": 1, "L": 1, "C": 3, "Q": 2}


def number(value: float) -> str:
    """A coordinate as it stands in the file: two decimals, no trailing zeros, no minus zero."""
    # A hundredth of the box's unit is a micrometre on a 10 mm sign, far below what a printer can show.
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


@dataclass(frozen=True, slots=True)
class Placing:
    """Where a drawing made about (50, 50) goes: mirrored left to right, scaled, turned clockwise, then moved.

    x, y     : where the point (50, 50) lands
    scale    : factor, > 0
    turn     : degrees, clockwise on the page
    mirrored : left and right exchanged before turning
    """

    x: float = 50.0
    y: float = 50.0
    scale: float = 1.0
    turn: float = 0.0
    mirrored: bool = False

    def point(self, x: float, y: float) -> Point:
        """The place of a point of the unplaced drawing."""
        dx = (50.0 - x if self.mirrored else x - 50.0) * self.scale
        dy = (y - 50.0) * self.scale
        c, s = math.cos(math.radians(self.turn)), math.sin(math.radians(self.turn))
        return self.x + c * dx - s * dy, self.y + s * dx + c * dy

    def path(self, d: str) -> str:
        """The path data of a placed drawing. Raises ValueError for a command that is not M L C Q A Z."""
        tokens = iter(_TOKEN.findall(d))
        parts: list[str] = []
        for token in tokens:
            parts.append(self._command(token, lambda: float(next(tokens))))
        return "".join(parts)

    def _command(self, command: str, take: Callable[[], float]) -> str:
        if command == "Z":
            return "Z"
        if command == "A":
            return self._arc(take)
        if command not in _PAIRS:
            raise ValueError(f"path command {command!r} is not one of M L C Q A Z, each written out")
        points = [self.point(take(), take()) for _ in range(_PAIRS[command])]
        return command + " ".join(f"{number(x)} {number(y)}" for x, y in points)

    def _arc(self, take: Callable[[], float]) -> str:
        rx, ry, tilt, large, sweep = (take() for _ in range(5))
        x, y = self.point(take(), take())
        if self.mirrored:
            # A mirror turns a clockwise arc into an anticlockwise one and tilts the other way.
            sweep, tilt = 1 - sweep, -tilt
        radii = f"{number(rx * self.scale)} {number(ry * self.scale)}"
        return f"A{radii} {number(tilt + self.turn)} {int(large)} {int(sweep)} {number(x)} {number(y)}"


@dataclass(frozen=True, slots=True)
class Pen:
    """Draws in the colour of the pictogram, or cuts in the colour of the ground it stands on.

    mark, ground : colours as #rrggbb
    placing      : where the drawing goes
    """

    mark: str
    ground: str
    placing: Placing = Placing()

    def at(self, x: float, y: float, scale: float = 1.0, turn: float = 0.0, mirrored: bool = False) -> Pen:
        """The same pen, drawing elsewhere what is made about (50, 50).

        Raises ValueError for a pen placed already: placings don't add up.
        """
        if self.placing != Placing():
            raise ValueError("this pen is placed already")
        return replace(self, placing=Placing(x, y, scale, turn, mirrored))

    def swapped(self) -> Pen:
        """The same pen with mark and ground exchanged."""
        return replace(self, mark=self.ground, ground=self.mark)

    def solid(self, d: str) -> str:
        """A filled shape. Inner rings are holes, whichever way they run."""
        return f'<path d="{self.placing.path(d)}" fill="{self.mark}" fill-rule="evenodd"/>'

    def line(self, d: str, width: float, cap: str = "round") -> str:
        """A stroked line with round joins; `width` in units of the unplaced drawing."""
        return (
            f'<path d="{self.placing.path(d)}" fill="none" stroke="{self.mark}" '
            f'stroke-width="{number(width * self.placing.scale)}" '
            f'stroke-linecap="{cap}" stroke-linejoin="round"/>'
        )

    def outlined(self, d: str, gap: float) -> str:
        """A filled shape with a rim of ground colour `gap` wide, to set it off from what lies behind."""
        return self.swapped().line(d, 2 * gap) + self.solid(d)

    def disc(self, x: float, y: float, radius: float) -> str:
        """A filled circle."""
        px, py = self.placing.point(x, y)
        r = number(radius * self.placing.scale)
        return f'<circle cx="{number(px)}" cy="{number(py)}" r="{r}" fill="{self.mark}"/>'

    def cut(self, d: str) -> str:
        """A filled shape in the ground's colour."""
        return self.swapped().solid(d)

    def cut_line(self, d: str, width: float, cap: str = "round") -> str:
        """A line in the ground's colour."""
        return self.swapped().line(d, width, cap)

    def cut_disc(self, x: float, y: float, radius: float) -> str:
        """A circle in the ground's colour."""
        return self.swapped().disc(x, y, radius)


Art = Callable[[Pen], Iterator[str]]
