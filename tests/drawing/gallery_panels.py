"""Panels of settings for the gallery."""

from __future__ import annotations

from builder.view import PanelRow, PanelView, Span

SEWING = (
    PanelRow("stitch", "301"),
    PanelRow("stitch length", "3.2 mm ± 0.2", "7.9 st/in +0.5 −0.4", Span(1.5, 5, 3.2, 3, 3.4, "1.5 mm", "5 mm")),
    PanelRow("thread", "Bonded polyester thread, tex 135, colour sand, on large cones"),
    PanelRow("needle", "Nm 110 R"),
    PanelRow("top tension", "1.4 N ± 0.2", "0.31 lbf ± 0.04", Span(0.6, 2.5, 1.4, 1.2, 1.6, "0.6 N", "2.5 N")),
    PanelRow("speed", "1800 st/min", "", Span(300, 2200, 1800, 1800, 1800, "300 st/min", "2200 st/min")),
)


def panel_gallery() -> list[PanelView]:
    """A sewing machine's settings, and a single value at the end of its range."""
    end = PanelRow("dwell", "2 s", "", Span(0, 2, 2, 1.8, 2, "0 s", "2 s"))
    return [
        PanelView("panel-sewing", "Settings: lockstitch", SEWING, (), "Lockstitch, its settings."),
        PanelView("panel-end", "Settings: press", (end,), (), "A press that dwells as long as it can."),
    ]
