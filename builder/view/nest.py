"""A nest as a figure: the sheet with its roll direction and size, every piece where it is cut, how much they use."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from builder.geometry import GeometryFault, LaidPiece, Line, covered_share, laid_pieces
from builder.model import Nest, PlantModel, Quantity, nest_width, show_quantity
from builder.view.details import DetailAsk
from builder.view.figure import Callout, DimensionLine, FigureView, Stroke
from builder.view.figures import exact, scale_lengths
from builder.view.words import listed

_HEIGHT_MM = 74.0


def nest_figure(ask: DetailAsk) -> FigureView | None:
    """The picture of the operation's nest, None where it has none or a piece can't be built."""
    operation, model = ask.work.operation, ask.studio.model
    nest = operation.nest
    across = nest_width(operation, model)
    if nest is None or across is None:
        return None
    pieces = _pieces(nest, ask)
    if not pieces:
        return None
    length, width = float(nest.sheet.length.value), float(across.value)
    edge = (Line((0, 0), (length, 0)), Line((length, 0), (length, width)), Line((length, width), (0, width)))
    sheet = Stroke("strip", "part", (*edge, Line((0, width), (0, 0))), closed=True, fill="strip")
    cuts = (Stroke("piece", "now", one.outline.segments, closed=True, fill="ground") for one in pieces)
    counts = _counts(pieces, model)
    used = f"{covered_share(pieces, length, width) * 100:.0f} %"
    printed, _, text = ask.size
    return FigureView(
        name=ask.name,
        title=f"Nest: {listed([f'{count} × {title}' for title, count in counts.items()])}",
        strokes=(sheet, *cuts),
        bounds=(0.0, 0.0, length, width),
        facts=tuple(_facts(nest, across)),
        alt=f"The nest on the sheet, roll from left to right: {listed([f'{n} × {t}' for t, n in counts.items()])}. "
        f"The pieces use {used} of it.",
        grain=0.0,
        dimensions=tuple(_dimensions(nest.sheet.length, across, model, used)),
        callouts=tuple(_callouts(pieces, counts, model)),
        width_mm=printed,
        height_mm=_HEIGHT_MM,
        text_mm=text,
        scale_bar=scale_lengths(model.plant.units),
        words=("start", "end", "roll"),
    )


def _pieces(nest: Nest, ask: DetailAsk) -> list[LaidPiece]:
    found: list[LaidPiece] = []
    for entry, typed in enumerate(nest.pieces):
        shape = ask.book.shape(typed.part, ask.studio.values)
        if shape is None:
            return []
        try:
            found += laid_pieces(entry, typed, shape)
        except GeometryFault:
            return []  # the rules have told
    return found


def _title(part: str, model: PlantModel) -> str:
    base = model.base_of(part)
    return base.title if base is not None else part


def _counts(pieces: Sequence[LaidPiece], model: PlantModel) -> dict[str, int]:
    counts: dict[str, int] = {}
    for one in pieces:
        title = _title(one.part, model)
        counts[title] = counts.get(title, 0) + 1
    return counts


def _dimensions(length: Quantity, width: Quantity, model: PlantModel, used: str) -> Iterator[DimensionLine]:
    x, y, first = float(length.value), float(width.value), model.plant.units
    yield DimensionLine((0, 0), (x, 0), (0, -1), f"{show_quantity(length, first)}, {used} used")
    yield DimensionLine((x, 0), (x, y), (1, 0), show_quantity(width, first))


def _callouts(pieces: Sequence[LaidPiece], counts: dict[str, int], model: PlantModel) -> Iterator[Callout]:
    """Each kind of piece once, with its count."""
    for title, count in counts.items():
        kind = [one for one in pieces if _title(one.part, model) == title]
        yield Callout(kind[len(kind) // 2].outline.centroid(), f"{count} × {title}", accent=True)


def _facts(nest: Nest, width: Quantity) -> Iterator[tuple[str, str]]:
    yield "sheet", f"{exact(nest.sheet.length)} x {exact(width)}"
    for number, one in enumerate(nest.pieces, start=1):
        turn = exact(one.turn) if one.turn is not None else "not turned"
        pitches = [exact(pitch) for pitch in (one.pitch, one.row_pitch) if pitch is not None]
        place = f"{exact(one.left)}, {exact(one.bottom)}, {turn}, {one.side} side up"
        yield f"piece {number}", f"{one.part} at {place}, {one.columns} x {one.rows} {' '.join(pitches)}".rstrip()
