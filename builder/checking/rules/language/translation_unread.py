"""A caution in another language that nobody answers for."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import translations


def check(subject: Subject) -> Iterator[Problem]:
    """Translations of cautions, stops and critical faults without a reader, and a language whose own have none."""
    for one in translations(subject.model):
        owner = ("language", one.code)
        if one.language.read_by is None:
            message = "nobody has read the program’s own cautions in this language"
            yield Problem(owner, ("title",), message, (f"language:{one.code}:read by",), key=True)
        for entry in dict.fromkeys(text.entry for text in one.texts if text.state == "not read"):
            message = f"nobody has read this translation of what guards people: {one.language.texts[entry].is_}"
            yield Problem(owner, ("texts", entry, "is"), message, (f"text:{one.code}:{entry}",))


RULE = Rule(
    slug="translation-unread",
    severity=Severity.warning,
    why="A caution that says the wrong thing hurts whoever trusts it, so no sheet shows it before it is read.",
    remedy="Let somebody who reads both languages compare the two, and type their code: `read by: T1`.",
    check=check,
    bad="""
languages/es.yaml:
  {language: es, title: español, read by: T1, in work: yes,
   texts: {station/snap-press/start/guard: {of: With the guard open it must not start., is: No arranca.}}}
""",
    good="""
languages/es.yaml:
  {language: es, title: español, read by: T1, in work: yes,
   texts: {station/snap-press/start/guard: {of: With the guard open it must not start., is: No arranca., read by: T1}}}
""",
    follows_from=("value-unreadable", "key-unknown"),
    safety=True,
)
