"""A notch that meets nothing."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import Inner, in_size, inner_parts, length_words
from builder.finding import Severity
from builder.geometry import PartShape, Path, Point
from builder.model import Notch

MEETS_MM = 2.0
"""Notches this near to each other are laid on one another. Common practice, no source."""
_MEANT_MM = 12.0
"""Farther apart two notches on one edge are two marks, not one missed. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class _Placed:
    """A notch where it lies in a sub-assembly; `meets` is the base part it should meet, '' for any."""

    part: str
    name: str
    number: int
    at: Point
    meets: str


def check(subject: Subject) -> Iterator[Problem]:
    """Notches of the parts inside each sub-assembly, in every size, whichever side of a part is up."""
    seen: set[tuple[str, str]] = set()
    for size, shape in subject.shapes():
        inner = list(inner_parts(shape))
        notches = list(_notches(subject, inner))
        inside = {one.shape.name for one in inner}
        for one in notches:
            if (one.part, one.name) in seen or one.meets not in inside:
                continue
            nearest = _nearest(one, (other for other in notches if other.part == one.meets))
            if nearest > MEETS_MM:
                seen.add((one.part, one.name))
                away = f"{length_words(nearest, subject.model)} away" if nearest < math.inf else "nowhere: it has none"
                message = f"in {shape.name} the nearest notch of {one.meets} is {away}{in_size(size)}"
                about = (f"feature:{one.name}", f"part:{one.meets}")
                yield Problem(("part", one.part), ("features", one.name, "meets"), message, about)
        yield from _missed(subject, shape, inner, notches, seen, size)


def _notches(subject: Subject, inner: Iterable[Inner]) -> Iterator[_Placed]:
    for number, one in enumerate(inner):
        for name, feature in one.shape.features.items():
            if isinstance(feature.feature, Notch):
                state = subject.model.states.get(feature.feature.meets or "")
                at = one.placing.point(feature.points[0])
                yield _Placed(one.shape.name, name, number, at, state.base if state is not None else "")


def _nearest(one: _Placed, others: Iterable[_Placed]) -> float:
    return min((math.dist(one.at, other.at) for other in others if other.number != one.number), default=math.inf)


def _missed(
    subject: Subject,
    shape: PartShape,
    inner: list[Inner],
    notches: list[_Placed],
    seen: set[tuple[str, str]],
    size: str,
) -> Iterator[Problem]:
    """Notches that say nothing of a partner, and miss by a little one on an edge that lies on theirs."""
    alone = [one for one in notches if _nearest(one, notches) > MEETS_MM and (one.part, one.name) not in seen]
    edges = {one.number: _edge(inner[one.number], one) for one in alone}
    for index, one in enumerate(alone):
        for other in alone[index + 1 :]:
            apart = math.dist(one.at, other.at)
            if one.part == other.part or apart > _MEANT_MM or (other.part, other.name) in seen:
                continue
            if _same_line(edges[one.number], edges[other.number]):
                seen.add((other.part, other.name))
                words = length_words(apart, subject.model)
                message = f"in {shape.name} it misses the notch {one.name} of {one.part} by {words}{in_size(size)}"
                about = (f"feature:{other.name}", f"part:{one.part}")
                yield Problem(("part", other.part), ("features", other.name), message, about, key=True)


def _edge(inner: Inner, notch: _Placed) -> tuple[Point, Point] | None:
    """Both ends of the edge a notch is cut in, where it lies in the sub-assembly."""
    feature = inner.shape.part.features[notch.name]
    edge = inner.shape.outline.edge(feature.notch) if isinstance(feature, Notch) else ()
    if not edge:
        return None
    path: Path = inner.placing.path(Path(tuple(edge)))
    return path.start, path.end


def _same_line(one: tuple[Point, Point] | None, other: tuple[Point, Point] | None) -> bool:
    """Do two edges lie on each other from end to end?"""
    if one is None or other is None:
        return False
    (a, b), (c, d) = one, other
    straight = max(math.dist(a, c), math.dist(b, d))
    return min(straight, max(math.dist(a, d), math.dist(b, c))) <= MEETS_MM


RULE = Rule(
    slug="notch-without-partner",
    severity=Severity.warning,
    why="The operator lays notch on notch: where they don't agree, the piece comes out twisted.",
    remedy="Move one of the two notches, or correct `meets:`.",
    check=check,
    bad="""
operations/cut-panel.yaml: {makes: {panel: 1, lining: 1}}
operations/sew-hem.yaml: {needs: {panel: 1, lining: 1}}
parts/lining.yaml:
  part: lining
  title: Lining
  material: cloth
  outline: {rectangle: {width: 300 mm, height: 200 mm, corner: 10 mm}}
  features: {top-notch: {notch: top, at: {left: 90 mm}, meets: panel}}
parts/panel-hemmed.yaml:
  part: panel-hemmed
  title: Lined panel
  from: [{part: panel}, {part: lining, layer: 2}]
""",
    good="""
operations/cut-panel.yaml: {makes: {panel: 1, lining: 1}}
operations/sew-hem.yaml: {needs: {panel: 1, lining: 1}}
parts/lining.yaml:
  part: lining
  title: Lining
  material: cloth
  outline: {rectangle: {width: 300 mm, height: 200 mm, corner: 10 mm}}
  features: {top-notch: {notch: top, at: {left: 100 mm}, meets: panel}}
parts/panel-hemmed.yaml:
  part: panel-hemmed
  title: Lined panel
  from: [{part: panel}, {part: lining, layer: 2}]
""",
    follows_from=("shape-impossible", "expression-unreadable", "name-unknown"),
)
