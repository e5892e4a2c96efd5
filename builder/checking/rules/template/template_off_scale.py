"""A printed template whose check square is off."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import length_words
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """The larger deviation of each measured copy against the plant's limit; the pages say that it is not in use."""
    limit = subject.model.plant.template_limit
    for name, template in subject.model.templates.items():
        record = template.record()
        if record is None or limit is None or not template.is_off(limit):
            continue
        off = length_words(abs(record.off_mm), subject.model)
        message = f"the copy measured on {record.date.isoformat()} is off by {off}, the limit is {limit.text}"
        yield Problem(("template", name), ("measured",), message, ("key:template limit",), key=True)


RULE = Rule(
    slug="template-off-scale",
    severity=Severity.error,
    why="The printer stretched it: every piece cut, marked or measured by it is wrong by the same share.",
    remedy="Throw the copy away. Print again at 100 % without fitting, measure both sides, and write the new record.",
    check=check,
    bad="""
plant.yaml: {template limit: 0.5 mm}
templates/hem-gauge.yaml:
  {template: hem-gauge, title: Hem, kind: gauge, of: sew-hem/hem, number: G-1, date: 2026-10-12,
   measured: {across: 100.8 mm, along: 100 mm, date: 2026-10-13, by: K2}}
""",
    good="""
plant.yaml: {template limit: 0.5 mm}
templates/hem-gauge.yaml:
  {template: hem-gauge, title: Hem, kind: gauge, of: sew-hem/hem, number: G-1, date: 2026-10-12,
   measured: {across: 100.3 mm, along: 3.99 in, date: 2026-10-13, by: K2}}
""",
    follows_from=("value-unreadable",),
    safety=True,
    stops=False,
)
