"""Words for what can be wrong before any rule of checking runs: unknown keys, unreadable values, broken links.

Each has a slug, a reason and a remedy, as the rules of the checking room have; `explain` and folding treat them alike.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from builder.finding import Finding, Place, Severity


@dataclass(frozen=True, slots=True)
class FaultKind:
    """A fault found while reading the meaning of a file. `follows_from` as for a rule."""

    slug: str
    why: str
    remedy: str
    follows_from: tuple[str, ...] = ()


FAULTS: dict[str, FaultKind] = {
    f.slug: f
    for f in (
        FaultKind(
            "key-unknown",
            "A key nobody reads is a fact that never reaches the floor.",
            "Correct its spelling, or take it out.",
        ),
        FaultKind("key-missing", "Without it the object can't be used.", "Add the key with its value."),
        FaultKind("value-unreadable", "A value nobody can read can't be checked or printed.", "Write it as shown."),
        FaultKind(
            "object-unnamed",
            "The first key says what the file describes; other files find it by that name.",
            "Begin with the kind and the name, as in `operation: sew-handle-end`.",
        ),
        FaultKind(
            "name-differs",
            "Other files find an object by its name; two names for one thing send readers to the wrong sheet.",
            "Give the file and the object the same name.",
        ),
        FaultKind("name-twice", "Nobody can tell which of the two is meant.", "Rename one of them, or take it out."),
        FaultKind(
            "feature-kind",
            "The kind of a feature says how it is drawn, timed and checked.",
            "Give it exactly one of notch, hole, strip, seam, box, bartack, fold, hardware, drill hole, slot, tag.",
        ),
        FaultKind(
            "callout-kind",
            "The kind of a callout says how it is drawn.",
            "Give it exactly one of ring, arrow, box, number, text, blur.",
        ),
        FaultKind(
            "name-unknown",
            "What it names is nowhere, so nothing can be derived from it.",
            "Correct the name, or add what it names.",
            ("name-differs", "object-unnamed"),
        ),
        FaultKind(
            "expression-unreadable",
            "A dimension that can't be computed leaves the drawing and the time without a number.",
            "Correct the expression.",
            ("name-unknown", "value-unreadable", "part-without-shape", "key-unknown", "key-missing", "feature-kind"),
        ),
        FaultKind(
            "expression-ring",
            "Dimensions that rest on each other have no value.",
            "Give one of them a length of its own.",
        ),
        FaultKind(
            "setting-unreadable",
            "A setting the tool can't read can't be held against the machine.",
            "Write it as shown.",
        ),
    )
}


def fault(slug: str, place: Place, message: str, about: Sequence[str], remedy: str = "") -> Finding:
    """A finding of one of the kinds above; a sharper `remedy` replaces the general one."""
    kind = FAULTS[slug]
    return Finding(place, slug, Severity.error, message, kind.why, remedy or kind.remedy, tuple(about))
