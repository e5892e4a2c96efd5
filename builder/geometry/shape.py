"""What a built shape is: parts and features in millimetres. Building them is shapes.py."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from builder.geometry.outline import Outline
from builder.geometry.path import Path
from builder.geometry.placing import Placing
from builder.geometry.segment import Bounds, Line
from builder.geometry.vector import Point
from builder.model import Feature, Part


@dataclass(frozen=True, slots=True)
class FeatureShape:
    """A feature on its part, mm, in the part's coordinates.

    paths   : lines sewn, folded or cut, each in working order
    regions : areas covered (a strip, a bartack, a slot, a label, hardware that isn't round)
    points  : centres of holes, slots, hardware and bartacks, places of notches, in working order
    size    : (diameter, opening or 0) of round things, (length, width) of bartacks, slots, boxes, labels and other
              hardware, (folded under, 0) of strips,
              (depth, taken by each) of pleats, (width, depth) of darts, (width, 0) of zips,
              (width, relaxed) of elastic, (0, 0) else
    marks   : lines drawn that nobody sews or folds, by their role: of pleats, darts, zips and elastic (shaping.py)
    """

    name: str
    kind: str
    feature: Feature
    paths: tuple[Path, ...] = ()
    regions: tuple[Outline, ...] = ()
    points: tuple[Point, ...] = ()
    size: tuple[float, float] = (0.0, 0.0)
    marks: tuple[tuple[str, Path], ...] = ()


@dataclass(frozen=True, slots=True)
class PlacedPart:
    """A part inside a sub-assembly: `name` as typed (a state or base part), where it lies, side up, layer."""

    name: str
    shape: PartShape
    placing: Placing
    side: str
    layer: int


@dataclass(frozen=True, slots=True)
class PartShape:
    """A base part in one size.

    seam_line   : where the part has an allowance; `outline` is always the cut edge
    typed_seam  : the typed width and height are those of the seam line
    centre_line : of a part whose half is typed
    drawn       : a hash of the lines of its drawing, '' for a part that isn't drawn
    """

    name: str
    part: Part
    outline: Outline
    features: Mapping[str, FeatureShape]
    components: tuple[PlacedPart, ...] = ()
    seam_line: Outline | None = None
    typed_seam: bool = False
    centre_line: Line | None = None
    drawn: str = ""

    @property
    def bounds(self) -> Bounds:
        """Box around the outline: left, bottom, right, top in mm."""
        return self.outline.bounds()
