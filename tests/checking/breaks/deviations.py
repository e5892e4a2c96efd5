"""Breaks of the rules on deviations."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

STIFF = "operations/hem-strip-stiff.yaml"

BREAKS = [
    Break("deviation-ended", STIFF, "until: 2026-12-18", "until: ¦2026-11-20"),
    Break("deviation-other-work", STIFF, "instead of: hem-strip", "instead of: ¦hem-pocket"),
]
