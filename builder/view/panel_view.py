"""View objects of a panel: the settings of a machine as values on the ranges they can be set in."""

from __future__ import annotations

from dataclasses import dataclass

from builder.view.figure import FigureView
from builder.view.marking import controlled, shown


@dataclass(frozen=True, slots=True)
class Span:
    """Where a value lies on what the machine can be set to; all in one unit, for drawing only.

    low, high   : ends of the range, with their words
    value       : what is set; `least` and `most` bound what it may be, both the value where nothing else is said
    """

    low: float = shown()
    high: float = shown()
    value: float = shown()
    least: float = shown()
    most: float = shown()
    low_words: str = shown()
    high_words: str = shown()


@dataclass(frozen=True, slots=True)
class PanelRow:
    """One setting: its name, its value as set, the other unit, and its span where it is a number with limits."""

    name: str = shown()
    value: str = shown()
    other: str = shown(default="")
    span: Span | None = shown(default=None)


@dataclass(frozen=True, slots=True)
class PanelView:
    """The settings of one operation, in the order typed. Fields that a figure has too mean the same."""

    name: str = shown()
    title: str = shown()
    rows: tuple[PanelRow, ...] = shown()
    facts: tuple[tuple[str, str], ...] = controlled()
    alt: str = shown()
    width_mm: float = shown(default=98.0)
    height_mm: float = shown(default=90.0)
    text_mm: float = shown(default=2.8)


AnyFigure = FigureView | PanelView
"""What can stand beside a step as its drawing."""
