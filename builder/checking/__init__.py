"""Door of the checking room: objects to findings."""

from builder.checking.explain import Explanation, explanations, level_words
from builder.checking.registry import causes, rule_book
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.run import (
    check_results,
    check_typed,
    figure_finding,
    headless_finding,
    photo_finding,
    report,
    usable_operations,
)

__all__ = [
    "Explanation",
    "Problem",
    "Rule",
    "Subject",
    "causes",
    "check_results",
    "check_typed",
    "explanations",
    "figure_finding",
    "headless_finding",
    "level_words",
    "photo_finding",
    "report",
    "rule_book",
    "usable_operations",
]
