"""Breaks of the rules that keep a plant readable, safe and drawn."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

HANDLE = "operations/sew-handle-end.yaml"
SEWING = "stations/sewing.yaml"
CUTTING = "stations/cutting.yaml"
CLOTH = "materials/cloth.yaml"
BACK = "parts/roll-back.yaml"
ROLL = "products/tool-roll.yaml"

BREAKS = [
    Break("setting-outside-range", HANDLE, "stitch length: 3.2 mm ± 0.2", "stitch length: ¦12 mm ± 0.2"),
    Break(
        "setting-missing",
        HANDLE,
        "settings:\n  stitch: 301\n  stitch length: 3.2 mm ± 0.2\n",
        "¦settings:\n  stitch: 301\n",
    ),
    Break("stitch-not-sewn", HANDLE, "stitch: 301", "stitch: ¦401"),
    Break("thread-count", HANDLE, "  stitch: 301\n", "  stitch: 301\n  threads: ¦3\n"),
    Break("step-feature-missing", HANDLE, "sew: handle-box", "sew: ¦handle-bow"),
    Break("step-two-kinds", HANDLE, "sew: handle-box", "sew: handle-box\n    ¦fold: handle-box"),
    Break("step-name-twice", HANDLE, "step: fold-end", "step: ¦lay"),
    Break(
        "step-without-time",
        "operations/inspect-hanger.yaml",
        "    time: 11 s\n",
        "",
        ("operations/inspect-hanger.yaml", "step: ¦hang"),
    ),
    Break("tolerance-nominal", HANDLE, "is: 32 mm ± 1", "is: ¦34 mm ± 1"),
    Break("tolerance-dimension", HANDLE, "of: handle-box.width", "of: ¦handle-box.widht"),
    Break(
        "photo-without-words",
        "operations/bind-edge.yaml",
        "photo: photos/binding-edge.jpg\n    alt:",
        "photo: ¦photos/binding-edge.jpg\n    caption-of-old:",
    ),
    Break("during-not-a-run", HANDLE, "    time: aside-to-stack\n", "    time: aside-to-stack\n    during: ¦box\n"),
    Break("gauge-missing", HANDLE, "    with: handle-edge-gauge\n", "", (HANDLE, "¦edge:")),
    Break(
        "feature-ambiguous",
        "parts/handle-webbing.yaml",
        "title:",
        "features: {handle-box: {box: plain, width: 9 mm, height: 9 mm, at: {left: 9 mm, bottom: 9 mm}}}\ntitle:",
        (HANDLE, "sew: ¦handle-box"),
    ),
    Break(
        "feature-outside-part",
        "parts/strap-webbing.yaml",
        """  ring-tack:
    bartack: 42
    length: 20 mm
    width: 3 mm
    at: {left: "=ring-fold.inset + tack-from-fold", middle: 0 mm}""",
        """  ¦ring-tack:
    bartack: 42
    length: 20 mm
    width: 3 mm
    at: {left: "=ring-fold.inset + tack-from-fold", middle: 12 mm}""",
    ),
    Break("shape-impossible", BACK, "corner: 25 mm", "corner: 190 mm", (BACK, "¦outline:")),
    Break(
        "part-without-shape",
        "parts/pouch-front.yaml",
        "material:",
        "note:",
        ("parts/pouch-front.yaml", "¦title:"),
    ),
    Break(
        "part-never-made",
        HANDLE,
        "needs: {roll-back: 1,",
        "needs: {roll-back: 1, ¦patch: 1,",
        add=(
            "parts/patch.yaml",
            "part: patch\ntitle: Patch\nmaterial: pack-cloth-420\n"
            "outline: {rectangle: {width: 60 mm, height: 60 mm}}\n",
        ),
    ),
    Break("made-without-part", "operations/cut-keeper.yaml", "makes: keeper-webbing", "makes: ¦keeper-webing"),
    Break(
        "part-before-made",
        ROLL,
        "  - hem-pocket\n  - sew-handle-end\n  - divide-pockets\n",
        "  - ¦divide-pockets\n  - hem-pocket\n  - sew-handle-end\n",
    ),
    Break(
        "route-cycle", "operations/hem-pocket.yaml", "needs: {roll-pocket: 1}", "needs: {roll-pocket: 1, ¦roll-body: 1}"
    ),
    Break("kind-unknown", CUTTING, "kind: laser", "kind: ¦lasre"),
    Break("hazard-unknown", CUTTING, "hazards: [heavy load]", "hazards: [¦heavy lord]"),
    Break(
        "protection-missing",
        CUTTING,
        "protection: [interlocked enclosure, extraction, fire extinguisher,",
        "¦protection: [interlocked enclosure, extraction,",
    ),
    Break("heat-unattended", CUTTING, "attendance: in sight\n    share: 35 %\n", "attendance: ¦free\n"),
    Break("share-missing", CUTTING, "attendance: in sight\n    share: 35 %\n", "attendance: ¦in sight\n"),
    Break("pace-missing", CUTTING, "pace:\n      travel: 700 mm/s\n", "¦pace:\n"),
    Break("station-limit-unreadable", CUTTING, "limits: 20..400 mm/s", "limits: ¦20 to 400 mm/s"),
    Break("heat-composition", CLOTH, "polyurethane coating on the wrong side]", "¦unknown coating]"),
    Break("heat-chlorinated", CLOTH, "polyurethane coating on the wrong side]", "¦PVC coating]"),
    Break(
        "rule-silenced",
        "plant.yaml",
        "gauges:\n",
        "rules:\n  ¦protection-missing: {severity: 'off', because: guards are on order}\ngauges:\n",
    ),
    Break("study-step-gone", HANDLE, "step: fold-end", "step: fold-the-end", (HANDLE, "times: ¦studies")),
]
