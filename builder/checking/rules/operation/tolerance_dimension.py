"""A tolerance of a dimension that isn't there."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Operation, near, operation_bases


def check(subject: Subject) -> Iterator[Problem]:
    """`of:` in tolerances against the dimensions of the made and needed parts."""
    for name, operation in subject.model.operations.items():
        for tolerance_name, tolerance in operation.tolerances.items():
            where = ("tolerances", tolerance_name)
            if tolerance.of is None:
                if tolerance.what is None or tolerance.is_.form == "band":
                    message = f"tolerance {tolerance_name} doesn't say what is measured"
                    yield Problem(("operation", name), where, message, (f"tolerance:{tolerance_name}",), key=True)
                continue
            if subject.dimension(name, tolerance.of) is None:
                close = near(tolerance.of, _dimension_words(subject, operation))
                hint = f"Did you mean `{close[0]}`?" if close else ""
                message = f"no part of this operation has a dimension `{tolerance.of}`"
                part = tolerance.of.split("/")[0].split(".")[0]
                about = (f"tolerance:{tolerance_name}", f"dimension:{tolerance.of}", f"part:{part}")
                yield Problem(("operation", name), (*where, "of"), message, about, hint)


def _dimension_words(subject: Subject, operation: Operation) -> list[str]:
    """Short names of all dimensions an operation's tolerance could name."""
    bases = operation_bases(operation, subject.model.states)
    return sorted(one.short for one in subject.dimensions.definitions.values() if one.part in bases)


RULE = Rule(
    slug="tolerance-dimension",
    severity=Severity.error,
    why="A measure nobody can find on the part is not checked.",
    remedy="Name a dimension of the part, or say in words `what:` is measured.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  tolerances: {hem: {of: hem-seam.insett}}
""",
    good="""
operations/sew-hem.yaml:
  tolerances: {hem: {of: hem-seam.inset}}
""",
    follows_from=("expression-unreadable", "name-unknown", "key-unknown", "made-without-part"),
)
