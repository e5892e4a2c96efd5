"""How far a drawing grows when uses, clips and markers are drawn out: a few lines can stand for a million shapes."""

from __future__ import annotations

from builder.reading.photo_fault import PhotoFault
from builder.reading.svg_parse import MAX_ELEMENTS, Node

_MOST_DEEP = 160
_REMEDY = "Draw it out in the drawing program, or simplify it."
_MARKERS = ("marker-start", "marker-mid", "marker-end")


def check_growth(root: Node) -> None:
    """Raises PhotoFault when something refers to itself, or the drawing drawn out passes the limit of elements."""
    _Growth(root).of(root, 0)


class _Growth:
    """Elements each node comes to, counted once."""

    def __init__(self, root: Node) -> None:
        self._named: dict[str, Node] = {}
        self._index(root)
        self._known: dict[int, tuple[int, int]] = {}
        self._open: set[int] = set()

    def _index(self, node: Node) -> None:
        if "id" in node.attributes:
            self._named.setdefault(node.attributes["id"], node)
        for child in node.elements():
            self._index(child)

    def of(self, node: Node, depth: int) -> tuple[int, int]:
        """Elements drawn and levels below a node."""
        known = self._known.get(id(node))
        if known is None:
            if id(node) in self._open:
                raise PhotoFault(f"A part of the drawing refers to itself (line {node.line}).", remedy=_REMEDY)
            if depth > _MOST_DEEP:
                raise self._too_large(node)
            self._open.add(id(node))
            known = self._drawn_out(node, depth)
            self._open.discard(id(node))
            self._known[id(node)] = known
        if known[0] > MAX_ELEMENTS or depth + known[1] > _MOST_DEEP:
            raise self._too_large(node)
        return known

    def _drawn_out(self, node: Node, depth: int) -> tuple[int, int]:
        count, levels = 1, 0
        below = [(child, 1) for child in node.elements()]
        below += [(self._named[name], times) for name, times in _references(node) if name in self._named]
        for other, times in below:
            more, deeper = self.of(other, depth + 1)
            count += more * times
            levels = max(levels, deeper + 1)
        return count, levels

    @staticmethod
    def _too_large(node: Node) -> PhotoFault:
        message = f"Drawn out, the drawing has more than {MAX_ELEMENTS:,} elements (line {node.line})."
        return PhotoFault(message, remedy=_REMEDY)


def _references(node: Node) -> list[tuple[str, int]]:
    """Names a node refers to, and how often each is drawn for it."""
    found: list[tuple[str, int]] = []
    for name, value in node.attributes.items():
        if name == "href":
            found.append((value.removeprefix("#"), 1))
        elif value.startswith("url(#"):
            times = _corners(node) if name in _MARKERS else 1
            found.append((value[5:].partition(")")[0], times))
    return found


def _corners(node: Node) -> int:
    """At least as many corners as a shape has. A group's markers are drawn by all shapes in it."""
    text = node.attributes.get("d", "") + node.attributes.get("points", "")
    own = sum(letter.isalpha() or letter in " ,-" for letter in text) + 2
    return own + sum(_corners(child) for child in node.elements())
