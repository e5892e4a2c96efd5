"""What comes in, what goes out and which goods are in it: shared by the rules on routes, pieces and colours."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from builder.checking.rule import Subject
from builder.model import Hardware, Laid, Seam, SewnTag


@dataclass(frozen=True, slots=True)
class Flow:
    """Pieces for one finished product as needs and makes ask, typed quantities left aside.

    runs : by operation, 0 where nothing on the route needs what it makes; used : by the name of a piece
    """

    sold: str
    runs: dict[str, Fraction]
    used: dict[str, Fraction]


def flow_of(subject: Subject, product: str) -> Flow | None:
    """The flow of a product; None where what is sold is not made on its route, or the order is wrong: reported."""
    route, operations = subject.route(product), subject.model.operations
    sold = sold_by(subject, product)
    if not any(sold in operations[stop.operation].makes for stop in route):
        return None
    used: dict[str, Fraction] = {sold: Fraction(1)}
    runs: dict[str, Fraction] = {}
    passed: set[str] = set()
    for stop in reversed(route):
        operation = operations[stop.operation]
        wanted = [used[name] / count for name, count in operation.makes.items() if name in used]
        runs[stop.operation] = max(wanted, default=Fraction(0))
        passed.update(operation.makes)
        if passed.intersection(operation.needs):
            return None
        # What nothing needs is reported where it is made; its own needs are counted for one run, as the times are.
        quantity = runs[stop.operation] or Fraction(1)
        for name, count in operation.needs.items():
            used[name] = used.get(name, Fraction(0)) + quantity * count
    return Flow(sold, runs, used)


def sold_by(subject: Subject, product: str | None) -> str:
    """What a product is when finished: `sold`, else what its last operation makes first; '' where nobody can tell."""
    if product is None or product not in subject.model.products:
        return ""
    route = subject.route(product)
    typed = subject.model.products[product].sold
    if typed is not None or not route:
        return typed or ""
    return next(iter(subject.model.operations[route[-1].operation].makes))


def routed(subject: Subject) -> frozenset[str]:
    """Operations on the route of a product."""
    return frozenset(stop.operation for name in subject.model.products for stop in subject.route(name))


def whole(subject: Subject) -> bool:
    """Whether all was read and all names of pieces and stops lead somewhere.

    Otherwise what looks unused may be what an unread file, or a wrong name, was meant to use.
    """
    model = subject.model
    if subject.unread:
        return False
    for operation in model.operations.values():
        names = (*operation.needs, *operation.makes)
        if any(name not in model.states and name not in model.materials for name in names):
            return False
    return all(
        (stop.operation is None or stop.operation in model.operations)
        and (stop.sub_assembly is None or stop.sub_assembly in model.products)
        for product in model.products.values()
        for stop in product.route
    )


def goods_of(subject: Subject, operation: str) -> Iterator[str]:
    """Materials an operation handles: of its parts, counted pieces, threads, what its features set or bind with.

    A name may come twice.
    """
    model = subject.model
    one = model.operations[operation]
    for name in (*one.needs, *one.makes):
        if name in model.materials:
            yield name
        elif (material := model.material_of(name)) is not None:
            yield material
    # Not by the kind of setting: where the station's kind is unknown the thread is used all the same.
    yield from (text for text in one.settings.values() if text in model.materials)
    for work in subject.worked(operation):
        if isinstance(work.feature, Hardware):
            yield work.feature.hardware
        elif isinstance(work.feature, SewnTag) and work.feature.tag in model.materials:
            yield work.feature.tag
        elif isinstance(work.feature, Laid) and work.feature.material in model.materials:
            yield work.feature.material
        elif isinstance(work.feature, Seam) and work.feature.binding is not None:
            yield work.feature.binding


def goods_used(subject: Subject) -> dict[str, str]:
    """Material → the first thing that uses it, as `kind name`: operations, part files, colours."""
    model = subject.model
    users: dict[str, str] = {}
    for name in model.operations:
        for material in goods_of(subject, name):
            users.setdefault(material, f"operation {name}")
    for name, part in model.parts.items():
        if part.material is not None:
            users.setdefault(part.material, f"part {name}")
        for feature in part.features.values():
            if isinstance(feature, Hardware):
                users.setdefault(feature.hardware, f"part {name}")
            elif isinstance(feature, SewnTag) and feature.tag in model.materials:
                users.setdefault(feature.tag, f"part {name}")
            elif isinstance(feature, Laid) and feature.material in model.materials:
                users.setdefault(feature.material, f"part {name}")
            elif isinstance(feature, Seam) and feature.binding is not None:
                users.setdefault(feature.binding, f"part {name}")
    for name, product in model.products.items():
        for swaps in product.colours.values():
            for other in swaps.values():
                users.setdefault(other, f"product {name}")
    return users
