"""What `seamboard times` was asked for: a product in one size, with a colour."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from builder.commands.variant import read_variant
from builder.errors import UsageError
from builder.model import PlantModel, ProductTime, near


@dataclass(frozen=True, slots=True)
class Asked:
    """A product in one size, with the colour asked for: None is the reference colour."""

    time: ProductTime
    colour: str | None
    swaps: Mapping[str, str]


def asked_of(
    times: tuple[ProductTime, ...], model: PlantModel, product: str | None, variant: str | None
) -> Iterator[Asked]:
    """The times asked for, in their order. Raises UsageError for an unknown product or variant."""
    if product is not None and product not in model.products:
        close = near(product, model.products)
        hint = f"; did you mean {close[0]}?" if close else f"; products: {', '.join(model.products)}"
        raise UsageError(f"no product is called {product}{hint}")
    for one in times:
        if product not in (None, one.product):
            continue
        spec = model.products[one.product]
        size, colour = read_variant(variant or "", spec)
        if size in (None, one.variant):
            yield Asked(one, colour, spec.colours.get(colour or "", {}))
