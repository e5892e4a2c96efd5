"""What lies under the needle of each seam of an operation, shared by the rules on thickness and on needle points."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Subject, Worked
from builder.geometry import Stack, sewn_by


def stacks_under(subject: Subject, operation: str) -> Iterator[tuple[Worked, frozenset[Stack]]]:
    """Each sewn feature with the stacks it goes through, as typed first size."""
    worked = {one.path: one for one in subject.worked(operation)}
    for sewn in sewn_by(subject.model, subject.book, operation, subject.dimensions.values):
        yield worked["steps", sewn.step, "sew", sewn.index], sewn.stacks


def materials_near(subject: Subject, operation: str) -> frozenset[str]:
    """All materials of what an operation needs and makes, strips and tapes included: more than any seam meets."""
    model = subject.model
    one = model.operations[operation]
    seen: set[str] = set()
    stack = [*one.needs, *one.makes]
    while stack:
        name = stack.pop()
        if name in seen:
            continue
        seen.add(name)
        if (part := model.base_of(name)) is not None:
            stack += [component.part for component in part.from_]
            for feature in part.features.values():
                stack += [inner for key in ("strip", "binding") if (inner := getattr(feature, key, None)) is not None]
    known = (model.material_under(name) for name in seen)
    return frozenset(found[0] for found in known if found is not None)
