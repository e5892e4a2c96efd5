"""An operation: one job at one station, step by step."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from functools import cached_property
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

from builder.model.base import Names, Noun, Table, Text
from builder.model.deviation import Deviation
from builder.model.nest import Nest
from builder.model.photo import Pictures, Shot, shots_of
from builder.model.shows import Shown, read_shown
from builder.model.typed import (
    AnyTolerance,
    Count,
    EveryText,
    Force,
    Ident,
    PerText,
    Ratio,
    StepTime,
)

WORK_KEYS: tuple[str, ...] = ("sew", "cut", "place", "fold", "mark", "set")
"""Step keys that name what the step works on; a step has one of them, or none for handwork."""


class Step(Noun):
    """One element of work.

    with_     : printed templates it marks or cuts by
    sew … set : features worked now, or for `cut` the parts cut out
    shows     : a part, and `, wrong side` to turn it over; without it the worked part is shown. Pictures that explain
                one thing (`section of`, `stitch of`, `layers of`, `nest`, `settings`) stand beside it
    time      : hand work of this step, beside what the machine model counts
    per       : how often it is done; `during`: done inside the machine time of that step
    turn      : how the part lies after this step: right side out, its seams inside, or wrong side out
    power     : `off` stops and locks the machine before it, as the plant's `lock out` says
    force     : what hand or foot must press or pull with
    """

    step: Ident
    do: Text
    key: Text | None = None
    with_: Names = ()
    why: Text | None = None
    sew: Names = ()
    cut: Names = ()
    place: Names = ()
    fold: Names = ()
    mark: Names = ()
    set: Names = ()
    turn: Literal["right side out", "wrong side out"] | None = None
    shows: Names = ()
    look_at: Names = ()
    check: Names = ()
    photo: Pictures | None = None
    alt: Text | None = None
    caption: Text | None = None
    time: StepTime | None = None
    per: PerText | None = None
    during: Ident | None = None
    power: Literal["off"] | None = None
    force: Force | None = None
    cautions: tuple[Text, ...] = ()

    @cached_property
    def work(self) -> tuple[str, Names]:
        """(kind-key, what it names), or ('', ()) for handwork."""
        return next(((key, getattr(self, key)) for key in WORK_KEYS if getattr(self, key)), ("", ()))

    @cached_property
    def pictures(self) -> tuple[Shown, ...]:
        """All it shows, in the order typed."""
        return tuple(read_shown(one) for one in self.shows)

    @cached_property
    def shots(self) -> tuple[Shot, ...]:
        """Its photos and drawings from elsewhere, in the order typed, a good one before its bad one."""
        return shots_of(self.photo, self.alt, self.caption)

    @cached_property
    def part_shown(self) -> Shown | None:
        """The part it shows, None when it shows the one it works on, or none."""
        return next((one for one in self.pictures if one.kind == "part"), None)

    def mentions(self) -> Iterator[tuple[str, str, int]]:
        """(key, name, number in its list) of all features it works on, looks at and explains."""
        key, names = self.work
        yield from ((key, name, number) for number, name in enumerate(names))
        yield from (("look at", name, number) for number, name in enumerate(self.look_at))
        for number, one in enumerate(self.pictures):
            if one.kind in ("section", "stitch"):
                yield "shows", one.name, number


class ToleranceSpec(Noun):
    """What a measure must be. `of` names a dimension; the nominal value is that of the geometry when left out."""

    of: Text | None = None
    what: Text | None = None
    is_: AnyTolerance
    with_: Text | None = None
    every: EveryText | None = None


class Fault(Noun):
    """What can go wrong: the sign, the class, the cause, what to do, and when to stop and call.

    power : `off` stops and locks the machine before the remedy
    """

    sign: Text
    class_: Literal["critical", "major", "minor"]
    cause: Text
    do: Text | None = None
    stop: Text | None = None
    power: Literal["off"] | None = None


class ThreadSample(Noun):
    """Thread of an unravelled sample of this operation's seam, mm per mm of seam.

    bobbin : bobbin or looper threads together, cover threads too; 0 for a stitch without
    """

    needle: Ratio
    bobbin: Ratio


def _one_of(value: Any) -> Any:
    return {value: "1"} if isinstance(value, str) else value


Makes = Annotated[Table[Ident, Count], BeforeValidator(_one_of, json_schema_input_type=str | dict[str, int])]
"""What one run makes: a name (one piece), or names with counts."""


class Operation(Noun):
    """One job at one station. `needs` and `makes` count pieces for one run of the operation.

    thread_sample  : an unravelled sample; it counts before what geometry says of the thread
    pieces_a_sheet : runs of the operation that one sheet or lay holds; `nest` how they lie on it
    deviation : for some batches only, in place of another operation
    lots : `matched`: the lot numbers on the tickets of all that comes in are compared before the first step
    """

    title: Text
    code: Text
    station: Ident
    needs: Table[Ident, Count] = Field(default_factory=dict)
    makes: Makes
    deviation: Deviation | None = None
    settings: Table[str, Text] = Field(default_factory=dict)
    thread_sample: ThreadSample | None = None
    tolerances: Table[Ident, ToleranceSpec] = Field(default_factory=dict)
    steps: tuple[Step, ...] = Field(min_length=1)
    faults: tuple[Fault, ...] = ()
    cautions: tuple[Text, ...] = ()
    lots: Literal["matched"] | None = None
    times: Text | None = None
    bundle: Count | None = None
    pieces_a_sheet: Count | None = None
    nest: Nest | None = None
    revision: Text = "A"
    date: datetime.date | None = None
    recorded_by: Names = ()
