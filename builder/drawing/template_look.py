"""The look of a template at true size: line weights and dashes by role, in printed mm. Values only."""

from __future__ import annotations

from dataclasses import dataclass

from builder.drawing import look

CAPITAL_MM = 2.6
"""Capital height of all words on a template: read with it in the hand, never under 2.5 mm."""

GO_TINT, NO_GO_TINT = "#dcebd9", "#f6d9d2"
SQUARE_GREY = "#5b564e"
MAP_HERE = "#b9b2a3"


@dataclass(frozen=True, slots=True)
class Pen:
    """Width in mm, dash pattern or '' for a solid line, colour."""

    width: float
    dash: str = ""
    colour: str = look.INK


DATUM_MM = 0.9
"""A datum edge is this thick, inwards from the edge that is cut."""

PENS = {
    "cut edge": Pen(0.5),
    "slit": Pen(0.4),
    "notch": Pen(0.35),
    "hole": Pen(0.35),
    "hardware": Pen(0.25),
    "fold": Pen(0.3, "8 2 1 2"),
    "seam": Pen(0.25, "3 2"),
    "box": Pen(0.25, "3 2"),
    "bartack": Pen(0.2),
    "binding": Pen(0.25, "3 2"),
    "strip": Pen(0.2, "1 1.5"),
    **dict.fromkeys(("pleat meets", "pleat arrow", "dart leg", "dart arrow"), Pen(0.25)),
    **dict.fromkeys(("pleat outer", "pleat inner", "dart fold"), Pen(0.3, "8 2 1 2")),
    "centre": Pen(0.15),
    "datum": Pen(DATUM_MM),
}
OTHER = Pen(0.2, "1 1.5")
"""For a role this file doesn't know: a fine dotted line, which nobody takes for a cut."""
JOINT = Pen(0.15, "6 2")
SQUARE = Pen(0.15, "", SQUARE_GREY)
DIMENSION = Pen(0.15)
CROSS = Pen(0.2)
