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


def _pattern(text: str) -> re.Pattern[str]:
    """A blank stands for any run of blanks."""
    return re.compile(text.replace(" ", r"\s+"), re.IGNORECASE)


# `Change the worn left needle` is a deed, `fit it under the needle` is none: no preposition stands in between.
_PREPOSITION = (
    r"(?:under|over|to|at|from|with|behind|past|against|of|off|beside|by|on|onto|in|into|for|until|before|after)"
)
_BETWEEN = rf"(?: (?!{_PREPOSITION}\b)[\w'’-]+){{0,3}}? "


def _english(words: str, verbs: str, objects: str) -> Deed:
    """Verbs with one of their objects, up to three words in between; `needle-punched` is no needle."""
    return Deed(words, _pattern(rf"\b(?:{verbs}){_BETWEEN}(?:{objects})(?![\w-])"))


def _phrase(words: str, pattern: str) -> Deed:
    return Deed(words, _pattern(pattern))


_NEEDLE = r"needles?(?! (?:thread|gauge|down|up|marks?|holes?|positions?)\b)"
_BLADE = r"(?:\w+ )?(?:blades?|knife|knives|loopers?)"
_INSIDE = (
    r"hook race|rotary hook|hook(?! (?:and loop|tape|side|piece|strip)\b)|bobbin case|feed dogs?|(?:feed )?wheels?"
    r"|rollers?|lens|nozzle|presser foot|(?:upper |lower )?dies?"
)
_GUARD = r"(?:\w+ )?guards?|eye shield|belt cover|machine cover|slide plate|needle plate"
_MACHINE = r"(?:\w+ )?(?:guard|shield|machine|press|cutter|die|clamp|foot|needle|blade|knife)"

DEEDS: Mapping[str, DeedTable] = {
    "en": DeedTable(
        (
            _english(
                "a needle or blade is changed", "change|replace|swap|fit|insert|take out|put in", f"{_NEEDLE}|{_BLADE}"
            ),
            _english("the machine is threaded", "thread|thread up", r"(?:\w+ )?machine|needles?|loopers?|sewing head"),
            _phrase("the machine is threaded", r"\bre-?thread\b"),
            _phrase(
                "the machine is threaded", r"\b(?:thread|lead|pull) [^.;]*?\bthrough the (?:needle|looper|take-up)\b"
            ),
            _phrase("the machine is threaded", r"\bthrough the eye of the needle\b"),
            _english(
                "a jam is cleared",
                "clear|free|release|remove|cut out|pull out|pick out",
                "jams?|(?:thread|bird['’]?s) nest",
            ),
            _phrase(
                "a jam is cleared",
                r"\b(?:free|pull out|pick out|remove) [^.;]*?\bstuck (?:in|under|between|behind) the\b",
            ),
            _phrase(
                "the machine is oiled",
                r"(?:^|[.;:,] |\b(?:and|then) )(?:oil|grease|lubricate) (?:the|every|each|all)\b",
            ),
            _english(
                "the machine is cleaned",
                "clean|clean out|wipe|wipe off|brush|blow|blow out|polish|scrape",
                f"{_NEEDLE}|{_BLADE}|{_INSIDE}|needle plate",
            ),
            _english("a guard is opened", "open|lift|remove|unscrew|take off|swing away|swing up", _GUARD),
            _phrase(
                "hands reach behind a guard",
                r"\b(?:reach|put your (?:hands?|fingers?)) (?:in|into|behind|under|past|round|around|over) the "
                rf"{_MACHINE}\b",
            ),
            _phrase(
                "pieces of a needle are looked for",
                r"\b(?:find|look for|search for|pick out) [^.;]*?\bof the (?:\w+ )?needle\b",
            ),
        ),
        _pattern(
            r"\b(?:switch(?:ed)? (?:it |the \w+ )?off|power(?:ed)?:? off|turn(?:ed)? (?:it |the \w+ )?off"
            r"|(?:motor|machine|current|mains) (?:is )?off|unplug(?:ged)?|lock(?:ed)? (?:it )?out|main switch"
            r"|pull(?:ed)? the plug)\b"
        ),
        _phrase("a needle or blade is changed", r"\b(?:change|replace|swap) it\b"),
        _pattern(r"\b(?:needles?|blades?|knife|knives)\b"),
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
