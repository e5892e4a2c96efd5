"""Sentences that bring hands where a machine can start: needle, blade, thread path, jam, guard.

The patterns are common practice, no source. Each looks for a deed with its object, so that `thread end`, `needle
down`, `trim the threads` or `thread the strap through the ring` are none. A language is added by its code.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Deed:
    """A deed at the machine: what a finding calls it, and how it is found."""

    words: str
    pattern: re.Pattern[str]


@dataclass(frozen=True, slots=True)
class DeedTable:
    """The deeds of a language.

    off   : words that say the machine is off
    it    : a deed whose object is a pronoun; it counts in a text about one of `parts`
    """

    deeds: tuple[Deed, ...]
    off: re.Pattern[str]
    it: Deed
    parts: re.Pattern[str]


def _deed(words: str, pattern: str) -> Deed:
    return Deed(words, re.compile(pattern, re.IGNORECASE))


# Up to three words may stand between a deed and its object: `change the worn left needle`.
_GAP = r"(?:\s+[\w'’-]+){0,3}?\s+"
_CUTTING = (
    r"needles?(?!\s+(?:thread|gauge|down|up|marks?|holes?|positions?))|(?:\w+\s+)?(?:blades?|knife|knives|loopers?)"
)
_INSIDE = (
    r"needles?(?!\s+(?:thread|marks?|holes?))|blades?|knife|knives|loopers?|hook\s+race|rotary\s+hook|bobbin\s+case"
    r"|feed\s+dogs?|(?:feed\s+)?wheels?|rollers?|lens|(?:upper\s+|lower\s+)?dies?|nozzle|presser\s+foot|needle\s+plate"
)

DEEDS: Mapping[str, DeedTable] = {
    "en": DeedTable(
        (
            _deed(
                "a needle or blade is changed",
                rf"\b(?:change|replace|swap|fit|take\s+out|insert){_GAP}(?:{_CUTTING})\b",
            ),
            _deed("a needle or blade is changed", rf"\bput\s+in{_GAP}(?:{_CUTTING})\b"),
            _deed("the machine is threaded", r"\b(?:re-?thread)\b(?!\s*ed)"),
            _deed(
                "the machine is threaded",
                r"\bthread\s+(?:up\s+)?(?:the\s+|every\s+|each\s+)?(?:\w+\s+)?(?:machine|needles?|loopers?|sewing\s+head)\b",
            ),
            _deed(
                "the machine is threaded",
                r"\b(?:thread|lead|pull)\s[^.;]*?\bthrough\s+the\s+(?:eye\s+of\s+the\s+)?(?:needle|looper|take-up)\b",
            ),
            _deed(
                "a jam is cleared",
                r"\b(?:clear|free|remove|release|pull\s+out|pick\s+out)\b[^.;]*?\b(?:jam|jams|jammed|stuck)\b",
            ),
            _deed("a jam is cleared", r"\b(?:cut|pull|pick|clear|remove)\b[^.;]*?\b(?:thread|bird['’]?s)\s+nest\b"),
            _deed(
                "the machine is oiled",
                r"(?:^|[.;:,]\s+|\b(?:and|then)\s+)(?:oil|grease|lubricate)\s+(?:the|every|each|all)\b",
            ),
            _deed(
                "the machine is cleaned",
                rf"\b(?:clean|wipe|brush|blow|polish|scrape)(?:\s+(?:out|off))?{_GAP}(?:{_INSIDE})\b",
            ),
            _deed(
                "a guard is opened",
                r"\b(?:open|lift|remove|unscrew|take\s+off|swing\s+(?:away|aside|up))\b[^.;,]*?\b(?:guard|eye\s+shield|belt\s+cover|machine\s+cover|slide\s+plate|needle\s+plate)\b",
            ),
            _deed(
                "hands reach behind a guard",
                r"\b(?:reach|put\s+your\s+(?:hand|fingers))\s+(?:in(?:to)?|behind|under|past|round|around|over)\s+the\s+(?:\w+\s+)?(?:guard|shield|cover|machine|press|cutter|die|clamp|foot|needle|blade|knife)\b",
            ),
            _deed(
                "pieces of a needle are looked for",
                r"\b(?:find|look\s+for|search\s+for|pick\s+out)\b[^.;]*?\b(?:piece|tip|part)s?\s+of\s+the\s+(?:\w+\s+)?needle\b",
            ),
        ),
        re.compile(
            r"\b(?:switch(?:ed)?\s+(?:it\s+|the\s+\w+\s+)?off|power(?:ed)?\s*:?\s+off|turn(?:ed)?\s+(?:it\s+|the\s+\w+\s+)?off"
            r"|(?:motor|machine|current|mains)\s+(?:is\s+)?off|unplug(?:ged)?|lock(?:ed)?\s+(?:it\s+)?out|main\s+switch"
            r"|pull(?:ed)?\s+the\s+plug|isolated?)\b",
            re.IGNORECASE,
        ),
        _deed("a needle or blade is changed", r"\b(?:change|replace|swap)\s+it\b"),
        re.compile(r"\b(?:needles?|blades?|knife|knives)\b", re.IGNORECASE),
    ),
}


def deed_in(text: str, language: str, topic: str = "") -> tuple[str, int] | None:
    """The first deed near the machine that a text asks for without saying that it is off: (words, where), or None.

    topic : what the text is about, for `change it`
    """
    table = DEEDS.get(language.partition("-")[0].lower())
    if table is None or table.off.search(text):
        return None
    deeds = (*table.deeds, table.it) if table.parts.search(topic) else table.deeds
    found = [(match.start(), deed.words) for deed in deeds if (match := deed.pattern.search(text))]
    if not found:
        return None
    at, words = min(found)
    return words, at + len(text[at:]) - len(text[at:].lstrip(" .;:,"))
