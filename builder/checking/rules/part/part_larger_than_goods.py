"""A part that can't be cut from its goods."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.edges import WOVEN_TO_WIDTH
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import in_size, length_words
from builder.finding import Severity
from builder.geometry import PartShape
from builder.model import Material, Quantity

_SLACK_MM = 0.001


def check(subject: Subject) -> Iterator[Problem]:
    """Each cut part in every size: across the goods and along them, its grain kept; strips along their roll."""
    seen: set[str] = set()
    for size, shape in subject.shapes():
        material = subject.model.materials.get(shape.part.material or "")
        if material is None or shape.name in seen or shape.part.outline is None:
            continue
        words = _too_large(subject, shape, material)
        if words:
            seen.add(shape.name)
            message = f"{shape.name} {words}{in_size(size)}; {shape.part.material} is {_goods(subject, material)}"
            about = (f"material:{shape.part.material}",)
            yield Problem(("part", shape.name), ("outline",), message, about, key=True)


def _too_large(subject: Subject, shape: PartShape, material: Material) -> str:
    """What is too large, '' when it fits, or when the size of the goods isn't typed."""
    left, bottom, right, top = shape.bounds
    wide, high = right - left, top - bottom
    if shape.part.outline is not None and shape.part.outline.strip is not None:
        too_long = _over(wide, _mm(material.length))
        return f"is {length_words(wide, subject.model)} long" if too_long else ""
    if material.form in WOVEN_TO_WIDTH:
        wide, high = min(wide, high), max(wide, high)
    turned = {"up": (False,), "across": (True,), "none": (False, True)}[shape.part.grain]
    sides = [(high, wide) if turn else (wide, high) for turn in turned]
    if any(
        not _over(across, _mm(material.width)) and not _over(along, _mm(material.length)) for across, along in sides
    ):
        return ""
    across, along = sides[0]
    size = f"{length_words(across, subject.model)} across and {length_words(along, subject.model)} along"
    return f"measures {size}"


def _over(part: float, goods: float | None) -> bool:
    return goods is not None and part > goods + _SLACK_MM


def _mm(length: Quantity | None) -> float | None:
    return float(length.value) if length is not None else None


def _goods(subject: Subject, material: Material) -> str:
    width, length = _mm(material.width), _mm(material.length)
    wide = f"{length_words(width, subject.model)} wide" if width is not None else ""
    long = f"{length_words(length, subject.model)} long" if length is not None else ""
    return " and ".join(one for one in (wide, long) if one)


RULE = Rule(
    slug="part-larger-than-goods",
    severity=Severity.error,
    why="The cutter finds out with the goods on the table, and turns or pieces the part.",
    remedy="Make the part smaller, divide it, buy wider goods, or let the grain be free if that is true.",
    check=check,
    bad="""
parts/panel.yaml: {outline: {rectangle: {width: 1600 mm, height: 1700 mm}}}
""",
    good="""
parts/panel.yaml: {outline: {rectangle: {width: 1600 mm, height: 1400 mm}}}
""",
    follows_from=("shape-impossible", "expression-unreadable"),
)
