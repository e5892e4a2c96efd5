"""A section: the goods cut across a seam, as they lie under the needle, the seam at 0 and its edge to the right."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from builder.geometry.cross_cut import CutAsk, done_folds, longest_runs, middle_of, plies_along
from builder.geometry.ply import Pierced, Plies, Ply
from builder.geometry.ray import Ray, across, beside
from builder.geometry.shape import FeatureShape, PartShape
from builder.geometry.vector import Point, left
from builder.model import Box, Seam

LIMIT_MM = 40.0
"""Goods whose edge is farther from the seam than this go on, as far as the seam is concerned. Ours, no source."""


# The sides of a box are level or upright, its cross is neither.
_LEVEL = 1e-9


@dataclass(frozen=True, slots=True)
class Section:
    """A seam cut across.

    goods  : plies from the lowest to the highest; the needle comes from above
    seam   : what the seam itself goes through, at 0
    joined : the other part its `joins:` names lies under it
    """

    part: str
    feature: str
    goods: Plies
    seam: Pierced
    joined: bool = False

    @property
    def others(self) -> tuple[Pierced, ...]:
        """Other stitches the cut goes through, and further lines of the seam itself."""
        return tuple(one for one in self.goods.pierced if one is not self.seam)

    def held(self) -> tuple[tuple[Ply, ...], ...]:
        """The pieces of goods the seam holds, each with all its plies, lowest first."""
        by_name = {one.name: one for one in self.goods.plies}
        groups = (group for group in self.goods.pieces() if self.seam.plies & set(group))
        return tuple(tuple(by_name[name] for name in group) for group in groups)

    def spans(self) -> tuple[tuple[float, float], ...]:
        """From where to where each of them reaches, mm from the seam."""
        return tuple((min(one.low.at for one in held), max(one.high.at for one in held)) for held in self.held())


def section_of(shape: PartShape, name: str, ask: CutAsk) -> Section | None:
    """The section of a seam, a box or a bartack of a part; None where its line lies on no goods.

    ask.done : holds the seam itself
    """
    found = _own(shape, shape.features[name], ask)
    if found is None:
        return None
    feature = shape.features[name].feature
    if isinstance(feature, Seam) and feature.joins:
        other = _joined(shape.name, name, feature, ask)
        if other is not None:
            return _together(found, other)
    return _turned(found) if feature.side == "wrong" else found


def _own(shape: PartShape, one: FeatureShape, ask: CutAsk) -> Section | None:
    """The section with the right side up."""
    cuts = (_cut_at(shape, one, point, way, ask) for point, way in _cuts(one))
    found = [cut for cut in cuts if cut is not None]
    return max(found, key=_tells, default=None)


def _cuts(one: FeatureShape) -> Iterator[tuple[Point, Point]]:
    """Where a feature may be cut: a seam across the middle of its longest runs, an area both ways."""
    if one.regions and not one.paths:
        for way in ((1.0, 0.0), (0.0, 1.0)):
            yield middle_of(one.regions[0]), way
        return
    if isinstance(one.feature, Box):
        for side in one.paths[0].runs:
            if min(map(abs, side.tangent_at(0.5))) < _LEVEL:
                yield side.point_at(0.5), left(side.tangent_at(0.5))
        return
    for run in longest_runs(one):
        yield run.point_at(0.5), left(run.tangent_at(0.5))


def _tells(cut: Section) -> tuple[int, int, int, float]:
    """How much a cut tells: plies held, bends near the seam, ends near it, and the nearest of them."""
    ends = [abs(end.at) for one in cut.goods.plies for end in (one.low, one.high) if abs(end.at) < LIMIT_MM]
    bends = sum(abs(one.at) < LIMIT_MM for one in cut.goods.bends)
    return len(cut.seam.plies), bends, len(ends), -round(min(ends, default=LIMIT_MM), 3)


def _cut_at(shape: PartShape, one: FeatureShape, point: Point, way: Point, ask: CutAsk) -> Section | None:
    """The section through a place of the flat part, which may lie folded by now."""
    ray = Ray(point, way)
    for line in done_folds(shape, ask):
        if beside(line, ray.origin) < 0:
            ray = replace(ray.mirrored(line), origin=across(ray.origin, line))
    goods = plies_along(shape, ray, ask)
    own = [cut for cut in goods.pierced if cut.part == shape.name and cut.feature == one.name and cut.plies]
    if not own:
        return None
    seam = min(own, key=lambda cut: abs(cut.at))
    return _edge_right(Section(shape.name, one.name, goods.moved(-seam.at), replace(seam, at=0.0)))


def _edge_right(found: Section) -> Section:
    """The section with the nearest edge of what the seam holds to the right; a hem's edge is its fold."""
    spans = found.spans()
    right, left_ = _nearness([high for _, high in spans]), _nearness([-low for low, _ in spans])
    goods = found.goods.moved(0.0, mirrored=True) if left_ < right else found.goods
    return _settled(replace(found, goods=goods))


def _nearness(reaches: list[float]) -> tuple[int, float]:
    """Smaller for a side with more ends near the seam; of as many, for the side with the nearest."""
    return -sum(one < LIMIT_MM for one in reaches), round(min(reaches), 3)


def _settled(found: Section) -> Section:
    """With `seam` taken from its goods again."""
    own = (one for one in found.goods.pierced if (one.part, one.feature) == (found.part, found.feature) and one.plies)
    return replace(found, seam=min(own, key=lambda one: abs(one.at)))


def _turned(found: Section) -> Section:
    return _settled(replace(found, goods=found.goods.turned()))


def _joined(part: str, name: str, feature: Seam, ask: CutAsk) -> Section | None:
    """The section of the seam line of the other part."""
    for full in feature.joins:
        other, _, line = full.partition("/")
        if (other, line) == (part, name):
            continue
        shape = ask.shape_of(other)
        if shape is not None and line in shape.features:
            return _own(shape, shape.features[line], replace(ask, done={*ask.done, (shape.name, line)}))
    return None


def _together(above: Section, below: Section) -> Section:
    """Two parts right sides together, the one whose seam it is on top. Common practice, no source."""
    own = (below.part, below.feature)
    rest = tuple(one for one in below.goods.pierced if (one.part, one.feature) != own)
    under = replace(below.goods, pierced=rest).renamed(lambda name: f"{name}|other")
    goods = above.goods.turned().over(under)
    held = above.seam.plies | {f"{name}|other" for name in below.seam.plies}
    pierced = tuple(replace(one, plies=held) if one == above.seam else one for one in goods.pierced)
    return _settled(replace(above, goods=replace(goods, pierced=pierced), joined=True))
