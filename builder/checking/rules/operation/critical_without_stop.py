"""A critical fault that stops nobody."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`stop:` of every fault of the class critical."""
    for name, operation in subject.model.operations.items():
        for number, fault in enumerate(operation.faults):
            if fault.class_ == "critical" and fault.stop is None:
                message = f"a critical fault without a word on when to stop and call: {fault.sign}"
                path = ("faults", number, "class")
                yield Problem(("operation", name), path, message, (f"fault:{fault.sign}",))


RULE = Rule(
    slug="critical-without-stop",
    severity=Severity.error,
    why="A critical fault can hurt whoever uses the product; each piece sewn before somebody calls is one more of it.",
    remedy="Say with `stop:` when work stops and who is called.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  faults: [{sign: needle tip missing, class: critical, cause: needle bent, do: Red ticket.}]
""",
    good="""
operations/sew-hem.yaml:
  faults: [{sign: needle tip missing, class: critical, cause: needle bent, do: Red ticket., stop: At once. Call.}]
""",
)
