"""The class of a seam, read off its section: ISO 4916 by what is limited where, ASTM D6193 by how plies lie.

A piece of goods is limited on a side where it ends within reach of the seam; whether by a cut edge or a fold is no
matter. Definitions in our words.

Sources. ISO 4916: that eight classes follow from the edges of the pieces, and class 1 (two pieces or more, of two both
limited on the same side): JIS L 0121:1984, clause 2.1, modified from ISO 4916:1982 (read). Class 2 (one limited on one
side, the other on the other, laid over each other): a public course presentation, "Classification of seam" (read).
Classes 1 to 8: ISO 4916:1991, sample pages, as quoted in a public note on seam types (read at second hand). That pieces
limited on both sides may join a seam of classes 1, 2 and 4 follows from what is quoted of class 7: one piece limited on
one side, all others on both. Letters: ASTM D6193 and FED-STD-751a as taught in public course presentations: SS, LS, BS,
and that pockets are set by LS (read); that FS, EF and OS are the names of its three other classes (read), which classes
of ISO 4916 they stand for (memory). Classes 7 and 8 are given no letters: none could be confirmed.
"""

from __future__ import annotations

from dataclasses import dataclass

from builder.geometry.section import LIMIT_MM, Section
from builder.model import SEAM_WORDS, SeamWord

DEFINITIONS: dict[SeamWord, str] = {
    "superimposed": "Two pieces or more, one on the other, all limited on the same side.",
    "lapped": "Two pieces or more that overlap, limited on opposite sides or laid on goods that go on.",
    "bound": "The edge of one piece or more, with a further piece round it that is limited on both sides.",
    "flat": "Two pieces whose edges face each other on one level, joined by a covering stitch.",
    "decorative": "Stitching on goods that all go on to both sides.",
    "edge finished": "One piece limited on one side: its edge hemmed or overedged.",
    "edge item": "A piece limited on one side, with another one along it that is limited on both.",
    "strip alone": "Nothing but pieces limited on both sides: a strap or a loop.",
}
_LETTERS: dict[SeamWord, str] = {
    "superimposed": "SS",
    "lapped": "LS",
    "bound": "BS",
    "flat": "FS",
    "decorative": "OS",
    "edge finished": "EF",
    "edge item": "",
    "strip alone": "",
}
# Edges no farther apart than this are butted, mm.
_BUTTED_MM = 1.0


@dataclass(frozen=True, slots=True)
class SeamClass:
    """The class of a seam.

    word   : its name here, after the way the plies lie; `number` the class of ISO 4916
    letters: of ASTM D6193, '' where they aren't known for sure
    """

    word: SeamWord
    number: int
    letters: str

    @property
    def words(self) -> frozenset[SeamWord]:
        """What it may be called: after the plies, or after its class where that differs."""
        return frozenset((self.word, SEAM_WORDS[self.number - 1]))


def seam_class(section: Section) -> SeamClass | None:
    """The class of the seam cut across; None where its definitions leave it open."""
    spans = section.spans()
    limits = [(-low < LIMIT_MM, high < LIMIT_MM) for low, high in spans]
    if len(spans) == 1:
        return _of("edge finished" if sum(limits[0]) == 1 else "strip alone" if all(limits[0]) else "decorative")
    if not spans:
        return None
    if _wraps(section):
        return _of("bound")
    if not all(any(one) for one in limits):
        # Something goes on to both sides: for ISO 4916 that is class 5, laid on or not; by letters it is lapped.
        laid = any(any(one) for one in limits)
        return SeamClass("lapped", 5, "LS") if laid else _of("decorative")
    # What is limited on both sides joins a seam of others, and makes one of its own only beside a single edge or alone.
    single = [number for number, one in enumerate(limits) if not all(one)]
    if len(single) == 1:
        return _of("edge item")
    if not single:
        return SeamClass(_edges(spans, limits), SEAM_WORDS.index("strip alone") + 1, _LETTERS["strip alone"])
    return _of(_edges(tuple(spans[number] for number in single), [limits[number] for number in single]))


def _edges(spans: tuple[tuple[float, float], ...], limits: list[tuple[bool, bool]]) -> SeamWord:
    """Of pieces each limited on one side, or each on both: the same side, or opposite sides."""
    if all(one[1] for one in limits) or all(one[0] for one in limits):
        return "superimposed"
    lefts = [high for (_, high), one in zip(spans, limits, strict=True) if one[1]]
    rights = [low for (low, _), one in zip(spans, limits, strict=True) if one[0]]
    return "flat" if max(lefts) - min(rights) <= _BUTTED_MM else "lapped"


def _wraps(section: Section) -> bool:
    """Does one piece the seam holds lie below and above all others, round their edge?"""
    order = [one.name for one in section.goods.plies if one.name in section.seam.plies]
    for held in section.held():
        own = {one.name for one in held}
        others = [order.index(name) for name in order if name not in own]
        mine = [order.index(name) for name in order if name in own]
        limited = -min(one.low.at for one in held) < LIMIT_MM and max(one.high.at for one in held) < LIMIT_MM
        if limited and others and mine and min(mine) < min(others) and max(mine) > max(others):
            return True
    return False


def _of(word: SeamWord) -> SeamClass:
    return SeamClass(word, SEAM_WORDS.index(word) + 1, _LETTERS[word])
