"""An SVG file as a bounded tree of plain nodes. No entity is ever declared, no document type accepted, nothing fetched.

What is allowed in a drawing is svg_clean's; this is only XML.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from builder.reading.photo_fault import PhotoFault

SVG_LIMIT = 2_000_000
"""Largest file, bytes."""
MAX_ELEMENTS, MAX_DEPTH = 20_000, 64
SVG_SPACE, LINK_SPACE = "http://www.w3.org/2000/svg", "http://www.w3.org/1999/xlink"

_PLAIN = "Save it as plain SVG, without a document type and without entities."
_SIMPLER = "Simplify it, or show a part of it."
_SAVE_AGAIN = "Save it again as SVG."


@dataclass(slots=True)
class Node:
    """An element: local name, '' as its name when it is not of SVG; attributes by local name, children in order."""

    name: str
    attributes: dict[str, str]
    line: int
    children: list[Node | str] = field(default_factory=list)

    def elements(self) -> list[Node]:
        """The child elements."""
        return [child for child in self.children if isinstance(child, Node)]


def parse_svg(data: bytes) -> Node:
    """The tree of an SVG file. Raises PhotoFault when it is too large, no XML, or has a document type or entities."""
    from xml.parsers import expat

    if len(data) > SVG_LIMIT:
        raise PhotoFault(f"The drawing has more than {SVG_LIMIT // 1_000_000} MB.", remedy=_SIMPLER)
    parser = expat.ParserCreate(namespace_separator=" ")
    builder = _Builder(parser)
    try:
        parser.Parse(data, True)
    except expat.ExpatError as fault:
        words = expat.errors.messages.get(fault.code, "") or "damaged"
        where = f"line {fault.lineno}, column {fault.offset + 1}"
        raise PhotoFault(f"The drawing is no XML: {words} ({where}).", remedy=_SAVE_AGAIN) from None
    except (ValueError, LookupError):
        raise PhotoFault("The drawing's letters can't be decoded.", remedy="Save it as UTF-8.") from None
    if builder.root is None or builder.root.name != "svg":
        raise PhotoFault("This is no SVG drawing.", remedy=_SAVE_AGAIN)
    return builder.root


class _Builder:
    """Builds the tree from the parser's events and stops it at the first thing that is not allowed."""

    def __init__(self, parser: Any) -> None:
        self.root: Node | None = None
        self._parser = parser
        self._open: list[Node] = []
        self._count = 0
        parser.buffer_text = True
        parser.StartElementHandler = self._start
        parser.EndElementHandler = self._end
        parser.CharacterDataHandler = self._text
        parser.StartDoctypeDeclHandler = self._document_type
        parser.EntityDeclHandler = self._document_type

    def _document_type(self, *_: Any) -> None:
        line = self._parser.CurrentLineNumber
        raise PhotoFault(f"The drawing has a document type or entities (line {line}).", remedy=_PLAIN)

    def _start(self, full: str, attributes: dict[str, str]) -> None:
        self._count += 1
        if self._count > MAX_ELEMENTS:
            raise PhotoFault(f"The drawing has more than {MAX_ELEMENTS:,} elements.", remedy=_SIMPLER)
        if len(self._open) >= MAX_DEPTH:
            raise PhotoFault(f"The drawing is nested deeper than {MAX_DEPTH}.", remedy="Ungroup it.")
        node = Node(_local(full, SVG_SPACE), _plain(attributes), self._parser.CurrentLineNumber)
        if self._open:
            self._open[-1].children.append(node)
        else:
            self.root = node
        self._open.append(node)

    def _end(self, _: str) -> None:
        self._open.pop()

    def _text(self, text: str) -> None:
        if self._open:
            self._open[-1].children.append(text)


def _local(full: str, space: str) -> str:
    """A name without its namespace; '' when it is of another."""
    found, _, local = full.rpartition(" ")
    return local if found == space else ""


def _plain(attributes: dict[str, str]) -> dict[str, str]:
    """Attributes without a namespace, and links; those of editors are of no interest."""
    plain = {name: value for name, value in attributes.items() if " " not in name}
    link = attributes.get(f"{LINK_SPACE} href")
    return plain if link is None or "href" in plain else {**plain, "href": link}
