"""A drawing from elsewhere, made safe: only plain drawing is kept, everything else is left out and told.

Kept are shapes, texts, gradients, clips, markers and uses of symbols; an address is only ever `#name` inside the
file. What could run, move, load or grow without bound is not. How its texts are lettered is the drawing room's.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from xml.sax.saxutils import escape, quoteattr

from builder.reading.photo_fault import PhotoFault
from builder.reading.svg_growth import check_growth
from builder.reading.svg_parse import SVG_LIMIT, SVG_SPACE, Node, parse_svg
from builder.reading.svg_style import StyleSheet
from builder.reading.svg_values import HARMLESS, READERS, STYLED, px_of

_SHAPES = frozenset({"path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "text", "tspan"})
_GROUPS = frozenset({"svg", "g", "defs", "symbol", "use", "linearGradient", "radialGradient", "stop", "clipPath"})
_ALLOWED = _SHAPES | _GROUPS | {"marker"}
_UNWRAPPED = frozenset({"a", "switch"})
# Nothing of the picture is lost with these, so nothing need be told.
_SILENT = frozenset({"", "title", "desc", "metadata", "style"})
_WORDS = {
    "script": "scripts",
    "foreignObject": "foreign content",
    "image": "embedded pictures",
    "filter": "filters",
    "mask": "masks",
    "pattern": "pattern fills",
    "textPath": "texts along a path",
    **dict.fromkeys(("animate", "animateTransform", "animateMotion", "animateColor", "set"), "animations"),
}
_MOST_ASPECT = 20.0
_MOST_TOLD = 8


@dataclass(frozen=True, slots=True)
class CleanDrawing:
    """A drawing that holds nothing but drawing.

    svg           : the document, its texts still as text
    width, height : of its view box, in its own units
    dropped       : what was left out and may be missed, in words
    """

    svg: str
    width: float
    height: float
    dropped: tuple[str, ...]


def read_svg(path: Path) -> CleanDrawing:
    """A cleaned drawing. Raises PhotoFault when it can't be opened, is no SVG, is too large or has no size."""
    try:
        with path.open("rb") as file:
            data = file.read(SVG_LIMIT + 1)
    except FileNotFoundError:
        raise PhotoFault("There is no such drawing.", remedy="Copy it into the folder photos.") from None
    except OSError:
        raise PhotoFault("The drawing can't be opened.", remedy="Allow reading it.") from None
    return clean_svg(data)


def clean_svg(data: bytes) -> CleanDrawing:
    """A drawing's bytes cleaned. Raises PhotoFault as `read_svg` does."""
    root = parse_svg(data)
    box = _view_box(root)
    cleaner = _Cleaner(StyleSheet(_styles(root)))
    kept = cleaner.kept(root)
    cleaner.cut_loose_ends(kept)
    check_growth(kept)
    left, top, width, height = (f"{value:.9g}" for value in box)
    kept.attributes = {
        **{name: value for name, value in kept.attributes.items() if name not in ("x", "y", "preserveAspectRatio")},
        "viewBox": f"{left} {top} {width} {height}",
        "width": width,
        "height": height,
    }
    return CleanDrawing("".join(_written(kept, top=True)), box[2], box[3], _listed(cleaner.dropped))


def _listed(dropped: set[str]) -> tuple[str, ...]:
    """What was dropped, no longer than a finding can be."""
    names = sorted(dropped)
    return (*names[:_MOST_TOLD], f"{len(names) - _MOST_TOLD} more") if len(names) > _MOST_TOLD else tuple(names)


def _view_box(root: Node) -> tuple[float, float, float, float]:
    """The view box, or the one that width and height come to."""
    typed = READERS["viewBox"](root.attributes.get("viewBox", ""))
    numbers = [float(part) for part in (typed or "").replace(",", " ").split()]
    if len(numbers) != 4:
        sides = [px_of(root.attributes.get(name, "")) for name in ("width", "height")]
        numbers = [0.0, 0.0, *(side or 0.0 for side in sides)]
    left, top, width, height = numbers
    if width <= 0 or height <= 0:
        raise PhotoFault("The drawing has no size.", remedy="Give it a viewBox, or a width and a height.")
    if not 1 / _MOST_ASPECT <= width / height <= _MOST_ASPECT:
        raise PhotoFault("The drawing is far too long and narrow to be printed.", remedy="Crop its page.")
    return left, top, width, height


