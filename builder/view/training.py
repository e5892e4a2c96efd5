"""View object of a training sheet: an operation in the form of a job breakdown, for trainer and learner.

Its steps, settings and cautions are those of the sheet it is made from; seconds stand here and not on the posted one.
"""

from __future__ import annotations

from dataclasses import dataclass

from builder.view.figure import FigureView
from builder.view.marking import controlled, shown
from builder.view.sheet import SheetView, StepView


@dataclass(frozen=True, slots=True)
class TrainingStep:
    """An important step: the sheet's own, with its standard seconds each time it is done.

    estimated : nobody has timed it;   figure : a small picture of it without words
    """

    step: StepView = controlled()
    seconds: str = shown(default="")
    estimated: bool = shown(default=False)
    figure: FigureView | None = shown(default=None)


@dataclass(frozen=True, slots=True)
class TrainingView:
    """A training sheet.

    gauges     : what is measured with;  incoming : what the work is made from, the sheet's lines
    lessons    : the steps of instruction, each with what the trainer does
    alone      : what a learner must show to work alone
    pace       : when pace is asked for, '' where the plant says nothing
    minutes    : (name, value) of the whole operation's times
    """

    sheet: SheetView = controlled()
    steps: tuple[TrainingStep, ...] = controlled()
    gauges: tuple[str, ...] = controlled()
    lessons: tuple[tuple[str, str], ...] = controlled()
    alone: tuple[str, ...] = controlled()
    pace: str = shown(default="")
    minutes: tuple[tuple[str, str], ...] = shown(default=())

    @property
    def stem(self) -> str:
        """File name without ending."""
        return self.sheet.stem
