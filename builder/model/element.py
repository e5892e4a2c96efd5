"""The plant's own table of element times: typed, or derived from the readings of steps."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import ConfigDict, model_validator
from pydantic_core import PydanticCustomError

from builder.errors import TextFault
from builder.model.base import Noun, OneOrMany, Text
from builder.model.typed import LengthRange, Share, TextType, Time

_STUDY_STEP = re.compile(r"\s*([a-z0-9]+(?:-[a-z0-9]+)*)(\s*/\s*)([a-z0-9]+(?:-[a-z0-9]+)*)\s*")


@dataclass(frozen=True, slots=True)
class StudyStep:
    """A step of a study, typed `STUDY/STEP`. `at` and `step_at` are where the two names stand in the text."""

    study: str
    step: str
    text: str
    at: int = 0
    step_at: int = 0


def parse_study_step(text: str) -> StudyStep:
    """`hem-pocket/lay`: the study, a slash, the step. Raises TextFault for anything else."""
    found = _STUDY_STEP.fullmatch(text)
    if found is None:
        raise TextFault("this asks for a study and one of its steps", 0, "Write them as in hem-pocket/lay")
    return StudyStep(found[1], found[3], f"{found[1]}/{found[3]}", found.start(1), found.start(3))


StudySteps = Annotated[
    tuple[
        Annotated[
            StudyStep, TextType(parse_study_step, (StudyStep,), "a step of a study", examples=("hem-pocket/lay",))
        ],
        ...,
    ],
    OneOrMany,
]
Variables = Annotated[tuple[Literal["length", "corners"], ...], OneOrMany]


class Element(Noun):
    """An element of work timed once and used in many operations. Its time is a basic time, without allowance.

    time  : as typed, with its basis: studied, or estimate until somebody times it
    from_ : instead of a typed time, the studied steps it is derived from
    varies_with : what a derived time goes by: the length [mm] of what the step works on, its corners, or both
    range : how far a typed time may be off, either side, 95 times in 100; the plant's default when left out
    longest_side : sizes of pieces it was timed with; it says nothing about others
    """

    model_config = ConfigDict(
        json_schema_extra={"anyOf": [{"required": ["time", "basis"]}, {"required": ["from"]}]},
    )

    title: Text
    time: Time | None = None
    basis: Literal["studied", "estimate"] = "studied"
    from_: StudySteps = ()
    varies_with: Variables = ()
    range: Share | None = None
    longest_side: LengthRange | None = None
    readings: Text | None = None
    date: datetime.date | None = None

    @property
    def derived(self) -> bool:
        """Whether its time comes from the plant's studies."""
        return bool(self.from_)

    @model_validator(mode="after")
    def _one_origin(self) -> Element:
        fault = next(self._faults(), None)
        if fault is not None:
            slug, key, message, remedy = fault
            raise PydanticCustomError("object_fault", "{message}", {**fault_context(slug, key, message, remedy)})
        return self

    def _faults(self) -> Iterator[tuple[str, str, str, str]]:
        """Slug, key, message and remedy of each fault between its keys."""
        if self.time is None and "from" not in self._typed():
            yield "key-missing", "", "`time:` or `from:` is missing in this element", "Type one of the two."
        if self.time is not None and not self._typed() & {"basis", "from"}:
            yield "key-missing", "", "`basis:` is missing in this element", ""
        if "from" in self._typed():
            yield from self._derived_faults()
        elif "varies with" in self._typed():
            message = "`varies with:` needs readings of several steps; this time is typed"
            yield "key-unknown", "varies with", message, "Name the steps under `from:`, or take it out."
        if len(set(self.varies_with)) < len(self.varies_with):
            yield "name-twice", "varies with", "`varies with:` names the same thing twice", "Take one of them out."

    def _derived_faults(self) -> Iterator[tuple[str, str, str, str]]:
        for key in ("time", "range", "readings"):
            if key in self._typed():
                message = f"`{key}:` stands beside `from:`; the readings say it"
                yield "key-unknown", key, message, f"Take `{key}:` out, or `from:` if the typed value counts."
        if self.basis == "estimate":
            yield "key-unknown", "basis", "an element with `from:` is studied, not an estimate", "Take `basis:` out."
        if not self.from_:
            yield "value-unreadable", "from", "`from:` is empty", "Name at least one step, as in hem-pocket/lay."
        names = [one.text for one in self.from_]
        twice = next((name for name in names if names.count(name) > 1), None)
        if twice is not None:
            yield "name-twice", "from", f"`from:` names {twice} twice; its readings would count double", ""

    def _typed(self) -> set[str]:
        return {name.rstrip("_").replace("_", " ") for name in self.model_fields_set}


def fault_context(slug: str, key: str, message: str, remedy: str) -> dict[str, str]:
    """What a fault between the keys of an object tells `load_errors`: `key` is where it stands, '' for the object."""
    return {"slug": slug, "key": key, "message": message, "remedy": remedy}
