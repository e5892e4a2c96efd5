"""A step that works on a feature no part has."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import find_feature, near


def check(subject: Subject) -> Iterator[Problem]:
    """What steps sew, place, fold, mark, set, cut and look at, against the parts the operation makes and needs."""
    model = subject.model
    for name, operation in model.operations.items():
        if any(
            part not in model.states and part not in model.materials for part in (*operation.needs, *operation.makes)
        ):
            continue  # a part is unknown: reported, and its features can't be known
        homes = subject.homes(name)
        for number, step in enumerate(operation.steps):
            for where, feature, i in step.mentions():
                if find_feature(feature, homes) is not None or (where == "cut" and feature in operation.makes):
                    continue
                parts = ", ".join((*operation.makes, *operation.needs)) or "nothing"
                known = [one for one in homes if "/" not in one] + (list(operation.makes) if where == "cut" else [])
                close = near(feature, sorted(known))
                hint = f"Did you mean `{close[0]}`? Correct the name, or give the part the feature." if close else ""
                message = f"no feature is called `{feature}` on the parts of this operation ({parts})"
                about = (f"feature:{feature}", *(f"feature:{one}" for one in close))
                yield Problem(("operation", name), ("steps", number, where, i), message, about, hint)


RULE = Rule(
    slug="step-feature-missing",
    severity=Severity.error,
    why="Without its feature the step has no drawing, no length and no time.",
    remedy="Correct the name, or give the part the feature.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: hem, sew: hem-seem}]
""",
    good="""
operations/sew-hem.yaml:
  steps: [{step: hem, sew: hem-seam}]
""",
    follows_from=(
        "name-unknown",
        "feature-kind",
        "value-unreadable",
        "key-unknown",
        "shape-impossible",
        "made-without-part",
    ),
)
