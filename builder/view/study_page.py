"""View objects of a study's page: what was timed, how sure each step is, what was kept out."""

from __future__ import annotations

from dataclasses import dataclass

from builder.view.chart import FitChart, Histogram, RunChart
from builder.view.element_rows import ElementLine
from builder.view.marking import shown
from builder.view.pages import Link


@dataclass(frozen=True, slots=True)
class StudyRow:
    """What a study says of one step, in words.

    title   : the step's action line
    needed  : readings still needed, '' for none
    remarks : what an engineer should look at: odd readings, drift, equal readings
    """

    step: str = shown()
    title: str = shown()
    n: str = shown()
    mean: str = shown()
    sd: str = shown()
    variation: str = shown()
    rating: str = shown()
    basic: str = shown()
    interval: str = shown()
    needed: str = shown()
    remarks: tuple[str, ...] = shown(default=())
    run: RunChart | None = shown(default=None)
    bars: Histogram | None = shown(default=None)


@dataclass(frozen=True, slots=True)
class StudyPage:
    """A study with the operation it times.

    asked    : what is asked of a mean, and by which form readings are counted
    changed  : what has changed since the readings were taken; they are carried over or stale
    kept_out : readings left out, and foreign elements, each with why
    """

    path: str = shown()
    name: str = shown()
    title: str = shown()
    operation: Link = shown()
    head: tuple[tuple[str, str], ...] = shown()
    asked: str = shown()
    cycles: str = shown()
    rows: tuple[StudyRow, ...] = shown()
    changed: tuple[str, ...] = shown(default=())
    kept_out: tuple[str, ...] = shown(default=())
    learning: str = shown(default="")
    learning_chart: FitChart | None = shown(default=None)


@dataclass(frozen=True, slots=True)
class StudyLine:
    """A study taken or to be taken, in one line. What a field says hangs on the table it stands in.

    needed  : steps that lack readings, or the minutes a study would take
    remarks : how many readings and steps ask to be looked at, or what a study would gain
    """

    link: Link = shown()
    date: str = shown(default="")
    cycles: str = shown(default="")
    needed: str = shown(default="")
    remarks: str = shown(default="")
    changed: str = shown(default="")


@dataclass(frozen=True, slots=True)
class TimesPage:
    """Where the plant's times come from: its studies, what to time next, what nobody has timed."""

    asked: str = shown()
    studies: tuple[StudyLine, ...] = shown()
    following: tuple[StudyLine, ...] = shown()
    untimed: tuple[Link, ...] = shown()
    elements: tuple[ElementLine, ...] = shown(default=())