def _styles(node: Node) -> Iterator[str]:
    if node.name == "style":
        yield "".join(child for child in node.children if isinstance(child, str))
    for child in node.elements():
        yield from _styles(child)


class _Cleaner:
    """Copies what is allowed and remembers what isn't."""

    def __init__(self, sheet: StyleSheet) -> None:
        self.dropped: set[str] = {"style rules that are no plain ones"} if sheet.unread else set()
        self._sheet = sheet

    def kept(self, node: Node) -> Node:
        copy = Node(node.name, self._attributes(node), node.line)
        copy.children = [*self._children(node)]
        return copy

    def _children(self, node: Node) -> Iterator[Node | str]:
        for child in node.children:
            if isinstance(child, str):
                if node.name in ("text", "tspan"):
                    yield child
            elif child.name in _UNWRAPPED:
                group = self.kept(Node("g", child.attributes, child.line, child.children))
                yield group
            elif child.name in _ALLOWED:
                yield self.kept(child)
            elif child.name not in _SILENT:
                self.dropped.add(_WORDS.get(child.name, f"<{child.name[:40]}>"))

    def _attributes(self, node: Node) -> dict[str, str]:
        typed = dict(node.attributes)
        typed.update((name, value) for name, value in self._sheet.of(node).items() if name in STYLED)
        found: dict[str, str] = {}
        for name, value in typed.items():
            reader = READERS.get(name)
            read = reader(value) if reader is not None else None
            if read is not None:
                found[name] = read
            elif value.strip() not in ("", "inherit", "normal", "auto"):
                self._tell(name, value)
        return found

    def _tell(self, name: str, value: str) -> None:
        if name.lower().startswith("on"):
            self.dropped.add("event attributes")
        elif name == "href" or "url(" in value:
            self.dropped.add("references to outside")
        elif name in ("filter", "mask"):
            self.dropped.add(f"{name}s")
        elif name in READERS and name not in ("id", "font-size", "preserveAspectRatio"):
            self.dropped.add(f"unreadable values of {name}")
        elif name not in READERS and name not in HARMLESS and not name.startswith(("data-", "aria-", "-")):
            self.dropped.add(f"the attribute {name[:40]}")

    def cut_loose_ends(self, root: Node) -> None:
        """Take out references to what is not there: left out, or never drawn. A fill then is none."""
        names = {node.attributes["id"] for node in walk(root) if "id" in node.attributes}
        for node in walk(root):
            for name, value in list(node.attributes.items()):
                target = target_of(name, value)
                if target is None or target in names:
                    continue
                fallback = value.partition(")")[2].strip()
                if name in ("fill", "stroke"):
                    node.attributes[name] = fallback or "none"
                else:
                    del node.attributes[name]


def walk(node: Node) -> Iterator[Node]:
    """A node and all below it."""
    yield node
    for child in node.elements():
        yield from walk(child)


def target_of(name: str, value: str) -> str | None:
    """The name an attribute refers to, None when it refers to nothing."""
    if name == "href":
        return value.removeprefix("#")
    if value.startswith("url(#"):
        return value[5:].partition(")")[0]
    return None


def _written(node: Node, top: bool = False) -> Iterator[str]:
    space = f" xmlns={quoteattr(SVG_SPACE)}" if top else ""
    said = "".join(f" {name}={quoteattr(value)}" for name, value in node.attributes.items())
    yield f"<{node.name}{space}{said}>"
    for child in node.children:
        if isinstance(child, str):
            yield escape(child)
        else:
            yield from _written(child)
    yield f"</{node.name}>"
