"""View objects of a station sheet: everything one sheet says, once, for paper and for the floor screen."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.view.brand import Brand
from builder.view.deviation import DeviationView, OtherWay
from builder.view.figure import FigureView
from builder.view.marking import controlled, shown
from builder.view.panel_view import AnyFigure
from builder.view.photo import Photo
from builder.view.template import TemplateUse


@dataclass(frozen=True, slots=True)
class Caution:
    """A hazard of the station with its sign (ISO 7010 code), signal word (ANSI Z535) and words."""

    hazard: str = controlled()
    sign: str = controlled()
    signal: str = controlled()
    text: str = controlled()


@dataclass(frozen=True, slots=True)
class Protection:
    """What to wear or what must be in place, with its sign."""

    name: str = controlled()
    sign: str = controlled()
    text: str = controlled()


@dataclass(frozen=True, slots=True)
class Setting:
    """One value as it is set on the machine.

    exact  : the controlled fact (fractions in SI, or the word)
    value  : as printed, e.g. `3.2 mm ± 0.2`; other : the other unit, may be empty
    set_at : where on the machine; verify : how it is proved (value, gauge, sample seam)
    """

    name: str = controlled()
    exact: str = controlled()
    value: str = shown()
    other: str = shown(default="")
    set_at: str = shown(default="")
    verify: str = shown(default="")


@dataclass(frozen=True, slots=True)
class Measure:
    """A tolerance to be checked: what, must be, with which gauge, when.

    sizes : (size, value, other unit) of each size where it differs between them; `value` and `other` then name all
    """

    name: str = controlled()
    what: str = controlled()
    exact: str = controlled()
    gauge: str = controlled()
    plan: str = controlled()
    value: str = shown()
    other: str = shown(default="")
    sizes: tuple[tuple[str, str, str], ...] = shown(default=())

    def lines(self) -> tuple[tuple[str, str], ...]:
        """The value with its other unit: one line, or one for each size, the size before it."""
        if not self.sizes:
            return ((self.value, self.other),)
        return tuple((f"{size} {value}", other) for size, value, other in self.sizes)


@dataclass(frozen=True, slots=True)
class FaultLine:
    """A fault: its sign, class, cause, what to do, and when to stop and call ('' when never)."""

    sign: str = controlled()
    grade: str = controlled()
    cause: str = controlled()
    remedy: str = controlled()
    stop: str = controlled(default="")
    power: str = controlled(default="")
    """That the power is off first, '' where it needn't be."""


@dataclass(frozen=True, slots=True)
class StepView:
    """One step. `do`, `key`, `why` are Markdown with emphasis only.

    action : `do` as printed, with what a frequency comes to in pieces, which a new size may change; `do` where there
             is none
    details : pictures that explain one thing of the step, beside its figure: a section, a stitch close up
    sizes : figures of the other sizes, where their picture differs from that of the reference size
    """

    name: str = controlled()
    do: str = controlled()
    key: str = controlled(default="")
    why: str = controlled(default="")
    checks: tuple[Measure, ...] = controlled(default=())
    cautions: tuple[Caution, ...] = controlled(default=())
    figure: FigureView | None = controlled(default=None)
    details: tuple[AnyFigure, ...] = controlled(default=())
    photos: tuple[Photo, ...] = controlled(default=())
    action: str = shown(default="")
    sizes: tuple[tuple[str, FigureView], ...] = shown(default=())
    number: int = shown(default=0)
    seconds: str = shown(default="")
    seconds_value: float = shown(default=0.0)
    source: str = shown(default="")

    @property
    def said(self) -> str:
        """The action line as printed."""
        return self.action or self.do

    def figures(self) -> Iterator[AnyFigure]:
        """All its figures, that of the reference size first."""
        if self.figure is not None:
            yield self.figure
        yield from self.details
        yield from (figure for _, figure in self.sizes)


@dataclass(frozen=True, slots=True)
class SizeRow:
    """One size: its own dimensions, and its own fingerprint, so that a new size leaves the old ones current."""

    size: str = controlled()
    exact: tuple[tuple[str, str], ...] = controlled()
    values: tuple[str, ...] = shown()
    fingerprint: str = shown(default="")
    pieces_an_hour: str = shown(default="")


@dataclass(frozen=True, slots=True)
class ColourRow:
    """One colour: which material stands for which, by name, as titles for show, and its own fingerprint."""

    colour: str = controlled()
    exact: tuple[tuple[str, str], ...] = controlled()
    values: tuple[str, ...] = shown()
    fingerprint: str = shown(default="")


@dataclass(frozen=True, slots=True)
class SheetView:
    """One sheet: an operation with one set of geometry.

    stem        : file name without ending, OPERATION or OPERATION--PRODUCT
    operation, station : object names; code, title, station_title : as printed
    products    : titles of the products it serves
    picture     : the finished look of what this operation makes
    size_names  : headings of the sizes table (the dimensions that differ), () when there are no sizes
    colour_names: headings of the colours table (what the materials are for), () when no colour changes anything here
    incoming    : what comes in, e.g. `2 × handle webbing, from Cut webbing`; outgoing : where it goes next
    templates   : printed templates and card gauges it works by
    deviation   : that it is one, for which batches and how long; other_ways : deviations from it, for its page
    tag         : short code of the method fingerprint, e.g. `7F3K Q2MX 4`; qr : the text in the QR code
    words_tag   : of a translation, the code of its own words; read_by : code of who read its cautions
    distance_mm : reading distance; capital_mm : least capital height of action line, key, dimension and caution
    """

    operation: str = controlled()
    title: str = controlled()
    station: str = controlled()
    station_title: str = controlled()
    cautions: tuple[Caution, ...] = controlled()
    protection: tuple[Protection, ...] = controlled()
    notices: tuple[str, ...] = controlled()
    settings: tuple[Setting, ...] = controlled()
    steps: tuple[StepView, ...] = controlled()
    measures: tuple[Measure, ...] = controlled()
    faults: tuple[FaultLine, ...] = controlled()
    size_names: tuple[str, ...] = shown()
    sizes: tuple[SizeRow, ...] = shown()
    colour_names: tuple[str, ...] = shown()
    colours: tuple[ColourRow, ...] = shown()
    stem: str = shown()
    code: str = shown()
    products: tuple[str, ...] = shown()
    picture: FigureView | None = shown()
    incoming: tuple[str, ...] = shown()
    outgoing: tuple[str, ...] = shown()
    pieces_an_hour: str = shown()
    standard_minutes: str = shown()
    machine_minutes: str = shown()
    bundle: str = shown()
    revision: str = shown()
    date: str = shown()
    recorded_by: tuple[str, ...] = shown()
    fingerprint: str = shown()
    tag: str = shown()
    qr: str = shown()
    plant: str = shown()
    paper: str = shown()
    language: str = shown()
    distance_mm: float = shown()
    capital_mm: float = shown()
    words_tag: str = shown(default="")
    read_by: str = shown(default="")
    brand: Brand | None = shown(default=None)
    templates: tuple[TemplateUse, ...] = controlled(default=())
    deviation: DeviationView | None = controlled(default=None)
    other_ways: tuple[OtherWay, ...] = shown(default=())

    @property
    def paces_differ(self) -> bool:
        """Whether pieces an hour stand in the sizes table, as its last column."""
        return len({row.pieces_an_hour for row in self.sizes}) > 1

    def size_cells(self, row: SizeRow) -> tuple[str, ...]:
        """What the sizes table shows of a size, under `size_names` and the pace where it differs."""
        return (*row.values, row.pieces_an_hour) if self.paces_differ else row.values
