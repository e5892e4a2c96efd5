"""Builds the view objects of the site's own pages: home, products, stations."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

from builder.checking import explanations, level_words
from builder.model import (
    KINDS,
    NextStudy,
    PlantModel,
    Product,
    ProductTime,
    Results,
    RouteLine,
    SeamSpeed,
    Spread,
    SpreadPart,
    Station,
    StationShare,
    Week,
    in_colour,
    limit_range,
    show_minutes,
    show_number,
    show_percent,
    show_quantity,
    show_range,
    show_seconds,
    show_use,
)
from builder.view.allowance_rows import allowance_note, allowance_rows
from builder.view.controls import cautions_of, protection_of, proved_by
from builder.view.grouping import SheetGroup
from builder.view.pages import (
    HomePage,
    Link,
    MaterialRow,
    ProductPage,
    RouteRow,
    RuleRow,
    RulesPage,
    SiteFrame,
    SourceRow,
    StationPage,
    VariantView,
)
from builder.view.sheet import SheetView
from builder.view.study_pages import study_path
from builder.view.time_words import origin_words, time_source_words

MOST_SOURCES, MOST_NEXT = 5, 3
"""Rows of what widens a product's interval, and studies named; more would hide the first."""


@dataclass(slots=True)
class PageMaker:
    """Makes the pages of a plant from its numbers and its finished sheets."""

    model: PlantModel
    results: Results
    sheets: Sequence[tuple[SheetGroup, SheetView]]

    def frame(self, version: str) -> SiteFrame:
        """What every page shares."""
        return SiteFrame(self.model.plant.plant, self.model.plant.language, version)

    def home(self, date: str) -> HomePage:
        """The first page: products, stations, operations."""
        products = [
            Link(f"products/{name}.html", one.title, self._product_note(name))
            for name, one in self.model.products.items()
        ]
        stations = [
            Link(f"stations/{name}.html", one.title, _operations_count(sum(v.station == name for _, v in self.sheets)))
            for name, one in self.model.stations.items()
        ]
        operations = [
            Link(
                f"operations/{view.stem}.html",
                view.title,
                f"{view.code} · {view.station_title}",
                f"pictures/{view.stem}.png" if view.picture is not None else "",
            )
            for _, view in sorted(self.sheets, key=lambda one: (one[1].code, one[1].stem))
        ]
        return HomePage(self.model.plant.plant, tuple(products), tuple(stations), tuple(operations), date)

    def products(self) -> Iterator[ProductPage]:
        """One page a product, with all its sizes."""
        for name, product in self.model.products.items():
            times = [one for one in self.results.products if one.product == name]
            variants = tuple(self._variant(one) for one in times)
            note = f"{len(times[0].lines)} operations" if times else ""
            if product.note:
                note = f"{note} · {product.note}"
            colours = tuple(product.colours) if len(product.colours) > 1 else ()
            yield ProductPage(
                f"products/{name}.html",
                name,
                product.title,
                note,
                variants,
                colours=colours,
                alternative=self._alternative(product),
            )

    def _alternative(self, product: Product) -> Link | None:
        other = self.model.products.get(product.alternative_to or "")
        if other is None:
            return None
        note = self._product_note(product.alternative_to or "")
        return Link(f"products/{product.alternative_to}.html", other.title, note)

    def _materials(self, time: ProductTime) -> Iterator[MaterialRow]:
        colours = self.model.products[time.product].colours
        for use in time.materials:
            names = [in_colour(use.material, swaps) for swaps in colours.values()] or [use.material]
            titles = [self.model.materials[one].title for one in names if one in self.model.materials]
            again = ["same" if one == titles[0] else one for one in titles[1:]]
            yield MaterialRow(show_use(use), (titles[0], *again))

    def stations(self) -> Iterator[StationPage]:
        """One page a station, with its settings table and its operations."""
        for name, station in self.model.stations.items():
            if station.kind not in KINDS:
                continue
            operations = tuple(
                Link(f"operations/{view.stem}.html", view.title, view.code)
                for _, view in self.sheets
                if view.station == name
            )
            yield StationPage(
                path=f"stations/{name}.html",
                name=name,
                title=station.title,
                kind="" if (kind := KINDS[station.kind].title).lower() == station.title.lower() else kind,
                facts=tuple(self._facts(station)),
                cautions=tuple(cautions_of(station)),
                protection=tuple(protection_of(station)),
                settings=tuple(self._settings(station)),
                operations=operations,
                start=tuple(station.start.items()),
                close_down=tuple(station.close_down.items()),
                tending=tuple(self._tending(name)),
                allowances=tuple(allowance_rows(self.model.plant, station)),
                allowance_note=allowance_note(self.model.plant, station),
            )

    def rules(self) -> RulesPage:
        """The page of rules, in the words of `explain`; what a plant changed is said with its reason."""
        own = self.model.plant.rules
        groups: dict[str, list[RuleRow]] = {}
        for one in explanations():
            level = level_words(one)
            if one.slug in own:
                level = f"{own[one.slug].severity} in this plant, because {own[one.slug].because}"
            row = RuleRow(one.slug, level, one.why, one.remedy, one.causes, one.bad, one.good)
            groups.setdefault(one.group, []).append(row)
        return RulesPage(tuple((group, tuple(rows)) for group, rows in groups.items()))

    def _product_note(self, name: str) -> str:
        times = [one for one in self.results.products if one.product == name]
        if not times:
            return ""
        low, high = min(t.standard_min for t in times), max(t.standard_min for t in times)
        span = show_minutes(low) if low == high else f"{show_number(low, 2, trim=False)} to {show_minutes(high)}"
        return f"{len(times[0].lines)} operations · standard time {span}"

    def _variant(self, time: ProductTime) -> VariantView:
        rows = tuple(self._rows(time))
        stations = tuple(self._station(one) for one in time.stations)
        return VariantView(
            name=time.variant or "",
            anchor=f"size-{(time.variant or 'all').lower()}",
            standard=show_minutes(time.standard_min),
            machine=show_minutes(time.machine_min),
            estimate_share=show_percent(time.estimate_share, 0),
            pieces_an_hour=show_number(60 / time.standard_min, 1) if time.standard_min else "",
            rows=rows,
            stations=stations,
            materials=tuple(self._materials(time)),
            newcomer=tuple(_week(one) for one in time.newcomer),
            newcomer_note=self._learning(),
            **(self._sureness(time.spread) if time.spread is not None else {}),
        )

    def _station(self, one: StationShare) -> tuple[str, str, str, str, str]:
        """A piece at a kind of station, and what a shift there gives."""
        title, capacity = self.model.stations[one.station].title, one.capacity
        pieces = show_number(capacity.pieces, 0) if capacity.pieces is not None else ""
        limit = {"labour": "labour", "machine": "machines"}.get(capacity.limit, "")
        return title, show_minutes(one.labour_min), show_minutes(one.machine_min), pieces, limit

    def _learning(self) -> str:
        learning = self.model.plant.learning
        if learning is None:
            return ""
        rate = show_percent(learning.rate, 0)
        return f"{rate} with each doubling, the standard after {learning.standard_after} pieces; {learning.source}"

    def _tending(self, name: str) -> Iterator[tuple[str, str, str, str, str]]:
        for operation, one in self.results.tending.items():
            if self.model.operations[operation].station == name:
                machines = "any number" if one.machines == math.inf else show_number(one.machines, 1)
                lost = show_percent(one.interference, 0) if one.tended > 1 else "–"
                title = self.model.operations[operation].title
                yield title, show_seconds(one.service_s), show_seconds(one.run_s), machines, lost

    def _sureness(self, spread: Spread) -> dict[str, Any]:
        """Fields of a variant's view about its interval."""
        low, high = show_number(spread.low_min, 2, trim=False), show_minutes(spread.high_min)
        narrower = show_percent(spread.estimates_width, 0)
        return {
            "interval": f"{low} to {high}",
            "sure": f"{show_percent(spread.confidence, 0)} sure; exact estimates would narrow it by {narrower}",
            "sources": tuple(self._unsure(part) for part in spread.parts[:MOST_SOURCES]),
            "following": tuple(self._next(one) for one in spread.following[:MOST_NEXT]),
        }

    def _unsure(self, part: SpreadPart) -> SourceRow:
        minutes = show_number(part.minutes, 2, trim=False) if part.minutes else ""
        half = f"± {show_number(part.half_min, 2, trim=False)}"
        return SourceRow(time_source_words(part.source, self.model), minutes, half, show_percent(part.share, 0))

    def _next(self, one: NextStudy) -> str:
        title, minutes = self.model.operations[one.operation].title, show_number(one.minutes, 0)
        gain = show_percent(one.gain, 0)
        return f"{title}: {one.cycles} cycles, about {minutes} min, take away {gain} of what studies can narrow"

    def _rows(self, time: ProductTime) -> Iterator[RouteRow]:
        total = time.standard_min or 1.0
        sheets = self._sheets_of(time.product)
        for line in time.lines:
            view = sheets.get(line.operation)
            if view is None:
                continue
            operation = self.results.operations.get((line.operation, time.product, time.variant or ""))
            yield RouteRow(
                page=f"operations/{view.stem}.html",
                sheet=f"sheets/{view.stem}.pdf",
                code=view.code,
                title=view.title,
                station=view.station_title,
                quantity=_runs(line),
                own=show_number(line.own_min, 2, trim=False),
                machine=show_number(line.own_machine_min, 2, trim=False),
                cumulative=show_number(line.cumulative_min, 2, trim=False),
                start_share=(line.cumulative_min - line.own_min) / total,
                own_share=line.own_min / total,
                estimated=line.estimate_share,
                source=origin_words(line, operation),
                figure=view.picture,
                study=study_path(line.operation) if line.operation in self.results.studies else "",
            )

    def _sheets_of(self, product: str) -> Mapping[str, SheetView]:
        return {group.operation: view for group, view in self.sheets if product in group.products or not group.products}

    def _facts(self, station: Station) -> Iterator[tuple[str, str]]:
        first = self.model.plant.units
        yield "places", str(station.count)
        if station.people is not None:
            yield "people in a shift", str(station.people)
        if station.tended is not None:
            yield "machines a person", str(station.tended)
        if station.labour_grade is not None:
            yield "labour grade", station.labour_grade
        share = f", {show_percent(station.share, 0)} of the machine’s time" if station.share is not None else ""
        yield "attendance", station.attendance + share
        yield "reading distance", show_quantity(station.distance, first)
        if station.stitches:
            yield "stitch types", ", ".join(station.stitches)
        if station.pace.top_speed is not None:
            yield "top speed", show_quantity(station.pace.top_speed, first)
        if KINDS[station.kind].needs:
            date = station.pace.calibrated
            yield "machine model", f"measured {date.isoformat()}" if date else "not yet measured in this plant"
        for words, value in (
            ("foot lift", station.foot_lift),
            ("widest strip", station.strip_width),
            ("farthest reach", station.reach),
        ):
            if value is not None:
                yield words, show_quantity(value, first)
        for speed in station.seam_speeds:
            yield f"top speed, {speed.held}{_measured_on(speed, first)}", show_quantity(speed.top_speed, first)
        for name, one in station.programs.items():
            length, width = show_quantity(one.length, first, both=False), show_quantity(one.width, first, both=False)
            yield f"program {name}", f"{one.stitches} stitches, {length} × {width}"
        if station.bed is not None:
            width, length = (show_quantity(one, first, both=False) for one in (station.bed.width, station.bed.length))
            yield "bed", f"{width} × {length}"
        if station.posture is not None:
            yield "posture", station.posture + (f"; {station.relief}" if station.relief else "")
        if station.note:
            yield "note", station.note

    def _settings(self, station: Station) -> Iterator[tuple[str, str, str, str]]:
        table = KINDS[station.kind].settings
        for name, limit in station.settings.items():
            limits = ", ".join(limit.choices) if limit.choices else ""
            if limit.limits is not None and name in table:
                span = limit_range(limit, table[name])
                limits = show_range(span, self.model.plant.units) if span is not None else ""
                if span is not None and span.low.value == span.high.value:
                    limits = limits.partition("…")[0]  # one layer is not `1…1`
            proof = proved_by(limit.verify, limit.how)
            yield name, limits or "–", limit.set_at, f"{proof[:1].upper()}{proof[1:].rstrip('.')}."


def _week(one: Week) -> tuple[str, str, str, str]:
    factor = f"{show_number(one.factor, 2, trim=False)} ×"
    return str(one.number), show_number(one.pieces, 0), show_minutes(one.minutes), factor


def _measured_on(speed: SeamSpeed, first: Literal["mm", "in"]) -> str:
    """What a seam speed was measured on, each after a comma."""
    radius = f", curves down to {show_quantity(speed.smallest_radius, first)}" if speed.smallest_radius else ""
    thick = f", up to {show_quantity(speed.thickest, first)} thick" if speed.thickest else ""
    many = f", up to {speed.layers} layer{'' if speed.layers == 1 else 's'}" if speed.layers else ""
    return radius + thick + many


def _operations_count(number: int) -> str:
    return "no operation yet" if not number else f"{number} operation{'' if number == 1 else 's'}"


def _runs(line: RouteLine) -> str:
    return "" if line.quantity == 1 else f"{show_number(line.quantity)} runs a piece"
