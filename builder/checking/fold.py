"""Folding: a finding whose cause is already reported stands under it, so that a list shows what to mend.

It folds under a finding of a rule it may follow from, about one of the same things, at least as severe and not
lowered by the plant; the nearest root first, ties by place. Safety findings never fold. Linear: roots are indexed by
what they are about.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace

from builder.finding import Finding


def fold(
    findings: Iterable[Finding],
    causes: Mapping[str, frozenset[str]],
    never: Collection[str] = (),
    lowered: Collection[str] = (),
) -> list[Finding]:
    """Top-level findings, sorted, each with those that follow from it.

    causes : slug → all slugs it may follow from; never : slugs that never fold; lowered : slugs that can't be a root
    """
    ordered = sorted(findings, key=lambda one: one.sort_key)
    by_name: dict[str, list[int]] = {}
    for index, finding in enumerate(ordered):
        for name in finding.about:
            by_name.setdefault(name, []).append(index)
    root_of: dict[int, int] = {}
    for index, finding in enumerate(ordered):
        root = _root(index, finding, ordered, by_name, causes, never, lowered)
        if root is not None:
            root_of[index] = root
    children: dict[int, list[Finding]] = {}
    for index in root_of:
        children.setdefault(_top(index, root_of), []).append(ordered[index])
    return [
        replace(one, folded=tuple(children.get(index, ()))) for index, one in enumerate(ordered) if index not in root_of
    ]


def _root(
    index: int,
    finding: Finding,
    ordered: list[Finding],
    by_name: Mapping[str, list[int]],
    causes: Mapping[str, frozenset[str]],
    never: Collection[str],
    lowered: Collection[str],
) -> int | None:
    if finding.rule in never:
        return None
    reasons = causes.get(finding.rule, frozenset())
    best: tuple[int, int] | None = None
    # Two faults of one operation have nothing to do with each other for that alone: the finer names decide.
    for name in finding.about[1:] or finding.about:
        for other in by_name[name]:
            cause = ordered[other]
            if other == index or cause.severity < finding.severity or cause.rule in lowered:
                continue
            if cause.rule in reasons:
                best = min(best, (0, other)) if best else (0, other)
            elif cause.rule == finding.rule and other < index and _same_missing(finding, cause):
                best = min(best, (1, other)) if best else (1, other)
    return best[1] if best else None


def _same_missing(one: Finding, other: Finding) -> bool:
    """The same rule about the same missing name: the first place stands for all."""
    return len(one.about) > 1 and len(other.about) > 1 and one.about[1] == other.about[1] and one.rule == "name-unknown"


def _top(index: int, root_of: Mapping[int, int]) -> int:
    seen = {index}
    while index in root_of and root_of[index] not in seen:
        index = root_of[index]
        seen.add(index)
    return index
