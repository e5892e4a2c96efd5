"""Signs of right and wrong work: a tick in a ring, a cross on a dark square. They differ in shape and in tone."""

from __future__ import annotations

from builder.drawing import look
from builder.drawing.svg import circle, element, stroke

_SIDE = 100


def verdict_svg(verdict: str, side: float) -> str:
    """The sign `side` mm high. verdict : right or wrong. Raises KeyError for another."""
    return element(
        "svg",
        _ART[verdict],
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {_SIDE} {_SIDE}",
        width=f"{side:g}mm",
        height=f"{side:g}mm",
        aria_hidden="true",
        focusable="false",
    )


_ART = {
    "right": circle((50, 50), 44, fill=look.GROUND, colour=look.INK, width=9)
    + stroke("M25 52L43 70L76 32", look.INK, 14),
    "wrong": element("rect", x=3, y=3, width=94, height=94, rx=12, fill=look.ACCENT)
    + stroke("M25 25L75 75M75 25L25 75", look.GROUND, 15),
}
