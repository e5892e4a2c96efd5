"""Deviations: for some batches and some days, an operation is done another way.

A deviation is an operation file of its own, because the operator gets a whole sheet, not a list of changes. It makes
what the operation it stands in for makes, so it takes no part in routes, states and the times of products: whatever
asks who makes a piece, or where it goes next, asks `ordinary`.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Annotated

from pydantic import Field

from builder.model.base import Noun, OneOrMany, Text
from builder.model.typed import Ident

if TYPE_CHECKING:
    from builder.model.operation import Operation


class Deviation(Noun):
    """For which batches an operation is done this way, how long, why, and in place of which operation.

    until : the last day it holds
    """

    batches: Annotated[tuple[Text, ...], OneOrMany, Field(min_length=1, examples=[["B-1042", "B-1043"]])]
    until: datetime.date
    because: Text
    instead_of: Ident


def ordinary(operations: Mapping[str, Operation]) -> dict[str, Operation]:
    """The operations without the deviations."""
    return {name: one for name, one in operations.items() if one.deviation is None}


def deviations(operations: Mapping[str, Operation]) -> dict[str, list[str]]:
    """Deviations by the operation they stand in for, in the order of their files."""
    found: dict[str, list[str]] = {}
    for name, one in operations.items():
        if one.deviation is not None:
            found.setdefault(one.deviation.instead_of, []).append(name)
    return found


def stood_for(operations: Mapping[str, Operation], name: str) -> str:
    """The operation whose work this is: that which a deviation stands in for, or itself."""
    one = operations.get(name)
    return one.deviation.instead_of if one is not None and one.deviation is not None else name
