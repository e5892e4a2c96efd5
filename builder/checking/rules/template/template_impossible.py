"""A template nobody can draw or cut."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.geometry import GeometryFault, card_for, gauge_card
from builder.model import Template, Values, gauge_tolerance, sized_values


def check(subject: Subject) -> Iterator[Problem]:
    """Each template built as it will be printed."""
    for name, template in subject.model.templates.items():
        try:
            values = sized_values(template.size, subject.model.products, subject.dimensions)
        except KeyError:
            continue  # a size that doesn't exist is a name that leads nowhere
        message = _fault(template, values, subject)
        if message:
            about = (f"operation:{template.operation}" if template.kind == "gauge" else f"part:{template.of}",)
            yield Problem(("template", name), ("of",), message, about)


def _fault(template: Template, values: Values, subject: Subject) -> str:
    try:
        if template.kind == "gauge":
            return _gauge_fault(template, values, subject)
        shape = subject.book.shape(template.of, values)
        if shape is not None and template.kind == "marking":
            card_for(shape, template.features)
    except GeometryFault as fault:
        return fault.message.rstrip(".")
    return ""


def _gauge_fault(template: Template, values: Values, subject: Subject) -> str:
    operation = subject.model.operations.get(template.operation)
    if operation is None or template.tolerance not in operation.tolerances:
        return ""
    tolerance = gauge_tolerance(template, subject.model, subject.dimensions.definitions, values)
    if tolerance is None:
        return f"the tolerance {template.tolerance} gives no length to cut a gauge to"
    low, high = (None if limit is None else float(limit) for limit in (tolerance.low, tolerance.high))
    gauge_card(low, high)
    return ""


RULE = Rule(
    slug="template-impossible",
    severity=Severity.error,
    why="A gauge is cut to a limit, a marking card to single places; without them there is nothing to cut.",
    remedy="Name a tolerance with a length, or features that have places: bartacks, holes, hardware.",
    check=check,
    bad="""
plant.yaml: {template limit: 0.5 mm}
templates/seam-card.yaml:
  {template: seam-card, title: Hem, kind: marking, of: panel, features: hem-seam, number: T-1, date: 2026-10-12}
""",
    good="""
plant.yaml: {template limit: 0.5 mm}
templates/snap-card.yaml:
  {template: snap-card, title: Snap, kind: marking, of: panel, features: snap-place, number: T-1, date: 2026-10-12}
""",
    follows_from=("name-unknown", "shape-impossible", "expression-unreadable", "value-unreadable"),
)
