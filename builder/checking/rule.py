"""What a rule is: a small function with a slug, a reason and a remedy, and an example of each kind."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from builder.finding import Severity
from builder.geometry import ShapeBook
from builder.model import Dimensions, PlantModel, Results

PathStep = str | int


@dataclass(frozen=True, slots=True)
class Problem:
    """What a rule found: the object it is in and the path to the value there.

    owner   : (kind, name) of the object; path leads to the value inside it, or to its key with `key`
    offset  : character inside the value
    about   : further names it concerns, as `kind:name`
    remedy  : a sharper remedy than the rule's own
    """

    owner: tuple[str, str]
    path: tuple[PathStep, ...]
    message: str
    about: tuple[str, ...] = ()
    remedy: str = ""
    key: bool = False
    offset: int = 0
    severity: Severity | None = None


@dataclass(frozen=True, slots=True)
class Subject:
    """What rules look at: the linked plant, its dimensions and shapes; `results` only for rules that ask for it."""

    model: PlantModel
    dimensions: Dimensions
    book: ShapeBook
    usable: frozenset[str]
    results: Results | None = None


Check = Callable[[Subject], Iterator[Problem]]


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule of the book.

    slug         : its name in findings, in the plant file and in `explain`
    why, remedy  : the reason it exists and what to do
    follows_from : rules whose finding explains this one away
    safety       : can't be lowered or silenced
    needs_results: runs after computing
    bad, good    : examples as YAML, {file: content laid over a small plant}; bad gives this finding, good none
    """

    slug: str
    severity: Severity
    why: str
    remedy: str
    check: Check
    bad: str
    good: str
    follows_from: tuple[str, ...] = ()
    safety: bool = False
    needs_results: bool = False
