"""Door of the checking room: objects to findings."""

from builder.checking.explain import Explanation, explanations, level_words
from builder.checking.registry import causes, rule_book
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.run import (
    check_results,
    check_typed,
    cleaned_finding,
    drawing_finding,
    figure_finding,
    photo_finding,
    report,
    sheet_finding,
    stops_build,
    usable_operations,
)
from builder.checking.study_alone import study_findings

__all__ = [
    "Explanation",
    "Problem",
    "Rule",
    "Subject",
    "causes",
    "check_results",
    "check_typed",
    "drawing_finding",
    "explanations",
    "cleaned_finding",
    "figure_finding",
    "sheet_finding",
    "level_words",
    "photo_finding",
    "report",
    "rule_book",
    "stops_build",
    "study_findings",
    "usable_operations",
]
