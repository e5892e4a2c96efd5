"""Findings of a study that is read without a plant around it, in the words of the rules."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.registry import rule_book
from builder.checking.rules.study import reading_single, readings_equal, study_without_head
from builder.checking.studied import first_reading
from builder.finding import Finding, Place
from builder.model import Study, StudySummary


def study_findings(study: Study, summary: StudySummary) -> Iterator[Finding]:
    """What can be said without knowing the operation: no head, single readings, equal readings."""
    if not study.head:
        yield _finding("study-without-head", study, Place(study.file), study_without_head.MESSAGE)
    for one in summary.steps:
        for slug, told in (("reading-single", reading_single.told), ("readings-equal", readings_equal.told)):
            if message := told(one):
                yield _finding(slug, study, first_reading(study, one), message)


def _finding(slug: str, study: Study, place: Place, message: str) -> Finding:
    rule = rule_book()[slug]
    return Finding(place, slug, rule.severity, message, rule.why, rule.remedy, (f"study:{study.name}",))
