"""Allowances to draw beside a seam that follows the seam line of its part, where they differ from edge to edge.

A seam with one allowance along all its edges has an `inset` like any other.
"""

from __future__ import annotations

from collections.abc import Iterator

from builder.geometry import FeatureShape
from builder.model import Part, Seam, full_name, seam_allowance


def allowances_followed(shape: FeatureShape, part: Part, name: str) -> Iterator[str]:
    """Full names of the allowances along a seam, each once, in the order of its edges."""
    seam, outline = shape.feature, part.outline
    if not isinstance(seam, Seam) or outline is None or not outline.allowance or seam.seam in (("line",), ("along",)):
        return
    if seam.inset is not None or seam.on is not None or seam.binding is not None:
        return
    if seam_allowance(part, seam) is not None:
        return
    edges = outline.allowance if seam.seam == ("all",) else seam.seam
    found = (outline.allowance_of(edge) for edge in edges)
    yield from (full_name(name, one) for one in dict.fromkeys(found) if one is not None)
