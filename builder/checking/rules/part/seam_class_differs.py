"""A seam that is typed as another kind than the goods make it."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.geometry import DEFINITIONS, seam_class, sections_by
from builder.model import Seam


def check(subject: Subject) -> Iterator[Problem]:
    """`class:` of each seam against the class its section has when it is sewn, as typed first size."""
    model = subject.model
    classed = {part for part, one in model.parts.items() if any(map(_class_of, one.features.values()))}
    for name in model.operations:
        if not any(one.key == "sew" and one.part in classed for one in subject.worked(name)):
            continue
        for sewn in sections_by(model, subject.book, name, subject.dimensions.values):
            part, feature = sewn.section.part, sewn.section.feature
            typed = _class_of(model.parts[part].features[feature])
            found = seam_class(sewn.section)
            if typed is None or found is None or typed in found.words:
                continue
            message = (
                f"{feature} is typed as {typed}; as the goods lie it is {found.word} "
                f"(ISO 4916 class {found.number}): {DEFINITIONS[found.word][:1].lower()}{DEFINITIONS[found.word][1:-1]}"
            )
            yield Problem(("part", part), ("features", feature, "class"), message, (f"feature:{feature}",))


def _class_of(feature: object) -> str | None:
    return feature.class_ if isinstance(feature, Seam) else None


RULE = Rule(
    slug="seam-class-differs",
    severity=Severity.warning,
    why="A layer, a fold or a tape is missing in the parts, or it is another seam than was meant.",
    remedy="Add the step that folds, lays or binds before it, move the seam, or type the class it has.",
    check=check,
    bad="""
parts/panel.yaml:
  features: {hem-seam: {class: lapped}}
""",
    good="""
parts/panel.yaml:
  features: {hem-seam: {class: edge finished}}
""",
    follows_from=("shape-impossible", "expression-unreadable", "step-feature-missing"),
)
