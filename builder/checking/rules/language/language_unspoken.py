"""A language the program has no words of."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import is_language, spoken_languages


def check(subject: Subject) -> Iterator[Problem]:
    """Codes nobody knows, and languages whose sheets would have English headings and cautions."""
    spoken = spoken_languages()
    for code in subject.model.languages:
        owner = ("language", code)
        if not is_language(code):
            message = f"no language has the code {code}"
            yield Problem(owner, ("language",), message, remedy="Write one such as es or pt-BR.")
        elif code not in spoken and code.partition("-")[0] not in spoken:
            message = f"the program has no words of its own in {code}; it speaks {', '.join(spoken)}"
            yield Problem(owner, ("language",), message, (f"language:{code}",))


RULE = Rule(
    slug="language-unspoken",
    severity=Severity.warning,
    why="Headings, hazards and protection would stand in English among the plant's own words.",
    remedy="Add a table of the program's words for it, as DEVELOPERS.md says.",
    check=check,
    bad="""
languages/is.yaml: {language: is, title: íslenska, read by: T1, in work: yes}
""",
    good="""
languages/es.yaml: {language: es, title: español, read by: T1, in work: yes}
""",
    follows_from=("value-unreadable", "key-unknown"),
)
