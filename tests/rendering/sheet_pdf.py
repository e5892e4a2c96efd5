"""Reads back what a sheet's PDF says: texts with their capital height and place, tags, faces, pictures."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from pypdf import PdfReader

CAPITAL_OF_EM = 0.668  # the face's own capital height, read from its OS/2 table
MM = 25.4 / 72


@dataclass(frozen=True)
class Piece:
    """A run of text on a page. capital in mm; x and y of its start in mm from the top left corner of the page."""

    page: int
    text: str
    capital: float
    x: float
    y: float
    bold: bool


def read(pdf: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(pdf))


def pieces(pdf: bytes) -> list[Piece]:
    """All texts of a PDF, those inside figures too."""
    found: list[Piece] = []
    for number, page in enumerate(read(pdf).pages, start=1):
        top = float(page.mediabox.height)

        def visit(text: str, cm: list[float], tm: list[float], face: Any, size: float, *, n=number, h=top) -> None:  # type: ignore[no-untyped-def]
            if text.strip() and face is not None:
                a, b, c, d, e, f = (float(v) for v in cm)
                x, y = float(tm[4]), float(tm[5])
                scale = (c * c + d * d) ** 0.5 * (float(tm[2]) ** 2 + float(tm[3]) ** 2) ** 0.5
                found.append(
                    Piece(
                        n,
                        text.strip(),
                        size * scale * CAPITAL_OF_EM * MM,
                        (a * x + c * y + e) * MM,
                        (h - (b * x + d * y + f)) * MM,
                        "Bold" in str(face["/BaseFont"]),
                    )
                )

        page.extract_text(visitor_text=visit)
    return found


def page_texts(pdf: bytes) -> list[str]:
    """The text of each page, runs of blanks joined."""
    return [" ".join(page.extract_text().split()) for page in read(pdf).pages]


def nodes(pdf: bytes) -> Iterator[tuple[str, dict[str, Any]]]:
    """Every structure element: its kind and its dictionary, in reading order."""

    def walk(node: Any) -> Iterator[tuple[str, dict[str, Any]]]:
        node = node.get_object()
        if isinstance(node, list):
            for kid in node:
                yield from walk(kid)
        elif isinstance(node, dict):
            if "/S" in node:
                yield str(node["/S"]), node
            if "/K" in node and not isinstance(node["/K"], int):
                yield from walk(node["/K"])

    yield from walk(read(pdf).trailer["/Root"]["/StructTreeRoot"])


def faces(pdf: bytes) -> dict[str, bool]:
    """Names of all faces, subset tag removed, and whether the file embeds them."""
    found: dict[str, bool] = {}
    for thing in _objects(read(pdf)):
        if isinstance(thing, dict) and thing.get("/Type") == "/FontDescriptor":
            name = str(thing["/FontName"]).lstrip("/").partition("+")[2]
            found[name] = any(key in thing for key in ("/FontFile", "/FontFile2", "/FontFile3"))
    return found


def _objects(reader: PdfReader) -> Iterator[Any]:
    for number in range(1, len(reader.xref_objStm) + sum(map(len, reader.xref.values())) + 1):
        try:
            yield reader.get_object(number)
        except Exception:  # a free number is no object
            continue
