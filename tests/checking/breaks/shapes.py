"""Breaks of the rules about shapes, joins and measures."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

BODY = "parts/roll-body.yaml"
BACK = "parts/roll-back.yaml"

BREAKS = [
    Break("row-off-strip", BODY, "pitch: 35 mm", "pitch: ¦335 mm"),
    Break(
        "strip-beyond-part",
        BODY,
        "tie-high: {strip: tie-webbing, at: {left: 0 mm",
        "¦tie-high: {strip: tie-webbing, at: {left: 60 mm",
    ),
]
