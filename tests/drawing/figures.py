"""Figures to draw in tests: parts of the fictional Thornquay Bags, built by hand without the view room's logic."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise

from builder.geometry import Arc, Line, Point, Segment
from builder.view import Callout, DimensionLine, FigureView, Stroke


def ring_of(points: Iterable[Point]) -> tuple[Segment, ...]:
    """A closed polygon."""
    every = list(points)
    return tuple(Line(a, b) for a, b in zip(every, [*every[1:], every[0]], strict=True))


def line_of(*points: Point) -> tuple[Segment, ...]:
    """An open polyline."""
    return tuple(Line(a, b) for a, b in pairwise(points))


def rectangle(x: float, y: float, width: float, height: float) -> tuple[Segment, ...]:
    """A rectangle, counter-clockwise from its lower left."""
    return ring_of([(x, y), (x + width, y), (x + width, y + height), (x, y + height)])


def rounded(x: float, y: float, width: float, height: float, radius: float, top: float = 0.0) -> tuple[Segment, ...]:
    """A rectangle with rounded lower corners, and upper ones when `top` is above 0."""
    r, x1, y1 = radius, x + width, y + height
    path: list[Segment] = [Line((x + r, y), (x1 - r, y)), Arc((x1 - r, y), (x1, y + r), (x1 - r, y + r), False)]
    if top > 0:
        path += [
            Line((x1, y + r), (x1, y1 - top)),
            Arc((x1, y1 - top), (x1 - top, y1), (x1 - top, y1 - top), False),
            Line((x1 - top, y1), (x + top, y1)),
            Arc((x + top, y1), (x, y1 - top), (x + top, y1 - top), False),
            Line((x, y1 - top), (x, y + r)),
        ]
    else:
        path += [Line((x1, y + r), (x1, y1)), Line((x1, y1), (x, y1)), Line((x, y1), (x, y + r))]
    return (*path, Arc((x, y + r), (x + r, y), (x + r, y + r), False))


def circle(centre: Point, radius: float) -> tuple[Segment, ...]:
    """A whole circle."""
    at = (centre[0] + radius, centre[1])
    return (Arc(at, at, centre, False),)


def notch_top(x: float, y: float, depth: float = 4.0) -> Stroke:
    """A V in an upper edge."""
    return Stroke("notch", "part", line_of((x - depth * 0.8, y), (x, y - depth), (x + depth * 0.8, y)))


def figure(
    name: str, strokes: Iterable[Stroke], bounds: tuple[float, float, float, float], **more: object
) -> FigureView:
    """A figure view with the fields tests don't care about filled in."""
    base = FigureView(name, name.replace("-", " "), tuple(strokes), bounds, (), f"Drawing of {name}.")
    return replace(base, **more)  # type: ignore[arg-type]


PANEL = Stroke("cut edge", "part", rounded(0, 0, 310, 155, 12), True, "ground")


def plain_panel() -> FigureView:
    """A panel with a notch to look at, drill holes and the grain."""
    holes = Stroke("hole", "part", circle((104, 100), 1.5) + circle((104, 62), 1.5))
    return figure(
        "plain-panel",
        [PANEL, notch_top(90, 155), holes],
        (0, 0, 310, 155),
        side="right side",
        ring=((90, 155),),
        grain=90.0,
        callouts=(Callout((104, 81), "drill holes"),),
    )


def fold() -> FigureView:
    """A hem folded over, with its width."""
    return figure(
        "fold",
        [
            Stroke("cut edge", "part", rectangle(0, 0, 280, 140), True, "ground"),
            Stroke("fold", "now", line_of((0, 115), (280, 115))),
            Stroke("fold", "earlier", line_of((20, 0), (20, 140))),
        ],
        (0, 0, 280, 140),
        side="wrong side",
        callouts=(Callout((150, 115), "fold over, crease with the thumb", True),),
        dimensions=(DimensionLine((280, 115), (280, 140), (1, 0), "25 mm ±1 (1 in ±1/32)", True),),
    )


BOX = rectangle(110, 58, 38.1, 38)
CROSS = (Line((110, 58), (148.1, 96)), Line((148.1, 58), (110, 96)))


def box_and_cross(numbers: bool = True, bounds: tuple[float, float, float, float] = (0, 0, 325, 155)) -> FigureView:
    """A strip on a panel, its box and cross sewn now, with direction, order and both dimensions."""
    route = (
        Line((110, 96), (148.1, 96)),
        Line((148.1, 96), (148.1, 58)),
        Line((148.1, 58), (110, 58)),
        Line((110, 58), (110, 96)),
        Line((110, 96), (148.1, 58)),
        Line((148.1, 58), (148.1, 96)),
        Line((148.1, 96), (110, 58)),
    )
    path = (route[0], route[1], route[2], route[3], route[4], route[6])
    order = ("1", "2·6", "3", "4", "5", "7") if numbers else ()
    return figure(
        "box-and-cross",
        [
            PANEL,
            notch_top(90, 155),
            Stroke("strip", "part", rectangle(106.8, 52, 218.2, 50), True, "strip"),
            Stroke("box", "now", path, stitch="301", pitch=3.2, numbers=order),
        ],
        bounds,
        side="right side",
        route=route,
        start=(110, 96),
        end=(110, 58),
        dimensions=(
            DimensionLine((200, 96), (200, 102), (1, 0), "3.2 mm +1.5 −0 (1/8 in +1/16 −0)", True),
            DimensionLine((110, 58), (148.1, 58), (0, -1), "38 mm ±1 (1 1/2 in ±1/32)"),
        ),
    )


