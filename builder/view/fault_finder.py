"""The fault finder of a station: the faults of all its operations, those with the same sign in one row."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from builder.model import say
from builder.view.cards import FaultCase, FaultCause, FaultRow
from builder.view.sheet import FaultLine, SheetView

_GRADES = ("critical", "major", "minor")
_Found = list[tuple[FaultLine, str]]
"""Faults with the code of the operation each is from."""


def fault_rows(sheets: Sequence[SheetView]) -> tuple[FaultRow, ...]:
    """Rows by sign, the critical ones first, then in the order of the sheets; what is the same stands once."""
    signs: dict[str, _Found] = {}
    for sheet in sheets:
        for fault in sheet.faults:
            signs.setdefault(_key(fault.sign), []).append((fault, sheet.code))
    everywhere = {sheet.code for sheet in sheets}
    rows = (_row(found, everywhere) for found in signs.values())
    return tuple(sorted(rows, key=lambda row: _rank(row.grade)))


def _row(found: _Found, everywhere: set[str]) -> FaultRow:
    worst = min((fault for fault, _ in found), key=lambda fault: _rank(fault.grade))
    answers: dict[tuple[str, ...], _Found] = {}
    for fault, code in found:
        answers.setdefault(_answer(fault), []).append((fault, code))
    ordered = sorted(answers.values(), key=lambda one: _rank(one[0][0].grade))
    return FaultRow(worst.sign, worst.grade, tuple(_case(one, worst.grade, everywhere) for one in ordered))


def _answer(fault: FaultLine) -> tuple[str, ...]:
    """What is done about a fault: faults with the same answer are one case, whatever their causes."""
    return tuple(_key(text) for text in (fault.grade, fault.remedy, fault.stop, fault.power))


def _case(found: _Found, worst: str, everywhere: set[str]) -> FaultCase:
    first = found[0][0]
    grade = first.grade if first.grade != worst else ""
    return FaultCase(tuple(_causes(found, everywhere)), first.remedy, first.stop, first.power, grade)


def _causes(found: _Found, everywhere: set[str]) -> Iterator[FaultCause]:
    causes: dict[str, tuple[str, dict[str, None]]] = {}
    for fault, code in found:
        causes.setdefault(_key(fault.cause), (fault.cause, {}))[1][code] = None
    for cause, codes in causes.values():
        yield FaultCause(cause, () if everywhere == set(codes) and len(codes) > 1 else tuple(codes))


def _rank(grade: str) -> int:
    """Place of a class, as the sheets say it, from the worst."""
    said = [say(one) for one in _GRADES]
    return said.index(grade) if grade in said else len(said)


def _key(text: str) -> str:
    """A text without what doesn't change its meaning: case, emphasis, blanks, a last stop."""
    return " ".join(text.casefold().replace("*", "").split()).rstrip(".")
