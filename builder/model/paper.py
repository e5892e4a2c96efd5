"""What sheets are printed on, and how wide a column of their steps is: what rules, view and themes must agree on.

A sheet of paper as wide as two upright ones carries two columns of steps, each as wide as a Letter page's.
"""

from __future__ import annotations

from typing import Literal

PaperName = Literal[
    "Letter", "A4", "Tabloid", "A3", "Letter landscape", "A4 landscape", "Tabloid landscape", "A3 landscape"
]
"""What a sheet is printed on. The larger ones are for a station where it is read from far."""
PAPER_MM: dict[str, tuple[float, float]] = {
    "Letter": (215.9, 279.4),
    "A4": (210.0, 297.0),
    "Tabloid": (279.4, 431.8),
    "A3": (297.0, 420.0),
}
"""Width and height, upright: ANSI/ASME Y14.1 and ISO 216 (from memory)."""
PAPER_MM |= {f"{name} landscape": (height, width) for name, (width, height) in PAPER_MM.items()}
SHEET_EDGE_MM = 12.0
COLUMN_GAP_MM = 16.0
"""Between two columns of steps."""
_LEAST_COLUMN_MM = 180.0
_LARGEST_CAPITAL_MM = 4.4
"""With larger letters the words beside a picture would be narrower than themes let them be: one column, long lines."""


def step_columns(paper: str, capital: float) -> int:
    """Columns of steps beside each other on a paper, for a capital height [mm]: two or one.

    >>> step_columns("Tabloid landscape", 3.5), step_columns("Tabloid landscape", 8.7), step_columns("Tabloid", 3.5)
    (2, 1, 1)
    """
    half = (PAPER_MM[paper][0] - 2 * SHEET_EDGE_MM - COLUMN_GAP_MM) / 2
    return 2 if half >= _LEAST_COLUMN_MM and capital <= _LARGEST_CAPITAL_MM else 1


def column_mm(paper: str, capital: float) -> float:
    """Width of a column of steps on a paper [mm], for a capital height [mm]."""
    count = step_columns(paper, capital)
    return (PAPER_MM[paper][0] - 2 * SHEET_EDGE_MM - COLUMN_GAP_MM * (count - 1)) / count
