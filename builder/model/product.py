"""A product: a route of operations with quantities, in sizes and colours."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BeforeValidator, Field

from builder.model.base import Noun, Table, Text
from builder.model.typed import Count, Ident, Length


class RouteStop(Noun):
    """A stop of the route: an operation, or a sub-assembly (another product) with its whole route.

    quantity : runs for one finished piece; left out, it follows from needs and makes
    """

    operation: Ident | None = None
    sub_assembly: Ident | None = None
    quantity: Count | None = None


def _stop(value: Any) -> Any:
    return {"operation": value} if isinstance(value, str) else value


class Product(Noun):
    """What is sold, or a sub-assembly others use. Operations are written once for all its variants.

    sizes   : by size, dimensions by full name (`back-panel.width`); the first is the reference
    colours : by colour, which material takes the place of which; the first is the reference
    alternative_to : the product this one is another construction of
    """

    title: Text
    route: tuple[Annotated[RouteStop, BeforeValidator(_stop, json_schema_input_type=str | RouteStop)], ...] = Field(
        min_length=1
    )
    sizes: Table[Text, Table[str, Length]] = Field(default_factory=dict)
    colours: Table[Text, Table[Ident, Ident]] = Field(default_factory=dict)
    alternative_to: Ident | None = None
    batch: Count | None = None
    sold: Text | None = None
    note: Text | None = None
