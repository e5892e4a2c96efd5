"""Each rule broken in a copy of the demo: that one top-level finding, at the right line and column.

A break replaces a text once; `¦` in the new text stands where the finding is expected and is taken out. Where the
finding stands elsewhere than the break, `at` names the file and a text there, again with `¦`.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from builder.checking import rule_book
from builder.pipeline import check_plant


@dataclass(frozen=True)
class Break:
    """A fault put into the demo."""

    rule: str
    file: str
    old: str
    new: str
    at: tuple[str, str] | None = None
    add: tuple[str, str] | None = None


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
        "operations/bind-edge.yaml",
        "    time: pick-up-panel\n",
        "",
        ("operations/bind-edge.yaml", "step: ¦tuck"),
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
    Break("gauge-missing", HANDLE, "    with: seam gauge\n", "", (HANDLE, "¦edge:")),
    Break(
        "feature-ambiguous",
        "parts/handle-webbing.yaml",
        "title:",
        "features: {handle-box: {box: plain, width: 9 mm, height: 9 mm, at: {left: 9 mm, bottom: 9 mm}}}\ntitle:",
        (HANDLE, "sew: ¦handle-box"),
    ),
    Break(
        "feature-outside-part",
        BACK,
        '  handle-holes:\n    hole: 3 mm\n    at: {left: "=handle-centre - 12 mm"',
        '  ¦handle-holes:\n    hole: 3 mm\n    at: {left: "=handle-centre + 82 mm"',
    ),
    Break("shape-impossible", BACK, "corner: 25 mm", "corner: 190 mm", (BACK, "¦outline:")),
    Break(
        "part-without-shape",
        "parts/handle-webbing.yaml",
        "material:",
        "note:",
        ("parts/handle-webbing.yaml", "¦title:"),
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
        "theme: manila",
        "theme: manila\nrules:\n  ¦protection-missing: {severity: 'off', because: guards are on order}",
    ),
    Break("study-step-gone", HANDLE, "step: fold-end", "step: fold-the-end", (HANDLE, "times: ¦studies")),
]


def broken(one: Break, demo: Path) -> tuple[str, int, int]:
    """Breaks the demo; returns where the finding is expected."""
    if one.add is not None:
        (demo / one.add[0]).write_text(one.add[1], encoding="utf-8")
    path = demo / one.file
    text = path.read_text(encoding="utf-8")
    assert one.old in text, f"{one.file} no longer holds {one.old!r}"
    marked = text.replace(one.old, one.new, 1)
    if one.rule == "photo-without-words":
        marked = "\n".join(line for line in marked.split("\n") if "caption-of-old" not in line)
    path.write_text(marked.replace("¦", ""), encoding="utf-8")
    if one.at is None:
        file, index = one.file, marked.index("¦")
    else:
        file, snippet = one.at
        whole = (demo / file).read_text(encoding="utf-8")
        start = whole.index(snippet.replace("¦", ""))
        marked, index = whole, start + snippet.index("¦")
    line = marked.count("\n", 0, index) + 1
    return file, line, index - (marked.rfind("\n", 0, index) + 1) + 1


@pytest.mark.parametrize("one", BREAKS, ids=lambda one: one.rule)
def test_broken_demo_gives_that_one_finding(one: Break, demo: Path) -> None:
    """One top-level finding, of the rule broken, at its place."""
    expected = broken(one, demo)
    findings = check_plant(demo).findings
    assert [found.rule for found in findings] == [one.rule], [(str(f.place), f.rule, f.message) for f in findings]
    place = findings[0].place
    assert (place.file, place.line, place.column) == expected


def test_every_rule_is_broken_here() -> None:
    """A new rule needs its break."""
    assert {one.rule for one in BREAKS} == set(rule_book())
