"""Builds the pages of products: their routes with times, how sure they are, what a piece takes and a shift gives."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from builder.model import (
    NextStudy,
    PlantModel,
    Product,
    ProductTime,
    Results,
    RouteLine,
    Spread,
    SpreadPart,
    StationShare,
    Week,
    in_colour,
    say,
    show_minutes,
    show_number,
    show_percent,
    show_use,
)
from builder.view.grouping import SheetGroup
from builder.view.pages import (
    Link,
    MaterialRow,
    ProductPage,
    RouteRow,
    SourceRow,
    VariantView,
)
from builder.view.sheet import SheetView
from builder.view.study_pages import study_path
from builder.view.time_words import origin_words, time_source_words

MOST_SOURCES, MOST_NEXT = 5, 3
"""Rows of what widens a product's interval, and studies named; more would hide the first."""


@dataclass(slots=True)
class ProductMaker:
    """Makes the pages of products from a plant's numbers and its finished sheets."""

    model: PlantModel
    results: Results
    sheets: Sequence[tuple[SheetGroup, SheetView]]

    def products(self) -> Iterator[ProductPage]:
        """One page a product, with all its sizes."""
        for name, product in self.model.products.items():
            times = [one for one in self.results.products if one.product == name]
            variants = tuple(self._variant(one) for one in times)
            note = say("{count} operations", count=len(times[0].lines)) if times else ""
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
        note = self.note(product.alternative_to or "")
        return Link(f"products/{product.alternative_to}.html", other.title, note)

    def _materials(self, time: ProductTime) -> Iterator[MaterialRow]:
        colours = self.model.products[time.product].colours
        for use in time.materials:
            names = [in_colour(use.material, swaps) for swaps in colours.values()] or [use.material]
            titles = [self.model.materials[one].title for one in names if one in self.model.materials]
            again = [say("same") if one == titles[0] else one for one in titles[1:]]
            yield MaterialRow(show_use(use), (titles[0], *again))

    def note(self, name: str) -> str:
        times = [one for one in self.results.products if one.product == name]
        if not times:
            return ""
        low, high = min(t.standard_min for t in times), max(t.standard_min for t in times)
        span = (
            show_minutes(low)
            if low == high
            else say("{low} to {high}", low=show_number(low, 2, trim=False), high=show_minutes(high))
        )
        return say("{count} operations · standard time {span}", count=len(times[0].lines), span=span)

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
        limit = {"labour": say("labour"), "machine": say("machines")}.get(capacity.limit, "")
        return title, show_minutes(one.labour_min), show_minutes(one.machine_min), pieces, limit

    def _learning(self) -> str:
        learning = self.model.plant.learning
        if learning is None:
            return ""
        rate = show_percent(learning.rate, 0)
        words = say(
            "{rate} with each doubling, the standard after {pieces} pieces", rate=rate, pieces=learning.standard_after
        )
        return f"{words}; {learning.source}"

    def _sureness(self, spread: Spread) -> dict[str, Any]:
        """Fields of a variant's view about its interval."""
        low, high = show_number(spread.low_min, 2, trim=False), show_minutes(spread.high_min)
        narrower = show_percent(spread.estimates_width, 0)
        return {
            "interval": say("{low} to {high}", low=low, high=high),
            "sure": say(
                "{share} sure; exact estimates would narrow it by {narrower}",
                share=show_percent(spread.confidence, 0),
                narrower=narrower,
            ),
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
        return say(
            "{operation}: {cycles} cycles, about {minutes} min, take away {gain} of what studies can narrow",
            operation=title,
            cycles=one.cycles,
            minutes=minutes,
            gain=gain,
        )

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


def _week(one: Week) -> tuple[str, str, str, str]:
    factor = f"{show_number(one.factor, 2, trim=False)} ×"
    return str(one.number), show_number(one.pieces, 0), show_minutes(one.minutes), factor


def _runs(line: RouteLine) -> str:
    return "" if line.quantity == 1 else say("{count} runs a piece", count=show_number(line.quantity))
