"""A deviation that doesn't make what the operation it stands in for makes."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Deviations from deviations, and those that make something else."""
    operations = subject.model.operations
    for name, operation in operations.items():
        typed = operation.deviation
        if typed is None or typed.instead_of not in operations:
            continue
        usual, owner, path = operations[typed.instead_of], ("operation", name), ("deviation", "instead of")
        about = (f"operation:{typed.instead_of}",)
        if usual.deviation is not None:
            yield Problem(owner, path, f"{typed.instead_of} is itself a deviation", about)
        elif set(operation.makes) != set(usual.makes):
            made, meant = ", ".join(operation.makes), ", ".join(usual.makes)
            yield Problem(owner, path, f"{typed.instead_of} makes {meant}, this makes {made}", about)


RULE = Rule(
    slug="deviation-other-work",
    severity=Severity.error,
    why="The next operation takes what the usual one makes; anything else has no place on the route.",
    remedy="Make the same, or name the operation that is really done another way.",
    check=check,
    bad="""
operations/sew-hem-wide.yaml:
  operation: sew-hem-wide
  title: Sew the hem, wide thread
  code: SEW-10D
  station: lockstitch
  needs: {panel: 1}
  makes: panel-hemmed
  deviation: {batches: B-7, until: 2999-10-01, because: The usual thread is late., instead of: press-snap}
  settings: {stitch: 301, stitch length: 3 mm, thread: thread-70, needle: Nm 110 R}
  tolerances: {hem: {of: hem-seam.inset, is: ± 1 mm, with: rule, every: first piece}}
  steps:
    - {step: fold-over, fold: hem-fold, do: Fold it., time: 3 s}
    - {step: hem, sew: hem-seam, do: Sew it., check: hem, time: 2 s}
""",
    good="""
operations/sew-hem-wide.yaml:
  operation: sew-hem-wide
  title: Sew the hem, wide thread
  code: SEW-10D
  station: lockstitch
  needs: {panel: 1}
  makes: panel-hemmed
  deviation: {batches: B-7, until: 2999-10-01, because: The usual thread is late., instead of: sew-hem}
  settings: {stitch: 301, stitch length: 3 mm, thread: thread-70, needle: Nm 110 R}
  tolerances: {hem: {of: hem-seam.inset, is: ± 1 mm, with: rule, every: first piece}}
  steps:
    - {step: fold-over, fold: hem-fold, do: Fold it., time: 3 s}
    - {step: hem, sew: hem-seam, do: Sew it., check: hem, time: 2 s}
""",
    follows_from=("name-unknown", "value-unreadable", "key-unknown"),
)
