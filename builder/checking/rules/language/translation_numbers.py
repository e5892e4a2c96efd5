"""A translation with other numbers than its original."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import translations

_NUMBER = re.compile(r"\d+(?:[.,]\d+)*")


def check(subject: Subject) -> Iterator[Problem]:
    """Entries whose numbers aren't those of their original, whatever the decimal mark."""
    for one in translations(subject.model):
        for key, said in one.language.texts.items():
            if said.is_ is None:
                continue
            typed, told = _numbers(said.of), _numbers(said.is_)
            if typed != told:
                lost, new = ", ".join((typed - told).elements()), ", ".join((told - typed).elements())
                words = [f"it lacks {lost}"] if lost else []
                words += [f"it has {new}, which the original hasn’t"] if new else []
                path = ("texts", key, "is")
                yield Problem(("language", one.code), path, " and ".join(words), (f"text:{one.code}:{key}",))


def _numbers(text: str) -> Counter[str]:
    return Counter(number.replace(",", ".") for number in _NUMBER.findall(text))


RULE = Rule(
    slug="translation-numbers",
    severity=Severity.warning,
    why="A number lost or changed on the way makes another product, and nobody who reads one language sees it.",
    remedy="Write the numbers of the original; where words are better in both languages, write words in both.",
    check=check,
    bad="""
languages/es.yaml:
  {language: es, title: español, read by: T1, in work: yes,
   texts: {material/thread-70/title: {of: "Thread, tex 70", is: "Hilo, tex 90"}}}
""",
    good="""
languages/es.yaml:
  {language: es, title: español, read by: T1, in work: yes,
   texts: {material/thread-70/title: {of: "Thread, tex 70", is: "Hilo, tex 70"}}}
""",
    follows_from=("value-unreadable", "key-unknown"),
)
