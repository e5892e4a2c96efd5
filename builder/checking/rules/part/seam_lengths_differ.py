"""A seam that joins two lines of different length."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.rules.part.seam_join_unknown import join_of
from builder.checking.walk import in_size, length_words
from builder.finding import Severity
from builder.model import Seam, Values, full_name

EASE_MM = 2.0
"""How much longer one line may be where nobody typed `ease`. Common practice, no source."""

_SLACK_MM = 0.001


def check(subject: Subject) -> Iterator[Problem]:
    """Both lines of each seam with `joins:`, as long as their runs, in every size."""
    for name, part in subject.model.parts.items():
        for feature_name, seam in part.features.items():
            if isinstance(seam, Seam) and len(seam.joins) == 2:
                yield from _in_sizes(subject, name, feature_name, seam)


def _in_sizes(subject: Subject, part: str, name: str, seam: Seam) -> Iterator[Problem]:
    ends = [join_of(subject, line) for line in seam.joins]
    for size, values in subject.sizes():
        lengths = [_length(subject, end, values) for end in ends]
        if lengths[0] is None or lengths[1] is None:
            return
        ease = values.get(full_name(part, f"{name}.ease"))
        allowed = float(ease.value) if ease is not None else EASE_MM
        differ = abs(lengths[0] - lengths[1])
        if differ > allowed + _SLACK_MM:
            model = subject.model
            both = " and ".join(
                f"{line} is {length_words(length, model)}"
                for line, length in zip(seam.joins, lengths, strict=True)
                if length is not None
            )
            words = f"{length_words(differ, model)} apart, {length_words(allowed, model)} can be eased in"
            about = tuple(f"feature:{end[1]}" for end in ends if end is not None)
            message = f"{both}{in_size(size)}: {words}"
            yield Problem(("part", part), ("features", name, "joins"), message, (f"feature:{name}", *about))
            return


def _length(subject: Subject, end: tuple[str, str] | None, values: Values) -> float | None:
    shape = subject.book.shape(end[0], values) if end is not None else None
    feature = shape.features.get(end[1]) if shape is not None and end is not None else None
    return sum(path.length for path in feature.paths) if feature is not None else None


RULE = Rule(
    slug="seam-lengths-differ",
    severity=Severity.error,
    why="The longer edge ends in a pleat, or the shorter one is stretched and the seam puckers.",
    remedy="Make both lines equally long, or type as `ease` how much the operator eases in.",
    check=check,
    bad="""
parts/panel.yaml:
  features:
    left-line: {seam: left, inset: 8 mm}
    right-line: {seam: right, inset: 8 mm, end gap: 20 mm}
    hem-seam: {joins: [panel/left-line, panel/right-line]}
""",
    good="""
parts/panel.yaml:
  features:
    left-line: {seam: left, inset: 8 mm}
    right-line: {seam: right, inset: 8 mm, end gap: 1 mm}
    hem-seam: {joins: [panel/left-line, panel/right-line]}
""",
    follows_from=("shape-impossible", "expression-unreadable", "seam-join-unknown"),
)
