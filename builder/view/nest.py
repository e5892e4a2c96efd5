"""The sheet with its pieces: what a cutter sees on the bed, which way the roll lies, and how much of it is used.

A sheet longer than it is wide is drawn with the roll running to the right, as it runs over a table.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from builder.geometry import Bounds, Line, NestedPiece, NestLayout, Placing, Point, operation_nest, rectangle
from builder.model import (
    Expression,
    Nest,
    NestPiece,
    Quantity,
    say,
    show_percent,
)
from builder.view.details import DetailAsk
from builder.view.figure import Callout, DimensionLine, FigureView, Stroke
from builder.view.figures import exact
from builder.view.words import both_units

_MOST_DRAWN = 400
"""A sheet of more pieces is a grey of lines."""
_ROW_MM = 1.0
_ANCHOR = 0.2
_PRINTED_MM = (84.0, 62.0)
"""About what dimensions leave of the paper for the sheet and the words below it."""
_PITCH = 2.0
"""From row to row of words, in capital heights."""
_HEIGHT_MM = 74.0
_UPRIGHT = Placing()
_LYING = Placing(turn_deg=270.0)


def nest_figure(ask: DetailAsk) -> FigureView | None:
    """The picture of `nest`; None where the operation has none, or it can't be laid out."""
    nest = ask.work.operation.nest
    layout = _layout(ask)
    if nest is None or layout is None:
        return None
    view = _LYING if layout.length > layout.width else _UPRIGHT
    sheet = view.outline(rectangle(layout.width, layout.length))
    first = ask.studio.model.plant.units
    width, _, text = ask.size
    words = list(_piece_words(nest, layout, ask))
    size = ask.studio.size if not nest.sheet and _varies(nest, ask) else ""
    used = say("{count} pieces, {share} of the sheet", count=sum(layout.counts), share=show_percent(layout.used, 0))
    return FigureView(
        name=ask.name,
        title=say("Pieces on the sheet"),
        strokes=(
            Stroke("strip", "part", sheet.segments, closed=True, fill="strip"),
            *_piece_strokes(layout, view, ask),
            _kept_clear(sheet.bounds()),
        ),
        bounds=_with_room(sheet.bounds(), len(words) + 1, text),
        facts=tuple(_facts(nest, ask)),
        alt=say("The sheet seen from above: {pieces}; {used}.", pieces=", ".join(words), used=used),
        side=used,
        dimensions=tuple(_dimensions(layout, view, first, size)),
        callouts=tuple(_callouts(nest, layout, view, words)),
        width_mm=width,
        height_mm=_HEIGHT_MM,
        text_mm=text,
    )


def _layout(ask: DetailAsk) -> NestLayout | None:
    found = operation_nest(ask.studio.model, ask.book, ask.work.name, ask.studio.values)
    return found if isinstance(found, NestLayout) and found.pieces else None


def _piece_strokes(layout: NestLayout, view: Placing, ask: DetailAsk) -> Iterator[Stroke]:
    for one in layout.pieces[:_MOST_DRAWN]:
        when = "now" if one.part in ask.step.cut else "part"
        fill = "wrong" if one.placing.flipped else "ground"
        yield Stroke("piece", when, view.outline(one.outline).segments, closed=True, fill=fill)
        yield Stroke("piece top", when, tuple(_top_mark(one, view, ask)))


def _with_room(box: Bounds, rows: int, text_mm: float) -> Bounds:
    """The box with room below for so many rows of words."""
    left, bottom, right, top = box
    scale = min(_PRINTED_MM[0] / (right - left), (_PRINTED_MM[1] - rows * _PITCH * text_mm) / (top - bottom))
    return left, bottom - rows * _PITCH * text_mm / scale, right, top


def _kept_clear(box: Bounds) -> Stroke:
    """The whole sheet, so that every word stands beside it."""
    left, bottom, right, top = box
    # What is kept clear reaches as far beyond the ends of its line as to either side.
    half = 0.499 * min(right - left, top - bottom)
    line = Line((left + half, bottom + half), (right - half, top - half))
    return Stroke("keep clear", "part", (line,), width=2 * half)


