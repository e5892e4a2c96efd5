"""Breaks of the rules about nests."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

PANELS = "operations/cut-bar-panels.yaml"
POUCH = "operations/cut-pouch-panels.yaml"
PANEL, BACK = "{part: bar-panel, count: 20}", "{part: pouch-back, count: 60}"

BREAKS = [
    Break("nest-overlap", PANELS, PANEL, "¦{part: bar-panel, count: 20, pitch: 260 mm}"),
    Break("nest-outside-sheet", PANELS, PANEL, "¦{part: bar-panel, count: 20, columns: 6}"),
    Break("nest-count", PANELS, PANEL, "¦{part: bar-panel, count: 18}"),
    Break("nest-grain", POUCH, BACK, "{part: pouch-back, count: 60, turn: ¦90 deg}"),
    Break("nest-impossible", PANELS, "  margin: 10 mm", "  margin: ¦=bar-panel.width * bar-panel.width"),
]
