"""Pieces of one run that are not all used."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import Flow, flow_of, whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import cut_here, show_number


def check(subject: Subject) -> Iterator[Problem]:
    """Operations that make several things of which a product doesn't use the same share; once for each name.

    Of a cut sheet, what another product uses all of is not left over: it is cut for both.
    """
    model = subject.model
    if not whole(subject):
        return
    needed = {name for one in model.operations.values() for name in one.needs}
    flows = {product: flow for product in model.products if (flow := flow_of(subject, product)) is not None}
    seen = {one for flow in flows.values() for one in _used_up(subject, flow)}
    for product, flow in flows.items():
        for name, runs in flow.runs.items():
            makes = model.operations[name].makes
            for made, count in makes.items() if runs else ():
                used = flow.used.get(made, 0) / runs
                if used >= count or (name, made) in seen or (made not in needed and made not in flow.used):
                    continue  # what nobody uses at all has a rule of its own
                seen.add((name, made))
                full = next(one for one in makes if flow.used.get(one, 0) == runs * makes[one])
                left = f"{show_number(used)} are used" if used else "none is used"
                message = f"while {product} uses all {full} of a run, of its {count} {made} {left}"
                about = (f"part:{made}", f"product:{product}")
                yield Problem(("operation", name), ("makes", made), message, about, key=True)


def _used_up(subject: Subject, flow: Flow) -> Iterator[tuple[str, str]]:
    """Operation and thing cut there of which a product uses every piece."""
    for name, runs in flow.runs.items():
        for made, count in subject.model.operations[name].makes.items():
            if runs and cut_here(subject.model, name, made) and flow.used.get(made, 0) >= runs * count:
                yield name, made


RULE = Rule(
    slug="pieces-left-over",
    severity=Severity.warning,
    why="With every piece some are left over: goods and minutes paid for scrap, and a stack nobody asked for.",
    remedy="Make and need the same counts, or cut what is used less in an operation of its own.",
    check=check,
    bad="""
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
operations/cut-panel.yaml:
  makes: {panel: 1, patch: 2}
operations/sew-hem.yaml:
  needs: {panel: 1, patch: 1}
""",
    good="""
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
operations/cut-panel.yaml:
  makes: {panel: 1, patch: 1}
operations/sew-hem.yaml:
  needs: {panel: 1, patch: 1}
""",
    follows_from=("name-unknown", "part-not-on-route", "part-made-twice", "route-cycle"),
)
