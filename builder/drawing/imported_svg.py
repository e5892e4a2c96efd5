"""A cleaned drawing from elsewhere in our lettering: every text a path of our faces, so it looks the same everywhere.

It keeps each text's size, its place and the nearer of our two weights. Expects what the reading room lets through.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from xml.etree import ElementTree

from builder.drawing.raster import glyph_path, glyph_width
from builder.model import BOLD, REGULAR

_SVG = "http://www.w3.org/2000/svg"
_PLAIN_PX = 16.0
_SHARES = {"middle": 0.5, "end": 1.0}
_OWN = ("x", "y", "dx", "dy", "font-size", "font-weight", "text-anchor")

Area = tuple[Fraction, Fraction, Fraction, Fraction]


def draw_imported(svg: str, crop: Area | None = None) -> str:
    """The drawing with its texts as paths. crop : the part of its view box that is shown, as shares"""
    ElementTree.register_namespace("", _SVG)
    root = ElementTree.fromstring(svg)
    _lettered(root, _Style())
    if crop is not None:
        _crop(root, crop)
    return ElementTree.tostring(root, encoding="unicode")


def _crop(root: ElementTree.Element, crop: Area) -> None:
    left, top, width, height = (float(value) for value in root.get("viewBox", "0 0 1 1").replace(",", " ").split())
    x0, y0, x1, y1 = (float(share) for share in crop)
    box = (left + x0 * width, top + y0 * height, (x1 - x0) * width, (y1 - y0) * height)
    root.set("viewBox", " ".join(f"{value:.9g}" for value in box))
    root.set("width", f"{box[2]:.9g}")
    root.set("height", f"{box[3]:.9g}")


@dataclass(frozen=True, slots=True)
class _Style:
    """What a text inherits."""

    size: float = _PLAIN_PX
    bold: bool = False
    anchor: str = "start"

    def of(self, node: ElementTree.Element) -> _Style:
        weight = node.get("font-weight")
        return _Style(
            float(node.get("font-size", self.size)),
            self.bold if weight is None else weight == "700",
            node.get("text-anchor", self.anchor),
        )


@dataclass(slots=True)
class _Run:
    """Letters of one look. `owner` : the element whose colours they have."""

    text: str
    style: _Style
    owner: dict[str, str]
    shift: tuple[float, float] = (0.0, 0.0)

    @property
    def width(self) -> float:
        weight = BOLD if self.style.bold else REGULAR
        return self.style.size * sum(glyph_width(letter, weight) for letter in self.text)


@dataclass(slots=True)
class _Chunk:
    """Runs behind one given place, lined up by its anchor."""

    at: tuple[float, float]
    anchor: str
    runs: list[_Run] = field(default_factory=list)


def _lettered(node: ElementTree.Element, style: _Style) -> None:
    own = style.of(node)
    for place, child in enumerate(list(node)):
        if child.tag == f"{{{_SVG}}}text":
            node[place] = _as_paths(child, own)
        else:
            _lettered(child, own)


def _as_paths(text: ElementTree.Element, style: _Style) -> ElementTree.Element:
    group = ElementTree.Element(f"{{{_SVG}}}g", {key: value for key, value in text.attrib.items() if key not in _OWN})
    chunks = [_Chunk((0.0, 0.0), style.of(text).anchor)]
    _gather(text, style, {}, chunks)
    _trimmed(chunks)
    for chunk in chunks:
        x, y = chunk.at
        x -= _SHARES.get(chunk.anchor, 0.0) * sum(run.width + run.shift[0] for run in chunk.runs)
        for run in chunk.runs:
            x, y = x + run.shift[0], y + run.shift[1]
            weight = BOLD if run.style.bold else REGULAR
            data = []
            for letter in run.text:
                data.append(glyph_path(letter, weight, run.style.size, x, y))
                x += run.style.size * glyph_width(letter, weight)
            if any(data):
                ElementTree.SubElement(group, f"{{{_SVG}}}path", {"d": "".join(data), **run.owner})
    return group


def _gather(node: ElementTree.Element, style: _Style, owner: dict[str, str], chunks: list[_Chunk]) -> None:
    """Runs of a text or tspan and of what is in it, in reading order."""
    own = style.of(node)
    if "x" in node.attrib or "y" in node.attrib:
        x, y = chunks[-1].at
        at = (_first(node, "x", x), _first(node, "y", y))
        chunks.append(_Chunk(at, own.anchor))
    shift = (_first(node, "dx", 0.0), _first(node, "dy", 0.0))
    for text, child in _parts(node):
        if child is not None:
            looks = {key: value for key, value in child.attrib.items() if key not in (*_OWN, "id", "transform")}
            _gather(child, own, {**owner, **looks}, chunks)
        elif text:
            chunks[-1].runs.append(_Run(" ".join(_with_ends(text)), own, owner, shift))
            shift = (0.0, 0.0)


def _parts(node: ElementTree.Element) -> Iterator[tuple[str, ElementTree.Element | None]]:
    yield node.text or "", None
    for child in node:
        yield "", child
        yield child.tail or "", None


def _with_ends(text: str) -> list[str]:
    """Words of a text; a blank at an end stays one, as it may part two runs."""
    words = text.split()
    return [*([""] if text[:1].isspace() else []), *words, *([""] if words and text[-1:].isspace() else [])]


def _trimmed(chunks: list[_Chunk]) -> None:
    """No blanks where a chunk begins and ends."""
    for chunk in chunks:
        chunk.runs = [run for run in chunk.runs if run.text]
        if chunk.runs:
            chunk.runs[0].text = chunk.runs[0].text.lstrip()
            chunk.runs[-1].text = chunk.runs[-1].text.rstrip()


def _first(node: ElementTree.Element, name: str, otherwise: float) -> float:
    """The first of a list of places; letters are never placed one by one."""
    value = node.get(name, "").rstrip("%")
    return float(value) if value else otherwise
