"""A notch deeper than the seams beside it."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import in_size, inner_parts, length_words
from builder.finding import Severity
from builder.geometry import FeatureShape, PartShape, Path, Placing, Point, distance_point_segment
from builder.model import Notch, Seam

_ON_ITS_LINE_MM = 0.5
"""A seam runs past a notch when it is there as far from the edge as everywhere else; rounded corners cost a little."""


def check(subject: Subject) -> Iterator[Problem]:
    """Depth of each notch against every seam along its edge, on its part and where the part is joined; every size."""
    deepest: dict[tuple[str, str], tuple[float, str, float]] = {}
    for size, shape in subject.shapes():
        seams = list(_edge_seams(shape))
        for part, placing in ((shape, Placing()), *((one.shape, one.placing) for one in inner_parts(shape))):
            for name, feature in part.features.items() if seams else ():
                if not isinstance(feature.feature, Notch):
                    continue
                inset = max(_insets(placing.point(feature.points[0]), seams), default=None)
                known = deepest.get((part.name, name))
                if inset is not None and (known is None or inset > known[0]):
                    deepest[part.name, name] = (inset, size, feature.size[0])
    for (name, notch), (inset, size, depth) in deepest.items():
        if depth > inset:
            cut, seam = length_words(depth, subject.model), length_words(inset, subject.model)
            message = f"{notch} is {cut} deep, the seam along its edge lies {seam} inside{in_size(size)}"
            yield Problem(("part", name), ("features", notch, "depth"), message, (f"feature:{notch}",))


def _edge_seams(shape: PartShape) -> Iterator[tuple[Path, float]]:
    """Seams along the edges of a part, with how far they lie inside it."""
    for feature in shape.features.values():
        if _along_an_edge(feature):
            path = feature.paths[0]
            yield path, shape.outline.distance_to_boundary(path.runs[0].point_at(0.5))


def _along_an_edge(feature: FeatureShape) -> bool:
    seam = feature.feature
    if not isinstance(seam, Seam) or seam.on is not None:
        return False
    return seam.seam not in (("line",), ("along",)) and bool(feature.paths)


def _insets(at: Point, seams: list[tuple[Path, float]]) -> Iterator[float]:
    """Insets of the seams that run past a notch at this place of the edge."""
    for path, inset in seams:
        if min(distance_point_segment(at, run) for run in path.runs) <= inset + _ON_ITS_LINE_MM:
            yield inset


RULE = Rule(
    slug="notch-too-deep",
    severity=Severity.warning,
    why="The cut shows beside the finished seam, or the needle runs through it and the seam starts a tear.",
    remedy="Cut the notch shallower than the seam allowance; half of it is enough.",
    check=check,
    bad="""
parts/panel.yaml:
  features:
    side-notch: {notch: left, at: {bottom: 60 mm}, depth: 8 mm}
    side-seam: {seam: left, inset: 6 mm}
operations/sew-hem.yaml:
  steps: [{step: side, sew: side-seam, do: Sew the side., time: 2 s}]
""",
    good="""
parts/panel.yaml:
  features:
    side-notch: {notch: left, at: {bottom: 60 mm}, depth: 3 mm}
    side-seam: {seam: left, inset: 6 mm}
operations/sew-hem.yaml:
  steps: [{step: side, sew: side-seam, do: Sew the side., time: 2 s}]
""",
    follows_from=("shape-impossible", "expression-unreadable"),
)
