"""A letter that no face of its language has."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import DRAWN_SIGNS, missing_letters, wordings


def check(subject: Subject) -> Iterator[Problem]:
    """Texts of the plant in its own language, at the object that has them, and translations, at their entry."""
    model = subject.model
    seen: set[tuple[str, str]] = set()
    texts = wordings(model)
    if _missing((one.text for one in texts), model.plant.language):
        for one in texts:
            if (found := _missing((one.text,), model.plant.language)) and one.owner not in seen:
                seen.add(one.owner)
                yield Problem(one.owner, (), _message(found, one.text), (f"text:{one.key}",))
    for code, language in model.languages.items():
        said = {key: one.is_ for key, one in language.texts.items() if one.is_ is not None}
        if _missing(said.values(), code):
            for key, text in said.items():
                if found := _missing((text,), code):
                    yield Problem(("language", code), ("texts", key, "is"), _message(found, text), (f"text:{key}",))


def _missing(texts: Iterable[str], code: str) -> str:
    return "".join(letter for letter in missing_letters("".join(texts), code) if letter not in DRAWN_SIGNS)


def _message(letters: str, text: str) -> str:
    letter = letters[0]
    name = unicodedata.name(letter, "unnamed").lower()
    return f"no typeface here has {letter} (U+{ord(letter):04X}, {name}): {text}"


RULE = Rule(
    slug="letter-missing",
    severity=Severity.warning,
    why="On paper it is an empty box, or the sheet can't be made at all.",
    remedy="Write it with letters of the language, or as a word.",
    check=check,
    bad="""
operations/sew-hem.yaml: {title: Sew the hem 縫}
""",
    good="""
operations/sew-hem.yaml: {title: Sew the hem →}
""",
    follows_from=("value-unreadable", "key-unknown"),
)
