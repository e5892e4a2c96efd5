"""The strokes of a figure as line work: every role and state in its own line, in the order they lie on each other.

Also says what labels have to keep clear of. Labels themselves are placed later (layout.py).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from statistics import median

from builder.drawing import look, round_art
from builder.drawing.area import Area
from builder.drawing.box import Box, Trace, traces_of
from builder.drawing.dash import centre_dashes, dash_dot, dashed
from builder.drawing.frame import Frame
from builder.drawing.nearness import distance
from builder.drawing.notch import Cut, cut_of, notched
from builder.drawing.ply_art import needle_art, ply_art, wrong_side_art
from builder.drawing.run import (
    Run,
    chain_d,
    chains,
    is_ring,
    offset_points,
    path_d,
    points_of,
    run_of,
    smooth_stretches,
)
from builder.drawing.shaping_art import ART
from builder.drawing.stitch_line import Pen, bartack_art, seam_art
from builder.drawing.svg import XY, element, filled, polyline_d, stroke
from builder.drawing.thread_art import goods_art, puncture_art, thread_art
from builder.view import FigureView, Stroke

# A line this near to an edge lies on it, mm printed; two edges whose distances differ by less are as near.
_ON_EDGE, _ALIKE = 0.5, 0.05
# The side of a binding on the goods lies this far inside its seam; its width is drawn up to this.
_BEYOND_SEAM, _WIDEST_BAND = 0.8, 6.0
# Line width of a label's folded side.
_FOLDED = 1.2


@dataclass
class LineWork:
    """What is drawn of the part, and what it covers.

    body    : markup, lowest layer first; `over` lies on top of it
    hatched : (index in body, area): where the hatch of a wrong side goes once the labels are placed
    zones   : the same for what fingers stay out of
    edges   : the cut edges; `areas` the areas they close, largest first
    traces, blocked : lines and places labels keep clear of
    """

    frame: Frame
    body: list[str] = field(default_factory=list)
    over: list[str] = field(default_factory=list)
    hatched: list[tuple[int, list[XY]]] = field(default_factory=list)
    zones: list[tuple[int, list[XY]]] = field(default_factory=list)
    edges: list[Run] = field(default_factory=list)
    areas: list[list[XY]] = field(default_factory=list)
    traces: list[Trace] = field(default_factory=list)
    blocked: list[Box] = field(default_factory=list)

    def trace(self, runs: Sequence[Run], weight: float = 1.0) -> None:
        """Let labels keep clear of the runs."""
        for run in runs:
            self.traces += traces_of(run.points, weight)

    def edge_side(self, point: XY, way: XY) -> float:
        """Where the goods lie, seen from a seam over the edge: mm to the right on paper, negative to the left.

        On the edge itself a seam reaches inward; a line inside reaches out to the edge if that is near.
        """
        right = (-way[1], way[0])
        probes = [(point[0] + right[0] * side, point[1] + right[1] * side) for side in (0.6, -0.6)]
        within = [any(Area(area).holds(probe) for area in self.areas) for probe in probes]
        if within[0] != within[1]:
            return 1.7 if within[0] else -1.7
        near = [_nearest(probe, self.edges) for probe in probes]
        reach = min(max(_nearest(point, self.edges), 1.2), 2.4)
        if abs(near[0] - near[1]) < _ALIKE and self.areas:
            # Midway between two edges, say of a cover and its padding, it reaches to the outer one.
            centre = _round_points(self.areas[0]).centre
            near = [-math.dist(probe, centre) for probe in probes]
        return reach if near[0] <= near[1] else -reach

    def band(self, chain: Sequence[Run]) -> tuple[float, float]:
        """The two sides of a binding along a chain, mm to the right on paper: the edge, and the side on the goods."""
        longest = max(chain, key=lambda run: run.length)
        # Other edges may cross or come near at one place, so the middle of several answers counts.
        probes = [longest.at(share) for share in (0.1, 0.25, 0.45, 0.7, 0.85)]
        aside = median(self.edge_side(*probe) for probe in probes)
        off = median(self._outermost(point, way, aside) for point, way in probes)
        if off < _ON_EDGE:
            return 0.0, math.copysign(look.BINDING_WIDTH, aside)
        return math.copysign(min(off, _WIDEST_BAND), aside), math.copysign(_BEYOND_SEAM, -aside)

    def _outermost(self, point: XY, way: XY, aside: float) -> float:
        """Distance of the farthest edge within a band's width on one side: a binding takes in all layers."""
        found = [_nearest(point, self.edges)]
        for edge in self.edges:
            off = _nearest(point, [edge])
            reached = (point[0] - way[1] * math.copysign(off, aside), point[1] + way[0] * math.copysign(off, aside))
            if off <= _WIDEST_BAND and _nearest(reached, [edge]) < _ON_EDGE:
                found.append(off)
        return max(found)


