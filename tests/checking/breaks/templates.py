"""Breaks of the rules on templates."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

GAUGE = "templates/handle-edge-gauge.yaml"
HANDLE = "operations/sew-handle-end.yaml"

BREAKS = [
    Break("template-off-scale", GAUGE, "measured: {across: 100.1 mm", "¦measured: {across: 101.2 mm"),
    Break("template-limit-missing", "plant.yaml", "template limit: 0.5 mm", "#", (GAUGE, "number: ¦G-12")),
    Break("template-impossible", HANDLE, "is: 3 mm +1 -0", "is: max 0 mm", (GAUGE, "of: ¦sew-handle-end/edge")),
    Break(
        "template-one-size",
        GAUGE,
        "kind: gauge\nof: sew-handle-end/edge\nnumber: G-12",
        "kind: part\nof: roll-back\nnumber: ¦G-12",
    ),
]
