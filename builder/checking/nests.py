"""Nests in every size that changes them: what the rules about nests look at."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Subject
from builder.geometry import NestFault, NestLayout, operation_nest
from builder.model import Nest


def laid_out(subject: Subject) -> Iterator[tuple[str, Nest, str, NestLayout]]:
    """(operation, its nest, size, the sheet) of every nest that can be laid out, each different sheet once.

    The size is '' for the values as typed.
    """
    for operation, nest, size, found in tried(subject):
        if isinstance(found, NestLayout):
            yield operation, nest, size, found


def tried(subject: Subject) -> Iterator[tuple[str, Nest, str, NestLayout | NestFault]]:
    """Every nest in every size, with why it can't be laid out where it can't; each different sheet once."""
    for name, operation in subject.model.operations.items():
        if operation.nest is None:
            continue
        seen: set[int] = set()
        for size, values in subject.sizes():
            found = operation_nest(subject.model, subject.book, name, values)
            if found is not None and id(found) not in seen:
                seen.add(id(found))
                yield name, operation.nest, size, found
