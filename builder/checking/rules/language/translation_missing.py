"""Texts of the plant that a language lacks."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import translations

_MOST_NAMED = 4


def check(subject: Subject) -> Iterator[Problem]:
    """How many texts each finished language lacks of the work it is for, with the first objects they are of."""
    for one in translations(subject.model):
        if one.language.in_work:
            continue
        wanted = one.wanted(subject.model)
        lacking = {
            owner: [text for text in texts if text.state == "missing"]
            for owner, texts in one.lacking.items()
            if owner in wanted
        }
        lacking = {owner: texts for owner, texts in lacking.items() if texts}
        if not lacking:
            continue
        names = [f"{kind} {name}" for kind, name in lacking]
        more = f" and {len(names) - _MOST_NAMED} more" if len(names) > _MOST_NAMED else ""
        count = sum(map(len, lacking.values()))
        texts = "1 text has" if count == 1 else f"{count} texts have"
        message = f"{texts} no translation: of {', '.join(names[:_MOST_NAMED])}{more}"
        about = tuple(f"{kind}:{name}" for kind, name in lacking)
        remedy = f"Run `seamboard words {one.code}`, then fill in `is:`."
        yield Problem(("language", one.code), (), message, about, remedy)


RULE = Rule(
    slug="translation-missing",
    severity=Severity.warning,
    why="A sheet with a text in another language isn't made, so who reads this language only has no sheet.",
    remedy="Run `seamboard words` with the language's code, then fill in `is:`; until then `in work: yes`.",
    check=check,
    bad="""
languages/es.yaml:
  {language: es, title: español, read by: T1, products: pouch, texts: {part/panel/title: {of: Panel, is: Panel}}}
""",
    good="""
languages/es.yaml:
  {language: es, title: español, read by: T1, in work: yes, texts: {part/panel/title: {of: Panel, is: Panel}}}
""",
    follows_from=("value-unreadable", "key-unknown"),
)
