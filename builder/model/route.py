"""A product's route: its operations in order, sub-assemblies expanded, with runs for one finished piece.

Runs follow from needs and makes, backwards from what is sold; a typed quantity is taken as it is, for one piece of
the product, or of the sub-assembly, in whose route it stands.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from builder.model.operation import Operation
from builder.model.product import Product


@dataclass(frozen=True, slots=True)
class RouteStep:
    """An operation on a route.

    quantity : runs for one finished piece
    via      : the sub-assembly it belongs to, ''
    takes    : pieces the finished piece takes, of each thing the operation makes that it asks for
    """

    operation: str
    quantity: Fraction
    via: str
    takes: Mapping[str, Fraction] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class _Stop:
    operation: str
    typed: int | None
    via: str


def route_of(
    product: str, products: Mapping[str, Product], operations: Mapping[str, Operation]
) -> tuple[RouteStep, ...]:
    """The route of a product; stops whose operation can't be used are left out."""
    stops = [stop for stop in _stops(product, products, frozenset()) if stop.operation in operations]
    if not stops:
        return ()
    sold = _sold(product, stops, products, operations)
    demand: dict[str, Fraction] = {sold: Fraction(1)}
    inner = {
        via: _sold(via, [one for one in stops if one.via == via], products, operations)
        for via in dict.fromkeys(one.via for one in stops)
        if via
    }
    runs: dict[str, Fraction] = {}
    takes: dict[str, dict[str, Fraction]] = {}
    for stop in reversed(stops):
        operation = operations[stop.operation]
        pieces = demand.get(inner[stop.via], Fraction(1)) if stop.via else Fraction(1)
        runs[stop.operation] = quantity = _runs(operation, stop, demand, pieces)
        takes[stop.operation] = {name: demand[name] for name in operation.makes if name in demand}
        for name, count in operation.needs.items():
            demand[name] = demand.get(name, Fraction(0)) + quantity * count
    return tuple(RouteStep(stop.operation, runs[stop.operation], stop.via, takes[stop.operation]) for stop in stops)


def _sold(
    product: str, stops: list[_Stop], products: Mapping[str, Product], operations: Mapping[str, Operation]
) -> str:
    """What a product is when finished; by itself the first thing its last operation makes."""
    return products[product].sold or next(iter(operations[stops[-1].operation].makes))


def _runs(operation: Operation, stop: _Stop, demand: Mapping[str, Fraction], pieces: Fraction) -> Fraction:
    if stop.typed is not None:
        return stop.typed * pieces
    wanted = [demand[name] / count for name, count in operation.makes.items() if name in demand]
    return max(wanted, default=Fraction(1))


def _stops(product: str, products: Mapping[str, Product], inside: frozenset[str]) -> Iterator[_Stop]:
    """Stops with sub-assemblies in place; an operation met twice stands where it comes first."""
    seen: set[str] = set()
    for stop in _all_stops(product, products, inside, ""):
        if stop.operation not in seen:
            seen.add(stop.operation)
            yield stop


def _all_stops(product: str, products: Mapping[str, Product], inside: frozenset[str], via: str) -> Iterator[_Stop]:
    if product in inside or product not in products:
        return  # a product inside itself is reported by a rule
    for stop in products[product].route:
        if stop.operation is not None:
            yield _Stop(stop.operation, stop.quantity, via)
        elif stop.sub_assembly is not None:
            yield from _all_stops(stop.sub_assembly, products, inside | {product}, stop.sub_assembly)