def _nearest(point: XY, edges: Sequence[Run]) -> float:
    return min([distance(point, edge.pieces) for edge in edges], default=1.7)


def line_work(figure: FigureView, frame: Frame) -> LineWork:
    """All strokes of a figure on paper."""
    work = LineWork(frame)
    runs = [[run_of(segment, frame) for segment in one.path] for one in figure.strokes]
    pairs = [(one, found) for one, found in zip(figure.strokes, runs, strict=True) if found]
    for one, found in pairs:
        if one.role == "cut edge":
            work.edges += found
            if one.closed:
                work.areas.append(points_of(found))
    work.areas.sort(key=lambda area: -abs(_area(area)))
    waiting = [
        cut_of(chain, one.when, work.edges, one.fill)
        for one, found in pairs
        if one.role == "notch"
        for chain in chains(found)
    ]
    for one, found in pairs:
        if one.role == "cut edge":
            waiting = _cut_edge(work, one, found, waiting)
        elif one.role != "notch":
            _DRAWN.get(one.role, _seam)(work, one, found)
    for cut in waiting:
        _laid_over(work, cut)
    return work


def _area(points: Sequence[XY]) -> float:
    return sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(points, [*points[1:], points[0]], strict=True)) / 2


def pen_of(one: Stroke, width: float) -> Pen:
    """Colour and width of a stroke: what is done now in the accent and thick, earlier work grey and thin."""
    if one.when == "now":
        return Pen(look.ACCENT, look.NOW)
    if one.when == "earlier":
        return Pen(look.EARLIER, min(width, look.THIN))
    return Pen(look.INK, width)


def _fill(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    tone = {"ground": look.GROUND, "wrong": look.WRONG, "strip": look.MANILA, "taken": look.MANILA_PALE}.get(one.fill)
    if tone is None or not one.closed:
        return
    if one.fill == "strip" and one.when == "earlier":
        tone = look.MANILA_PALE
    work.body.append(filled(path_d(runs), tone))
    if one.fill == "wrong":
        work.hatched.append((len(work.body), points_of(runs)))
        work.body.append("")


def _cut_edge(work: LineWork, one: Stroke, runs: Sequence[Run], cuts: list[Cut]) -> list[Cut]:
    """An edge with its notches. Returns the notches that don't lie on it."""
    opened: list[Run] = []
    for run in runs:
        pieces, done = notched(run, cuts)
        opened += pieces
        cuts = [cut for cut in cuts if cut not in done]
        work.over += [_accent_v(cut) for cut in done if cut.when == "now"]
        work.blocked += [_round_points(cut.v) for cut in done]
    _fill(work, one, opened)
    pen = pen_of(one, look.CUT_EDGE)
    width = 0.5 if one.when == "earlier" else pen.width
    work.body.append(stroke(path_d(opened), pen.colour, width, join="round"))
    work.trace(opened)
    return cuts


def _accent_v(cut: Cut) -> str:
    return stroke(polyline_d(cut.v), look.ACCENT, look.NOW, join="round", cap="round")


def _laid_over(work: LineWork, cut: Cut) -> None:
    """A notch on a curved edge: the edge is covered between its lips and the V drawn over it."""
    work.body.append(stroke(polyline_d(cut.lips), look.GROUND, look.CUT_EDGE + 0.5))
    work.body.append(filled(polyline_d(cut.v, closed=True), look.GROUND))
    colour = {"now": look.ACCENT, "earlier": look.EARLIER}.get(cut.when, look.INK)
    work.body.append(stroke(polyline_d(cut.v), colour, look.CUT_EDGE, join="round", cap="round"))
    work.blocked.append(_round_points(cut.v))
    work.traces += traces_of(cut.v)


def _round_points(points: Sequence[XY]) -> Box:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs), max(ys))