def _top_mark(one: NestedPiece, view: Placing, ask: DetailAsk) -> Iterator[Line]:
    """A small arrowhead in the middle of a piece that points to the top of its part: which way it lies."""
    shape = ask.book.shape(one.part, ask.studio.values)
    if shape is None:
        return
    left, bottom, right, top = shape.bounds
    half = 0.12 * min(right - left, top - bottom)
    (x, y), place = shape.outline.centroid(), one.placing.then(view)
    tip, ends = place.point((x, y + half)), [place.point((x + side * half, y - 0.4 * half)) for side in (-1, 1)]
    yield Line(ends[0], tip)
    yield Line(tip, ends[1])


def _dimensions(layout: NestLayout, view: Placing, first: str, size: str) -> Iterator[DimensionLine]:
    """Width across the roll and length along it."""
    left, _, right, top = view.outline(rectangle(layout.width, layout.length)).bounds()
    bottom = top - (layout.width if view is _LYING else layout.length)
    along = say("roll {length}", length=_length(layout.length, first))
    along = f"{size}: {along}" if size else along
    across = _length(layout.width, first)
    upper, aside = (along, across) if view is _LYING else (across, along)
    yield DimensionLine((left, top), (right, top), (0.0, 1.0), upper)
    yield DimensionLine((left, bottom), (left, top), (-1.0, 0.0), aside)


def _length(mm: float, first: str) -> str:
    return both_units(Quantity.of(Fraction(mm).limit_denominator(1000), "length", "mm"), first)


def _piece_words(nest: Nest, layout: NestLayout, ask: DetailAsk) -> Iterator[str]:
    """For each entry: count and title, and how it lies where that isn't as the part is drawn."""
    model = ask.studio.model
    for piece, count in zip(nest.pieces, layout.counts, strict=True):
        base = model.base_of(piece.part)
        words = f"{count} × {base.title if base is not None else piece.part}"
        if piece.side == "wrong":
            words = say("{part}, wrong side up", part=words)
        order = nest.cut_order.index(piece.part) + 1 if piece.part in nest.cut_order else 0
        yield f"{order}. {words}" if order else words


def _callouts(nest: Nest, layout: NestLayout, view: Placing, words: Sequence[str]) -> Iterator[Callout]:
    """Each kind named once, at a piece in the middle of its lowest row as drawn: names stand below the sheet."""
    for number, text in enumerate(words):
        spots = [_anchor(view.outline(one.outline).bounds()) for one in layout.pieces if one.group == number]
        lowest = sorted(spot for spot in spots if spot[1] < min(y for _, y in spots) + _ROW_MM)
        if lowest:
            yield Callout(lowest[len(lowest) // 2], text)


def _anchor(box: Bounds) -> Point:
    """Where a leader ends in a piece: clear of the mark in its middle."""
    left, bottom, right, top = box
    return (left + right) / 2, bottom + _ANCHOR * (top - bottom)


def _varies(nest: Nest, ask: DetailAsk) -> bool:
    """Whether the sheet is another one in another size."""
    book = ask.book
    return any(ask.studio.varying.intersection(book.dimension_names(piece.part)) for piece in nest.pieces)


def _facts(nest: Nest, ask: DetailAsk) -> Iterator[tuple[str, str]]:
    """What is typed: sizes may change where pieces lie, never the method."""
    for path, typed in nest.lengths():
        yield f"nest {' '.join(map(str, path))}", typed.text if isinstance(typed, Expression) else exact(typed)
    for number, one in enumerate(nest.pieces, start=1):
        yield f"nest {number}", _fact(one)
    if nest.cut_order:
        yield "nest cut order", " ".join(nest.cut_order)


def _fact(one: NestPiece) -> str:
    counts = " ".join(
        f"{key} {value}" for key in ("columns", "rows", "count") if (value := getattr(one, key)) is not None
    )
    turn = f" turned {exact(one.turn)}" if one.turn is not None else ""
    return f"{one.part} {one.side} side up {counts}{turn}".strip()
