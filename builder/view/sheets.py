"""Builds the view object of each sheet: an operation with one set of geometry."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from builder.geometry import ShapeBook
from builder.model import (
    Dimensions,
    Operation,
    OperationTime,
    PlantModel,
    Results,
    Step,
    Tolerance,
    column_mm,
    find_feature,
    named,
    ordinary,
    say,
    settings_of,
    show_minutes,
)
from builder.view.asking import Ask
from builder.view.brand import brand_of
from builder.view.controls import (
    cautions_of,
    faults_of,
    measures_of,
    notices_of,
    own_cautions,
    protection_of,
    settings_shown,
    step_cautions,
)
from builder.view.detail_makers import details
from builder.view.deviation import deviation_view, other_ways
from builder.view.figure import FigureView
from builder.view.figures import Studio, exact
from builder.view.fingerprint import controlled_facts, method_hash, tag_of
from builder.view.grouping import SheetGroup, Usage
from builder.view.hand_zone import hands_off
from builder.view.headings import headings, outlined_by
from builder.view.hems import with_hems
from builder.view.photo import photos_of
from builder.view.scene import Work
from builder.view.sheet import Measure, SheetView, SizeRow, StepView
from builder.view.template_use import template_uses, with_templates
from builder.view.time_words import action_line, from_facts, pieces_an_hour, seconds_words, step_source
from builder.view.turned_over import turned_over
from builder.view.variants import colours_of, file_word, renamed, size_time
from builder.view.words import both_units, dimension_words

_LETTER_COLUMN_MM = column_mm("Letter", 0)


@dataclass(slots=True)
class SheetMaker:
    """Makes the sheets of a plant.

    stitches : (part, feature) → stitch type and length in mm, of the operation that sews it; worked out here
    """

    model: PlantModel
    dimensions: Dimensions
    book: ShapeBook
    results: Results
    usable: frozenset[str]
    photo_sizes: Mapping[str, tuple[int, int]] = field(default_factory=dict)
    stitches: dict[tuple[str, str], tuple[str, float]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Every seam is drawn in the stitch of the operation that sews it, whoever shows it later."""
        for name in ordinary(self.model.operations):
            self.stitches.update(self._sewn_by(name))

    def _sewn_by(self, name: str) -> dict[tuple[str, str], tuple[str, float]]:
        settings = settings_of(self.model, name)
        if "stitch" not in settings:
            return {}
        length = settings["stitch length"].nominal if "stitch length" in settings else None
        made = Work(self.model, self.model.operations[name], name).all_now()
        return dict.fromkeys(made, (settings["stitch"].words, float(length or 3)))

    def sheets(self, only: str = "") -> Iterator[tuple[SheetGroup, SheetView]]:
        """All sheets, operations in the order of their files; `only` those of one operation."""
        usual = ordinary(self.model.operations)
        makers = {made: name for name, one in usual.items() for made in one.makes}
        takers: dict[str, list[str]] = {}
        for name, operation in usual.items():
            for need in operation.needs:
                takers.setdefault(need, []).append(name)
        for group in Usage(self.model, self.dimensions, self.book, self.usable).groups():
            if only and group.operation != only:
                continue
            yield group, self._sheet(group, makers, takers)

    def _sheet(self, group: SheetGroup, makers: dict[str, str], takers: dict[str, list[str]]) -> SheetView:
        model, name = self.model, group.operation
        operation = model.operations[name]
        station = model.stations[operation.station]
        stitches = self.stitches if operation.deviation is None else {**self.stitches, **self._sewn_by(name)}
        studio = Studio(model, self.dimensions, group.values, group.varying, stitches, next(iter(group.sizes)))
        measures = measures_of(operation, studio, group.sizes)
        coloured = colours_of(group, model)
        times = tuple(size_time(group, size, self.results) for size in group.sizes)
        time = times[0]
        work = Work(model, operation, name)
        steps = tuple(
            self._step(number, step, group, studio, work, measures, times)
            for number, step in enumerate(operation.steps, start=1)
        )
        steps = self._in_sizes(steps, group, studio, work)
        pieces = next(iter(operation.makes.values()))
        view = SheetView(
            operation=name,
            title=operation.title,
            station=operation.station,
            station_title=station.title,
            cautions=(*cautions_of(station), *own_cautions(operation, model)),
            protection=tuple(protection_of(station)),
            notices=tuple(dict.fromkeys(notices_of(operation, station, model))),
            settings=tuple(settings_shown(name, model, coloured.materials)),
            steps=steps,
            measures=tuple(one for one, _, _ in measures.values()),
            faults=tuple(faults_of(operation)),
            size_names=(),
            sizes=(),
            colour_names=coloured.names,
            colours=coloured.rows,
            stem=group.stem,
            code=operation.code,
            products=tuple(model.products[one].title for one in group.products),
            picture=self._picture(operation, group, studio, work),
            incoming=tuple(dict.fromkeys(self._incoming(operation, makers))),
            outgoing=tuple(self._outgoing(operation, takers)),
            pieces_an_hour=pieces_an_hour(time, pieces),
            standard_minutes=show_minutes(time.labour_min) if time else "",
            machine_minutes=show_minutes(time.machine_min) if time else "",
            bundle=str(operation.bundle or model.plant.bundle),
            revision=operation.revision,
            date=operation.date.isoformat() if operation.date else "",
            recorded_by=operation.recorded_by,
            fingerprint="",
            tag="",
            qr="",
            plant=model.plant.plant,
            paper=model.paper_of(name),
            language=model.plant.language,
            distance_mm=float(station.distance.value),
            capital_mm=model.capital_of(name),
            templates=template_uses(operation, model),
            deviation=deviation_view(operation, model),
            other_ways=other_ways(name, model),
            brand=brand_of(model),
        )
        bases = {outlined_by(model.states[made].base, model) for made in operation.makes if made in model.states}
        columns = headings(group, steps, (full for _, full, _ in measures.values()), bases)
        named = replace(view, size_names=tuple(_heading_words(one, self.dimensions, model) for one in columns))
        paces = {size: pieces_an_hour(size_time(group, size, self.results), pieces) for size in group.sizes}
        return _signed(named, group, columns, model.plant.units, paces)

    def _in_sizes(
        self, steps: tuple[StepView, ...], group: SheetGroup, studio: Studio, work: Work
    ) -> tuple[StepView, ...]:
        """The steps with the figures of the other sizes, where their picture is another than the reference's."""
        others: list[list[tuple[str, FigureView]]] = [[] for _ in steps]
        for size, values in tuple(group.sizes.items())[1:]:
            own = replace(studio, values=values, size=size)
            measures = measures_of(work.operation, own, group.sizes)
            for number, (step, view) in enumerate(zip(work.operation.steps, steps, strict=True), start=1):
                figure = self._figure(number, step, group, own, work, measures)
                if figure is not None and figure != view.figure:
                    others[number - 1].append((size, renamed(figure, file_word(size))))
        return tuple(replace(view, sizes=tuple(found)) for view, found in zip(steps, others, strict=True))

    def _step(
        self,
        number: int,
        step: Step,
        group: SheetGroup,
        studio: Studio,
        work: Work,
        measures: Mapping[str, tuple[Measure, str | None, Tolerance]],
        times: Sequence[OperationTime | None],
    ) -> StepView:
        sized = [time.step(step.step) if time is not None else None for time in times]
        found = sized[0]
        shares = [one.share for one in sized if one is not None] if from_facts(step) else []
        figure = self._figure(number, step, group, studio, work, measures)
        letters, column = self._letters(work), self.model.column_of(work.name)
        beside = tuple(details(step, f"{group.stem}-{number}", studio, self.book, work, letters))
        return StepView(
            name=step.step,
            do=with_templates(action_line(step), step, self.model),
            key=step.key or "",
            why=step.why or "",
            checks=tuple(measures[name][0] for name in step.check if name in measures),
            cautions=tuple(step_cautions(step, work.operation, self.model)),
            figure=figure,
            details=beside,
            photos=photos_of(step, self.model, self.photo_sizes, figure is not None or bool(beside), letters, column),
            action=with_templates(action_line(step, shares), step, self.model) if shares else "",
            number=number,
            seconds=seconds_words(found),
            seconds_value=found.total_s if found is not None else 0.0,
            source=step_source(found),
        )

    def _figure(
        self,
        number: int,
        step: Step,
        group: SheetGroup,
        studio: Studio,
        work: Work,
        measures: Mapping[str, tuple[Measure, str | None, Tolerance]],
    ) -> FigureView | None:
        shown = step.part_shown
        part = shown.name if shown is not None else work.part_of(step) or ""
        shape = self.book.shape(part, studio.values) if part else None
        if shape is None:
            return None
        checks = tuple(
            (full, tolerance) for _, full, tolerance in (measures[c] for c in step.check if c in measures) if full
        )
        refs = [find_feature(name, work.homes) for name in step.look_at]
        shape, before = with_hems(shape, self.model, studio.values, work.before(step))
        cut_now = bool(step.cut) and shape.name in {
            self.model.states[c].base for c in step.cut if c in self.model.states
        }
        return studio.figure(
            Ask(
                name=f"{group.stem}-{number}",
                title=say("Step {number}", number=number),
                part=part,
                before=before,
                now=work.now(step),
                order=work.order(step),
                wrong=shown is not None and shown.wrong,
                cut_now=cut_now,
                checks=checks,
                turned=work.turned(step),
                over=turned_over(step, work),
                hands=hands_off(step, self.model.stations[work.operation.station], self.model.plant.units),
                rings=frozenset((ref.part, ref.feature) for ref in refs if ref is not None),
                size=(*self._room(work), self._letters(work)),
            ),
            shape,
        )

    def _room(self, work: Work) -> tuple[float, float]:
        """Width and height of a figure, mm: half the page on Letter and A4, more where the column is wider."""
        wider = max(1.0, self.model.column_of(work.name) / _LETTER_COLUMN_MM)
        return (98.0 * wider, 62.0 * min(wider, 1.4))

    def _letters(self, work: Work) -> float:
        """Capital height of the texts in a figure: what its dimensions need at the station's reading distance, mm."""
        return max(2.8, self.model.capital_of(work.name) * 0.8)

    def _picture(self, operation: Operation, group: SheetGroup, studio: Studio, work: Work) -> FigureView | None:
        """The finished look of what the operation makes, its own work in accent, without words."""
        made = next(iter(operation.makes))
        shape = self.book.shape(made, group.values)
        if shape is None:
            return None
        shape, before = with_hems(shape, self.model, group.values, work.all_before())
        ask = Ask(
            name=f"{group.stem}-made",
            title=say("Made here: {part}", part=named(shape.part.title)),
            part=made,
            before=before,
            now=work.all_now(),
            turned=work.turned(operation.steps[-1]),
            words=False,
            size=(40.0, 26.0, 2.5),
        )
        return studio.figure(ask, shape)

    def _incoming(self, operation: Operation, makers: dict[str, str]) -> Iterator[str]:
        if operation.lots == "matched":
            yield say("The lot numbers on all tickets are the same; if not, stop and call.")
        for name, count in operation.needs.items():
            base = self.model.base_of(name)
            title = self.model.materials[name].title if name in self.model.materials else base.title if base else name
            maker = makers.get(name)
            goods = f"{count} × {title}"
            yield (
                say("{goods}, from {maker}", goods=goods, maker=self.model.operations[maker].title)
                if maker
                else _stored(goods)
            )
        yield from (one.said for one in template_uses(operation, self.model))
        if not operation.needs:
            for name in operation.makes:
                material = self.model.materials.get(self.model.material_of(name) or "")
                if material is not None:
                    yield _stored(material.title)

    def _outgoing(self, operation: Operation, takers: dict[str, list[str]]) -> Iterator[str]:
        names = dict.fromkeys(taker for made in operation.makes for taker in takers.get(made, ()))
        for name in names:
            yield self.model.operations[name].title
        if not names:
            yield say("finished")


