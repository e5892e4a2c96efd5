"""Breaks of the rules about people: their bodies, their time, and the words they read."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

HANDLE = "operations/sew-handle-end.yaml"
HEM = "operations/hem-pocket.yaml"
FINISHING = "stations/finishing.yaml"

BREAKS = [
    Break(
        "power-on",
        HEM,
        "do: Change the needle. Resew from 20 mm before the skip.\n    power: off\n",
        "do: ¦Change the needle. Resew from 20 mm before the skip.\n",
    ),
    Break(
        "lift-too-heavy",
        "materials/webbing.yaml",
        "    width: 38 mm\n    length: 100 m\n",
        "    width: 38 mm\n    length: 1000 m\n",
        ("stations/cutting.yaml", "protection: ¦[blade guard, heat-resistant gloves"),
    ),
    Break("force-too-often", "operations/tack-strap-ring.yaml", "force: 40 N", "force: ¦60 N"),
    Break("force-over-relaxation", "operations/fold-patch.yaml", "force: 40 N", "force: ¦45 N"),
    Break(
        "standing-relaxation",
        FINISHING,
        "relaxation: {standing: yes, force",
        "relaxation: {force",
        (FINISHING, "posture: ¦standing"),
    ),
    Break(
        "rest-inside-nothing",
        "stations/packing.yaml",
        "    reach: 500 mm\n",
        "    reach: 500 mm\n    rest inside: ¦yes\n",
    ),
    Break(
        "step-two-actions",
        HEM,
        "do: Fold the edge over once, notch to notch.",
        "do: Fold the edge over once and ¦sew it.",
    ),
    Break(
        "study-conditions-changed",
        "studies/sew-handle-end.csv",
        "# size: M\n",
        "# size: M\n# stitch length: ¦2.5 mm\n",
    ),
    Break("reading-implausible", "studies/hem-pocket.csv", "\nfold,3,6.9,100,\n", "\n¦fold,3,69.0,100,\n"),
    Break(
        "time-implausible",
        "operations/inspect-roll.yaml",
        "tie a bow.\n    time: 9.5 s",
        "tie a bow.\n    time: ¦12 min",
    ),
    Break("estimate-too-old", "operations/cut-keeper.yaml", "date: 2026-10-08", "date: ¦2024-10-08"),
    Break(
        "study-against-model",
        "stations/special-sewing.yaml",
        "finish: 1.3 s",
        "finish: 9 s",
        ("operations/topstitch-band.yaml", "- step: ¦sew\n"),
    ),
    Break(
        "photo-too-small",
        "operations/sew-handle-end.yaml",
        "file: photos/handle-end-wrong.jpg",
        "file: ¦photos/handle-end-wrong.jpg",
        small="photos/handle-end-wrong.jpg",
    ),
    Break(
        "text-too-long",
        HEM,
        "do: Sew the hem in one run, backstitch both ends.",
        "do: ¦Sew the hem from the left end of the mouth to its right end in one single run without a stop, and sew"
        " back over the first and over the last three stitches of it at both ends.",
    ),
    Break(
        "element-outside-range",
        "elements/handling.yaml",
        "longest side: 60..360 mm",
        "longest side: 60..338 mm",
        ("operations/tack-pockets.yaml", "time: ¦2 x lay-strip-on-mark"),
    ),
    Break(
        "number-in-words",
        "operations/tack-strap-ring.yaml",
        "do: Fold 40 mm back over",
        "do: Fold ¦44 mm back over",
    ),
    Break("reach-too-far", FINISHING, "reach: 450 mm", "reach: ¦620 mm"),
    Break("standing-only", FINISHING, "posture: standing\n    relief: ", "posture: ¦standing\n    note: "),
    Break("fault-without-remedy", HEM, "    do: Read the tension with the gauge.\n", "", (HEM, "sign: ¦hem puckers")),
    Break(
        "critical-without-stop",
        HANDLE,
        "    class: critical\n    cause: fold shorter than 40 mm\n"
        "    do: Unpick the box, fold again at 40 mm.\n"
        "    stop: More than one in a bundle, stop and call.\n",
        "    class: ¦critical\n    cause: fold shorter than 40 mm\n    do: Unpick the box, fold again at 40 mm.\n",
    ),
    Break(
        "key-without-reason",
        HEM,
        "    key: Crease with the thumbnail, coating inside.\n"
        "    why: A crease feeds flat; a round fold creeps and puckers.\n",
        "    key: ¦Crease with the thumbnail, coating inside.\n",
    ),
    Break("vague-words", HEM, "do: Fold the edge over once, notch to notch.", "do: Fold the edge over ¦neatly."),
]
