"""A deviation past its last day."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Deviations whose last day is over, against today."""
    for name, operation in subject.model.operations.items():
        typed = operation.deviation
        if typed is not None and typed.until < subject.today:
            message = f"this deviation ended on {typed.until.isoformat()}"
            yield Problem(("operation", name), ("deviation", "until"), message, (f"operation:{typed.instead_of}",))


RULE = Rule(
    slug="deviation-ended",
    severity=Severity.warning,
    why="Its sheet still hangs, and somebody works by it on a batch it was never meant for.",
    remedy="Take the sheet down and the file out, move the day, or make it the operation's own way.",
    check=check,
    bad="""
operations/sew-hem-wide.yaml:
  operation: sew-hem-wide
  title: Sew the hem, wide thread
  code: SEW-10D
  station: lockstitch
  needs: {panel: 1}
  makes: panel-hemmed
  deviation: {batches: B-7, until: 2026-10-01, because: The usual thread is late., instead of: sew-hem}
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
