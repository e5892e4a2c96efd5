"""Places measured from another feature: `at: {from: zip, right of: 12 mm, bottom: 0 mm}`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Protocol

from builder.geometry.outline import Outline
from builder.geometry.segment import Bounds, box_around
from builder.geometry.shape import FeatureShape, PartShape
from builder.geometry.vector import GeometryFault, Point
from builder.model import At, Expression, Quantity, Values

GAPS = ("right_of", "left_of", "above", "below")
"""Fields of a place that are gaps beside another feature."""


class Lengths(Protocol):
    """Reads typed lengths and places; the part builder is one."""

    @property
    def values(self) -> Values: ...

    @property
    def seam_line(self) -> Outline | None: ...

    def mm(self, typed: Quantity | Expression | None, default: float = 0.0, short: str = "") -> float: ...

    def corner(self, at: At | None, box: Bounds, size: tuple[float, float], owner: str) -> Point: ...

    def component_shape(self, name: str) -> PartShape | None: ...


@dataclass(frozen=True, slots=True)
class Measured:
    """Lengths that know the features above in the file, so that a place may be measured from one."""

    lengths: Lengths
    before: Mapping[str, FeatureShape]

    @property
    def values(self) -> Values:
        """Values of the size built."""
        return self.lengths.values

    @property
    def seam_line(self) -> Outline | None:
        """The seam line of the part, where it has one."""
        return self.lengths.seam_line

    def mm(self, typed: Quantity | Expression | None, default: float = 0.0, short: str = "") -> float:
        """A typed length in mm."""
        return self.lengths.mm(typed, default, short)

    def component_shape(self, name: str) -> PartShape | None:
        """The shape of another part."""
        return self.lengths.component_shape(name)

    def corner(self, at: At | None, box: Bounds, size: tuple[float, float], owner: str) -> Point:
        """Lower left corner of something of a size; in the box of another feature where `at` names one."""
        if at is None or at.from_ is None:
            return self.lengths.corner(at, box, size, owner)
        if at.from_ not in self.before:
            raise GeometryFault(f"{owner} is measured from {at.from_}, which stands below it in the file")
        box = feature_bounds(self.before[at.from_])
        x, y = self.lengths.corner(at.model_copy(update=dict.fromkeys(("from_", *GAPS))), box, size, owner)
        if at.right_of is not None:
            x = box[2] + self.mm(at.right_of, short=f"{owner}.right-of")
        elif at.left_of is not None:
            x = box[0] - self.mm(at.left_of, short=f"{owner}.left-of") - size[0]
        if at.above is not None:
            y = box[3] + self.mm(at.above, short=f"{owner}.above")
        elif at.below is not None:
            y = box[1] - self.mm(at.below, short=f"{owner}.below") - size[1]
        return x, y


def refuse_from(at: At, owner: str) -> None:
    """A place that can't be measured from a feature: raises GeometryFault where it is."""
    if at.from_ is not None:
        raise GeometryFault(f"{owner} can't be placed from {at.from_}: `from:` measures between features of one part")
    gap = next((name for name in GAPS if getattr(at, name) is not None), None)
    if gap is not None:
        raise GeometryFault(f"{owner} is placed `{gap.replace('_', ' ')}` of nothing: name a feature with `from:`")


def feature_bounds(feature: FeatureShape) -> Bounds:
    """Box around all of a feature; of round pieces, around their centres."""
    boxes = [path.bounds() for path in feature.paths]
    boxes += [region.bounds() for region in feature.regions]
    boxes += [(x, y, x, y) for x, y in feature.points]
    return box_around(boxes)
