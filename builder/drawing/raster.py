"""A figure as a PNG, for thumbnails and picture comparisons.

Texts are turned into glyph outlines of the same faces first, because the rasteriser would take whatever font
the machine has. Needs the system's libcairo; without it everything else still runs.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Any
from xml.etree import ElementTree

from builder.drawing.shaping import Glyph, ShapedLine, shape_line
from builder.drawing.svg import num
from builder.model import ATKINSON, BOLD, FAMILIES, REGULAR, Family, face_file

_SVG = "http://www.w3.org/2000/svg"


@lru_cache(maxsize=1)
def raster_available() -> bool:
    """Can PNGs be made here? False when the system's libcairo is missing."""
    try:
        import cairosvg  # noqa: F401
    except (ImportError, OSError):
        return False
    return True


def png_of(svg: str, px: int) -> bytes:
    """The SVG as a PNG `px` pixels wide, on white.

    Raises OSError when libcairo is missing, ValueError for a width under 1.
    """
    if px < 1:
        raise ValueError(f"A picture can't be {px} pixels wide.")
    import cairosvg

    png = cairosvg.svg2png(
        bytestring=outlined(svg).encode(), output_width=px, output_height=_height(svg, px), background_color="white"
    )
    return bytes(png)


def _height(svg: str, px: int) -> int:
    """Pixels high, from the viewBox, never 0."""
    box = re.search(r'viewBox="\S+ \S+ (\S+) (\S+)"', svg)
    if box is None:
        raise ValueError("The SVG has no viewBox to take its size from.")
    return max(1, round(px * float(box[2]) / float(box[1])))


def ready(svg: str, family: Family) -> str:
    """The SVG as pages and sheets take it: scripts that need a shaper as paths, since not every viewer has one."""
    return outlined(svg) if family.shaped and "<text" in svg else svg


def outlined(svg: str) -> str:
    """The SVG with every text as a path."""
    ElementTree.register_namespace("", _SVG)
    root = ElementTree.fromstring(svg)
    for parent in list(root.iter()):
        for place, child in enumerate(list(parent)):
            if child.tag == f"{{{_SVG}}}text":
                parent[place] = _as_path(child)
    return ElementTree.tostring(root, encoding="unicode")


def _as_path(text: ElementTree.Element) -> ElementTree.Element:
    family = _NAMED.get(text.get("font-family", ""), ATKINSON)
    weight = BOLD if text.get("font-weight") == "700" else REGULAR
    size = float(text.get("font-size", "1"))
    line = _line(text.text or "", family, weight)
    share = {"middle": 0.5, "end": 1.0}.get(text.get("text-anchor", ""), 0.0)
    x, y = float(text.get("x", "0")) - share * size * line.width, float(text.get("y", "0"))
    data = [
        _face(glyph.family, weight).path(glyph.name, size, x + size * glyph.x, y - size * glyph.y)
        for glyph in line.glyphs
    ]
    path = ElementTree.Element(f"{{{_SVG}}}path", {"d": "".join(data)})
    for name in ("fill", "transform"):
        if name in text.attrib:
            path.set(name, text.attrib[name])
    return path


def _line(text: str, family: Family, weight: int) -> ShapedLine:
    """A line's glyphs: by the shaper where the script needs one, else one after the other, as it was measured."""
    if family.shaped:
        return shape_line(text, family, weight)
    face = _face(family, weight)
    glyphs, at = [], 0.0
    for letter in text:
        glyphs.append(Glyph(family, face.glyph(letter), at, 0.0))
        at += face.advance(letter)
    return ShapedLine(tuple(glyphs), at)


def glyph_width(letter: str, weight: int) -> float:
    """Advance width of a letter of the default family, in em."""
    return _face(ATKINSON, weight).advance(letter)


def glyph_path(letter: str, weight: int, em: float, x: float, y: float) -> str:
    """Path data of a letter of the default family, `em` large, whose origin stands at (x, y)."""
    face = _face(ATKINSON, weight)
    return face.path(face.glyph(letter), em, x, y)


class _Face:
    """The glyphs of one face, drawn on demand. A letter it lacks is drawn as its empty box."""

    def __init__(self, family: Family, weight: int) -> None:
        from fontTools.ttLib import TTFont

        font = TTFont(face_file(family, weight))
        self._glyphs: Any = font.getGlyphSet()
        self._names: dict[int, str] = font.getBestCmap()
        self._units_per_em = int(font["head"].unitsPerEm)

    def glyph(self, letter: str) -> str:
        """The name of a letter's glyph."""
        return self._names.get(ord(letter), ".notdef")

    def advance(self, letter: str) -> float:
        """Advance width, em."""
        return float(self._glyphs[self.glyph(letter)].width) / self._units_per_em

    def path(self, glyph: str, em: float, x: float, y: float) -> str:
        """Path data of a glyph whose origin stands at (x, y)."""
        from fontTools.pens.svgPathPen import SVGPathPen
        from fontTools.pens.transformPen import TransformPen

        scale = em / self._units_per_em
        pen = SVGPathPen(self._glyphs, ntos=num)
        self._glyphs[glyph].draw(TransformPen(pen, (scale, 0, 0, -scale, x, y)))
        return str(pen.getCommands())


_NAMED = {family.name: family for family in FAMILIES}


@lru_cache(maxsize=2 * len(FAMILIES))
def _face(family: Family, weight: int) -> _Face:
    return _Face(family, weight)