def _stored(goods: str) -> str:
    return say("{goods}, from the store", goods=goods)


def _heading_words(full: str, dimensions: Dimensions, model: PlantModel) -> str:
    one = dimensions.definitions[full]
    return dimension_words(one.short, model.parts[one.part])


def _signed(
    view: SheetView, group: SheetGroup, columns: tuple[str, ...], first: str, paces: Mapping[str, str]
) -> SheetView:
    """The sheet with its fingerprint and those of its sizes and colours.

    The method is hashed without their rows, so that a new size or colour leaves every old one's own fingerprint as it
    was.
    """
    method = method_hash(controlled_facts(view))
    rows = []
    if group.varying:
        for size, values in group.sizes.items():
            facts = tuple((name, exact(values[name])) for name in sorted(group.varying) if name in values)
            shown = tuple(both_units(values[name], first) for name in columns)
            row = SizeRow(size, facts, shown, pieces_an_hour=paces[size])
            rows.append(replace(row, fingerprint=tag_of(method_hash([method, controlled_facts(row)]))))
    colours = tuple(
        replace(row, fingerprint=tag_of(method_hash([method, controlled_facts(row)]))) for row in view.colours
    )
    variants = [sorted((row.size, row.exact) for row in rows), sorted((row.colour, row.exact) for row in colours)]
    if not colours:
        variants.pop()
    whole = method_hash([method, *variants]) if rows or colours else method
    tag = tag_of(whole)
    qr = f"{view.stem} {tag.replace(' ', '')}"
    return replace(view, sizes=tuple(rows), colours=colours, fingerprint=whole, tag=tag, qr=qr)
