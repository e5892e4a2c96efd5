"""Words made from names and numbers, in one place: dimensions, counts, lists."""

from __future__ import annotations

from collections.abc import Sequence

from builder.model import Feature, Part, Quantity, Tolerance, named, phrase, plain, say, show_quantity, show_tolerance

_DISTANCE = {
    "left": phrase("to the left edge"),
    "right": phrase("to the right edge"),
    "top": phrase("to the top edge"),
    "bottom": phrase("to the bottom edge"),
    "centre": phrase("from the centre line"),
    "middle": phrase("from the middle line"),
    "inset": phrase("to the edge"),
    "width": phrase("width"),
    "height": phrase("height"),
    "length": phrase("length"),
    "right-of": phrase("to what stands left of it"),
    "left-of": phrase("to what stands right of it"),
    "above": phrase("to what stands below it"),
    "below": phrase("to what stands above it"),
    "pitch": phrase("spacing"),
    "row-pitch": phrase("row spacing"),
    "slot": phrase("length"),
    "diameter": phrase("diameter"),
    "hole": phrase("diameter"),
    "drill-hole": phrase("diameter"),
    "off": phrase("to the line beside it"),
    "pleat": phrase("depth"),
    "take": phrase("cloth taken"),
    "dart": phrase("width"),
    "relaxed": phrase("relaxed length"),
}


def dimension_words(short: str, part: Part) -> str:
    """`handle-box.left` as words: `handle box to the left edge`."""
    owner, _, dimension = short.rpartition(".")
    ending = say(_DISTANCE[dimension]) if dimension in _DISTANCE else plain(dimension)
    if not owner:
        return f"{named(part.title)}, {ending}"
    feature = part.features.get(owner)
    name = feature_words(feature, owner) if feature is not None else plain(owner)
    return f"{name} {ending}" if _DISTANCE.get(dimension, "").startswith(("to ", "from ")) else f"{name}, {ending}"


def feature_words(feature: Feature, name: str) -> str:
    """What a feature is called: its label, else its name as words."""
    return named(feature.label) if feature.label else plain(name)


def both_units(quantity: Quantity, first: str) -> str:
    """A length in the plant's unit with the other in brackets."""
    return show_quantity(quantity, first)  # type: ignore[arg-type]


def tolerance_pair(tolerance: Tolerance, first: str) -> tuple[str, str]:
    """A tolerance as (first unit, other unit)."""
    whole = show_tolerance(tolerance, first)  # type: ignore[arg-type]
    value, _, other = whole.partition(" (")
    return value, other.removesuffix(")")


def listed(words: Sequence[str]) -> str:
    """`a`, `a and b`, `a, b and c`."""
    if len(words) < 2:
        return "".join(words)
    return say("{first} and {last}", first=", ".join(words[:-1]), last=words[-1])
