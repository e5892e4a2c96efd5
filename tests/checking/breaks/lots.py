"""Breaks of the rules on bobbins, cones, needles and sheets."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

SEWING = "stations/sewing.yaml"
TEX_135 = "      bonded-nylon-tex-135: {holds: 32 m, left: 2 m}\n"

BREAKS = [
    Break(
        "per-without-fact",
        "operations/cut-roll-panels.yaml",
        "    time: 48 s\n    per: sheet\n",
        "    time: 48 s\n    per: ¦bobbin\n",
    ),
    Break("bobbin-all-left", SEWING, TEX_135, TEX_135.replace("left: 2 m", "left: ¦200 m")),
    Break(
        "per-uncountable",
        "stations/special-sewing.yaml",
        "      bonded-nylon-tex-70: {holds: 38 m, left: 1.5 m}\n",
        "      bonded-nylon-tex-70: {holds: 1.6 m, left: 1.5 m}\n",
        ("operations/topstitch-band.yaml", "per: ¦bobbin"),
    ),
]
