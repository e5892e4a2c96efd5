"""A template without a size, of something that differs between sizes."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.geometry import GeometryFault, card_for
from builder.model import Template, Values, gauge_tolerance


def check(subject: Subject) -> Iterator[Problem]:
    """What each template is cut to, in every size."""
    for name, template in subject.model.templates.items():
        if template.size is not None:
            continue
        typed, *others = ((size, _cut_to(template, values, subject)) for size, values in subject.sizes())
        different = [size for size, cut in others if cut is not None and cut != typed[1]]
        if different and typed[1] is not None:
            more = f" and {len(different) - 1} more" if len(different) > 1 else ""
            message = f"it says no size, and in {different[0]}{more} it would be another one"
            yield Problem(("template", name), ("number",), message, (f"template:{name}",))


def _cut_to(template: Template, values: Values, subject: Subject) -> object:
    """What a template is cut to in a size; None where it can't be built."""
    if template.kind == "gauge":
        tolerance = gauge_tolerance(template, subject.model, subject.dimensions.definitions, values)
        return None if tolerance is None else (tolerance.low, tolerance.high)
    shape = subject.book.shape(template.of, values)
    if shape is None or template.kind == "part":
        return None if shape is None else shape.outline
    try:
        return card_for(shape, template.features)
    except GeometryFault:
        return None


RULE = Rule(
    slug="template-one-size",
    severity=Severity.warning,
    why="A card without a size on it is laid on every size, and on all but one it is wrong.",
    remedy="Write `size:`, and a template for each size that is made.",
    check=check,
    bad="""
plant.yaml: {template limit: 0.5 mm}
products/pouch.yaml: {sizes: {S: {}, L: {panel.width: 340 mm}}}
templates/panel-card.yaml:
  {template: panel-card, title: Panel, kind: part, of: panel, number: P-1, date: 2026-10-12}
""",
    good="""
plant.yaml: {template limit: 0.5 mm}
products/pouch.yaml: {sizes: {S: {}, L: {panel.width: 340 mm}}}
templates/panel-card.yaml:
  {template: panel-card, title: Panel, kind: part, of: panel, size: L, number: P-1, date: 2026-10-12}
""",
    follows_from=("template-impossible", "name-unknown", "shape-impossible"),
)
