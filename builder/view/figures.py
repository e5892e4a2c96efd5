"""Figures: a scene with its dimensions, words and facts, ready to be drawn."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from builder.geometry import Bounds, PartShape, Path, Placing, Point, box_around, feature_bounds
from builder.model import (
    Dimensions,
    Expression,
    Fold,
    PlantModel,
    Quantity,
    Seam,
    Values,
    full_name,
    say,
    show_quantity,
)
from builder.view.allowance_line import allowances_followed
from builder.view.asking import Ask, alt, callouts, chopped, ringed, side
from builder.view.centre_line import centre_line
from builder.view.chain import chain_text, gaps_of
from builder.view.dimension_line import dimension_points
from builder.view.figure import Callout, DimensionLine, FigureView, Stroke, bounds_of
from builder.view.folded import where_line
from builder.view.hand_zone import zone
from builder.view.scene import Made, SceneFeature, SceneLayer, scene
from builder.view.shaping_words import finished_callouts, shaping_callouts
from builder.view.strokes import LAID_ON, THROUGH, feature_strokes, hardware_look, worked_route
from builder.view.window import cut_to, detail_window, window_frame
from builder.view.words import tolerance_pair

_GRAIN = {"up": 90.0, "across": 0.0}
_BESIDE = ("right-of", "left-of", "above", "below")
_PLACED = (*_BESIDE, "left", "top", "bottom", "right")
_REFERENCE = {
    "seam": ("inset", "off"),
    "fold": ("inset",),
    "box": (*_BESIDE, "width", "height"),
    "bartack": (*_BESIDE, "pitch", "row-pitch"),
    "hole": (*_PLACED, "pitch", "row-pitch"),
    "drill hole": (*_PLACED, "pitch", "row-pitch"),
    "slot": (*_PLACED, "pitch", "row-pitch"),
    "hardware": (*_PLACED, "pitch", "row-pitch"),
    "strip": (*_BESIDE, "left", "top", "bottom"),
    "tag": (*_PLACED,),
    "pleat": ("pleat", *_PLACED, "pitch", "length"),
    "dart": ("dart", "depth", *_PLACED),
    "zip": ("inset", "length"),
    "elastic": ("inset",),
}
_MOST_DIMENSIONS = 3
_MOST_MEASURED = 12
_LOCATOR_MM = (24.0, 20.0)


@dataclass(frozen=True, slots=True)
class Studio:
    """Makes the figures of one geometry: a plant's shapes with the values of one size.

    varying : full names of dimensions that differ between sizes; their values are facts of a size, not of the sheet
    size     : name of the size that is drawn, put before each dimension that differs between sizes
    stitches : (part, feature) → stitch type and length in mm of the operation that sews it
    """

    model: PlantModel
    dimensions: Dimensions
    values: Values
    varying: frozenset[str]
    stitches: Mapping[tuple[str, str], tuple[str, float]]
    size: str = ""

    def figure(self, ask: Ask, shape: PartShape) -> FigureView:
        """The figure of a part's shape as asked."""
        layers = scene(shape, ask.before, ask.now, ask.wrong, ask.cut_now, ask.turned)
        strokes = tuple(self._strokes(layers, ask))
        shown = [one for layer in layers for one in layer.features]
        now = [one for one in shown if one.when == "now"]
        now.sort(
            key=lambda one: (
                ask.order.index((one.part, one.shape.name)) if (one.part, one.shape.name) in ask.order else 0
            )
        )
        route = tuple(run for one in now for run in worked_route(one.shape, one.placing)) if ask.words else ()
        if ask.cut_now:
            route = () if chopped(shape) else tuple(layers[0].placing.path(Path(shape.outline.segments)).runs)
        width, height, text = ask.size
        whole = bounds_of(strokes)
        lines = tuple(self._dimensions(shape, now, shown, ask)) if ask.words else ()
        window = _window(now, lines, whole, (width, height)) if ask.words and now and not ask.cut_now else None
        locator = self._locator(strokes, whole, window, ask) if window is not None else None
        if window is not None:
            strokes = tuple(cut_to(strokes, window))
        noted = (one for one in self._callouts(now, layers, ask) if _in(one.at, window))
        start = route[0].start if route else None
        zones, warnings = zone(now, start, *ask.hands, window or whole)
        return FigureView(
            name=ask.name,
            title=ask.title,
            strokes=(*strokes, *zones),
            bounds=window or whole,
            facts=tuple(self._facts(shape, shown, ask)),
            alt=alt(shape.part, shown, ask),
            side=side(shape, ask),
            route=route,
            start=start,
            end=route[-1].end if route else None,
            ring=tuple(point for point in ringed(layers, ask.rings) if _in(point, window)),
            grain=_GRAIN.get(shape.part.grain) if ask.words and window is None else None,
            dimensions=_seen(lines, window),
            callouts=(*noted, *warnings) if ask.words else (),
            width_mm=width,
            height_mm=height,
            text_mm=text,
            locator=locator,
            turned=ask.over,
            scale_bar=scale_lengths(self.model.plant.units) if ask.words else (),
        )

    def _callouts(self, now: Sequence[SceneFeature], layers: Sequence[SceneLayer], ask: Ask) -> Iterator[Callout]:
        first = self.model.plant.units
        yield from callouts(now, layers, ask)
        if not ask.cut_now:
            parts = {layer.shape.name for layer in layers}
            size = self.size if any(name.split("/")[0].split(".")[0] in parts for name in self.varying) else ""
            yield from shaping_callouts(now, self.values, first, size)
            yield from finished_callouts(layers, ask.now, ask.before, first, size)

    def _locator(self, strokes: tuple[Stroke, ...], whole: Bounds, window: Bounds, ask: Ask) -> FigureView:
        """The whole part, small and without words, with the window framed."""
        quiet = tuple(replace(one, numbers=()) for one in strokes)
        return FigureView(
            name=f"{ask.name}-place",
            title=say("Where on the part"),
            strokes=(*quiet, window_frame(window)),
            bounds=whole,
            facts=(),
            alt="",
            width_mm=_LOCATOR_MM[0],
            height_mm=_LOCATOR_MM[1],
            text_mm=ask.size[2],
        )

    def _strokes(self, layers: Sequence[SceneLayer], ask: Ask) -> Iterator[Stroke]:
        for layer in layers:
            if layer.when != "outline":
                fill = "wrong" if layer.wrong else "ground"
                ends_only = layer.when == "now" and chopped(layer.shape)
                when = "part" if ends_only else layer.when
                yield Stroke("cut edge", when, layer.outline.segments, closed=True, fill=fill)
                for end in ("left", "right") if ends_only else ():
                    # A strip cutter makes the ends; the long edges come with the webbing.
                    yield Stroke("cut edge", "now", layer.placing.path(Path(layer.shape.outline.edge(end))).runs)
                yield from centre_line(layer) if ask.words else ()
            for one in sorted(layer.features, key=lambda feature: feature.shape.kind not in LAID_ON):
                if one.shape.kind not in LAID_ON and one.shape.kind not in THROUGH:
                    continue
                if one.when == "hidden":
                    continue  # it is the edge now
                stitch, pitch = self.stitches.get((one.part, one.shape.name), ("301", 3.0))
                yield from feature_strokes(
                    one.shape, one.when, one.placing, stitch, pitch, ask.words, hardware_look(self.model, one.shape)
                )
            if layer.hidden:
                yield Stroke("hidden", "part", layer.hidden)

    def _facts(self, shape: PartShape, shown: Sequence[SceneFeature], ask: Ask) -> Iterator[tuple[str, str]]:
        yield "part", shape.name
        yield "side", "wrong" if ask.wrong else "right"
        yield from (("hands out", ask.hands[1]),) if ask.hands[1] else ()
        yield from (("turned", part) for part in sorted(ask.turned))
        if shape.drawn:
            yield "drawn", shape.drawn
        for one in sorted(shown, key=lambda feature: (feature.part, feature.shape.name)):
            yield f"{one.part}/{one.shape.name}", f"{one.shape.kind} {one.when}"
        for part, feature in sorted(ask.rings):
            yield f"{part}/{feature}", "look at"
        for name in sorted(self._dimension_names(shape, shown)):
            if name not in self.varying and name in self.values:
                yield name, exact(self.values[name])

    def _dimension_names(self, shape: PartShape, shown: Sequence[SceneFeature]) -> set[str]:
        names = {f"{shape.name}.{short}" for short, _ in shape.part.own_dimensions() if "." not in short}
        if shape.part.outline is not None:
            names |= {full_name(shape.name, short) for short, _ in shape.part.outline.dimensions()}
        for one in shown:
            names.add(f"{one.part}/{one.shape.name}.inset")
            names |= {f"{one.part}/{one.shape.name}.{short}" for short, _ in one.shape.feature.dimensions()}
        return names & set(self.dimensions.definitions)

    def _dimensions(
        self, shape: PartShape, now: Sequence[SceneFeature], shown: Sequence[SceneFeature], ask: Ask
    ) -> Iterator[DimensionLine]:
        first = self.model.plant.units
        drawn: set[str] = set()
        for checked, tolerance in ask.checks:
            full = checked if self._line(checked, shape, ask) else self._same_as(checked, now)
            line = self._line(full, shape, ask)
            if line is not None:
                drawn.add(full)
                value, other = tolerance_pair(tolerance, first)
                text = self._sized(checked, f"{value} ({other})" if other else value)
                yield DimensionLine(*line, text, strong=True)
        for full in self._measured(shape, shown, ask.before) if ask.overall else ():
            line = self._line(full, shape, ask)
            if line is not None and full not in drawn and len(drawn) < _MOST_MEASURED:
                drawn.add(full)
                yield DimensionLine(*line, self._sized(full, show_quantity(self.values[full], first)))
        most = _MOST_DIMENSIONS + min(2, sum(gaps_of(one.shape, "row-pitch") > 0 for one in now))
        # A cut is checked by its outline; words for each notch and hole would hide it.
        for full in () if ask.cut_now else self._references(now, ask.before):
            if len(drawn) >= most:
                return
            line = self._line(full, shape, ask, whole=True) if full not in drawn else None
            if line is not None:
                drawn.add(full)
                yield DimensionLine(*line, self._sized(full, chain_text(_gaps(full, now), self.values[full], first)))

    def _measured(self, shape: PartShape, shown: Sequence[SceneFeature], before: Made) -> Iterator[str]:
        """Full names of what an inspector measures: the outline's own sizes, then where its features lie."""
        for short in ("width", "height", "length"):
            full = f"{shape.name}.{short}"
            if full in self.values and full in self.dimensions.definitions:
                yield full
        # What lies on a part inside may be covered by another.
        yield from self._references([one for one in shown if one.part == shape.name], before)

    def _sized(self, full: str, text: str) -> str:
        """A dimension's text, with the size drawn before it where sizes differ."""
        return f"{self.size} {text}" if full in self.varying and self.size else text

    def _same_as(self, full: str, now: Sequence[SceneFeature]) -> str:
        """A dimension of a feature worked now that is just this named one (`inset: =hem`), or the name itself."""
        one = self.dimensions.definitions[full]
        for feature in now:
            for short, typed in feature.shape.feature.dimensions():
                if isinstance(typed, Expression) and typed.text.lstrip("= ") in (one.short, full):
                    return f"{feature.part}/{feature.shape.name}.{short}"
        return full

    def _references(self, now: Sequence[SceneFeature], before: Made) -> Iterator[str]:
        for one in now:
            for dimension in _REFERENCE.get(one.shape.kind, ()):
                if dimension == "inset" and self._folded_away(one, before):
                    continue
                full = f"{one.part}/{one.shape.name}.{dimension}"
                if full in self.values and self.values[full].value:
                    yield full
            yield from allowances_followed(one.shape, self.model.parts[one.part], one.part)

    def _folded_away(self, one: SceneFeature, before: Made) -> bool:
        """Whether the edge a seam is measured from is under a fold by now."""
        spec = one.shape.feature
        folds = self.model.parts[one.part].features.items()
        under = {f.fold for name, f in folds if isinstance(f, Fold) and (one.part, name) in before}
        return isinstance(spec, Seam) and bool(under & set(spec.seam))

    def _line(self, full: str, shape: PartShape, ask: Ask, whole: bool = False) -> tuple[Point, Point, Point] | None:
        """Points of a dimension on the part drawn, or on a component of it, where it lies; `whole` over all its row."""
        part = full.split("/")[0].split(".")[0]
        short = self.dimensions.definitions[full].short
        left, _, right, _ = shape.bounds
        over = Placing(left + right, 0.0, 0.0, True)
        inside_out = bool(shape.components) and shape.name in ask.turned
        for placed, placing in _placed(shape, over if inside_out else Placing()):
            if placed.name != part:
                continue
            points = dimension_points(placed, short, whole)
            points = where_line(placed, ask.before, points) if points is not None else None
            if points is None:
                return None
            view = placing.then(over) if ask.wrong else placing
            start, end, away = points
            origin, tip = view.point((0.0, 0.0)), view.point(away)
            return view.point(start), view.point(end), (tip[0] - origin[0], tip[1] - origin[1])
        return None


