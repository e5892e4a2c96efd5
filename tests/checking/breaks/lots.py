"""Breaks of the rules on bobbins, cones, needles and sheets."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

SPECIAL = "stations/special-sewing.yaml"
BOBBIN = "      bonded-nylon-tex-70: {holds: 38 m, left: 1.5 m}\n"

BREAKS = [
    Break(
        "per-without-fact",
        "operations/cut-roll-panels.yaml",
        "    time: 48 s\n    per: sheet\n",
        "    time: 48 s\n    per: ¦bobbin\n",
    ),
    Break("bobbin-all-left", SPECIAL, BOBBIN, BOBBIN.replace("1.5 m", "¦150 m")),
    Break(
        "per-uncountable",
        SPECIAL,
        BOBBIN,
        BOBBIN.replace("38 m", "1.6 m"),
        ("operations/topstitch-band.yaml", "per: ¦bobbin"),
    ),
]
