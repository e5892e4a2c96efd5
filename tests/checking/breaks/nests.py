"""Breaks of the rules on how pieces lie on the sheet."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

PANELS, ENDS = "operations/cut-bar-panels.yaml", "operations/cut-bar-ends.yaml"

BREAKS = [
    Break("nest-overlap", PANELS, "row pitch: 280 mm", "row pitch: 276 mm", (PANELS, "¦{part: bar-panel, turn: 90°")),
    Break("nest-outside-sheet", ENDS, "length: 550 mm", "length: 540 mm", (ENDS, "¦{part: bar-end, turn: 90°")),
    Break("nest-count", PANELS, "rows: 5", "rows: 4", (PANELS, "¦nest:")),
    Break("nest-grain", ENDS, "turn: 90°", "turn: ¦0°"),
]
