"""A seam that joins lines nobody knows."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Fold, Seam, near


def check(subject: Subject) -> Iterator[Problem]:
    """`joins:` of each seam: two lines, each `part/feature`, the feature a seam or a fold of that part."""
    for name, part in subject.model.parts.items():
        for feature_name, seam in part.features.items():
            if not isinstance(seam, Seam) or not seam.joins:
                continue
            path = ("features", feature_name, "joins")
            about = (f"feature:{feature_name}",)
            if len(seam.joins) != 2:
                message = f"{feature_name} joins {len(seam.joins)} line, a seam joins two"
                yield Problem(("part", name), path, message, about)
            for number, line in enumerate(seam.joins):
                if join_of(subject, line) is None:
                    close = near(line, _lines(subject))
                    hint = f"Did you mean `{close[0]}`?" if close else ""
                    message = f"no part has a seam or a fold called `{line}`"
                    yield Problem(("part", name), (*path, number), message, (*about, f"feature:{line}"), hint)


def join_of(subject: Subject, line: str) -> tuple[str, str] | None:
    """Base part and feature of a line named `part/feature` (a state stands for its base), None if there is none."""
    part, _, feature = line.partition("/")
    state = subject.model.states.get(part)
    if state is None:
        return None
    found = subject.model.parts[state.base].features.get(feature)
    return (state.base, feature) if isinstance(found, Seam | Fold) else None


def _lines(subject: Subject) -> list[str]:
    return sorted(
        f"{part}/{name}"
        for part, one in subject.model.parts.items()
        for name, feature in one.features.items()
        if isinstance(feature, Seam | Fold)
    )


RULE = Rule(
    slug="seam-join-unknown",
    severity=Severity.error,
    why="Whether two edges are equally long can't be checked when one of them isn't there.",
    remedy="Name two seam lines, each as `part/feature`.",
    check=check,
    bad="""
parts/panel.yaml:
  features: {hem-seam: {joins: [panel/hem-fold, panel/hem-fould]}}
""",
    good="""
parts/panel.yaml:
  features: {hem-seam: {joins: [panel/hem-fold, panel/hem-fold]}}
""",
    follows_from=("name-unknown", "feature-kind", "value-unreadable", "key-unknown"),
)
