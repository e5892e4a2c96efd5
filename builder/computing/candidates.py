"""Work that several studies timed and that could become an element derived from them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from builder.computing.pooling import pooled
from builder.computing.standard_data import element_values
from builder.model import EACH_PIECE, KINDS, ElementUse, PlantModel, Pooled, Step, StudySummary

_BY_MACHINE = frozenset({"sew", "cut", "set"})


@dataclass(frozen=True, slots=True)
class Candidate:
    """The same work in two studies or more.

    name    : of an element with a typed time, or of the steps
    work    : the steps' kind-key, '' for handwork
    element : it is an element already, with a typed time
    steps   : `STUDY/STEP` of each; pooled: what their readings say together
    """

    name: str
    work: str
    element: bool
    steps: tuple[str, ...]
    pooled: Pooled


_Key = tuple[bool, str, str]


def element_candidates(model: PlantModel, studies: Mapping[str, StudySummary], confidence: float) -> list[Candidate]:
    """Elements with typed times that several studied steps name, then steps of one name and kind in several studies.

    Steps from which an element is derived already are left out, and those whose readings hold a machine's run.
    Readings of a step that does its element several times are divided by how often.
    studies : by operation, what its study says
    """
    taken = {one.text for element in model.elements.values() for one in element.from_}
    found: dict[_Key, dict[str, tuple[float, ...]]] = {}
    for operation, summary in studies.items():
        for step in model.operations[operation].steps:
            name = f"{summary.name}/{step.step}"
            key = _key(step, model)
            if name in taken or key is None or _by_machine(step, operation, model):
                continue
            values = _values(step, operation, summary, model)
            if values:
                found.setdefault(key, {})[name] = values
    return list(_several(found, confidence))


def _several(found: Mapping[_Key, Mapping[str, tuple[float, ...]]], confidence: float) -> Iterator[Candidate]:
    for (by_name, name, work), steps in sorted(found.items(), key=lambda item: (not item[0][0], *item[0][1:])):
        if len({one.partition("/")[0] for one in steps}) > 1:
            yield Candidate(name, work, by_name, tuple(steps), pooled(list(steps.values()), confidence))


def _key(step: Step, model: PlantModel) -> _Key | None:
    """What makes steps the same work: the element they name, else their own name; None where it is derived already."""
    if isinstance(step.time, ElementUse):
        element = model.elements.get(step.time.name)
        return (True, step.time.name, "") if element is not None and not element.derived else None
    return False, step.step, step.work[0]


def _by_machine(step: Step, operation: str, model: PlantModel) -> bool:
    station = model.stations[model.operations[operation].station]
    return step.work[0] in _BY_MACHINE and bool(KINDS[station.kind].model)


def _values(step: Step, operation: str, summary: StudySummary, model: PlantModel) -> tuple[float, ...]:
    study = summary.step(step.step)
    if study is None:
        return ()
    count = step.time.count if isinstance(step.time, ElementUse) else 1
    return element_values(study, count, (step.per or EACH_PIECE).share({}))
