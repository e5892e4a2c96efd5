"""Breaks of pictures: callouts, pairs, hidden areas."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

HANDLE = "operations/sew-handle-end.yaml"
NUMBER = "- {number: [47 %, 76 %], says: loop of loose thread, to: [61 %, 69 %]}"

BREAKS = [
    Break("callout-outside-picture", HANDLE, "ring: [69 %, 28.5 %]", "ring: ¦[99 %, 28.5 %]"),
    Break(
        "callout-number-twice",
        HANDLE,
        NUMBER,
        "- {number: [55 %, 72 %], as: 1, says: loop}\n          - ¦{number: [40 %, 70 %], as: 1, says: again}",
    ),
    Break("callout-empty", HANDLE, NUMBER, f"{NUMBER}\n          - {{blur: ¦[[40 %, 70 %], [40 %, 80 %]]}}"),
    Break(
        "photo-without-caption",
        HANDLE,
        "file: photos/handle-end-right.jpg\n        alt: Box and cross on black webbing, even stitches, all corners"
        " closed.\n        caption: Corners closed, stitches even (rendered)\n",
        "file: ¦photos/handle-end-right.jpg\n        alt: Box and cross on black webbing, even stitches, all corners"
        " closed.\n",
    ),
    Break(
        "photo-pair-one-sided",
        "operations/bind-edge.yaml",
        "    photo: photos/binding-edge.jpg\n",
        "    photo: ¦{file: photos/binding-edge.jpg, shows: wrong}\n",
    ),
    Break(
        "blur-on-drawing",
        "operations/bind-edge.yaml",
        "    photo: photos/binding-edge.jpg\n",
        "    photo: {file: photos/edge.svg, callouts: [¦{blur: [[10 %, 10 %], [20 %, 20 %]]}]}\n",
        add=("photos/edge.svg", '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 3"><path d="M0 0L4 3"/></svg>'),
    ),
]
