"""A translation of what the plant doesn't say."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import translations


def check(subject: Subject) -> Iterator[Problem]:
    """Entries whose original stands nowhere in the plant and whose key leads to no text."""
    for one in translations(subject.model):
        for key in one.unused:
            message = f"nothing in the plant says this, and there is no {key}"
            yield Problem(("language", one.code), ("texts", key), message, (f"text:{one.code}:{key}",), key=True)


RULE = Rule(
    slug="translation-unused",
    severity=Severity.note,
    why="It is either left over, or its original was renamed and is now missing in this language.",
    remedy="Take the entry out, or correct its key and its `of:`.",
    check=check,
    bad="""
languages/es.yaml:
  {language: es, title: español, read by: T1, in work: yes,
   texts: {operation/sew-hem/ironing/do: {of: Iron the hem., is: Planche el dobladillo.}}}
""",
    good="""
languages/es.yaml:
  {language: es, title: español, read by: T1, in work: yes,
   texts: {operation/sew-hem/hem/do: {of: Sew the hem., is: Cosa el dobladillo.}}}
""",
    follows_from=("value-unreadable", "key-unknown"),
)
