"""A tolerance narrower than those it rests on allow."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.stack_up import Link, root_sum_square, worst_case
from builder.checking.walk import length_words
from builder.errors import TextFault
from builder.finding import Severity
from builder.model import Operation, Quantity


def check(subject: Subject) -> Iterator[Problem]:
    """Tolerances of dimensions computed from others that have tolerances of their own anywhere in the plant.

    A cutter makes its dimensions from the pattern, whatever they are computed from, so its tolerances are left out.
    """
    halves = _half_widths(subject)
    for name, operation in subject.model.operations.items():
        if any(step.cut for step in operation.steps):
            continue
        for tolerance_name, full, half in _own(subject, name, operation):
            links = _links(subject, full, halves)
            if root_sum_square(links) > half * (1 + 1e-9):
                of = operation.tolerances[tolerance_name].of
                message = f"{of} may be off by {length_words(half, subject.model)}, but {_reach(subject, links)}"
                about = (f"tolerance:{tolerance_name}", *(f"dimension:{one.name}" for one in links))
                yield Problem(("operation", name), ("tolerances", tolerance_name, "is"), message, about)


def _reach(subject: Subject, links: list[Link]) -> str:
    """What the links make of it, in words."""
    names = [f"{one.name} ± {length_words(one.half_mm, subject.model)}" for one in links]
    reach = length_words(root_sum_square(links), subject.model)
    if len(links) == 1:
        return f"{names[0]} makes it {reach}"
    worst = length_words(worst_case(links), subject.model)
    return f"{', '.join(names[:-1])} and {names[-1]} make it {reach} (root of squares), {worst} at worst"


def _own(subject: Subject, name: str, operation: Operation) -> Iterator[tuple[str, str, float]]:
    """(tolerance, full name of its dimension, half its width in mm) of an operation."""
    for tolerance_name, spec in operation.tolerances.items():
        full = subject.dimension(name, spec.of) if spec.of is not None else None
        if full is not None and spec.is_.band is not None and spec.is_.dimension == "length":
            yield tolerance_name, full, float(spec.is_.band) / 2


def _half_widths(subject: Subject) -> dict[str, float]:
    """Half the tolerance width of each toleranced dimension of the plant, mm; the widest where there are several."""
    found: dict[str, float] = {}
    for name, operation in subject.model.operations.items():
        for _, full, half in _own(subject, name, operation):
            found[full] = max(half, found.get(full, 0.0))
    return found


def _links(subject: Subject, full: str, halves: Mapping[str, float]) -> list[Link]:
    """The nearest toleranced dimensions behind one, with their sensitivities by differences of 1 mm."""
    dimensions = subject.dimensions
    names: dict[str, None] = {}
    seen = {full}
    stack = dimensions.rests_on(full)
    while stack:
        at = stack.pop(0)
        if at in seen:
            continue
        seen.add(at)
        if at in halves:
            names[at] = None
        else:
            stack.extend(dimensions.rests_on(at))
    try:
        # All links are held fast, so that one that rests on another isn't counted twice.
        fast = {one: dimensions.values[one] for one in names}
        return [Link(one, halves[one], _sensitivity(subject, full, one, fast)) for one in names]
    except (KeyError, TextFault):
        return []  # a dimension without a value is reported


def _sensitivity(subject: Subject, full: str, name: str, fast: Mapping[str, Quantity]) -> float:
    moved = Quantity.of(fast[name].value + Fraction(1), "length", fast[name].unit)
    before = subject.dimensions.trial(full, fast)
    return float(subject.dimensions.trial(full, {**fast, name: moved}).value - before.value)


RULE = Rule(
    slug="tolerance-chain",
    severity=Severity.warning,
    why="Work done right at every step before still fails this check.",
    remedy="Widen this tolerance, narrow those it rests on, or work to a mark that doesn't carry their errors.",
    check=check,
    bad="""
parts/panel.yaml:
  dimensions: {slot: "=width - hem-seam.inset * 2"}
operations/sew-hem.yaml:
  tolerances: {slot: {of: slot, is: ± 1 mm, with: rule, every: first piece}}
  steps: [{step: look, check: slot}]
""",
    good="""
parts/panel.yaml:
  dimensions: {slot: "=width - hem-seam.inset * 2"}
operations/sew-hem.yaml:
  tolerances: {slot: {of: slot, is: ± 2.5 mm, with: rule, every: first piece}}
  steps: [{step: look, check: slot}]
""",
    follows_from=("expression-unreadable", "tolerance-dimension", "tolerance-nominal", "name-unknown"),
)
