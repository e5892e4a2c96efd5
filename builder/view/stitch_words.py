"""Words of a stitch seen close up: what each thread is called, and how the threads run, from what holds what."""

from __future__ import annotations

from collections.abc import Mapping
from textwrap import wrap
from typing import Protocol

from builder.geometry import StitchThreads
from builder.model import phrase, say
from builder.view.words import listed

_NAMES = {
    "needle": phrase("needle thread"),
    "needle 2": phrase("second needle thread"),
    "needle 3": phrase("third needle thread"),
    "bobbin": phrase("bobbin thread"),
    "looper": phrase("looper thread"),
    "cover": phrase("cover thread"),
}
_OVEREDGE = {
    "looper": phrase("lower looper thread"),
    "looper 2": phrase("upper looper thread"),
    "looper 3": phrase("chain looper thread"),
}
_LINE = 15
"""Most letters of a line of the key."""


class Named(Protocol):
    """What the words need to know of a stitch."""

    @property
    def stitch(self) -> str:
        """ISO 4915 type."""

    @property
    def threads(self) -> Mapping[str, str]:
        """Titles of the materials: of the needle's and the bobbin's thread."""


def name_of(stitch: str, role: str) -> str:
    """What a thread is called: `lower looper thread`."""
    loopers = stitch[0] == "5" and stitch != "503"
    return say((_OVEREDGE if loopers else {}).get(role) or _NAMES[role])


def thread_lines(sewn: Named, role: str, first: bool, tension: str) -> list[str]:
    """A thread in the key, in short lines: its name, its tension, its material where the first one's is another.

    first : it names the material of all that have no other
    """
    material = sewn.threads.get("bobbin" if role == "bobbin" else "needle", "")
    named = first or material != sewn.threads.get("needle", "")
    name = name_of(sewn.stitch, role)
    short = name if len(name) <= _LINE else name.removesuffix(say(" thread"))
    return [line for line in (short, tension, *(wrap(material, _LINE) if named else ())) if line]


def runs_words(stitch: str, row: StitchThreads) -> str:
    """How the threads run, a sentence for each pair of them: what lies in the loops of what."""
    held: dict[str, list[str]] = {}
    for hold in row.holds:
        loop, strand = hold.loop[0], hold.strand[0]
        held.setdefault(loop, [])
        if strand not in held[loop]:
            held[loop].append(strand)
    sentences = []
    for loop, strands in held.items():
        held_by = [name_of(stitch, one) if one != loop else say("its own next loop") for one in strands]
        sentences.append(
            say("Loops of the {loop} hold: {threads}.", loop=name_of(stitch, loop), threads=listed(held_by))
        )
    return " ".join(sentences)