def bartack_row() -> FigureView:
    """Five bartacks in a row on a webbing, with their pitch."""
    tacks = [line_of(*((40 + 50 * i + 4 * (n % 2), 50 + n * 32 / 27) for n in range(28))) for i in range(5)]
    return figure(
        "bartack-row",
        [
            Stroke("cut edge", "part", rectangle(0, 0, 300, 130), True, "ground"),
            Stroke("strip", "earlier", rectangle(0, 46, 300, 40), True, "strip"),
            Stroke("seam", "earlier", line_of((0, 49), (300, 49)), stitch="301", pitch=3),
            *[Stroke("bartack", "now", path) for path in tacks],
        ],
        (0, 0, 300, 130),
        side="right side",
        start=(42, 66),
        end=(242, 66),
        dimensions=(
            DimensionLine((42, 50), (92, 50), (0, -1), "50 mm ±1 (1 31/32 in ±1/32)", True),
            DimensionLine((0, 50), (42, 50), (0, -1), "42 mm ±2"),
            DimensionLine((42, 82), (242, 82), (0, 1), "200 mm ±2"),
        ),
        callouts=(Callout((142, 66), "28 stitches each"),),
    )


def overlocked() -> FigureView:
    """A pocket with overlocked edges: now, and an earlier safety stitch."""
    edge = rounded(0, 0, 200, 120, 30)
    return figure(
        "overlocked-edge",
        [
            Stroke("cut edge", "part", edge, True, "ground"),
            Stroke("seam", "now", edge[-1:] + edge[:3], stitch="504", pitch=3),
            Stroke("seam", "earlier", edge[3:5], stitch="516", pitch=3),
            Stroke("seam", "part", line_of((30, 60), (170, 60)), stitch="401", pitch=3),
        ],
        (0, 0, 200, 120),
        side="right side",
        route=edge[-1:] + edge[:3],
        start=edge[-1].start,
        end=edge[2].end,
        callouts=(Callout((100, 60), "chain stitch"),),
    )


def bound() -> FigureView:
    """A flap bound all round with tape."""
    edge = rounded(0, 0, 240, 150, 40, top=15)
    return figure(
        "binding",
        [Stroke("cut edge", "part", edge, True, "ground"), Stroke("binding", "now", edge, True)],
        (0, 0, 240, 150),
        side="right side",
        route=edge,
        start=edge[0].start,
        end=edge[0].start,
        grain=0.0,
        callouts=(Callout((240, 100), "tape ends overlap 20 mm"), Callout((0, 20), "ease the curve")),
        dimensions=(DimensionLine((0, 0), (240, 0), (0, -1), "240 mm ±2 (9 7/16 in ±1/16)"),),
    )


def wrong_side() -> FigureView:
    """The panel turned over: the lines of a sewn box from behind."""
    return figure(
        "wrong-side",
        [
            replace(PANEL, fill="wrong"),
            notch_top(220, 155),
            Stroke("box", "earlier", rectangle(160, 58, 38, 38) + CROSS_BACK, stitch="301", pitch=3.2),
        ],
        (0, 0, 310, 155),
        side="wrong side",
        ring=((179, 77),),
        grain=45.0,
        callouts=(Callout((179, 77), "no loops, no skipped stitches", True),),
    )


CROSS_BACK = (Line((160, 58), (198, 96)), Line((198, 58), (160, 96)))


def long_webbing() -> FigureView:
    """A thin webbing, broken to be seen."""
    return figure(
        "long-webbing",
        [
            Stroke("cut edge", "part", rectangle(0, 0, 1200, 25), True, "strip"),
            Stroke("seam", "earlier", line_of((60, 3), (1140, 3)), stitch="301", pitch=4),
            Stroke("fold", "part", line_of((30, 0), (30, 25))),
            Stroke("box", "now", rectangle(36, 4, 25, 17), stitch="301", pitch=3),
        ],
        (0, 0, 1200, 25),
        side="right side",
        route=rectangle(36, 4, 25, 17),
        start=(36, 4),
        end=(36, 4),
        dimensions=(
            DimensionLine((0, 0), (1200, 0), (0, -1), "1200 mm ±5 (47 1/4 in ±3/16)", True),
            DimensionLine((0, 25), (30, 25), (0, 1), "30 mm ±1 (1 3/16 in ±1/32)"),
            DimensionLine((1200, 0), (1200, 25), (1, 0), "25 mm"),
        ),
        callouts=(Callout((30, 12.5), "fold"),),
    )


