"""A shape that can't be built."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Part, Seam, Strip


def check(subject: Subject) -> Iterator[Problem]:
    """Outlines and features the geometry refuses, in any size of any product."""
    list(subject.shapes())  # building them fills the book's list of faults
    for fault in subject.book.faults.values():
        about = _about(subject.model.parts[fault.part], str(fault.path[-1])) if fault.path[0] == "features" else ()
        yield Problem(("part", fault.part), fault.path, fault.message, about, key=True)


def _about(part: Part, name: str) -> tuple[str, ...]:
    """The feature, what it lies on or beside, and the parts whose strips they are."""
    feature = part.features[name]
    chain = [name, *([feature.on] if feature.on in part.features and feature.on is not None else [])]
    chain += [feature.of] if isinstance(feature, Seam) and feature.of is not None else []
    strips = [one.strip for one in (part.features.get(link) for link in chain) if isinstance(one, Strip)]
    return (*(f"feature:{one}" for one in chain), *(f"part:{one}" for one in strips))


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
