"""A shape that can't be built."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Outlines and features the geometry refuses, in any size of any product."""
    for name in subject.model.parts:
        subject.shapes(name)
    for fault in subject.book.faults.values():
        about = (f"feature:{fault.path[-1]}",) if fault.path[0] == "features" else ()
        yield Problem(("part", fault.part), fault.path, fault.message, about, key=True)


RULE = Rule(
    slug="shape-impossible",
    severity=Severity.error,
    why="What can't be drawn can't be cut or sewn as typed.",
    remedy="Correct the dimensions.",
    check=check,
    bad="""
parts/panel.yaml:
  outline: {rectangle: {corner: 150 mm}}
""",
    good="""
parts/panel.yaml:
  outline: {rectangle: {corner: 20 mm}}
""",
    follows_from=("expression-unreadable", "name-unknown", "part-without-shape"),
)
