"""QR codes as SVG, for sheets and pages. What the code says is decided in the view."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

QUIET_ZONE = 4
"""Empty modules around the symbol: ISO/IEC 18004 asks for four."""


@dataclass(frozen=True, slots=True)
class QrCode:
    """A QR symbol with its quiet zone.

    svg     : a document whose viewBox counts in modules; no ground, so it needs a light one
    modules : modules on a side, quiet zone included; times the module width it is the printed width
    alt     : text alternative
    """

    svg: str
    modules: int
    alt: str


@lru_cache(maxsize=1024)
def qr_code(text: str, alt: str = "QR code: {text}") -> QrCode:
    """The QR symbol of a text at error correction level M, in the smallest version that holds it.

    text : what a reader gets, not empty
    alt  : text alternative, `{text}` stands for the text
    Raises ValueError when the text is empty or too long for a symbol.
    """
    import segno

    if not text:
        raise ValueError("a QR code needs a text")
    # boost_error would raise the level unasked; M at a given size keeps sheets of one plant alike.
    symbol = segno.make(text, error="m", micro=False, boost_error=False)
    side = len(symbol.matrix) + 2 * QUIET_ZONE
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side} {side}" shape-rendering="crispEdges">'
        f'<path fill="#000" d="{_dark_path(symbol.matrix)}"/></svg>'
    )
    return QrCode(svg, side, alt.replace("{text}", text))


def _dark_path(matrix: Sequence[Iterable[int]]) -> str:
    """One path over all dark modules, a rectangle for each run in a row, so no seam shows inside a run."""
    pieces: list[str] = []
    for row, bits in enumerate(matrix):
        for start, length in _dark_runs(bits):
            pieces.append(f"M{start + QUIET_ZONE} {row + QUIET_ZONE}h{length}v1h-{length}z")
    return "".join(pieces)


def _dark_runs(bits: Iterable[int]) -> Iterable[tuple[int, int]]:
    """Start and length of each run of dark modules in a row."""
    start: int | None = None
    column = -1
    for column, bit in enumerate(bits):
        if bit and start is None:
            start = column
        elif not bit and start is not None:
            yield start, column - start
            start = None
    if start is not None:
        yield start, column + 1 - start
