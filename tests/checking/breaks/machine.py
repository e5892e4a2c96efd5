"""Breaks of the rules on what a machine is set to, takes and can do."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

BAR_PANELS = "operations/cut-bar-panels.yaml"
BIND = "operations/bind-pouch.yaml"
BIND_ROLL = "operations/bind-edge.yaml"
HANDLE = "operations/sew-handle-end.yaml"
OVERLOCK = "operations/overlock-face.yaml"
SOCKETS = "operations/set-flap-sockets.yaml"
TACK = "operations/tack-pockets.yaml"
TAPES = "operations/cut-strap-tapes.yaml"
CUTTING = "stations/cutting.yaml"
SEWING = "stations/sewing.yaml"
WEBBING = "materials/webbing.yaml"

BREAKS = [
    Break("needle-for-thread", HANDLE, "needle: Nm 130 R", "needle: ¦Nm 100 R"),
    Break("needle-point-for-goods", OVERLOCK, "needle: Nm 90 SES", "needle: ¦Nm 90 R"),
    Break(
        "tension-missing",
        BIND,
        "settings:\n  stitch: 301\n  stitch length: 3.2 mm ± 0.2\n  thread: bonded-nylon-tex-70\n"
        "  bobbin thread: bonded-nylon-tex-70\n  needle: Nm 110 SES\n  top tension: 1.4 N ± 0.2\n",
        "¦settings:\n  stitch: 301\n  stitch length: 3.2 mm ± 0.2\n  thread: bonded-nylon-tex-70\n"
        "  bobbin thread: bonded-nylon-tex-70\n  needle: Nm 110 SES\n",
    ),
    Break("program-missing", HANDLE, "  program: '14'\n", "", (HANDLE, "¦settings:")),
    Break("program-differs", TACK, "program: B28 10 x 2.5", "program: ¦B42 20 x 3"),
    Break("speed-over-measured", BIND_ROLL, "speed: 1800 st/min", "speed: ¦2200 st/min"),
    Break("foot-lift", SEWING, "foot lift: 10 mm", "foot lift: 4 mm", (BIND, "sew: ¦pouch-binding")),
    Break(
        "tack-longer-than-seam",
        "parts/roll-body.yaml",
        "tack: start and end, held: free hand}\n  divider-2",
        "tack: start and end, tack stitches: 16, held: free hand}\n  divider-2",
        ("operations/divide-pockets.yaml", "sew: [divider-2, ¦divider-1]"),
    ),
    Break(
        "start-check-missing",
        CUTTING,
        "    start:\n      extraction: Switch it on. A strip of tissue must stick to the grille.\n",
        "    ¦start:\n",
    ),
    Break(
        "cold-cut-frays",
        WEBBING,
        "    title: Hook tape 20 mm\n",
        "    title: Hook tape 20 mm\n    ends: sealed\n",
        (TAPES, "cut: ¦hook-piece"),
    ),
    Break(
        "strip-too-wide",
        "parts/keeper-webbing.yaml",
        "material: webbing-38",
        "material: webbing-60",
        ("operations/cut-keeper.yaml", "cut: ¦keeper-webbing"),
        (
            "materials/wide.yaml",
            "materials:\n  webbing-60:\n    title: Nylon webbing 60 mm\n    form: webbing\n"
            "    width: 60 mm\n    thickness: 1.2 mm\n    mass per length: 60 g/m\n"
            "    composition: [nylon 6.6]\n"
            "    evidence: {kind: supplier declaration, document: TQ-MAT-0208 rev 1, date: 2026-02-18}\n",
        ),
    ),
    Break(
        "bed-too-small",
        "stations/presses.yaml",
        "bed: {width: 430 mm, length: 900 mm}",
        "bed: {width: 60 mm, length: 200 mm}",
        ("operations/cut-base-stiffeners.yaml", "cut: ¦base-stiffener"),
    ),
    Break("die-for-hardware", SOCKETS, "die: snap 15 socket", "die: ¦snap 15 stud"),
    Break("bobbin-thread-unsaid", TACK, "  bobbin thread: bonded-nylon-tex-70\n", "", (TACK, "¦settings:")),
    Break(
        "calibration-missing",
        CUTTING,
        "    pace:\n      feed: 500 mm/s\n      chop: 0.3 s\n      calibrated: 2026-09-15\n",
        "    ¦pace:\n      feed: 500 mm/s\n      chop: 0.3 s\n",
    ),
    Break("lead-in-over-hole", BAR_PANELS, "lead in: 2 mm", "lead in: ¦4.5 mm"),
    Break(
        "goods-over-measured",
        SEWING,
        "{held: edge stop, layers: 6,",
        "{held: edge stop, layers: 5,",
        ("operations/sew-row.yaml", "sew: ¦row-edge"),
    ),
]
