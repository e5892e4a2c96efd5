"""Which edges of a part lie raw when a seam is sewn: cut, not folded, not bound, no selvedge."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Subject
from builder.checking.walk import is_earlier
from builder.model import Fold, Part, Seam, Strip, full_name

HEM_MM = 40.0
"""A fold farther inside than this turns a flap, not a hem: the edge stays raw. Common practice, no source."""

WOVEN_TO_WIDTH = ("webbing", "tape", "zip")


def ground_part(part: Part, on: str | None) -> str | None:
    """The part whose edges a feature `on` a strip runs along; None for the part itself."""
    strip = part.features.get(on) if on is not None else None
    return strip.strip if isinstance(strip, Strip) else None


def woven_to_width(subject: Subject, part: str) -> bool:
    """Webbing, tape and zips have no raw edge along their length."""
    material = subject.model.materials.get(subject.model.material_of(part) or "")
    return material is not None and material.form in WOVEN_TO_WIDTH


def finished_edges(subject: Subject, part: str, before: str | None = None) -> set[str]:
    """Edges that are folded or bound on a part or on the lowest parts inside it; {"all"} when every edge is.

    before : a seam of the part; folds surely made after it don't count
    """
    found: set[str] = set()
    seen: set[str] = set()
    at = part
    while at in subject.model.states and at not in seen:
        seen.add(at)
        base = subject.model.states[at].base
        here = subject.model.parts[base]
        found |= set(_edges(subject, base, here, (part, before) if before is not None else None))
        if here.formed_from is not None:
            return {"all"}  # folded to shape: how its edges lie isn't typed
        at = here.from_[0].part if here.from_ else ""  # a sub-assembly has the outline of its first part
    return found


def _edges(subject: Subject, base: str, part: Part, seam: tuple[str, str] | None) -> Iterator[str]:
    for name, feature in part.features.items():
        if isinstance(feature, Fold) and feature.fold != "line" and _is_hem(subject, base, name):
            if seam is None or not is_earlier(subject.model, subject.workers(), seam, (base, name)):
                yield feature.fold
        elif isinstance(feature, Seam) and feature.binding is not None:
            yield from feature.seam


def _is_hem(subject: Subject, base: str, fold: str) -> bool:
    inset = subject.dimensions.values.get(full_name(base, f"{fold}.inset"))
    return inset is None or inset.value <= HEM_MM
