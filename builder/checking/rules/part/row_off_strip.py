"""A row or grid of holes, slots, hardware or bartacks that runs off what it lies on."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.inside import ground_of, items_inside
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import in_size, length_words
from builder.finding import Severity
from builder.geometry import FeatureShape, PartShape
from builder.model import Row


def check(subject: Subject) -> Iterator[Problem]:
    """Rows whose first piece lies on the strip or the part, and a later one does not, in every size."""
    seen: set[tuple[str, str]] = set()
    for size, shape in subject.shapes():
        for name, feature in shape.features.items():
            row = feature.feature
            if (shape.name, name) in seen or not isinstance(row, Row) or row.pieces < 2:
                continue
            inside = items_inside(ground_of(shape, feature), feature)
            if inside[0] and not all(inside):
                seen.add((shape.name, name))
                message = f"{_words(subject, shape, feature, row)}: {_fitting(inside)} fit{in_size(size)}"
                path = ("features", name, "pitch" if row.count > 1 else "row pitch")
                yield Problem(("part", shape.name), path, message, (f"feature:{name}",))


def _words(subject: Subject, shape: PartShape, feature: FeatureShape, row: Row) -> str:
    """The length a row needs, and the length there is from its first piece on."""
    if row.rows > 1 or row.angle is not None:
        return f"{feature.name} runs off {row.on or shape.name}"
    axis = 0 if row.direction == "across" else 1
    bounds = ground_of(shape, feature).bounds()
    first, last = feature.points[0][axis], feature.points[-1][axis]
    needs, room = length_words(last - first, subject.model), length_words(bounds[axis + 2] - first, subject.model)
    return f"{feature.name} needs {needs} from its first to its last, {row.on or shape.name} has {room} left there"


def _fitting(inside: list[bool]) -> str:
    return f"{sum(inside)} of {len(inside)}"


RULE = Rule(
    slug="row-off-strip",
    severity=Severity.error,
    why="The operator finds no place for the last ones and spaces the row by eye.",
    remedy="Type a smaller pitch or count, start the row nearer to the end, or lengthen what it lies on.",
    check=check,
    bad="""
parts/panel.yaml:
  features: {vent-holes: {hole: 5 mm, at: {left: 40 mm, middle: 0 mm}, count: 5, pitch: 70 mm}}
""",
    good="""
parts/panel.yaml:
  features: {vent-holes: {hole: 5 mm, at: {left: 40 mm, middle: 0 mm}, count: 5, pitch: 50 mm}}
""",
    follows_from=("shape-impossible", "expression-unreadable"),
)
