"""Breaks of the rules on what flows from operation to operation, and of sizes, colours and codes."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

ROLL = "products/tool-roll.yaml"
POUCH = "products/instrument-pouch.yaml"
HANDLE = "operations/sew-handle-end.yaml"
PADS = "operations/cut-pouch-pads.yaml"
MOSS = (
    "materials/other.yaml",
    "materials:\n  pack-cloth-moss: {title: Pack cloth moss, form: sheet, width: 1500 mm, thickness: THICK,"
    " mass: 250 g/m2, structure: woven, lots: matched, composition: [nylon 6.6, polyurethane coating],"
    " evidence: {kind: supplier declaration, document: TQ-MAT-0113, date: 2026-03-04}}\n"
    "  thread-moss: {title: Thread moss, form: thread, tex: 70 tex}\n",
)
SAME = (MOSS[0], MOSS[1].replace("THICK", "0.35 mm"))
THICKER = (MOSS[0], MOSS[1].replace("THICK", "0.6 mm"))
TAG = ("parts/tag.yaml", "part: tag\ntitle: Tag\nmaterial: webbing-25\noutline:\n  strip: {length: 60 mm}\n")

BREAKS = [
    Break(
        "made-never-used",
        "operations/cut-roll-webbing.yaml",
        "makes: {handle-webbing: 1, tie-webbing: 2}",
        "makes: {handle-webbing: 1, tie-webbing: 2, ¦tag: 1}",
        add=TAG,
    ),
    Break("pieces-left-over", "operations/cut-roll-webbing.yaml", "tie-webbing: 2}", "¦tie-webbing: 3}"),
    Break(
        "operation-on-no-product",
        ROLL,
        "note:",
        "note:",
        ("operations/wipe-roll.yaml", "¦operation: wipe-roll"),
        add=(
            "operations/wipe-roll.yaml",
            "operation: wipe-roll\ntitle: Wipe the roll\ncode: INS-30\nstation: bench\nneeds: {roll-packed: 1}\n"
            "makes: roll-wiped\nsettings: {lamp: 1000 lux}\nsteps: [{step: wipe, do: Wipe it once., time: 5 s}]\n",
        ),
    ),
    Break("part-made-twice", PADS, "makes: {pouch-pad: 2}", "makes: {pouch-pad: 2, ¦pouch-foam: 1}"),
    Break("code-twice", "operations/sew-keeper.yaml", "code: KEP-20", "code: ¦KEP-10"),
    Break(
        "needs-not-countable",
        HANDLE,
        "needs: {roll-back: 1, handle-webbing: 1}",
        "needs: {roll-back: 1, handle-webbing: 1, ¦binding-tape-22: 1}",
    ),
    Break("revision-without-date", HANDLE, "revision: C\ndate: 2026-10-12\n", "revision: ¦C\n"),
    Break(
        "lot-mixing",
        "operations/sew-patches.yaml",
        "lots: matched\n",
        "",
        ("operations/sew-patches.yaml", "¦needs:"),
    ),
    Break("part-not-on-route", ROLL, "  - hem-pocket\n", "", (ROLL, "- ¦divide-pockets")),
    Break("sold-not-made", ROLL, "sold: roll-packed", "sold: ¦pouch-packed"),
    Break(
        "sold-ambiguous",
        "products/handle-panel-tacked.yaml",
        "  - tack-grip\nbatch: 240\nsold: handle-panel-tacked\n",
        "  - tack-grip\n  - ¦grade-grip\nbatch: 240\n",
        add=(
            "operations/grade-grip.yaml",
            "operation: grade-grip\ntitle: Grade it\ncode: INS-35\nstation: bench\nneeds: {handle-panel-tacked: 1}\n"
            "makes: {grip-first: 1, grip-second: 1}\nsettings: {lamp: 1000 lux}\n"
            "steps: [{step: grade, do: Lay it on its stack., time: 5 s}]\n",
        ),
    ),
    Break("quantity-differs", POUCH, "quantity: 2", "quantity: ¦3"),
    Break("stop-not-needed", ROLL, "  - inspect-roll\n", "  - ¦cut-keeper\n  - inspect-roll\n"),
    Break("stop-twice", ROLL, "  - bind-edge\n", "  - bind-edge\n  - ¦hem-pocket\n"),
    Break("alternative-differs", POUCH, "batch: 120", "batch: 120\nalternative to: ¦tool-roll"),
    Break(
        "colour-unused",
        POUCH,
        "batch: 120",
        "batch: 120\ncolours:\n  slate: {}\n  moss:\n    pack-cloth-420: pack-cloth-moss\n"
        "    bonded-nylon-tex-70: thread-moss\n    ¦binding-tape-22: binding-tape-22",
        add=SAME,
    ),
    Break(
        "colour-incomplete",
        POUCH,
        "batch: 120",
        "batch: 120\ncolours:\n  slate: {}\n"
        "  moss: {pack-cloth-420: pack-cloth-moss, bonded-nylon-tex-70: thread-moss}\n"
        "  ¦olive: {pack-cloth-420: pack-cloth-moss}",
        add=SAME,
    ),
    Break(
        "colour-changes-goods",
        POUCH,
        "batch: 120",
        "batch: 120\ncolours:\n  slate: {}\n  moss:\n    bonded-nylon-tex-70: thread-moss\n"
        "    pack-cloth-420: ¦pack-cloth-moss",
        add=THICKER,
    ),
    Break(
        "size-of-other-part",
        ROLL,
        "L: {roll-back.width: 480 mm,",
        "L: {¦pouch-front.height: 152 mm, roll-back.width: 480 mm,",
    ),
    Break(
        "size-incomplete",
        ROLL,
        "  L: {roll-back.width: 480 mm, roll-back.height: 320 mm}\n",
        "  ¦L: {roll-back.width: 480 mm}\n  XL: {roll-back.width: 490 mm, roll-back.height: 320 mm}\n",
    ),
    Break("bundle-not-whole", POUCH, "batch: 120", "batch: ¦130"),
    Break(
        "feature-never-made",
        "operations/tack-pockets.yaml",
        "place: [tie-high, tie-low]",
        "place: tie-high",
        ("parts/roll-body.yaml", "¦tie-low:"),
    ),
    Break("part-never-used", ROLL, "note:", "note:", (TAG[0], "¦part: tag"), add=TAG),
    Break(
        "mass-missing", "materials/hardware.yaml", "    mass each: 4.8 g\n", "", ("materials/hardware.yaml", "¦ring-25")
    ),
    Break(
        "material-never-used",
        "materials/hardware.yaml",
        "  ring-25:\n",
        "  ¦ring-38: {title: Ring 38 mm, form: hardware, width: 38 mm, mass each: 7 g}\n  ring-25:\n",
    ),
    Break(
        "station-without-operations",
        "operations/overlock-face.yaml",
        "station: overlock",
        "station: overlock",
        ("stations/spare.yaml", "¦spare-press"),
        add=(
            "stations/spare.yaml",
            "stations:\n  spare-press:\n    title: Spare press\n    kind: setting press\n    count: 1\n"
            "    distance: 0.6 m\n    attendance: constant\n    pace: {cycle: 2 s, calibrated: 2026-09-01}\n"
            "    protection: [press guard]\n    start: {guard: With the guard open it must not start.}\n",
        ),
    ),
]
