"""Builds the training sheets from the finished sheets of a plant."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from builder.computing import step_standard
from builder.model import KINDS, OperationTime, PlantModel, Results, say, show_number, show_seconds
from builder.view.figure import FigureView
from builder.view.grouping import SheetGroup
from builder.view.setting_groups import named_colours
from builder.view.sheet import SheetView, StepView
from builder.view.training import TrainingStep, TrainingView
from builder.view.variants import size_time

SMALL_MM = (44.0, 27.0)


@dataclass(slots=True)
class TrainingMaker:
    """Makes the training sheets of a plant."""

    model: PlantModel
    results: Results

    def sheets(self, made: Iterable[tuple[SheetGroup, SheetView]]) -> Iterator[TrainingView]:
        """A training sheet for each sheet, in their order."""
        for group, view in made:
            yield self._training(group, view)

    def _training(self, group: SheetGroup, view: SheetView) -> TrainingView:
        time = size_time(group, next(iter(group.sizes)), self.results)
        return TrainingView(
            sheet=replace(view, settings=tuple(named_colours(one, view) for one in view.settings)),
            steps=tuple(self._step(one, view, time) for one in view.steps),
            gauges=tuple(dict.fromkeys(one.gauge for one in view.measures if one.gauge)),
            lessons=tuple(_lessons()),
            alone=tuple(_alone(view)),
            pace=self._pace(),
            minutes=tuple(_minutes(view)),
        )

    def _step(self, view: StepView, sheet: SheetView, time: OperationTime | None) -> TrainingStep:
        found = time.step(view.name) if time is not None else None
        kind = KINDS.get(self.model.stations[sheet.station].kind)
        seconds = ""
        if time is not None and found is not None and kind is not None and found.total_s > 0:
            seconds = show_seconds(step_standard(found, time, kind))
        return TrainingStep(
            step=view,
            seconds=seconds,
            estimated=bool(seconds) and found is not None and "estimate" in found.source.split(" + "),
            figure=_small(view.figure) if view.figure is not None and _tells(view.figure) else None,
        )

    def _pace(self) -> str:
        learning = self.model.plant.learning
        if learning is None:
            return ""
        pieces = show_number(learning.standard_after, 0)
        return say("Right first, pace later: the standard is expected after {pieces} pieces.", pieces=pieces)


def _tells(figure: FigureView) -> bool:
    """Whether a small picture says where the work is: something is worked on or looked at."""
    return bool(figure.ring) or any(stroke.when == "now" for stroke in figure.strokes)


def _small(figure: FigureView) -> FigureView:
    """The figure without its words, which nobody could read at this size."""
    width, height = SMALL_MM
    return replace(
        figure,
        name=f"{figure.name}-small",
        side="",
        route=(),
        start=None,
        end=None,
        grain=None,
        dimensions=(),
        callouts=(),
        locator=None,
        scale_bar=(),
        turned="",
        width_mm=width,
        height_mm=height,
    )


def _lessons() -> Iterator[tuple[str, str]]:
    """The four steps of instruction as the trade teaches them. Common practice, no source."""
    yield (
        say("Prepare the learner"),
        say("Say what the job is and what can hurt. Ask what the learner knows. Stand so that both see the same."),
    )
    yield (
        say("Present the work"),
        say("Show each step. Show again with the key points, then with the reasons. No more at once than is taken in."),
    )
    yield (
        say("Try out"),
        say("The learner does it, then says steps, key points and reasons while doing it. Mend errors at once."),
    )
    yield (
        say("Follow up"),
        say("Say whom to ask. Look often, then seldom. Measure the first pieces with the learner."),
    )


def _alone(view: SheetView) -> Iterator[str]:
    """What must be seen before a learner works alone. Common practice, no source."""
    yield say("names every key point and its reason without this sheet")
    if view.cautions or view.protection:
        yield say("names what can hurt here, and has all protection in place unasked")
    if view.measures:
        yield say("measures each check alone and reads it right")
    if any(one.stop for one in view.faults):
        yield say("knows each fault that means stop and call")
    yield say("has made a whole bundle of {pieces} with nobody helping, every piece passed", pieces=view.bundle)


def _minutes(view: SheetView) -> Iterator[tuple[str, str]]:
    if view.standard_minutes:
        yield say("standard time"), view.standard_minutes
    if view.machine_minutes and view.machine_minutes != view.standard_minutes:
        yield say("machine time"), view.machine_minutes
    if view.pieces_an_hour:
        yield say("pieces an hour"), view.pieces_an_hour
