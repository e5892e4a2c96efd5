"""A figure as a PNG, for thumbnails and picture comparisons.

Texts are turned into glyph outlines of the same faces first, because the rasteriser would take whatever font
the machine has. Needs the system's libcairo; without it everything else still runs.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Any
from xml.etree import ElementTree

from builder.drawing.font import ATKINSON, BOLD, REGULAR, face_file
from builder.drawing.svg import num

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
    face = _face(BOLD if text.get("font-weight") == "700" else REGULAR)
    words = text.text or ""
    scale = float(text.get("font-size", "1")) / face.units_per_em
    share = {"middle": 0.5, "end": 1.0}.get(text.get("text-anchor", ""), 0.0)
    x = float(text.get("x", "0")) - share * scale * sum(face.advance(letter) for letter in words)
    data = []
    for letter in words:
        data.append(face.path(letter, scale, x, float(text.get("y", "0"))))
        x += scale * face.advance(letter)
    path = ElementTree.Element(f"{{{_SVG}}}path", {"d": "".join(data)})
    for name in ("fill", "transform"):
        if name in text.attrib:
            path.set(name, text.attrib[name])
    return path


def glyph_width(letter: str, weight: int) -> float:
    """Advance width of a letter, in em."""
    face = _face(weight)
    return face.advance(letter) / face.units_per_em


def glyph_path(letter: str, weight: int, em: float, x: float, y: float) -> str:
    """Path data of a letter `em` large whose origin stands at (x, y)."""
    face = _face(weight)
    return face.path(letter, em / face.units_per_em, x, y)


class _Face:
    """The glyphs of one face, drawn on demand. A letter it lacks is drawn as its empty box."""

    def __init__(self, weight: int) -> None:
        from fontTools.ttLib import TTFont

        font = TTFont(face_file(ATKINSON, weight))
        self._glyphs: Any = font.getGlyphSet()
        self._names: dict[int, str] = font.getBestCmap()
        self.units_per_em = int(font["head"].unitsPerEm)

    def _glyph(self, letter: str) -> Any:
        return self._glyphs[self._names.get(ord(letter), ".notdef")]

    def advance(self, letter: str) -> float:
        """Advance width, font units."""
        return float(self._glyph(letter).width)

    def path(self, letter: str, scale: float, x: float, y: float) -> str:
        """Path data of a letter whose origin stands at (x, y)."""
        from fontTools.pens.svgPathPen import SVGPathPen
        from fontTools.pens.transformPen import TransformPen

        pen = SVGPathPen(self._glyphs, ntos=num)
        self._glyph(letter).draw(TransformPen(pen, (scale, 0, 0, -scale, x, y)))
        return str(pen.getCommands())


@lru_cache(maxsize=4)
def _face(weight: int) -> _Face:
    return _Face(weight)
