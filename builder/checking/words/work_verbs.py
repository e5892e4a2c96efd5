"""Verbs of work at the start of a clause, by language; verbs of one kind count as one action.

Common practice, no source. Handling (lay, turn, slip in) and looking are no work of their own here. The tables
find less than there is on purpose: a wrong finding costs more than one that is missing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class VerbTable:
    """The verbs of a language by kind of work, and how a clause begins.

    clause : matches where a clause begins, with `verb` for its first word
    """

    kinds: Mapping[str, str]
    clause: re.Pattern[str]


_EN = {
    "sew": ("sew", "stitch", "topstitch", "backstitch", "overlock", "serge"),
    "tack": ("tack", "bartack"),
    "bind": ("bind",),
    "cut": ("cut", "trim", "snip", "clip"),
    "fold": ("fold", "pleat", "crease"),
    "press": ("press", "iron"),
    "mark": ("mark",),
    "set": ("set",),
    "glue": ("glue", "weld"),
    "place": ("place",),
}
# Behind the verb its object must begin, so that `between fold and tack` holds no verb.
_OBJECT = (
    r"(?=\s+(?:it|them|the|a|an|both|all|each|every|its|their|this|that|these|down|over"
    r"|two|three|four|five|six|\d))"
)
# `Press the button` starts a machine and `set the counter` sets a dial: neither is work on the piece.
_NOT_THE_PIECE = (
    r"(?!\s+(?:[\w-]+\s+){0,2}(?:buttons?|pedals?|treadle|start|stop|key|keys|emergency|counter|dial|length)\b)"
)
_ONLY_HARDWARE = r"(?!(?<=set)(?!\s+(?:[\w-]+\s+){0,2}(?:snaps?|sockets?|studs?|eyelets?|rivets?|grommets?|caps?)\b))"

VERBS: Mapping[str, VerbTable] = {
    "en": VerbTable(
        {verb: kind for kind, verbs in _EN.items() for verb in verbs},
        re.compile(
            rf"(?:^|[.;:!]\s+|,\s+(?:and\s+|then\s+|and\s+then\s+)?|\s(?:and|then|and\s+then)\s+)\W?"
            rf"(?P<verb>{'|'.join(verb for verbs in _EN.values() for verb in verbs)})\b"
            rf"{_ONLY_HARDWARE}{_NOT_THE_PIECE}{_OBJECT}",
            re.IGNORECASE,
        ),
    ),
}


def work_verbs(text: str, language: str) -> Iterator[tuple[str, str, int]]:
    """(verb, kind of work, where) of each clause of a text that begins with a verb of work."""
    table = VERBS.get(language.partition("-")[0].lower())
    if table is None:
        return
    for found in table.clause.finditer(text):
        verb = found["verb"].lower()
        yield verb, table.kinds[verb], found.start("verb")