def _gaps(full: str, now: Sequence[SceneFeature]) -> int:
    """How many times a dimension repeats in a row worked now."""
    owner, _, dimension = full.rpartition(".")
    return next((gaps_of(one.shape, dimension) for one in now if f"{one.part}/{one.shape.name}" == owner), 0)


def exact(quantity: Quantity) -> str:
    """A quantity as a controlled fact: the exact value in its base unit, with the unit it was typed in."""
    return f"{quantity.value} {quantity.dimension} in {quantity.unit}"


def scale_lengths(first: str) -> tuple[tuple[float, str], ...]:
    """Round lengths for a scale bar in the plant's first unit: mm and their words."""
    if first == "in":
        return tuple((float(inches) * 25.4, f"{inches:g} in") for inches in (0.25, 0.5, 1, 2, 4, 8, 16))
    return tuple((float(mm), f"{mm} mm") for mm in (2, 5, 10, 20, 50, 100, 200, 500))


def _placed(shape: PartShape, placing: Placing) -> Iterator[tuple[PartShape, Placing]]:
    yield shape, placing
    for component in shape.components:
        yield from _placed(component.shape, component.placing.then(placing))


def _window(
    now: Sequence[SceneFeature], lines: Sequence[DimensionLine], whole: Bounds, paper: tuple[float, float]
) -> Bounds | None:
    """The window on what is worked now and all that is worked to; none where it would hide every dimension."""
    focus = _focus(now)
    for x, y in (point for line in lines if line.strong for point in (line.start, line.end)):
        focus = min(focus[0], x), min(focus[1], y), max(focus[2], x), max(focus[3], y)
    window = detail_window(focus, whole, paper)
    return None if lines and not _seen(lines, window) else window


def _focus(now: Sequence[SceneFeature]) -> Bounds:
    """Box of all that is worked now, where it lies."""
    boxes = []
    for one in now:
        x0, y0, x1, y1 = feature_bounds(one.shape)
        corners = [one.placing.point(p) for p in ((x0, y0), (x1, y0), (x1, y1), (x0, y1))]
        xs, ys = [x for x, _ in corners], [y for _, y in corners]
        boxes.append((min(xs), min(ys), max(xs), max(ys)))
    return box_around(boxes)


def _in(point: Point, window: Bounds | None) -> bool:
    return window is None or (window[0] <= point[0] <= window[2] and window[1] <= point[1] <= window[3])


def _seen(lines: Iterable[DimensionLine], window: Bounds | None) -> tuple[DimensionLine, ...]:
    """Dimension lines with both ends in the window."""
    return tuple(one for one in lines if _in(one.start, window) and _in(one.end, window))
