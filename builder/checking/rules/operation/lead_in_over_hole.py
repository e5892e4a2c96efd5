"""A lead-in longer than a hole has room for."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.cuts import cuts
from builder.checking.lengths import length_words
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Hole, cut_with


def check(subject: Subject) -> Iterator[Problem]:
    """The setting `lead in` against the smallest hole cut there: it starts inside the hole, square to its edge."""
    done: set[str] = set()
    for cut in cuts(subject, "contour"):
        lead = subject.settings(cut.operation).get("lead in")
        if lead is None or lead.nominal is None or cut.operation in done:
            continue
        for _, shape in subject.shapes_of(cut.part):
            holes = {
                name: shape.features[name].size[0]
                for name in cut_with(shape.part)
                if name in shape.features
                and isinstance(shape.features[name].feature, Hole)
                and (shape.name, name) in subject.model.states[cut.part].worked
            }
            smallest = min(holes, key=lambda name: holes[name], default="")
            if smallest and float(lead.nominal) > holes[smallest]:
                done.add(cut.operation)
                message = (
                    f"a lead-in of {lead.words} starts beyond {smallest} of {cut.part}, "
                    f"which is {length_words(subject, holes[smallest])} wide"
                )
                about = ("setting:lead in", f"feature:{smallest}")
                yield Problem(("operation", cut.operation), ("settings", "lead in"), message, about)
                break


_PLANT = """
parts/panel.yaml:
  features: {drill: {hole: 4 mm, at: {left: 30 mm, bottom: 30 mm}}}
operations/cut-panel.yaml:
  settings: {lead in: LEAD}
"""

RULE = Rule(
    slug="lead-in-over-hole",
    severity=Severity.error,
    why="The head pierces in the goods that are kept: every piece has a burn or a cut beside its hole.",
    remedy="Set a lead-in shorter than the smallest hole is wide.",
    check=check,
    bad=_PLANT.replace("LEAD", "5 mm"),
    good=_PLANT.replace("LEAD", "2 mm"),
    follows_from=("setting-unreadable", "setting-outside-range", "shape-impossible"),
)
