"""Breaks of the rules about shapes, joins and measures."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

BODY = "parts/roll-body.yaml"
KEEPER = "operations/sew-keeper.yaml"
DIVIDER = "tack: start and end, held: free hand}\n  divider-2"

BREAKS = [
    Break(
        "features-collide",
        "parts/pouch-face.yaml",
        "  mouth-edge: {seam: top, inset: 5 mm",
        "  ¦mouth-edge: {seam: top, inset: 67 mm",
    ),
    Break(
        "formed-size-differs",
        "parts/pocket-pleated.yaml",
        'outline:\n  rectangle:\n    width: "=pocket-strip.width - pocket-strip/pleats-left.take -',
        '¦outline:\n  rectangle:\n    width: "=pocket-strip.width - 2 mm - pocket-strip/pleats-left.take -',
    ),
    Break("row-off-strip", BODY, "pitch: 35 mm", "pitch: ¦335 mm"),
    Break(
        "strip-beyond-part",
        BODY,
        "tie-high: {strip: tie-webbing, at: {left: 0 mm",
        "¦tie-high: {strip: tie-webbing, at: {left: 60 mm",
    ),
    Break("seam-allowance-small", "parts/pouch-face.yaml", "inset: 5 mm", "inset: ¦3 mm"),
    Break("seam-class-differs", "parts/roll-pocket.yaml", "class: edge finished", "class: ¦superimposed"),
    Break("cross-grain", "parts/pouch-pad.yaml", "grain: up", "grain: ¦across"),
    Break(
        "part-larger-than-goods",
        "materials/cloth.yaml",
        "width: 1000 mm",
        "width: 100 mm",
        ("parts/pouch-foam.yaml", "¦outline:"),
    ),
    Break("notch-without-partner", "parts/pouch-front.yaml", "meets: pouch-back", "meets: ¦pouch-pad"),
    Break(
        "seam-join-unknown",
        BODY,
        DIVIDER,
        DIVIDER.replace("}", ", joins: [roll-pocket/hem-seam, ¦roll-pocket/hem]}"),
    ),
    Break(
        "seam-lengths-differ",
        BODY,
        DIVIDER,
        DIVIDER.replace("}", ", joins: ¦[roll-pocket/hem-seam, roll-body/divider-2]}"),
    ),
    Break(
        "hole-near-edge",
        "parts/pouch-back.yaml",
        "diameter: 15 mm",
        "diameter: 25 mm",
        ("parts/pouch-back.yaml", "¦sockets:"),
    ),
    Break(
        "label-not-caught",
        "parts/pouch-face.yaml",
        "overhang: 14 mm",
        "overhang: 18 mm",
        ("parts/pouch-face.yaml", "¦maker-label:"),
    ),
    Break("notch-too-deep", "parts/pouch-front.yaml", "depth: 3 mm", "depth: ¦8 mm"),
    Break("gauge-too-coarse", KEEPER, "with: calliper", "with: ¦tape measure"),
    Break("tolerance-chain", KEEPER, "is: ± 1 mm\n", "is: ¦± 0.5 mm\n"),
    Break("tolerance-unchecked", KEEPER, "    check: slot\n", "", (KEEPER, "¦slot:")),
    Break(
        "size-out-of-order",
        "products/instrument-pouch.yaml",
        "  S: {}\n",
        "  S: {}\n  M: {pouch-front.width: ¦222 mm, pouch-front.height: 140 mm}\n",
    ),
    Break(
        "component-twice",
        "parts/roll-body.yaml",
        "  - {part: roll-pocket-hemmed, at: {left: 0 mm, bottom: 0 mm}, layer: 2}\n",
        "  - {part: roll-pocket-hemmed, at: {left: 0 mm, bottom: 0 mm}, layer: 2}\n"
        "  - {part: ¦roll-pocket-hemmed, at: {left: 0 mm, bottom: 0 mm}, layer: 3}\n",
    ),
]
