"""A translation of a text that has changed."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import translations


def check(subject: Subject) -> Iterator[Problem]:
    """Each entry whose original is no longer what the plant says at its key, with what it says now."""
    for one in translations(subject.model):
        for text in one.texts:
            if text.state == "stale":
                kind, name = text.wording.owner
                message = f"the original is now: {text.wording.text}"
                path = ("texts", text.entry, "of")
                about = (f"text:{one.code}:{text.entry}", f"{kind}:{name}")
                yield Problem(("language", one.code), path, message, about)


RULE = Rule(
    slug="translation-stale",
    severity=Severity.warning,
    why="The translation says what the plant no longer does, so no sheet shows it until it is made anew.",
    remedy="Run `seamboard words` with the language's code: it keeps the old pair under `was:`. Then fill in `is:`.",
    check=check,
    bad="""
languages/es.yaml:
  {language: es, title: español, read by: T1, in work: yes,
   texts: {operation/sew-hem/hem/do: {of: Sew the old hem., is: Cosa el dobladillo.}}}
""",
    good="""
languages/es.yaml:
  {language: es, title: español, read by: T1, in work: yes,
   texts: {operation/sew-hem/hem/do: {of: Sew the hem., is: Cosa el dobladillo.}}}
""",
    follows_from=("value-unreadable", "key-unknown"),
)
