"""Pieces of two cuts that come together unseen, where the goods differ in shade from lot to lot."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity

Cuts = dict[str, frozenset[str]]


def check(subject: Subject) -> Iterator[Problem]:
    """Operations where pieces of matched goods, cut in different operations, meet for the first time."""
    model = subject.model
    matched = _matched(subject)
    if not matched:
        return
    known: dict[str, Cuts] = {}
    for name, operation in model.operations.items():
        if operation.lots == "matched":
            continue
        needed = {need: _cuts(need, subject, matched, known) for need in operation.needs if need in model.states}
        for material in sorted({one for cuts in needed.values() for one in cuts}):
            here = {need: cuts[material] for need, cuts in needed.items() if material in cuts}
            together = frozenset().union(*here.values())
            if len(together) < 2 or together in here.values():
                continue  # one cut, or they came together before
            words = " and ".join(f"{need} ({', '.join(sorted(cuts))})" for need, cuts in here.items())
            message = f"{material} has matched lots, and pieces of different cuts meet here: {words}"
            about = (f"material:{material}", *(f"operation:{cut}" for cut in sorted(together)))
            yield Problem(("operation", name), ("needs",), message, about, key=True)


def _matched(subject: Subject) -> frozenset[str]:
    """Materials with matched lots, and those a colour puts such a material in the place of."""
    model = subject.model
    found = {name for name, one in model.materials.items() if one.lots == "matched"}
    for product in model.products.values():
        for swaps in product.colours.values():
            found.update(name for name, other in swaps.items() if other in found)
    return frozenset(found)


def _cuts(name: str, subject: Subject, matched: frozenset[str], known: dict[str, Cuts]) -> Mapping[str, frozenset[str]]:
    """Matched material → operations whose cut pieces are in a part state."""
    stack = [name]
    while stack:
        at = stack[-1]
        state = subject.model.states[at]
        open_ = [need for need in state.needs if need in subject.model.states and need not in known]
        if at not in known and open_:
            known[at] = {}  # a ring ends here; it is reported
            stack.extend(open_)
            continue
        stack.pop()
        cuts: Cuts = {}
        for need in state.needs:
            for material, by in known.get(need, {}).items():
                cuts[material] = cuts.get(material, frozenset()) | by
        own = subject.model.material_of(at)
        if not state.needs and state.maker and own in matched:
            cuts[str(own)] = frozenset((state.maker,))
        known[at] = cuts
    return known[name]


RULE = Rule(
    slug="lot-mixing",
    severity=Severity.warning,
    why="Two shades of one colour end up side by side in a finished piece, and the customer sends it back.",
    remedy="Cut both in one operation, or type `lots: matched` so that the tickets are compared before the first step.",
    check=check,
    bad="""
materials/all.yaml: {materials: {cloth: {lots: matched}}}
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
operations/cut-patch.yaml:
  operation: cut-patch
  title: Cut the patch
  code: CUT-20
  station: laser
  makes: patch
  settings: {speed: 200 mm/s, power: 40 %, focus: 3 mm}
  steps: [{step: cut, cut: patch, do: Close the lid and start.}]
operations/sew-hem.yaml: {needs: {panel: 1, patch: 1}}
products/pouch.yaml: {route: [cut-patch, cut-panel, sew-hem, press-snap]}
""",
    good="""
materials/all.yaml: {materials: {cloth: {lots: matched}}}
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
operations/cut-patch.yaml:
  operation: cut-patch
  title: Cut the patch
  code: CUT-20
  station: laser
  makes: patch
  settings: {speed: 200 mm/s, power: 40 %, focus: 3 mm}
  steps: [{step: cut, cut: patch, do: Close the lid and start.}]
operations/sew-hem.yaml: {needs: {panel: 1, patch: 1}, lots: matched}
products/pouch.yaml: {route: [cut-patch, cut-panel, sew-hem, press-snap]}
""",
)
