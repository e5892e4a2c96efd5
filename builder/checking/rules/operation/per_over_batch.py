"""Work done once in more pieces than a batch has."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`per: N pieces` against the largest batch of the products whose route leads through the operation."""
    model = subject.model
    largest: dict[str, int] = {}
    for name, product in model.products.items():
        batch = product.batch or model.plant.batch
        for stop in subject.route(name):
            runs = batch * stop.quantity
            largest[stop.operation] = max(largest.get(stop.operation, 0), int(runs))
    for name, operation in model.operations.items():
        for number, step in enumerate(operation.steps):
            per = step.per
            if per is None or per.per != "pieces" or name not in largest or per.n <= largest[name]:
                continue
            message = f"step {step.step} is done once in {per.n} pieces, and the largest batch has {largest[name]}"
            yield Problem(("operation", name), ("steps", number, "per"), message, (f"step:{step.step}",))


RULE = Rule(
    slug="per-over-batch",
    severity=Severity.warning,
    why="Most of its time is lost: each batch does it once, and pays for a part of it only.",
    remedy="Correct the number, or write `per: batch`.",
    check=check,
    bad="""
operations/cut-panel.yaml:
  steps: [{step: load, per: 2000 pieces}]
""",
    good="""
operations/cut-panel.yaml:
  steps: [{step: load, per: 20 pieces}]
""",
    follows_from=("quantity-differs",),
)
