"""Breaks of the rules about shapes, joins and measures."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

BODY = "parts/roll-body.yaml"
BACK = "parts/roll-back.yaml"

BREAKS = [
    Break(
        "features-collide",
        "parts/pouch-face.yaml",
        "  mouth-edge: {seam: top, inset: 5 mm",
        "  ¦mouth-edge: {seam: top, inset: 67 mm",
    ),
    Break("row-off-strip", BODY, "pitch: 35 mm", "pitch: ¦335 mm"),
    Break(
        "strip-beyond-part",
        BODY,
        "tie-high: {strip: tie-webbing, at: {left: 0 mm",
        "¦tie-high: {strip: tie-webbing, at: {left: 60 mm",
    ),
    Break("seam-allowance-small", "parts/pouch-face.yaml", "inset: 5 mm", "inset: ¦3 mm"),
    Break("cross-grain", "parts/pouch-pad.yaml", "grain: up", "grain: ¦across"),
    Break(
        "part-larger-than-goods",
        "materials/cloth.yaml",
        "width: 1000 mm",
        "width: 100 mm",
        ("parts/pouch-foam.yaml", "¦outline:"),
    ),
]
