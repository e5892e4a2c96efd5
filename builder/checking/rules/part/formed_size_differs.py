"""A pleated part that isn't as large as its flat part leaves it."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import in_size, length_words
from builder.finding import Severity
from builder.geometry import FeatureShape, PartShape
from builder.model import Fold, Pleat

SLACK_MM = 0.5
"""Sizes nearer than this agree."""
_WAYS = (("width", "up", 0, ("left", "right")), ("height", "across", 1, ("bottom", "top")))
"""Each size of a box: its name, the way of creases that take of it, its axis, and the edges whose folds take of it."""


def check(subject: Subject) -> Iterator[Problem]:
    """Width and height of each formed part against its flat part, less what pleats from edge to edge and folds take.

    Pleats that end on the way leave the size of the box; a fold along a line may take any of it, so nothing is said.
    """
    for name, part in subject.model.parts.items():
        flat = part.formed_from
        if flat is None or flat not in subject.model.parts:
            continue
        pleated = any(isinstance(one, Pleat) for one in subject.model.parts[flat].features.values())
        for size, values in subject.sizes() if pleated else ():
            formed, before = subject.book.shape(name, values), subject.book.shape(flat, values)
            found = None if formed is None or before is None else _differs(subject, formed, before)
            if found is not None:
                about = (f"part:{name}", f"part:{flat}")
                yield Problem(("part", name), ("outline",), f"{found}{in_size(size)}", about, key=True)
                break


def _differs(subject: Subject, formed: PartShape, flat: PartShape) -> str | None:
    for word, way, axis, edges in _WAYS:
        if _line_fold(flat, axis):
            continue
        take = sum(_take(one, flat, way, axis) for one in flat.features.values())
        folds = _folded(flat, edges)
        left = _extent(flat, axis) - take - folds
        if take and abs(left - _extent(formed, axis)) > SLACK_MM:
            words = [length_words(one, subject.model) for one in (_extent(formed, axis), left)]
            return f"{formed.name} has a {word} of {words[0]}, its pleats leave {words[1]} of {flat.name}"
    return None


def _take(one: FeatureShape, flat: PartShape, way: str, axis: int) -> float:
    """What a row of pleats takes of the box: all of it where its creases go from edge to edge, folds aside."""
    spec = one.feature
    if not isinstance(spec, Pleat) or spec.along != way or spec.on is not None:
        return 0.0
    across = _extent(flat, 1 - axis) - _folded(flat, _WAYS[1 - axis][3])
    box = one.paths[0].bounds()
    return spec.count * one.size[1] if box[3 - axis] - box[1 - axis] >= across - SLACK_MM else 0.0


def _folded(flat: PartShape, edges: tuple[str, ...]) -> float:
    """How much is folded away along some edges."""
    folds = [one for one in flat.features.values() if isinstance(one.feature, Fold) and one.feature.fold in edges]
    return sum(flat.outline.distance_to_boundary(one.paths[0].runs[0].point_at(0.5)) for one in folds)


def _line_fold(flat: PartShape, axis: int) -> bool:
    """Is there a fold along a line that goes the way of the pleats?"""
    lines = [one for one in flat.features.values() if isinstance(one.feature, Fold) and one.feature.fold == "line"]
    boxes = [path.bounds() for one in lines for path in one.paths]
    return any(box[3 - axis] - box[1 - axis] > box[2 + axis] - box[axis] for box in boxes)


def _extent(shape: PartShape, axis: int) -> float:
    return shape.bounds[axis + 2] - shape.bounds[axis]


RULE = Rule(
    slug="formed-size-differs",
    severity=Severity.warning,
    why="Pleated as drawn, the part comes out another size than the one it is sewn to.",
    remedy="Compute its size from the flat part, `=flat.width - flat/pleats.take`, or correct the depth or the count.",
    check=check,
    bad="""
parts/flounce.yaml:
  part: flounce
  title: Flounce
  formed from: panel
  outline: {rectangle: {width: 280 mm, height: 185 mm}}
parts/panel.yaml:
  features: {row: {pleat: 6 mm, at: {left: 40 mm}, count: 2, pitch: 50 mm}}
operations/pleat-panel.yaml:
  operation: pleat-panel
  title: Pleat the panel
  code: PLT-10
  station: bench
  needs: {panel-snapped: 1}
  makes: flounce
  steps: [{step: pleat, fold: row, do: Pleat the panel., time: 9 s}]
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, pleat-panel]}
""",
    good="""
parts/flounce.yaml:
  part: flounce
  title: Flounce
  formed from: panel
  outline: {rectangle: {width: "=panel.width - panel/row.take", height: 185 mm}}
parts/panel.yaml:
  features: {row: {pleat: 6 mm, at: {left: 40 mm}, count: 2, pitch: 50 mm}}
operations/pleat-panel.yaml:
  operation: pleat-panel
  title: Pleat the panel
  code: PLT-10
  station: bench
  needs: {panel-snapped: 1}
  makes: flounce
  steps: [{step: pleat, fold: row, do: Pleat the panel., time: 9 s}]
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, pleat-panel]}
""",
    follows_from=("shape-impossible", "expression-unreadable"),
)
