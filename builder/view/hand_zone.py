"""Where fingers stay out: the zone round needle, blade or heat at the start of the work.

Only in pictures of steps that warn of such a hazard by its name, at a machine that sews or presses.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Literal

from builder.geometry import Bounds, Line, Point, clip_area
from builder.model import (
    KINDS,
    Station,
    Step,
    say,
    show_quantity,
)
from builder.view.figure import Callout, Stroke
from builder.view.scene import SceneFeature

HANDS_OFF_MM = 30.0
"""How far fingers stay off where a station doesn't say. Common practice, no source."""
_HAZARDS = frozenset({"moving needle", "sharp blade", "hot blade", "hot surface", "crushing of hands"})
_CORNERS = 48


def hands_off(step: Step, station: Station, first: Literal["mm", "in"]) -> tuple[float, str]:
    """Radius of the zone, mm, and its words; (0, '') where a step warns of nothing that could hurt a hand there."""
    kind = KINDS.get(station.kind)
    if kind is None or not (kind.sews or kind.model == "cycle"):
        return 0.0, ""
    there = {*kind.hazards, *station.hazards} & _HAZARDS
    if not there.intersection(step.cautions):
        return 0.0, ""
    if station.hands_off is None:
        return HANDS_OFF_MM, say("hands out")
    return float(station.hands_off.value), say(
        "hands out, {distance}", distance=show_quantity(station.hands_off, first, both=False)
    )


def zone(
    now: Sequence[SceneFeature], start: Point | None, radius_mm: float, words: str, seen: Bounds
) -> tuple[tuple[Stroke, ...], tuple[Callout, ...]]:
    """The zone with its words, as much of it as is `seen`; nothing for a radius of 0 or where nothing is worked."""
    places = [one.placing.point(point) for one in now for point in one.shape.points[:1]]
    centre = start if start is not None else places[0] if places else None
    if not radius_mm or centre is None:
        return (), ()
    turns = [2 * math.pi * number / _CORNERS for number in range(_CORNERS)]
    ring = [(centre[0] + radius_mm * math.cos(turn), centre[1] + radius_mm * math.sin(turn)) for turn in turns]
    corners = clip_area([Line(a, b) for a, b in zip(ring, [*ring[1:], ring[0]], strict=True)], seen)
    if len(corners) < 3:
        return (), ()
    sides = tuple(Line(a, b) for a, b in zip(corners, (*corners[1:], corners[0]), strict=True) if a != b)
    at = max(corners, key=lambda point: (point[1], point[0]))
    return (Stroke("zone", "part", sides, closed=True),), (Callout(at, words),)
