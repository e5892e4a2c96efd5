"""Templates in a plant that doesn't say how true a print must be."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`template limit:` of the plant, asked for at the first template."""
    model = subject.model
    first = next(iter(model.templates), None)
    if first is not None and model.plant.template_limit is None:
        message = "the plant has templates but no limit for their check square"
        yield Problem(("template", first), ("number",), message, ("key:template limit",))


RULE = Rule(
    slug="template-limit-missing",
    severity=Severity.error,
    why="Printers stretch. Without a limit nobody can say whether a printed copy may be used.",
    remedy="Write `template limit:` in plant.yaml: how far a side of the check square, 100 mm, may be off.",
    check=check,
    bad="""
templates/hem-gauge.yaml:
  {template: hem-gauge, title: Hem, kind: gauge, of: sew-hem/hem, number: G-1, date: 2026-10-12}
""",
    good="""
plant.yaml: {template limit: 0.5 mm}
templates/hem-gauge.yaml:
  {template: hem-gauge, title: Hem, kind: gauge, of: sew-hem/hem, number: G-1, date: 2026-10-12}
""",
    follows_from=("key-unknown", "value-unreadable"),
)
