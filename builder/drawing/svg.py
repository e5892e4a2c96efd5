"""SVG text: numbers, elements, paths. Knows nothing of seams or parts.

Presentation attributes only: the figures stand inline in pages that forbid style attributes, style elements
and anything found by id.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from xml.sax.saxutils import escape, quoteattr

XY = tuple[float, float]

_OPENING = re.compile(r"<svg\b[^>]*>(?:<title>.*?</title>)?", re.DOTALL)
_TO_ESCAPE = re.compile(r"[&<>\"\n\r\t]")


def num(value: float) -> str:
    """A length to 0.001 mm, as short as can be: `12.5`, `0`, never `-0`."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def pair(point: XY) -> str:
    """A point as `x y`."""
    return f"{num(point[0])} {num(point[1])}"


def element(name: str, content: str | None = None, **attributes: str | float | None) -> str:
    """One element. Underscores in attribute names stand for hyphens; None leaves an attribute out.

    content : markup inside it, already escaped; None closes the element at once
    """
    said = "".join(
        [
            f" {key.replace('_', '-')}={_quoted(value) if isinstance(value, str) else _quoted(num(value))}"
            for key, value in attributes.items()
            if value is not None
        ]
    )
    return f"<{name}{said}/>" if content is None else f"<{name}{said}>{content}</{name}>"


def _quoted(value: str) -> str:
    # Nearly all are numbers and colours: looking is quicker than replacing.
    return quoteattr(value) if _TO_ESCAPE.search(value) else f'"{value}"'


def words(text: str) -> str:
    """Text as markup: escaped."""
    return escape(text)


def polyline_d(points: Sequence[XY], closed: bool = False) -> str:
    """Path data through the points."""
    return "M" + "L".join([pair(point) for point in points]) + ("Z" if closed else "")


def lines_d(pieces: Iterable[tuple[XY, XY]]) -> str:
    """Path data of separate straight lines."""
    return "".join([f"M{pair(start)}L{pair(end)}" for start, end in pieces])


def stroke(
    d: str,
    colour: str,
    width: float,
    *,
    dash: str | None = None,
    cap: str | None = None,
    join: str | None = None,
    fill: str = "none",
) -> str:
    """A stroked path, unfilled unless told otherwise."""
    return element(
        "path",
        d=d,
        fill=fill,
        stroke=colour,
        stroke_width=width,
        stroke_dasharray=dash,
        stroke_linecap=cap,
        stroke_linejoin=join,
    )


def filled(d: str, colour: str) -> str:
    """A filled path without a line."""
    return element("path", d=d, fill=colour)


def document(title: str, alt: str, width_mm: float, height_mm: float, content: str) -> str:
    """A whole figure in printed mm, to stand inline or by itself. content : markup; alt : its text alternative"""
    return element(
        "svg",
        f"<title>{words(title)}</title>{content}",
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {num(width_mm)} {num(height_mm)}",
        width=f"{num(width_mm)}mm",
        height=f"{num(height_mm)}mm",
        role="img",
        aria_label=alt,
    )


def inside(svg: str) -> str:
    """The content of a whole figure without its own frame and title."""
    opening = _OPENING.match(svg)
    return svg[opening.end() if opening else 0 : svg.rindex("</svg>")]


def circle(
    centre: XY, radius: float, *, fill: str = "none", colour: str | None = None, width: float | None = None
) -> str:
    """A circle."""
    return element("circle", cx=centre[0], cy=centre[1], r=radius, fill=fill, stroke=colour, stroke_width=width)
