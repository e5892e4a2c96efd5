"""The fault finder of a station: the faults of all its operations, those with the same sign in one row."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from builder.view.cards import FaultCase, FaultRow
from builder.view.sheet import FaultLine, SheetView

_ORDER = {"critical": 0, "major": 1, "minor": 2}


def fault_rows(sheets: Iterable[SheetView]) -> tuple[FaultRow, ...]:
    """Rows by sign, the critical ones first, then in the order of the sheets; equal causes once, with all codes."""
    found: dict[str, dict[FaultLine, dict[str, None]]] = {}
    for sheet in sheets:
        for fault in sheet.faults:
            cases = found.setdefault(_key(fault.sign), {})
            same = next((one for one in cases if _alike(one, fault)), fault)
            cases.setdefault(same, {})[sheet.code] = None
    return tuple(sorted(_rows(found.values()), key=lambda row: _ORDER.get(row.grade, len(_ORDER))))


def _rows(found: Iterable[dict[FaultLine, dict[str, None]]]) -> Iterator[FaultRow]:
    for cases in found:
        ordered = sorted(cases.items(), key=lambda one: _ORDER.get(one[0].grade, len(_ORDER)))
        worst = ordered[0][0]
        yield FaultRow(worst.sign, worst.grade, tuple(_case(line, codes, worst.grade) for line, codes in ordered))


def _case(line: FaultLine, codes: Iterable[str], worst: str) -> FaultCase:
    grade = line.grade if line.grade != worst else ""
    return FaultCase(line.cause, line.remedy, line.stop, line.power, grade, tuple(codes))


def _alike(one: FaultLine, other: FaultLine) -> bool:
    """Whether two faults say the same, letters' case and a last stop aside."""
    fields = ("grade", "cause", "remedy", "stop", "power")
    return all(_key(getattr(one, name)) == _key(getattr(other, name)) for name in fields)


def _key(text: str) -> str:
    return " ".join(text.casefold().replace("*", "").split()).rstrip(".")
