"""What each finding means, for `explain` and for the page of rules: one text from the rule itself, its examples too.

Not only rules have slugs: what can't be read or linked has, and what only who opens or draws a file knows.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.checking.registry import noun_of, rule_book
from builder.checking.rule import Rule
from builder.finding import Severity
from builder.model import FAULTS
from builder.reading import WHY


@dataclass(frozen=True, slots=True)
class Explanation:
    """A slug explained.

    group     : what it looks at: a noun, `words and links` (the typed model) or `text of a file`
    severity  : how bad; `safety` can't be lowered or silenced
    causes    : slugs it folds under when they are about the same thing
    bad, good : examples, {file: lines laid over a small plant} as YAML; '' where there is none
    """

    slug: str
    group: str
    severity: Severity
    safety: bool
    why: str
    remedy: str
    causes: tuple[str, ...] = ()
    bad: str = ""
    good: str = ""

    @property
    def can_be_changed(self) -> bool:
        """Whether a plant may give it another level under `rules:`."""
        return self.group not in (READ, LINKED, SEEN) and not self.safety and self.severity is not Severity.error


READ, LINKED, SEEN = "text of a file", "words and links", "pictures"

PICTURES = {
    "photo-unreadable": Explanation(
        "photo-unreadable",
        SEEN,
        Severity.error,
        False,
        "A sheet with a blank in it teaches nothing, and the reader can't know what was meant.",
        "Copy the photo again, as JPEG, PNG or WebP; a drawing as plain SVG.",
    ),
    "drawing-cleaned": Explanation(
        "drawing-cleaned",
        SEEN,
        Severity.warning,
        False,
        "A file from elsewhere may run, load or move things; only plain drawing is kept, so something may be missing.",
        "Look at the picture on the page. Save the drawing as plain SVG, with effects turned into shapes.",
    ),
    "drawing-unreadable": Explanation(
        "drawing-unreadable",
        SEEN,
        Severity.error,
        False,
        "A part without its outline has no picture, no mass and no cutting time.",
        "Save the outline again as a DXF of text, on a layer of its own, with its unit.",
    ),
    "sheet-long": Explanation(
        "sheet-long",
        SEEN,
        Severity.warning,
        False,
        "Nobody turns five pages with work in both hands; what stands on the last ones is done from memory.",
        "Split the operation, show fewer pictures, or give the station a larger `paper:`.",
    ),
    "figure-crowded": Explanation(
        "figure-crowded",
        SEEN,
        Severity.warning,
        False,
        "What is not on the picture is not done.",
        "Check less in one step, split the step, or show a smaller part.",
    ),
}
"""Findings no rule makes, because only who opens or draws the file knows them."""


def explanations() -> Iterator[Explanation]:
    """All of them: the rule book in the order of its nouns, then links, pictures and texts."""
    book = rule_book()
    yield from (_of_rule(book[slug]) for slug in sorted(book, key=lambda one: (noun_of(one), one)))
    for kind in FAULTS.values():
        yield Explanation(kind.slug, LINKED, Severity.error, False, kind.why, kind.remedy, kind.follows_from)
    yield from PICTURES.values()
    for slug, why in WHY.items():
        yield Explanation(slug, READ, Severity.error, False, why, "The finding itself says what to write.")


def level_words(one: Explanation) -> str:
    """How bad a finding is and whether a plant may change that, in words."""
    if one.safety:
        return f"{one.severity.name}, safety: can't be lowered or silenced"
    if one.can_be_changed:
        return f"{one.severity.name}; the plant file may change it under `rules:` with a reason"
    return one.severity.name


def _of_rule(rule: Rule) -> Explanation:
    return Explanation(
        rule.slug,
        noun_of(rule.slug),
        rule.severity,
        rule.safety,
        rule.why,
        rule.remedy,
        rule.follows_from,
        rule.bad.strip("\n"),
        rule.good.strip("\n"),
    )
