"""The order of the rooms, on a page. Each stage can be called alone; nothing calls this but commands and watching."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from builder.checking import Subject, check_results, check_typed, report, usable_operations
from builder.computing import compute
from builder.errors import UsageError
from builder.finding import Finding, Severity
from builder.geometry import ShapeBook
from builder.model import Linked, Results, link
from builder.reading import Source, read_folder


@dataclass(frozen=True, slots=True)
class Checked:
    """A plant folder read, linked, checked and computed.

    findings  : top-level, sorted, each with those that follow from it
    unchecked : how many operations were left out because of errors
    """

    source: Source
    linked: Linked | None
    findings: tuple[Finding, ...]
    results: Results | None = None
    book: ShapeBook | None = None
    usable: frozenset[str] = field(default_factory=frozenset)
    unchecked: int = 0

    @property
    def has_errors(self) -> bool:
        """Any error stops a build."""
        return any(one.severity is Severity.error for one in self.findings)


def check_plant(folder: Path) -> Checked:
    """Reading, model, checking, computing, and the rules that ask for numbers. Raises UsageError for no folder."""
    if not folder.is_dir():
        raise UsageError(f"there is no folder {folder}")
    source = read_folder(folder)
    linked = link(source)
    if isinstance(linked, list):
        return Checked(source, None, tuple(report([*source.findings, *linked], None)))
    model = linked.model
    book = ShapeBook(model.parts, model.states, linked.dimensions.definitions)
    findings = [*source.findings, *linked.findings]
    findings += check_typed(Subject(model, linked.dimensions, book, frozenset()))
    usable = usable_operations(model, findings, linked.unusable)
    results = compute(model, linked.dimensions, book, {name: name in usable for name in model.operations})
    findings += check_results(Subject(model, linked.dimensions, book, usable, results))
    shown = tuple(report(findings, model))
    return Checked(source, linked, shown, results, book, usable, len(model.operations) - len(usable))
