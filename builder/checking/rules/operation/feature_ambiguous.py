"""A feature name that two parts of an operation have."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import operation_bases


def check(subject: Subject) -> Iterator[Problem]:
    """Names in steps that mean a feature of more than one made or needed part."""
    model = subject.model
    for name, operation in model.operations.items():
        owners: dict[str, list[str]] = {}
        for base in operation_bases(operation, model.states):
            for feature in model.parts[base].features:
                owners.setdefault(feature, []).append(base)
        said: set[str] = set()
        for number, step in enumerate(operation.steps):
            for where, feature, i in step.mentions():
                if len(owners.get(feature, ())) > 1 and feature not in said:
                    said.add(feature)
                    words = " and ".join(f"`{base}/{feature}`" for base in owners[feature])
                    message = f"`{feature}` may mean {words}"
                    yield Problem(("operation", name), ("steps", number, where, i), message, (f"feature:{feature}",))


RULE = Rule(
    slug="feature-ambiguous",
    severity=Severity.error,
    why="The picture and the time would be those of the wrong part.",
    remedy="Write the part before the feature, as `part/feature`.",
    check=check,
    bad="""
parts/patch.yaml:
  part: patch
  title: Patch
  material: cloth
  outline: {rectangle: {width: 90 mm, height: 90 mm}}
  features: {hem-seam: {seam: top, inset: 12 mm}}
operations/cut-panel.yaml: {makes: {panel: 1, patch: 1}}
operations/sew-hem.yaml: {needs: {panel: 1, patch: 1}}
""",
    good="""
parts/patch.yaml:
  part: patch
  title: Patch
  material: cloth
  outline: {rectangle: {width: 90 mm, height: 90 mm}}
  features: {hem-seam: {seam: top, inset: 12 mm}}
operations/cut-panel.yaml: {makes: {panel: 1, patch: 1}}
operations/sew-hem.yaml:
  needs: {panel: 1, patch: 1}
  steps: [{step: hem, sew: [panel/hem-seam, patch/hem-seam]}]
""",
)
