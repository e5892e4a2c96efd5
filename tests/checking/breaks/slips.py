"""Breaks of the rules that a storm of random edits asked for: slipped digits, lost lines, days that can't be."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

BREAKS = [
    Break(
        "reason-without-key",
        "operations/tack-grip.yaml",
        "    key: No loop longer than 2 mm.\n    why: A",
        "    why: ¦A",
    ),
    Break("tolerance-too-wide", "operations/cut-board-face.yaml", "is: 10.5 mm ± 0.3", "is: ¦10.5 mm ± 3"),
    Break("density-implausible", "materials/webbing.yaml", "mass per length: 6.2 g/m", "mass per length: ¦62 g/m"),
    Break("date-impossible", "stations/presses.yaml", "calibrated: 2026-09-24", "calibrated: ¦2062-09-24"),
    Break(
        "layer-gap",
        "parts/roll-body.yaml",
        "  - {part: roll-pocket-hemmed, at: {left: 0 mm, bottom: 0 mm}, layer: 2}",
        "  - ¦{part: roll-pocket-hemmed, at: {left: 0 mm, bottom: 0 mm}, layer: 20}",
    ),
    Break("per-over-batch", "operations/cut-pouch-pads.yaml", "per: 40 pieces", "per: ¦4000 pieces"),
    Break("reading-gap", "studies/hem-strip.csv", "fold,11,11.5,90,\n", "", ("studies/hem-strip.csv", "¦fold,1,")),
    Break(
        "study-unused",
        "operations/bind-edge.yaml",
        "times: studies/bind-edge.csv\n",
        "",
        ("studies/bind-edge.csv", "¦# operation"),
    ),
]