def holes_and_hardware() -> FigureView:
    """Holes punched now, an eyelet and a buckle set earlier."""
    buckle = rounded(150, 30, 50, 30, 6, top=6)
    return figure(
        "holes-and-hardware",
        [
            Stroke("cut edge", "part", rounded(0, 0, 220, 90, 10, top=10), True, "ground"),
            Stroke("hole", "now", tuple(s for i in range(4) for s in circle((30 + 20 * i, 45), 2.5))),
            Stroke("hardware", "part", circle((125, 45), 7)),
            Stroke("hardware", "earlier", buckle),
        ],
        (0, 0, 220, 90),
        side="right side",
        callouts=(Callout((90, 45), "punch 5 mm", True), Callout((125, 45), "eyelet"), Callout((175, 60), "buckle")),
        dimensions=(
            DimensionLine((30, 45), (50, 45), (0, 1), "20 mm ±0.5 (25/32 in ±1/64)", True),
            DimensionLine((0, 45), (30, 45), (0, -1), "30 mm ±1"),
            DimensionLine((0, 0), (0, 45), (-1, 0), "45 mm"),
        ),
    )


def sub_assembly() -> FigureView:
    """A pocket laid on a panel, sewn round on three sides."""
    pocket = rounded(60, 30, 120, 80, 10)
    seam = line_of((63, 110), (63, 33), (177, 33), (177, 110))
    return figure(
        "sub-assembly",
        [
            Stroke("cut edge", "part", rectangle(0, 0, 240, 150), True, "ground"),
            notch_top(120, 150),
            Stroke("cut edge", "part", pocket, True, "ground"),
            Stroke("seam", "now", seam, stitch="301", pitch=3, numbers=("1", "2", "3")),
            Stroke("bartack", "earlier", line_of((60, 106), (72, 106))),
            Stroke("bartack", "earlier", line_of((168, 106), (180, 106))),
        ],
        (0, 0, 240, 150),
        side="right side",
        route=seam,
        start=(63, 110),
        end=(177, 110),
        dimensions=(
            DimensionLine((0, 110), (60, 110), (0, 1), "60 mm ±1 (2 3/8 in ±1/32)"),
            DimensionLine((60, 60), (63, 60), (0, 1), "3 mm ±0.5", True),
        ),
        callouts=(Callout((120, 110), "pocket mouth stays open"),),
    )


def tall_strap() -> FigureView:
    """A long strap drawn upright."""
    return figure(
        "tall-strap",
        [
            Stroke("cut edge", "part", rectangle(0, 0, 38, 900), True, "strip"),
            Stroke("seam", "now", line_of((4, 20), (4, 880)), stitch="301", pitch=4),
        ],
        (0, 0, 38, 900),
        side="right side",
        route=line_of((4, 20), (4, 880)),
        start=(4, 20),
        end=(4, 880),
        dimensions=(DimensionLine((38, 0), (38, 900), (1, 0), "900 mm ±4 (35 7/16 in ±1/8)"),),
    )


def fused() -> FigureView:
    """Grain, side and many labels on a curved piece, all stitch types."""
    curve = (
        Line((0, 0), (200, 0)),
        Arc((200, 0), (200, 160), (200, 80), False),
        Line((200, 160), (0, 160)),
        Line((0, 160), (0, 0)),
    )
    rows = [
        Stroke("seam", "part", line_of((20, 20 + 22 * i), (150, 20 + 22 * i)), stitch=stitch, pitch=3)
        for i, stitch in enumerate(("301", "401", "304", "605", "514", "101"))
    ]
    return figure(
        "stitch-types",
        [
            Stroke("cut edge", "part", curve, True, "ground"),
            Stroke("notch", "part", line_of((280 - 0.1, 76), (275, 80), (280 - 0.1, 84))),
            *rows,
        ],
        (0, 0, 280, 160),
        side="right side",
        grain=90.0,
        callouts=(Callout((280, 80), "centre notch"), Callout((150, 42), "chain"), Callout((150, 86), "cover")),
    )


GALLERY = (
    plain_panel,
    fold,
    box_and_cross,
    bartack_row,
    overlocked,
    bound,
    wrong_side,
    long_webbing,
    holes_and_hardware,
    sub_assembly,
    tall_strap,
    fused,
)


def slanted(turn_deg: float) -> FigureView:
    """A panel with a dimension and a seam along a slanted line."""
    way = (math.cos(math.radians(turn_deg)), math.sin(math.radians(turn_deg)))
    end = (100 + 60 * way[0], 80 + 60 * way[1])
    return figure(
        f"slanted-{turn_deg:g}",
        [PANEL, Stroke("seam", "now", line_of((100, 80), end), stitch="301", pitch=3)],
        (0, 0, 310, 155),
        dimensions=(DimensionLine((100, 80), end, (-way[1], way[0]), "60 mm ±1 (2 3/8 in ±1/32)", True),),
        side="right side",
    )
