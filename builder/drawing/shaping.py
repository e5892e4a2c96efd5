"""A line of a script whose letters join, stack or run from right to left, as glyphs in the order they stand.

The bidirectional order is Unicode's (UAX #9), the joining and stacking the face's own rules, both by libraries made for
it. Latin goes without: see `font`.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import groupby
from typing import Any

from builder.model import ATKINSON, Family, face_file, face_table

_RIGHT_TO_LEFT = frozenset(("R", "AL"))


@dataclass(frozen=True, slots=True)
class Glyph:
    """One glyph and where its origin stands, in em from the start of the line, y up."""

    family: Family
    name: str
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class ShapedLine:
    """A line's glyphs from left to right, and its width, em."""

    glyphs: tuple[Glyph, ...]
    width: float


@lru_cache(maxsize=4096)
def shape_line(text: str, family: Family, weight: int) -> ShapedLine:
    """The glyphs of a line of text."""
    found: list[Glyph] = []
    at = 0.0
    for piece, backward in _pieces(text):
        for own, run in groupby(piece, key=lambda letter: _owner(letter, family, weight)):
            glyphs, at = _shaped("".join(run), own, weight, backward, at)
            found += glyphs
    return ShapedLine(tuple(found), at)


def _owner(letter: str, family: Family, weight: int) -> Family:
    """The family a letter is taken from: its own, or the default one for marks it lacks."""
    return family if _has(family, weight, letter) else ATKINSON


def _has(family: Family, weight: int, letter: str) -> bool:
    return ord(letter) in _names(family, weight)


@cache
def _names(family: Family, weight: int) -> dict[int, str]:
    from fontTools.ttLib import TTFont

    with TTFont(face_file(family, weight), lazy=True) as font:
        return dict(font.getBestCmap())


def _shaped(text: str, family: Family, weight: int, backward: bool, at: float) -> tuple[list[Glyph], float]:
    import uharfbuzz

    font = _font(family, weight)
    buffer = uharfbuzz.Buffer()
    buffer.add_str(text)
    buffer.guess_segment_properties()
    buffer.direction = "rtl" if backward else "ltr"
    uharfbuzz.shape(font, buffer)
    em = face_table(family, weight).units_per_em
    found = []
    for info, place in zip(buffer.glyph_infos, buffer.glyph_positions, strict=True):
        name = font.glyph_to_string(info.codepoint)
        found.append(Glyph(family, name, at + place.x_offset / em, place.y_offset / em))
        at += place.x_advance / em
    return found, at


@cache
def _font(family: Family, weight: int) -> Any:
    import uharfbuzz

    face = uharfbuzz.Face(uharfbuzz.Blob.from_file_path(str(face_file(family, weight))))
    return uharfbuzz.Font(face)


def _pieces(text: str) -> Iterator[tuple[str, bool]]:
    """Stretches of one direction in the order they stand, each in the order it is read; True: from right to left."""
    if not any(unicodedata.bidirectional(letter) in _RIGHT_TO_LEFT for letter in text):
        yield text, False
        return
    levels = _levels(text)
    runs = [
        (level, "".join(letter for letter, _ in run)) for level, run in groupby(zip(text, levels, strict=True), _level)
    ]
    for number in _order([level for level, _ in runs]):
        level, run = runs[number]
        yield run, level % 2 == 1


def _level(pair: tuple[str, int]) -> int:
    return pair[1]


def _levels(text: str) -> list[int]:
    """The embedding level of each letter of a paragraph that runs from right to left."""
    from bidi import algorithm

    storage = algorithm.get_empty_storage()
    storage["base_level"], storage["base_dir"] = 1, "R"
    algorithm.get_embedding_levels(text, storage)
    algorithm.explicit_embed_and_overrides(storage)
    algorithm.resolve_weak_types(storage)
    algorithm.resolve_neutral_types(storage, False)
    algorithm.resolve_implicit_levels(storage, False)
    return [one["level"] for one in storage["chars"]]


def _order(levels: list[int]) -> list[int]:
    """Rule L2: from the highest level down to the lowest odd one, reverse what stands at that level or above."""
    order = list(range(len(levels)))
    odd = [level for level in levels if level % 2]
    for level in range(max(levels), min(odd) - 1, -1):
        at = 0
        while at < len(order):
            end = at
            while end < len(order) and levels[order[end]] >= level:
                end += 1
            if end > at:
                order[at:end] = order[at:end][::-1]
            at = end + 1
    return order
