"""View objects of a figure: what is drawn, in the part's own millimetres, with nothing left to decide.

Positions come resolved (x right, y up). The drawing room scales them to the printed width, gives every role its
line, and places the labels; it calls no formula.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from builder.geometry import Bounds, Point, Segment, box_around
from builder.model import say
from builder.view.marking import controlled, shown


@dataclass(frozen=True, slots=True)
class Stroke:
    """One piece of line work.

    role    : cut edge | fold | seam | box | bartack | hole | drill hole | slot | hardware | notch | strip | tag (a
              label) | tag fold (its folded side) | binding | centre line, or `area` (a fill without a line) and
              `window` (the frame of a detail, on its locator); `taken` (cloth a pleat or dart takes), and the lines of
              pleats, darts, zips and elastic as strokes_shaping.py has them;
              `thread`: a piece of a cord, above all strokes before it, `fill` says which (needle, needle 2, bobbin,
              looper, looper 2, looper 3, cover); `goods` a thread runs through (`fill`: face, back, cut) and the
              `puncture` of a needle, `width` wide;
              `ply` a band of goods cut across (`fill`: cloth, cloth 2, cloth 3, webbing, tape, foam, felt, mesh,
              board, zip), `ply wrong` the face that is its wrong side, goods to the left;
              `needle` from its shank to its point; `lead` joins what comes to lie on each other;
              `hidden` is under the goods; `piece` lies on a sheet, `piece top` marks its upper end;
              `zone` fingers stay out of;
              `keep clear` isn't drawn, words stay off it
    when    : part (always there) | earlier (grey) | now (accent, thick)
    path    : segments to draw, each once, in mm
    closed  : the path bounds an area, to be filled with `fill`
    fill    : '' | ground (the part's own ground) | strip | taken | wrong (wrong side of the goods); of hardware its
              look: eyelet | snap | rivet | buckle; of a notch: slit | castle, '' a V
    stitch  : ISO 4915 type of a seam, '' otherwise; `pitch` its stitch length in mm
    width   : of a cord, a ply, a zip or elastic, mm of the part; of round hardware its opening; 0 for lines
    text    : what a label says
    numbers : for each segment the order numbers it is sewn at, () when not wanted; as many as segments or none
    """

    role: str = shown()
    when: str = shown()
    path: tuple[Segment, ...] = shown()
    closed: bool = shown(default=False)
    fill: str = shown(default="")
    stitch: str = shown(default="")
    pitch: float = shown(default=0.0)
    width: float = shown(default=0.0)
    numbers: tuple[str, ...] = shown(default=())
    text: str = shown(default="")


@dataclass(frozen=True, slots=True)
class DimensionLine:
    """A dimension between two points, drawn with extension lines on the side `away` (a unit vector).

    text  : value with tolerance and both units, as printed
    strong: worked to in this step (accent weight); others are for reference
    """

    start: Point = shown()
    end: Point = shown()
    away: Point = shown()
    text: str = shown()
    strong: bool = shown(default=False)


@dataclass(frozen=True, slots=True)
class Callout:
    """A word with a point it belongs to; the drawing room finds a free place, with a leader if it must.

    text : kept in its lines where it has line breaks
    """

    at: Point = shown()
    text: str = shown()
    accent: bool = shown(default=False)


@dataclass(frozen=True, slots=True)
class FigureView:
    """One figure: a part in its state at a step.

    name          : unique in the plant, used as file name
    bounds        : (min x, min y, max x, max y) of everything in `strokes`, mm
    route         : the path worked now, in sewing order with repeats (for direction arrows), mm
    start, end    : where the work of this step begins and ends, None when it has none
    ring          : points to ring in accent (a notch to look at, a hole to meet)
    grain         : direction of grain in degrees from x, None when the part has none
    side          : 'right side' | 'wrong side' | ''
    width_mm      : printed width; the drawing room chooses the height, at most `height_mm`
    text_mm       : capital height of labels on paper, mm; dimensions use the same
    scale_bar     : round lengths a scale bar may have, as (mm, words); () where the figure is not to scale
    words         : the drawing's own words in the figure's language: start, end, grain, turned over
    turned        : 'over' where the part lies the other way up than in the picture before
    alt           : text alternative, one or two sentences
    locator       : of a detail view, the whole part small, with the window framed; bounds are then the window
    facts         : the controlled facts: features, side, state and exact dimensions, as plain text pairs
    """

    name: str = shown()
    title: str = shown()
    strokes: tuple[Stroke, ...] = shown()
    bounds: tuple[float, float, float, float] = shown()
    facts: tuple[tuple[str, str], ...] = controlled()
    alt: str = shown()
    side: str = shown(default="")
    route: tuple[Segment, ...] = shown(default=())
    start: Point | None = shown(default=None)
    end: Point | None = shown(default=None)
    ring: tuple[Point, ...] = shown(default=())
    grain: float | None = shown(default=None)
    dimensions: tuple[DimensionLine, ...] = shown(default=())
    callouts: tuple[Callout, ...] = shown(default=())
    width_mm: float = shown(default=95.0)
    height_mm: float = shown(default=60.0)
    text_mm: float = shown(default=2.8)
    scale_bar: tuple[tuple[float, str], ...] = shown(default=())
    locator: FigureView | None = shown(default=None)
    words: tuple[str, str, str, str] = shown(
        default_factory=lambda: (say("start"), say("end"), say("grain"), say("turned over"))
    )
    turned: str = shown(default="")


def bounds_of(strokes: Iterable[Stroke]) -> Bounds:
    """The box around all line work, mm of the part."""
    return box_around([segment.bounds() for stroke in strokes for segment in stroke.path])
