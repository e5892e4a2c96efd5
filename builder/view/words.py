"""Words made from names and numbers, in one place: dimensions, counts, lists."""

from __future__ import annotations

from collections.abc import Sequence

from builder.model import Part, Quantity, Tolerance, show_quantity, show_tolerance

_DISTANCE = {
    "left": "to the left edge",
    "right": "to the right edge",
    "top": "to the top edge",
    "bottom": "to the bottom edge",
    "centre": "from the centre line",
    "middle": "from the middle line",
    "inset": "to the edge",
    "width": "width",
    "height": "height",
    "length": "length",
    "right-of": "to what stands left of it",
    "left-of": "to what stands right of it",
    "above": "to what stands below it",
    "below": "to what stands above it",
    "pitch": "spacing",
    "row-pitch": "row spacing",
    "slot": "length",
    "diameter": "diameter",
    "hole": "diameter",
    "drill-hole": "diameter",
    "off": "to the line beside it",
    "pleat": "depth",
    "take": "cloth taken",
    "dart": "width",
    "relaxed": "relaxed length",
}


def plain(name: str) -> str:
    """`handle-box` as words: `handle box`."""
    return name.replace("-", " ")


def dimension_words(short: str, part: Part) -> str:
    """`handle-box.left` as words: `handle box to the left edge`."""
    owner, _, dimension = short.rpartition(".")
    ending = _DISTANCE.get(dimension, plain(dimension))
    if not owner:
        return f"{part.title}, {ending}"
    feature = part.features.get(owner)
    name = feature.label if feature is not None and feature.label else plain(owner)
    return f"{name} {ending}" if ending.startswith(("to ", "from ")) else f"{name}, {ending}"


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
    return f"{', '.join(words[:-1])} and {words[-1]}"