def _strip(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    _laid_on(work, one, runs, 0.7)


def _laid_on(work: LineWork, one: Stroke, runs: Sequence[Run], now: float) -> None:
    """Something with square corners that lies on the part. now : width of its edge where it is laid now"""
    _fill(work, one, runs)
    pen = pen_of(one, look.STRIP_EDGE)
    width = now if one.when == "now" else pen.width
    work.body.append(stroke(path_d(runs), pen.colour, width, join="miter"))
    work.trace(runs)


def _fold(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    pen = pen_of(one, 0.4)
    work.body += [dash_dot(run, pen.colour, pen.width) for run in smooth_stretches(runs)]
    work.trace(runs)


def _centre_line(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    work.body += [centre_dashes(run, look.INK, look.HAIR) for run in runs]
    work.trace(runs)


def _seam(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    art = seam_art(runs, one.stitch, one.pitch * work.frame.scale, pen_of(one, 0.45), work.edge_side)
    (work.over if one.when == "now" else work.body).extend(art)
    work.trace(runs)


def _bartack(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    art = bartack_art(runs, pen_of(one, 0.4))
    (work.over if one.when == "now" else work.body).extend(art)
    # Its stitches are many, and labels keep off the whole of it anyway.
    work.blocked += [_round_points(points_of(chain)).grown(0.3) for chain in chains(runs)]


def _lead(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    """A thin line from a thing to where it comes to lie."""
    work.body += [dash_dot(run, look.EARLIER, look.HAIR) for run in runs]
    work.trace(runs, 0.5)


def _hidden(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    """An edge or a seam under the goods: short dashes, as on any drawing."""
    for run in smooth_stretches(runs):
        work.body.append(dashed(run, (1.6, 1.1), look.INK, look.THIN))
    work.trace(runs, 0.6)


def _zone(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    """Where fingers stay out: a broken edge, its hatch falling the other way than that of a wrong side."""
    work.zones.append((len(work.body), points_of(runs)))
    work.body.append("")
    work.body += [dashed(run, (2.4, 1.2), look.INK, look.THIN) for run in smooth_stretches(runs)]


def _piece(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    """A piece on its sheet: thinner than an edge by itself, as hundreds lie there."""
    _fill(work, one, runs)
    pen = pen_of(one, look.THIN)
    work.body.append(stroke(path_d(runs), pen.colour, 0.5 if one.when == "now" else pen.width, join="round"))


def _piece_top(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    work.body.append(stroke(path_d(runs), pen_of(one, 0.3).colour, 0.3, join="round"))


def _thread(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    work.body += thread_art(runs, one.fill, one.width * work.frame.scale, one.when == "earlier")
    work.trace(runs)


def _goods(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    work.body += goods_art(runs, one.fill)
    work.areas.append(points_of(runs))
    # Words may cross the ends of goods that go on, but not their surfaces.
    work.trace([run for run in runs if abs(run.start[1] - run.end[1]) < abs(run.start[0] - run.end[0])], 0.5)


def _puncture(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    work.body += puncture_art(runs, one.width * work.frame.scale)


def _hole(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    pen = pen_of(one, look.THIN)
    draw = round_art.holed if one.role == "hole" else round_art.drilled
    for chain in chains(runs):
        art, box = draw(*round_art.round_size(chain), pen.colour, 0.55 if one.when == "now" else pen.width)
        work.body.append(art)
        work.blocked.append(box)


def _slot(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    pen = pen_of(one, look.THIN)
    for chain in chains(runs):
        shape = chain_d(chain, is_ring(chain))
        work.body.append(stroke(shape, pen.colour, 0.55 if one.when == "now" else pen.width, join="round"))
    work.trace(runs)


def _hardware(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    pen = pen_of(one, look.STRIP_EDGE)
    width = 0.6 if one.when == "now" else pen.width
    for chain in chains(runs):
        art, box = round_art.hardware(chain, one.fill, one.width * work.frame.scale, pen.colour, width)
        work.body.append(art)
        work.blocked.append(box)


def _tag(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    _laid_on(work, one, runs, 0.6)


def _tag_fold(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    """A folded side of a label is thicker, as two layers are."""
    work.body.append(stroke(path_d(runs), pen_of(one, look.STRIP_EDGE).colour, _FOLDED, cap="round"))


def _binding(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    """A band over the edge: from the edge to a little inside the line given, or inward when that is the edge."""
    pen = pen_of(one, look.STRIP_EDGE)
    width = 0.6 if one.when == "now" else pen.width
    tone = look.MANILA_PALE if one.when == "earlier" else look.MANILA
    for chain in chains(runs):
        points, closed = points_of(chain), is_ring(chain)
        sides = [_closed(offset_points(points, aside, closed), closed) for aside in work.band(chain)]
        band = polyline_d(sides[0]) + polyline_d(sides[1][::-1]).replace("M", "L" if not closed else "M", 1) + "Z"
        work.body.append(element("path", d=band, fill=tone, fill_rule="evenodd"))
        work.body.append(stroke("".join(map(polyline_d, sides)), pen.colour, width, join="round"))
        work.traces += [trace for side in sides for trace in traces_of(side)]
    if one.stitch:
        _seam(work, one, runs)


def _closed(points: list[XY], closed: bool) -> list[XY]:
    return [*points, points[0]] if closed else points


def _area_only(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    """Goods seen through a detail's window: their tone, and the line only where an edge stroke says so."""
    work.areas.append(points_of(runs))
    _fill(work, one, runs)


def _window(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    """The frame of a detail, on its locator: light under dark, so that it shows on line work."""
    work.over.append(stroke(path_d(runs), look.GROUND, 1.6, join="round"))
    work.over.append(stroke(path_d(runs), look.ACCENT, look.RING, join="round"))


def _ply(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    work.body += ply_art(runs, one.fill, one.width * work.frame.scale)
    work.trace(runs)


def _keep_clear(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    """Nothing drawn: no word stands about the line, where it would hide what lies there."""
    half = one.width * work.frame.scale / 2
    work.blocked += [_round_points(run.points).grown(half) for run in runs]


def _ply_wrong(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    work.body += wrong_side_art(runs, one.width * work.frame.scale)


def _needle(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    for run in runs:
        work.over += needle_art(run)
        work.blocked.append(_round_points(run.points).grown(0.9))


def _shaping(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    """A line of a pleat, a dart, a zip or elastic."""
    _fill(work, one, runs)
    work.body += ART[one.role](runs, pen_of(one, look.STRIP_EDGE), one.width * work.frame.scale)
    work.trace(runs)


def _taken(work: LineWork, one: Stroke, runs: Sequence[Run]) -> None:
    """Cloth a pleat or dart takes: its tone alone, under its lines."""
    _fill(work, one, runs)


_DRAWN: dict[str, Callable[[LineWork, Stroke, Sequence[Run]], None]] = {
    "centre line": _centre_line,
    "fold": _fold,
    "seam": _seam,
    "box": _seam,
    "bartack": _bartack,
    "hole": _hole,
    "drill hole": _hole,
    "slot": _slot,
    "hardware": _hardware,
    "tag": _tag,
    "tag fold": _tag_fold,
    "strip": _strip,
    "binding": _binding,
    "area": _area_only,
    "window": _window,
    "thread": _thread,
    "goods": _goods,
    "puncture": _puncture,
    "lead": _lead,
    "hidden": _hidden,
    "zone": _zone,
    "piece": _piece,
    "piece top": _piece_top,
    "ply": _ply,
    "ply wrong": _ply_wrong,
    "keep clear": _keep_clear,
    "needle": _needle,
    "taken": _taken,
    **dict.fromkeys(ART, _shaping),
}
