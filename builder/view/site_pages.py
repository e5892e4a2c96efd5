"""Builds the view objects of the site's own pages: home, stations, rules. Those of products are in product_pages.py."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from builder.checking import explanations, level_words
from builder.model import (
    KINDS,
    PlantModel,
    Results,
    SeamSpeed,
    Station,
    limit_range,
    named,
    say,
    show_date,
    show_number,
    show_percent,
    show_quantity,
    show_range,
    show_seconds,
)
from builder.view.allowance_rows import allowance_note, allowance_rows
from builder.view.brand import brand_of
from builder.view.controls import cautions_of, protection_of, proved_by
from builder.view.grouping import SheetGroup
from builder.view.pages import (
    HomePage,
    Link,
    RuleRow,
    RulesPage,
    SiteFrame,
    StationPage,
)
from builder.view.product_pages import ProductMaker
from builder.view.sheet import SheetView


@dataclass(slots=True)
class PageMaker:
    """Makes the pages of a plant from its numbers and its finished sheets."""

    model: PlantModel
    results: Results
    sheets: Sequence[tuple[SheetGroup, SheetView]]

    def frame(self, version: str) -> SiteFrame:
        """What every page shares."""
        return SiteFrame(self.model.plant.plant, self.model.plant.language, version, brand_of(self.model))

    def home(
        self, date: str, products_shown: Collection[str] | None = None, stations_shown: Collection[str] | None = None
    ) -> HomePage:
        """The first page: products, stations, operations. The products and stations shown are all where not said."""
        made = ProductMaker(self.model, self.results, self.sheets)
        products = [
            Link(f"products/{name}.html", one.title, made.note(name))
            for name, one in self.model.products.items()
            if products_shown is None or name in products_shown
        ]
        stations = [
            Link(f"stations/{name}.html", one.title, _operations_count(sum(v.station == name for _, v in self.sheets)))
            for name, one in self.model.stations.items()
            if stations_shown is None or name in stations_shown
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
                kind="" if (kind := say(KINDS[station.kind].title)).lower() == station.title.lower() else kind,
                facts=tuple(self._facts(station)),
                cautions=tuple(cautions_of(station)),
                protection=tuple(protection_of(station)),
                settings=tuple(self._settings(station)),
                operations=operations,
                start=tuple((named(name), text) for name, text in station.start.items()),
                close_down=tuple((named(name), text) for name, text in station.close_down.items()),
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
                level = say(
                    "{level} in this plant, because {reason}",
                    level=say(own[one.slug].severity),
                    reason=own[one.slug].because,
                )
            row = RuleRow(one.slug, level, one.why, one.remedy, one.causes, one.bad, one.good)
            groups.setdefault(one.group, []).append(row)
        return RulesPage(tuple((group, tuple(rows)) for group, rows in groups.items()))

    def _tending(self, name: str) -> Iterator[tuple[str, str, str, str, str]]:
        for operation, one in self.results.tending.items():
            if self.model.operations[operation].station == name:
                machines = say("any number") if one.machines == math.inf else show_number(one.machines, 1)
                lost = show_percent(one.interference, 0) if one.tended > 1 else "–"
                title = self.model.operations[operation].title
                yield title, show_seconds(one.service_s), show_seconds(one.run_s), machines, lost

    def _facts(self, station: Station) -> Iterator[tuple[str, str]]:
        first = self.model.plant.units
        yield say("places"), str(station.count)
        if station.people is not None:
            yield say("people in a shift"), str(station.people)
        if station.tended is not None:
            yield say("machines a person"), str(station.tended)
        if station.labour_grade is not None:
            yield say("labour grade"), station.labour_grade
        attendance = say(station.attendance)
        if station.share is not None:
            share = show_percent(station.share, 0)
            attendance = say("{attendance}, {share} of the machine’s time", attendance=attendance, share=share)
        yield say("attendance"), attendance
        yield say("reading distance"), show_quantity(station.distance, first)
        if station.stitches:
            yield say("stitch types"), ", ".join(station.stitches)
        if station.pace.top_speed is not None:
            yield say("top speed"), show_quantity(station.pace.top_speed, first)
        if KINDS[station.kind].needs:
            date = station.pace.calibrated
            measured = (
                say("measured {date}", date=show_date(date.isoformat()))
                if date
                else say("not yet measured in this plant")
            )
            yield say("machine model"), measured
        for words, value in (
            (say("foot lift"), station.foot_lift),
            (say("widest strip"), station.strip_width),
            (say("farthest reach"), station.reach),
        ):
            if value is not None:
                yield words, show_quantity(value, first)
        for speed in station.seam_speeds:
            yield (
                f"{say('top speed')}, {say(speed.held)}{_measured_on(speed, first)}",
                show_quantity(speed.top_speed, first),
            )
        for name, one in station.programs.items():
            length, width = show_quantity(one.length, first, both=False), show_quantity(one.width, first, both=False)
            size = f"{length} × {width}"
            yield say("program {name}", name=name), say("{count} stitches, {size}", count=one.stitches, size=size)
        if station.bed is not None:
            width, length = (show_quantity(one, first, both=False) for one in (station.bed.width, station.bed.length))
            yield say("bed"), f"{width} × {length}"
        if station.posture is not None:
            yield say("posture"), say(station.posture) + (f"; {station.relief}" if station.relief else "")
        if station.note:
            yield say("note"), station.note

    def _choice(self, words: str) -> str:
        """What a setting may be: a material by its title."""
        return self.model.materials[words].title if words in self.model.materials else named(words)

    def _settings(self, station: Station) -> Iterator[tuple[str, str, str, str]]:
        table = KINDS[station.kind].settings
        for name, limit in station.settings.items():
            limits = ", ".join(self._choice(one) for one in limit.choices or ())
            if limit.limits is not None and name in table:
                span = limit_range(limit, table[name])
                limits = show_range(span, self.model.plant.units) if span is not None else ""
                if span is not None and span.low.value == span.high.value:
                    limits = limits.partition("…")[0]  # one layer is not `1…1`
            proof = proved_by(limit.verify, limit.how)
            yield say(name), limits or "–", limit.set_at, f"{proof[:1].upper()}{proof[1:].rstrip('.')}."


def _measured_on(speed: SeamSpeed, first: Literal["mm", "in"]) -> str:
    """What a seam speed was measured on, each after a comma."""
    radius = (
        f", {say('curves down to {radius}', radius=show_quantity(speed.smallest_radius, first))}"
        if speed.smallest_radius
        else ""
    )
    thick = (
        f", {say('up to {thickness} thick', thickness=show_quantity(speed.thickest, first))}" if speed.thickest else ""
    )
    many = f", {say('layers up to {count}', count=speed.layers)}" if speed.layers else ""
    return radius + thick + many


def _operations_count(number: int) -> str:
    return (
        say("no operation yet")
        if not number
        else say("1 operation")
        if number == 1
        else say("{count} operations", count=number)
    )
