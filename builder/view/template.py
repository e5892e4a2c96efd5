"""View objects of a template: what is printed at true size, on which sheets, and what each sheet says.

Positions are millimetres of the thing itself, x right, y up, already turned as it lies on the paper. A millimetre of
the thing is a millimetre of paper: nothing after this room scales anything.
"""

from __future__ import annotations

from dataclasses import dataclass

from builder.geometry import Bounds, Point, Segment
from builder.model import say
from builder.view.marking import controlled, shown


@dataclass(frozen=True, slots=True)
class PaperFrame:
    """How a sheet of paper is shared out, mm: a margin no printer reaches, the head, the window and the foot."""

    width: float = shown()
    height: float = shown()
    margin: float = shown(default=10.0)
    head: float = shown(default=13.0)
    foot: float = shown(default=40.0)
    gap: float = shown(default=1.5)

    @property
    def window(self) -> tuple[float, float]:
        """Width and height of the window."""
        tall = self.height - 2 * self.margin - self.head - self.foot - 2 * self.gap
        return self.width - 2 * self.margin, tall


PAPERS = {
    "Letter": PaperFrame(215.9, 279.4),
    "A4": PaperFrame(210.0, 297.0),
    "Tabloid": PaperFrame(279.4, 431.8),
    "A3": PaperFrame(297.0, 420.0),
}
"""By name, upright: ISO 216 and ANSI/ASME Y14.1 (memory)."""


@dataclass(frozen=True, slots=True)
class TemplateLine:
    """One piece of line work. Roles are those of a figure's strokes, and `slit`, `datum`, `go`, `no go`.

    words : written along it once, '' for nothing
    """

    role: str = shown()
    path: tuple[Segment, ...] = shown()
    closed: bool = shown(default=False)
    words: str = shown(default="")


@dataclass(frozen=True, slots=True)
class TemplateWords:
    """Lines of text in a box, from its top; a line that begins with * is bold.

    turned : read from the right    either : the lines are ways to say one thing; the first that fits is printed
    """

    box: Bounds = shown()
    lines: tuple[str, ...] = shown()
    turned: bool = shown(default=False)
    either: bool = shown(default=False)


@dataclass(frozen=True, slots=True)
class ChainDimension:
    """A dimension line with its text; `feet` are the points measured, from which extension lines go to its ends."""

    start: Point = shown()
    end: Point = shown()
    feet: tuple[Point, Point] = shown()
    text: str = shown()


@dataclass(frozen=True, slots=True)
class SheetJoint:
    """A joint of one sheet with another: its letter, the other's number, the line, whether this sheet is cut there."""

    letter: str = shown()
    other: int = shown()
    line: tuple[Point, Point] = shown()
    cut: bool = shown()


@dataclass(frozen=True, slots=True)
class TemplateSheet:
    """One sheet of paper: its number, column and row, what its window shows, and its marks for joining."""

    number: int = shown()
    column: int = shown()
    row: int = shown()
    window: Bounds = shown()
    joints: tuple[SheetJoint, ...] = shown(default=())
    crosses: tuple[Point, ...] = shown(default=())


@dataclass(frozen=True, slots=True)
class TemplateView:
    """A template.

    facts   : the controlled facts: every exact dimension it is drawn from
    about   : what it is of and for, as short texts; label the same for the piece itself
    state   : '' in use, 'not yet measured', or 'not in use'
    record  : the measurement of the copy in use as words, '' without
    limit   : how far a side of the check square may be off, as printed
    reach   : what that limit comes to on the longest side, '' where that is no more than the square
    joined  : what to measure when all sheets are joined, () for one sheet
    outline : the cut edge, () for a gauge, whose words have their places; label and grain arrow are placed inside it
    grain   : direction of grain in degrees from x, None without
    tag     : short code of the fingerprint
    """

    name: str = shown()
    kind: str = controlled()
    of: str = controlled()
    facts: tuple[tuple[str, str], ...] = controlled()
    title: str = shown()
    number: str = shown()
    revision: str = shown()
    size: str = shown()
    about: tuple[str, ...] = shown()
    label: tuple[str, ...] = shown()
    date: str = shown()
    plant: str = shown()
    language: str = shown()
    state: str = shown()
    record: str = shown()
    limit: str = shown()
    reach: str = shown()
    joined: tuple[str, ...] = shown()
    frame: PaperFrame = shown()
    columns: int = shown()
    rows: int = shown()
    sheets: tuple[TemplateSheet, ...] = shown()
    lines: tuple[TemplateLine, ...] = shown()
    outline: tuple[Segment, ...] = shown()
    words: tuple[TemplateWords, ...] = shown(default=())
    dimensions: tuple[ChainDimension, ...] = shown(default=())
    grain: float | None = shown(default=None)
    fingerprint: str = shown(default="")
    tag: str = shown(default="")

    @property
    def usable(self) -> bool:
        """Whether it may hang on a wall: not one whose copy was measured and found off."""
        return self.state != "not in use"


@dataclass(frozen=True, slots=True)
class TemplateUse:
    """A template an operation uses, as its sheet and page say: number and title, and how it stands with its copy."""

    number: str = controlled()
    title: str = controlled()
    name: str = shown()
    revision: str = shown()
    state: str = shown()

    @property
    def path(self) -> str:
        """Where a build puts it, '' for one not in use, which it doesn't print."""
        return "" if self.state == "not in use" else f"templates/{self.name}.pdf"

    @property
    def said(self) -> str:
        """As one text."""
        ending = {"not in use": say("NOT IN USE, print it again"), "not yet measured": say("not yet measured")}
        words = say("Template {number}, revision {revision}", number=self.number, revision=self.revision)
        ended = f": {ending[self.state]}" if self.state in ending else ""
        return f"{words}, {self.title}{ended}"
