"""Breaks of the rules on templates."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

GAUGE = "templates/handle-edge-gauge.yaml"
OF_GAUGE = "kind: gauge\nof: sew-handle-end/edge\nnumber: G-12"

BREAKS = [
    Break("template-off-scale", GAUGE, "measured: {across: 100.1 mm", "¦measured: {across: 101.2 mm"),
    Break("template-limit-missing", "plant.yaml", "template limit: 0.5 mm", "#", (GAUGE, "number: ¦G-12")),
    Break(
        "template-impossible",
        GAUGE,
        OF_GAUGE,
        "kind: marking\nof: ¦roll-back\nfeatures: handle-box\nsize: tool-roll/M\nnumber: G-12",
    ),
    Break("template-one-size", GAUGE, OF_GAUGE, "kind: part\nof: roll-back\nnumber: ¦G-12"),
]
