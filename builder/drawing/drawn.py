"""What drawing gives back: the picture, its size, and what could not be shown well."""

from __future__ import annotations

from dataclasses import dataclass

from builder.drawing.lettered import TextBox


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawn figure.

    svg       : complete SVG document, in printed mm, to stand inline or by itself
    width_mm, height_mm : its printed size
    scale     : mm printed for a mm of the part
    texts     : every text with the box it fills
    problems  : what could not be drawn legibly, as words; empty when all is well
    """

    svg: str
    width_mm: float
    height_mm: float
    scale: float
    texts: tuple[TextBox, ...]
    problems: tuple[str, ...]
