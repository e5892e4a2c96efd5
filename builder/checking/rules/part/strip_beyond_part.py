"""A strip laid on that hangs over the edge."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.inside import ground_of
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import in_size, length_words
from builder.finding import Severity
from builder.geometry import Bounds, Path, path_inside
from builder.model import Strip

_TOLERATED_MM = 0.5
"""A strip may lie flush and a rounding over. Common practice, no source."""


def check(subject: Subject) -> Iterator[Problem]:
    """Every placed strip without a free end, its folded end taken off, inside what it lies on, in every size."""
    seen: set[tuple[str, str]] = set()
    for size, shape in subject.shapes():
        for name, feature in shape.features.items():
            strip = feature.feature
            if not isinstance(strip, Strip) or strip.free_end or (shape.name, name) in seen or not feature.regions:
                continue
            ground = ground_of(shape, feature)
            if path_inside(ground, Path(feature.regions[0].segments), _TOLERATED_MM) is None:
                continue
            seen.add((shape.name, name))
            beyond = _beyond(feature.regions[0].bounds(), ground.bounds())
            by = f"by {length_words(beyond, subject.model)}" if beyond > _TOLERATED_MM else "at a rounded corner"
            message = f"{name} hangs over the edge of {strip.on or shape.name} {by}{in_size(size)}"
            about = (f"feature:{name}", f"part:{strip.strip}")
            yield Problem(("part", shape.name), ("features", name), message, about, key=True)


def _beyond(strip: Bounds, ground: Bounds) -> float:
    return max(ground[0] - strip[0], ground[1] - strip[1], strip[2] - ground[2], strip[3] - ground[3])


RULE = Rule(
    slug="strip-beyond-part",
    severity=Severity.warning,
    why="An end that hangs over gets caught in the next seam, or is cut off by whoever meets it first.",
    remedy="Shorten or move the strip, fold its end under, or type `free end: yes` where it is meant to hang over.",
    check=check,
    bad="""
operations/cut-panel.yaml: {makes: {panel: 1, patch: 1}}
operations/sew-hem.yaml:
  needs: {panel: 1, patch: 1}
  steps: [{step: patch, place: patch-place, do: Lay the patch on., time: 3 s}]
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 340 mm, height: 40 mm}}}
parts/panel.yaml:
  features: {patch-place: {strip: patch, at: {left: 20 mm, bottom: 100 mm}}}
""",
    good="""
operations/cut-panel.yaml: {makes: {panel: 1, patch: 1}}
operations/sew-hem.yaml:
  needs: {panel: 1, patch: 1}
  steps: [{step: patch, place: patch-place, do: Lay the patch on., time: 3 s}]
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 240 mm, height: 40 mm}}}
parts/panel.yaml:
  features: {patch-place: {strip: patch, at: {left: 20 mm, bottom: 100 mm}}}
""",
    follows_from=("shape-impossible", "expression-unreadable", "part-without-shape"),
)
