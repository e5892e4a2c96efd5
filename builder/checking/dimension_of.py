"""Finding the dimension a tolerance names, shared by the rules on tolerances."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Subject
from builder.model import Operation, find_dimension


def _bases(subject: Subject, operation: Operation) -> Iterator[str]:
    for part in (*operation.makes, *operation.needs):
        state = subject.model.states.get(part)
        if state is not None:
            yield state.base


def dimension_of(subject: Subject, operation: Operation, text: str) -> str | None:
    """Full name of a dimension as an operation's file names it: of its made parts first, then its needed ones."""
    for base in _bases(subject, operation):
        full = find_dimension(text, base, subject.dimensions.definitions)
        if full is not None:
            return full
    return None


def dimension_words(subject: Subject, operation: Operation) -> list[str]:
    """Short names of all dimensions an operation's tolerance could name."""
    bases = set(_bases(subject, operation))
    return sorted(one.short for one in subject.dimensions.definitions.values() if one.part in bases)
