"""A plant that lowers a rule it may not lower."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import FAULTS, near


def check(subject: Subject) -> Iterator[Problem]:
    """`rules:` of the plant: only warnings and notes may change their level, and never those of safety."""
    from builder.checking.explain import PICTURES
    from builder.checking.registry import rule_book

    book = rule_book()
    for slug, setting in subject.model.plant.rules.items():
        rule = book.get(slug)
        if rule is None and slug in PICTURES and PICTURES[slug].severity is not Severity.error:
            continue
        if rule is None:
            if slug in FAULTS:
                message = f"{slug} can't be changed: such input can't be read"
                yield Problem(("plant", "plant"), ("rules", slug), message, (f"rule:{slug}",), key=True)
                continue
            close = near(slug, book)
            hint = f"Did you mean `{close[0]}`?" if close else ""
            yield Problem(
                ("plant", "plant"), ("rules", slug), f"no rule is called {slug}", (f"rule:{slug}",), hint, key=True
            )
        elif rule.safety:
            message = f"{slug} is a safety rule; it can't be lowered or silenced"
            yield Problem(("plant", "plant"), ("rules", slug), message, (f"rule:{slug}",), key=True)
        elif rule.severity is Severity.error and setting.severity != "error":
            message = f"{slug} finds errors; only warnings and notes can be lowered"
            yield Problem(("plant", "plant"), ("rules", slug), message, (f"rule:{slug}",), key=True)


RULE = Rule(
    slug="rule-silenced",
    severity=Severity.error,
    why="A rule that guards fingers or facts is no matter of taste.",
    remedy="Take the line out and mend what the rule finds.",
    check=check,
    bad="""
plant.yaml:
  rules: {protection-missing: {severity: 'off', because: guards are on order}}
""",
    good="""
plant.yaml:
  rules: {gauge-missing: {severity: error, because: every tolerance is measured here}}
""",
    safety=True,
)
