"""What is drawn of a template, before anyone asks on which paper: line work, words, dimensions, facts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from builder.geometry import (
    Bounds,
    FeatureShape,
    GaugeCard,
    GeometryFault,
    Line,
    MarkingCard,
    Outline,
    PartShape,
    Placing,
    Point,
    ShapeBook,
    card_for,
    gauge_card,
)
from builder.model import (
    At,
    Dimensions,
    PlantModel,
    Quantity,
    Template,
    Tolerance,
    Values,
    gauge_tolerance,
    plain,
    show_number,
    show_quantity,
    show_tolerance,
)
from builder.view.controls import tolerance_fact
from builder.view.figures import exact
from builder.view.strokes import circle, feature_strokes
from builder.view.template import ChainDimension, TemplateLine, TemplateWords

_GRAIN = {"up": 90.0, "across": 0.0}
_CHAIN_MM = 7.5
"""From a row of marks to its dimension line, and from that to the next."""
_CROSS_MM = 5.0
_INCH = Fraction(254, 10)
_DATUM_IN = 0.45
"""The thick line of a datum edge lies inside the card: the edge itself is the line that is cut."""


@dataclass(frozen=True, slots=True)
class TemplateBody:
    """The drawing of a template in the coordinates of the thing, mm. `outline` is what is cut."""

    outline: Outline
    lines: tuple[TemplateLine, ...]
    about: tuple[str, ...]
    facts: tuple[tuple[str, str], ...]
    words: tuple[TemplateWords, ...] = ()
    dimensions: tuple[ChainDimension, ...] = ()
    grain: float | None = None


def part_body(
    template: Template, model: PlantModel, dimensions: Dimensions, book: ShapeBook, values: Values
) -> TemplateBody:
    """A part with all its lines: cut edge, notches, holes, folds, seams, and where things are laid on."""
    shape = _shape(template, book, values)
    lines = [TemplateLine("cut edge", shape.outline.segments, closed=True)]
    for name, feature in shape.features.items():
        words = feature.feature.label or plain(name)
        strokes = feature_strokes(feature, "part", Placing(), "301", 3.0, False)
        for number, stroke in enumerate(one for one in strokes if one.role != "taken"):
            lines.append(TemplateLine(stroke.role, tuple(stroke.path), stroke.closed, "" if number else words))
    facts = tuple((name, exact(values[name])) for name in sorted(book.dimension_names(template.of)) if name in values)
    title = () if template.title == shape.part.title else (shape.part.title,)
    return TemplateBody(shape.outline, tuple(lines), title, facts, grain=_GRAIN.get(shape.part.grain))


def marking_body(
    template: Template, model: PlantModel, dimensions: Dimensions, book: ShapeBook, values: Values
) -> TemplateBody:
    """A card with a hole or a slit at each place, its datum edges named, and a chain of dimensions."""
    shape = _shape(template, book, values)
    card = card_for(shape, template.features)
    features = [shape.features[name] for name in template.features]
    first = model.plant.units
    lines = [
        TemplateLine("cut edge", card.outline.segments, closed=True),
        *(line for edge in card.edges for line in _datum(card.box, edge)),
        *(TemplateLine("slit", slit.segments, closed=True) for row in card.slits for slit in row),
        *(TemplateLine("slit", circle(at, d / 2).runs, closed=True) for row in card.holes for at, d in row),
        *(TemplateLine("centre", runs) for one in features for point in one.points for runs in _cross(point)),
    ]
    words = [_edge_words(card, edge, features[0], shape) for edge in card.edges]
    names = [f"{shape.name}/{one.name}.{short}" for one in features for short, _ in one.feature.dimensions()]
    facts = [(name, exact(values[name])) for name in sorted(names) if name in values]
    chains = [chain for one in features for chain in _chain(one, shape, card, values, first)]
    about = (f"marks {', '.join(one.feature.label or plain(one.name) for one in features)} on {shape.part.title}",)
    facts.append(("datum", " ".join(card.edges)))
    return TemplateBody(card.outline, tuple(lines), about, tuple(facts), tuple(words), tuple(chains))


def gauge_body(
    template: Template, model: PlantModel, dimensions: Dimensions, book: ShapeBook, values: Values
) -> TemplateBody:
    """A go / no-go card for a tolerance, with its words on its body."""
    tolerance = gauge_tolerance(template, model, dimensions.definitions, values)
    if tolerance is None:
        raise GeometryFault(f"{template.of} gives no limit to cut a gauge to")
    card = gauge_card(_mm(tolerance.low), _mm(tolerance.high))
    spec = model.operations[template.operation].tolerances[template.tolerance]
    what = spec.what or plain(template.tolerance)
    lines = []
    for role, box in (("go", card.go), ("no go", card.no_go)):
        if box is not None:
            lines.append(TemplateLine(role, _box(box).segments, closed=True))
            lines.append(TemplateLine("pointer", _pointer(card.body, role == "go"), closed=True))
    left, bottom, _, top = card.outline.bounds()
    lines.append(TemplateLine("cut edge", card.outline.segments, closed=True))
    lines.append(TemplateLine("datum", (Line((left + _DATUM_IN, bottom), (left + _DATUM_IN, top)),)))
    measure = f"{what}, {show_tolerance(tolerance, model.plant.units)}"
    about = (measure, model.operations[template.operation].title)
    words = tuple(_gauge_words(template, card, tolerance, what, model.plant.units))
    return TemplateBody(card.outline, tuple(lines), about, (("limits", tolerance_fact(tolerance)),), words)


def turned(body: TemplateBody, turn: float) -> TemplateBody:
    """The drawing turned by 0 or 90 degrees counter-clockwise."""
    if not turn:
        return body
    placing = Placing(turn_deg=turn)
    return replace(
        body,
        outline=placing.outline(body.outline),
        lines=tuple(replace(one, path=tuple(placing.segment(run) for run in one.path)) for one in body.lines),
        words=tuple(replace(one, box=_turned_box(one.box, placing), turned=not one.turned) for one in body.words),
        dimensions=tuple(
            ChainDimension(
                placing.point(one.start),
                placing.point(one.end),
                (placing.point(one.feet[0]), placing.point(one.feet[1])),
                one.text,
            )
            for one in body.dimensions
        ),
        grain=None if body.grain is None else body.grain + turn,
    )


def _turned_box(box: Bounds, placing: Placing) -> Bounds:
    return placing.outline(_box(box)).bounds()


def _shape(template: Template, book: ShapeBook, values: Values) -> PartShape:
    shape = book.shape(template.of, values)
    if shape is None:
        raise GeometryFault(f"{template.of} can't be drawn")
    return shape


def _box(box: Bounds) -> Outline:
    left, bottom, right, top = box
    corners = ((left, bottom), (right, bottom), (right, top), (left, top))
    return Outline(tuple(Line(a, b) for a, b in zip(corners, (*corners[1:], corners[0]), strict=True)))


def _mm(value: Fraction | None) -> float | None:
    return None if value is None else float(value)


def _gauge_words(
    template: Template, card: GaugeCard, tolerance: Tolerance, what: str, first: Literal["mm", "in"]
) -> Iterator[TemplateWords]:
    left, bottom, right, top = card.body
    named = f"*{template.number}  revision {template.revision}"
    size = template.size.rpartition("/")[2] if template.size else ""
    lines = [f"{named}  size {size}" if size else named, what]
    lines += ["Check against a steel rule", "before each shift."]
    if card.go is not None and tolerance.low is not None:
        lines[:0] = [f"*GO  {_limit(tolerance.low, tolerance.unit, first)}", "must reach past this end"]
    if card.no_go is not None and tolerance.high is not None:
        lines += ["must not reach past this end", f"*NO GO  {_limit(tolerance.high, tolerance.unit, first)}"]
    yield TemplateWords((left + 11.5, bottom + 0.6, right - 1.0, top - 0.6), tuple(lines))
    yield TemplateWords((left + 0.8, bottom, left + 6.5, top), ("*DATUM EDGE flush",), True, either=True)


def _pointer(body: Bounds, up: bool) -> tuple[Line, ...]:
    """A triangle in the body beside the words of an end, pointing to it."""
    left, bottom, _, top = body
    base, tip = (top - 5.4, top - 1.4) if up else (bottom + 5.4, bottom + 1.4)
    a, b, c = (left + 7.4, base), (left + 10.6, base), (left + 9.0, tip)
    return (Line(a, b), Line(b, c), Line(c, a))


def _limit(value: Fraction, unit: str, first: Literal["mm", "in"]) -> str:
    """A limit in both units, fine enough to be checked with a rule or a calliper: no sixteenth nearby will do."""
    metric, inch = f"{show_number(value, 2)} mm", f"{show_number(value / _INCH, 3)} in"
    if unit == "in":
        inch = show_quantity(Quantity.of(value, "length", unit), "in", both=False)
    return f"{metric} ({inch})" if first == "mm" else f"{inch} ({metric})"


def _datum(box: Bounds, edge: str) -> Iterator[TemplateLine]:
    yield TemplateLine("datum", (_side(box, edge),))


def _side(box: Bounds, edge: str) -> Line:
    left, bottom, right, top = box[0] + _DATUM_IN, box[1] + _DATUM_IN, box[2] - _DATUM_IN, box[3] - _DATUM_IN
    sides = {
        "left": ((left, bottom), (left, top)),
        "right": ((right, bottom), (right, top)),
        "bottom": ((left, bottom), (right, bottom)),
        "top": ((left, top), (right, top)),
    }
    return Line(*sides[edge])


def _edge_words(card: MarkingCard, edge: str, feature: FeatureShape, shape: PartShape) -> TemplateWords:
    """The name of a datum edge, along it."""
    left, bottom, right, top = card.box
    deep = 5.4
    boxes = {
        "left": (left + 0.6, bottom, left + deep, top),
        "right": (right - deep, bottom, right - 0.6, top),
        "bottom": (left, bottom + 0.6, right, bottom + deep),
        "top": (left, top - deep, right, top - 0.6),
    }
    on = feature.feature.on
    what = shape.part.title if on is None else shape.features[on].feature.label or plain(on)
    upright = edge in ("left", "right")
    return TemplateWords(boxes[edge], (f"*DATUM {edge} edge of {what}", f"*DATUM {edge}"), upright, either=True)


def _cross(point: Point) -> Iterator[tuple[Line, ...]]:
    (x, y) = point
    yield (Line((x - _CROSS_MM, y), (x + _CROSS_MM, y)),)
    yield (Line((x, y - _CROSS_MM), (x, y + _CROSS_MM)),)


def _chain(
    one: FeatureShape, shape: PartShape, card: MarkingCard, values: Values, first: Literal["mm", "in"]
) -> Iterator[ChainDimension]:
    """The chain of a row: edge to first place, place to place, first to last; and from the other edge to the row."""
    axis = 0 if len(one.points) < 2 or one.points[0][1] == one.points[1][1] else 1
    prefix = f"{shape.name}/{one.name}"

    def said(short: str, mm: float) -> str:
        typed = values.get(f"{prefix}.{short}") if short else None
        quantity = typed if typed is not None else Quantity.of(Fraction(round(mm * 1000), 1000), "length")
        return show_quantity(quantity, first)

    def line(a: Point, b: Point, along: int, at: float, text: str) -> ChainDimension:
        start, end = ((a[0], at), (b[0], at)) if along == 0 else ((at, a[1]), (at, b[1]))
        return ChainDimension(start, end, (a, b), text)

    points = sorted(one.points, key=lambda point: point[axis])
    near = _beside(points, card.box, 1 - axis, one)
    edge = _edge_point(points, card, axis)
    at_words = one.feature.at or At()
    chain = [(edge, points[0] if edge[axis] <= points[0][axis] else points[-1], _typed(at_words, axis))]
    chain += [(a, b, "pitch") for a, b in pairwise(points)]
    for a, b, short in chain:
        low, high = sorted((a, b), key=lambda point: point[axis])
        if high[axis] - low[axis] > 1e-6:
            yield line(low, high, axis, near, said(short, high[axis] - low[axis]))
    if len(points) > 2:
        whole = points[-1][axis] - points[0][axis]
        text = f"{len(points) - 1} × {said('pitch', 0)} = {said('', whole)}"
        beyond = near + (_CHAIN_MM if near > points[0][1 - axis] else -_CHAIN_MM)
        yield line(points[0], points[-1], axis, beyond, text)
    across = _edge_point(points, card, 1 - axis)
    row = points[-1] if edge[axis] <= points[0][axis] else points[0]
    if abs(across[1 - axis] - row[1 - axis]) > 1e-6:
        beside = row[axis] + (_CHAIN_MM if edge[axis] <= points[0][axis] else -_CHAIN_MM)
        foot = (row[0], across[1]) if axis == 0 else (across[0], row[1])
        low, high = sorted((foot, row), key=lambda point: point[1 - axis])
        yield line(low, high, 1 - axis, beside, said(_typed(at_words, 1 - axis), high[1 - axis] - low[1 - axis]))


def _typed(at: At, axis: int) -> str:
    """The dimension a place is typed by along an axis, '' for a centre line."""
    names = ("left", "right") if axis == 0 else ("bottom", "top")
    return next((name for name in names if getattr(at, name) is not None), "")


def _edge_point(points: Sequence[Point], card: MarkingCard, axis: int) -> Point:
    """The point of the datum edge across from the row's first place."""
    left, bottom, right, top = card.box
    low, high = (left, right) if axis == 0 else (bottom, top)
    name = "left" if axis == 0 else "bottom"
    at = low if name in card.edges else high
    return (at, points[0][1]) if axis == 0 else (points[0][0], at)


def _beside(points: Sequence[Point], box: Bounds, axis: int, one: FeatureShape) -> float:
    """Where the chain of a row stands: on the side of it with more room on the card."""
    here, reach = points[0][axis], max(one.size[0] / 2, 2.0) + _CHAIN_MM
    return here + reach if box[axis + 2] - here > here - box[axis] else here - reach
