"""A fault nobody says what to do about."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`do:` of every fault."""
    for name, operation in subject.model.operations.items():
        for number, fault in enumerate(operation.faults):
            if fault.do is None:
                message = f"nothing says what to do about: {fault.sign}"
                path = ("faults", number, "sign")
                yield Problem(("operation", name), path, message, (f"fault:{fault.sign}",))


RULE = Rule(
    slug="fault-without-remedy",
    severity=Severity.warning,
    why="The operator sees the fault, finds no answer on the sheet, and sews on.",
    remedy="Say with `do:` what to do with the piece and with the machine.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  faults: [{sign: hem puckers, class: minor, cause: top tension too high}]
""",
    good="""
operations/sew-hem.yaml:
  faults: [{sign: hem puckers, class: minor, cause: top tension too high, do: Read the tension with the gauge.}]
""",
)
