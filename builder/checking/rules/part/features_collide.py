"""Two features in one place: a needle through a snap, a hole in a hole."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.collision import Cell, Mark, colliding, covered, marks_of
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import in_size, inner_parts, is_earlier
from builder.finding import Severity
from builder.geometry import PartShape

Pair = tuple[tuple[str, str], tuple[str, str]]


def check(subject: Subject) -> Iterator[Problem]:
    """Features of a part against each other and, in a sub-assembly, against the hardware inside it; every size."""
    seen: set[Pair] = set()
    for size, shape in subject.shapes():
        for a, b, cell in colliding(_marks(shape)):
            pair: Pair = ((a.part, a.name), (b.part, b.name))
            if pair not in seen and max(a.rank, b.rank) >= 0:
                seen.add(pair)
                yield _problem(subject, shape, a, b, cell, size)


def _marks(shape: PartShape) -> Iterator[Mark]:
    """Own features in the order of the file; hardware inside has a rank below zero."""
    strips = [one.regions[0] for one in shape.features.values() if one.kind == "strip" and one.regions]
    for rank, feature in enumerate(shape.features.values()):
        if not covered(feature, strips):
            yield from marks_of(shape.name, feature, rank)
    for inner in inner_parts(shape):
        for feature in inner.shape.features.values():
            if feature.kind == "hardware":
                yield from marks_of(inner.shape.name, feature, -1, inner.placing)


def _problem(subject: Subject, shape: PartShape, a: Mark, b: Mark, cell: Cell, size: str) -> Problem:
    words, severity = cell.words, cell.severity
    if cell.later and is_earlier(subject.model, subject.workers(), (b.part, b.name), (a.part, a.name)):
        words, severity = cell.later, Severity.warning
    names = {"a": _name(a, shape), "b": _name(b, shape)}
    message = words.format(**names)
    if names["a"] == names["b"]:
        message = f"the pieces of the row {a.name} lie on one another"
    # The finding stands at the one typed last: what was there before it was right.
    last = max(a, b, key=lambda one: one.rank)
    about = (f"feature:{a.name}", f"feature:{b.name}")
    path = ("features", last.name)
    return Problem(("part", shape.name), path, f"{message}{in_size(size)}", about, key=True, severity=severity)


def _name(mark: Mark, shape: PartShape) -> str:
    return mark.name if mark.part == shape.name else f"{mark.part}/{mark.name}"


RULE = Rule(
    slug="features-collide",
    severity=Severity.warning,
    why="A needle that strikes metal flies in pieces; what is cut or sewn twice in one place tears.",
    remedy="Move one of the two.",
    check=check,
    bad="""
parts/panel.yaml:
  features: {vent: {hole: 8 mm, at: {centre: 8 mm, bottom: 30 mm}}}
""",
    good="""
parts/panel.yaml:
  features: {vent: {hole: 8 mm, at: {centre: 30 mm, bottom: 30 mm}}}
""",
    follows_from=("shape-impossible", "expression-unreadable", "feature-outside-part"),
)
