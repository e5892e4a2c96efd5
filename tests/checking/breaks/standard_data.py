"""Breaks of the rules about elements derived from studies."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

HANDLING = "elements/handling.yaml"

BREAKS = [
    Break(
        "element-not-derived",
        HANDLING,
        "      - hem-bar-mouth/fold\n      - hem-patch/fold\n      - hem-pocket/fold\n",
        "",
        (HANDLING, "# of the fold\n    ¦from:"),
    ),
    Break(
        "element-not-homogeneous",
        HANDLING,
        "    from: bind-bar-mesh/turn\n",
        "    ¦from: [bind-bar-mesh/turn, hem-pocket/aside]\n",
    ),
    Break(
        "element-fit-poor",
        HANDLING,
        "      - sew-row/match\n",
        "      - sew-row/aside\n",
        (HANDLING, "    ¦varies with: length     # of the panel"),
    ),
    Break(
        "element-extrapolated",
        "operations/set-front-studs.yaml",
        "    time: aside-to-stack",
        "    time: ¦stack-large-panel",
    ),
]
