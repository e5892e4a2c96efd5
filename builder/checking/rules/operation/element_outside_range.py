"""An element time used for a piece of another size than it was timed with."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import (
    ElementUse,
    Operation,
    Quantity,
    Range,
    Step,
    Strip,
    Values,
    find_feature,
    show_quantity,
    show_range,
)


def check(subject: Subject) -> Iterator[Problem]:
    """Steps whose element states `longest side`, in every size; the first size it doesn't hold for is named.

    The piece handled is the strip the step lays on. Where the step doesn't say, any piece that comes in or goes out
    may be meant: only when none of them fits, the element is wrong for sure.
    """
    model = subject.model
    sides = _Sides(subject)
    for name, operation in model.operations.items():
        for number, step in enumerate(operation.steps):
            used = step.time.name if isinstance(step.time, ElementUse) else ""
            element = model.elements.get(used)
            if element is None or element.longest_side is None:
                continue
            pieces = _pieces(subject, name, operation, step)
            if words := sides.outside(pieces, element.longest_side):
                timed = show_range(element.longest_side, model.plant.units, both=False)
                message = f"step {step.step} handles {words}, but {used} was timed with {timed}"
                bases = (f"part:{model.states[one].base}" for one in pieces if one in model.states)
                about = (f"step:{step.step}", f"element:{used}", *bases)
                yield Problem(("operation", name), ("steps", number, "time"), message, about)


def _pieces(subject: Subject, name: str, operation: Operation, step: Step) -> list[str]:
    """Names of the pieces the step may handle; none when hardware is among them, of which only the width is known."""
    model = subject.model
    refs = [find_feature(one, subject.homes(name)) for one in step.place]
    features = [model.parts[ref.part].features[ref.feature] for ref in refs if ref is not None]
    if strips := [one.strip for one in features if isinstance(one, Strip)]:
        return strips
    if any(need in model.materials for need in operation.needs):
        return []
    return [*operation.needs, *operation.makes]


@dataclass(slots=True)
class _Sides:
    """Longest sides of base parts by size [mm], each looked up once."""

    subject: Subject
    _known: dict[tuple[str, int], float | None] = field(default_factory=dict)

    def outside(self, pieces: Sequence[str], limits: Range) -> str:
        """The first piece with its side in the first size in which all lie outside, '' when there is none."""
        for size, values in self.subject.sizes() if pieces else ():
            found = [self._side(piece, values) for piece in pieces]
            if None in found or any(_inside(side, limits) for side in found if side is not None):
                continue
            base = self.subject.model.base_of(pieces[0])
            longest = Quantity.of(round(Fraction(found[0] or 0)), "length", "mm")
            shown = show_quantity(longest, self.subject.model.plant.units, both=False)
            return f"{base.title.lower() if base else pieces[0]} of {shown}{f' in size {size}' if size else ''}"
        return ""

    def _side(self, piece: str, values: Values) -> float | None:
        state = self.subject.model.states.get(piece)
        if state is None:
            return None
        key = (state.base, id(values))
        if key not in self._known:
            shape = self.subject.book.shape(state.base, values)
            left, bottom, right, top = shape.bounds if shape is not None else (0.0, 0.0, 0.0, 0.0)
            self._known[key] = max(right - left, top - bottom) if shape is not None else None
        return self._known[key]


_A_HAIR = 1e-6  # a side of exactly the limit, in floating point


def _inside(side: float, limits: Range) -> bool:
    return float(limits.low.value) - _A_HAIR <= side <= float(limits.high.value) + _A_HAIR


RULE = Rule(
    slug="element-outside-range",
    severity=Severity.warning,
    why="A panel twice as long takes longer to turn; the time in the table was never seen for it.",
    remedy="Time the step with this piece, or widen the element's range by readings of such pieces.",
    check=check,
    bad="""
elements/all.yaml:
  elements: {look-along: {title: Look along an edge, time: 2 s, basis: studied, longest side: 50..200 mm}}
operations/sew-hem.yaml:
  steps: [{step: look, time: look-along}]
""",
    good="""
elements/all.yaml:
  elements: {look-along: {title: Look along an edge, time: 2 s, basis: studied, longest side: 50..400 mm}}
operations/sew-hem.yaml:
  steps: [{step: look, time: look-along}]
""",
    follows_from=("shape-impossible", "time-implausible", "size-of-other-part"),
)
