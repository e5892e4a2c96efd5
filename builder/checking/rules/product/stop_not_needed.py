"""A stop whose piece the product doesn't need."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import Flow, flow_of, sold_by, whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import RouteStop


def check(subject: Subject) -> Iterator[Problem]:
    """Stops of a route that make nothing the route needs, though another product does."""
    model = subject.model
    if not whole(subject):
        return
    needed = {name for one in model.operations.values() for name in one.needs}
    needed |= {sold_by(subject, name) for name in model.products}
    for name, product in model.products.items():
        flow = flow_of(subject, name)
        for number, stop in enumerate(product.route) if flow is not None else ():
            idle = _idle(stop, flow, subject) if flow is not None else ()
            if idle and needed.intersection(idle):
                what = stop.operation or stop.sub_assembly
                message = f"nothing on this route needs {' or '.join(idle)}, which {what} makes"
                about = (f"{'operation' if stop.operation else 'product'}:{what}", *(f"part:{one}" for one in idle))
                yield Problem(("product", name), ("route", number), message, about)


def _idle(stop: RouteStop, flow: Flow, subject: Subject) -> tuple[str, ...]:
    """What a stop makes, when none of it is needed."""
    if stop.operation is not None:
        runs = flow.runs.get(stop.operation)
        return tuple(subject.model.operations[stop.operation].makes) if runs == 0 else ()
    sold = sold_by(subject, stop.sub_assembly)
    return (sold,) if sold and sold not in flow.used else ()


RULE = Rule(
    slug="stop-not-needed",
    severity=Severity.warning,
    why="Its minutes are counted into the product though nothing of it goes in, or an operation forgot to need it.",
    remedy="Name the piece in the `needs:` of the operation it goes into, or take the stop out.",
    check=check,
    bad="""
products/strap.yaml: {product: strap, title: Strap, route: [cut-strap]}
products/pouch.yaml: {route: [cut-strap, cut-panel, sew-hem, press-snap]}
parts/strip.yaml: {part: strip, title: Strip, material: cloth, outline: {rectangle: {width: 40 mm, height: 90 mm}}}
operations/cut-strap.yaml:
  operation: cut-strap
  title: Cut the strap
  code: CUT-20
  station: laser
  makes: strip
  settings: {speed: 200 mm/s, power: 40 %, focus: 3 mm}
  steps: [{step: cut, cut: strip, do: Close the lid and start.}]
""",
    good="""
products/strap.yaml: {product: strap, title: Strap, route: [cut-strap]}
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap]}
parts/strip.yaml: {part: strip, title: Strip, material: cloth, outline: {rectangle: {width: 40 mm, height: 90 mm}}}
operations/cut-strap.yaml:
  operation: cut-strap
  title: Cut the strap
  code: CUT-20
  station: laser
  makes: strip
  settings: {speed: 200 mm/s, power: 40 %, focus: 3 mm}
  steps: [{step: cut, cut: strip, do: Close the lid and start.}]
""",
    follows_from=("name-unknown", "stop-twice", "part-not-on-route", "route-cycle", "part-made-twice"),
)
