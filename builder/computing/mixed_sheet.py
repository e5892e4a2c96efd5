"""A run that cuts pieces for several products: which of them a product takes, and what of the run's time it pays."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Mapping
from fractions import Fraction

from builder.computing.cut_path import cut_length
from builder.geometry import ShapeBook
from builder.model import Operation, PlantModel, RouteStep, Values, cut_here, cut_with

Whole = Collection[tuple[str, str]]
"""(operation, what it makes) of which some product takes every piece of the runs it asks for."""


def pieces_taken(step: RouteStep, operation: Operation) -> dict[str, Fraction]:
    """Pieces of one run a product takes, of each thing the run makes.

    Of what it takes most of, all: that is what its runs are counted by, also where their number is typed. All of
    everything where it takes nothing, because then nobody can tell.
    """
    shares = {made: step.takes.get(made, Fraction(0)) / count for made, count in operation.makes.items()}
    most = max(shares.values())
    return {
        made: share / most * operation.makes[made] if most else Fraction(operation.makes[made])
        for made, share in shares.items()
    }


def taken_whole(routes: Iterable[tuple[RouteStep, ...]], operations: Mapping[str, Operation]) -> Whole:
    """What some product takes all of: pieces another product leaves of it are not lost."""
    found: set[tuple[str, str]] = set()
    for step in (one for route in routes for one in route):
        operation = operations[step.operation]
        taken = pieces_taken(step, operation)
        found.update((step.operation, made) for made, count in operation.makes.items() if taken[made] >= count)
    return frozenset(found)


def run_share(
    operation: str, taken: Mapping[str, Fraction], whole: Whole, model: PlantModel, book: ShapeBook, values: Values
) -> float:
    """Share of a run's time that a product pays: cut length of the pieces it takes ÷ cut length of all.

        share = Σ taken·length / Σ made·length    over what some product takes all of

    What no product takes all of is left over in any case and is paid with the rest. So the products that use a run up
    pay one run together. Only of what is cut out there: a run that sews or sets several things makes them for one
    product. 1 where a shape is unknown. Source: ours.

    taken : pieces of one run the product takes, of each thing it makes
    """
    makes = model.operations[operation].makes
    shared = [made for made in makes if (operation, made) in whole]
    if all(taken[made] >= makes[made] for made in shared) or not all(cut_here(model, operation, one) for one in makes):
        return 1.0
    lengths: dict[str, float] = {}
    for made in shared:
        shape = book.shape(made, values)
        if shape is None:
            return 1.0
        lengths[made] = cut_length(
            shape, [shape.features[one] for one in cut_with(shape.part) if one in shape.features]
        )
    total = math.fsum(makes[made] * length for made, length in lengths.items())
    return math.fsum(float(taken[made]) * length for made, length in lengths.items()) / total
