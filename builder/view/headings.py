"""Which dimensions the sizes table of a sheet shows."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from fractions import Fraction

from builder.model import PlantModel
from builder.view.grouping import SheetGroup
from builder.view.sheet import StepView

_MOST = 4


def headings(
    group: SheetGroup, steps: Iterable[StepView], measured: Iterable[str | None], bases: Collection[str]
) -> tuple[str, ...]:
    """Full names of the dimensions: what is measured here, the size of the piece, then what is worked here.

    Of columns with the same figures in every size the first is kept: what is measured, or the piece itself.
    """
    drawn = [fact for step in steps if step.figure is not None for fact, words in step.figure.facts if _placed(words)]
    worked = [f"{feature}.{one}" for feature in drawn for one in ("left", "inset", "width", "pitch", "top")]
    sides = [name for name in sorted(group.varying) if _is_side(name)]
    pieces = [name for name in sides if name.split(".")[0] in bases] or sides
    wanted = dict.fromkeys(name for name in (*measured, *pieces, *worked) if name is not None and name in group.varying)
    columns: dict[tuple[Fraction, ...], str] = {}
    for name in wanted:
        columns.setdefault(tuple(values[name].value for values in group.sizes.values() if name in values), name)
    return tuple(columns.values())[:_MOST]


def _placed(words: str) -> bool:
    """Whether a figure's fact is something worked now whose place tells an operator more than the drawing does."""
    kind, _, when = words.partition(" ")
    return when == "now" and kind != "notch"


def _is_side(name: str) -> bool:
    return "/" not in name and name.endswith((".width", ".height", ".length"))


def outlined_by(base: str, model: PlantModel) -> str:
    """The part whose dimensions a piece is as large as: itself, or the lowest layer of a sub-assembly."""
    seen: set[str] = set()
    while (part := model.parts[base]).outline is None and part.from_ and base not in seen:
        seen.add(base)
        state = model.states.get(part.from_[0].part)
        base = state.base if state is not None else base
    return base
