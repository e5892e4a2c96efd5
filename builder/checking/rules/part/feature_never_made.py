"""A feature no step makes."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import CUT_WITH_OUTLINE, Expression, Feature, Fold, Seam, kinds_in

_VERBS = {
    "seam": "sews",
    "box": "sews",
    "bartack": "sews",
    "strip": "places",
    "hardware": "sets",
    "fold": "folds",
    "tag": "places",
    "pleat": "folds",
    "dart": "sews",
    "zip": "places",
    "elastic": "places",
}


def check(subject: Subject) -> Iterator[Problem]:
    """Seams, boxes, bartacks, strips, hardware, labels, folds and what shapes a part, made here, that no step works on.

    Notches, slots and holes come with the outline. A seam line that another seam closes is sewn by that one. A fold may
    be a line others measure from.
    """
    model = subject.model
    if not whole(subject):
        return
    worked = {(work.part, work.name) for name in model.operations for work in subject.worked(name)}
    made = {model.states[name].base for one in model.operations.values() for name in one.makes if name in model.states}
    closed = {line for part in model.parts.values() for one in part.features.values() for line in _joins(one)}
    for name in model.parts:
        if name not in made:
            continue
        for feature, one in model.parts[name].features.items():
            if isinstance(one, CUT_WITH_OUTLINE) or (name, feature) in worked or f"{name}/{feature}" in closed:
                continue
            if isinstance(one, Fold) and feature in _measured_from(subject, name):
                continue
            message = f"no step {_VERBS[kinds_in(one)[0]]} {feature} of {name}"
            about = (f"feature:{feature}", f"feature:{name}/{feature}")
            yield Problem(("part", name), ("features", feature), message, about, key=True)


def _joins(feature: Feature) -> tuple[str, ...]:
    return feature.joins if isinstance(feature, Seam) else ()


def _measured_from(subject: Subject, part: str) -> set[str]:
    """Features of a part that expressions in its own file name."""
    expressions = (value for _, value in subject.model.parts[part].own_dimensions() if isinstance(value, Expression))
    return {name.text.rpartition(".")[0].rpartition("/")[2] for one in expressions for name in one.names}


RULE = Rule(
    slug="feature-never-made",
    severity=Severity.warning,
    why="What no sheet shows is not done: the seam is missing on every piece, and its time in every product.",
    remedy="Name it in the step that makes it, or take it out of the part.",
    check=check,
    bad="""
parts/panel.yaml:
  features: {low-seam: {seam: bottom, inset: 12 mm}}
operations/sew-hem.yaml:
  steps: [{step: hem, sew: hem-seam}]
""",
    good="""
parts/panel.yaml:
  features: {low-seam: {seam: bottom, inset: 12 mm}}
operations/sew-hem.yaml:
  steps: [{step: hem, sew: [hem-seam, low-seam]}]
""",
    follows_from=(
        "step-feature-missing",
        "feature-ambiguous",
        "name-unknown",
        "step-two-kinds",
        "route-cycle",
        "made-without-part",
    ),
)
