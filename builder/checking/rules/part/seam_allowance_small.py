"""A seam too near to a raw edge."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.edges import finished_edges, ground_part, woven_to_width
from builder.checking.rule import Problem, Rule, Subject, Worked
from builder.checking.walk import in_size, length_words
from builder.finding import Severity
from builder.model import Feature, Seam, Strip, full_name, show_quantity


def check(subject: Subject) -> Iterator[Problem]:
    """Inset of each seam along an edge, in every size, against the plant's least one for the stitch that sews it."""
    allowances = subject.model.plant.seam_allowances
    seen: set[tuple[str, str]] = set()
    for operation in subject.model.operations if allowances else ():
        stitch = subject.settings(operation).get("stitch")
        least = allowances.get(stitch.words) if stitch is not None else None
        if least is None or stitch is None:
            continue
        for one in subject.worked(operation):
            if one.key != "sew" or (one.part, one.name) in seen or not _raw(subject, one):
                continue
            seen.add((one.part, one.name))
            measured = "off" if _along(one.feature) else "inset"
            full = full_name(one.part, f"{one.name}.{measured}")
            short = ((size, values[full]) for size, values in subject.sizes() if full in values)
            size, inset = min(short, key=lambda found: found[1].value, default=("", least))
            if inset.value < least.value:
                needs = show_quantity(least, subject.model.plant.units, both=False)
                lies = length_words(inset.value, subject.model)
                message = (
                    f"{one.name} lies {lies} inside a raw edge{in_size(size)}, stitch {stitch.words} needs {needs}"
                )
                about = (f"feature:{one.name}", f"operation:{operation}")
                yield Problem(("part", one.part), ("features", one.name, measured), message, about)


def _raw(subject: Subject, one: Worked) -> bool:
    """Does a seam run along at least one edge that is neither folded nor bound nor woven?"""
    seam = one.feature
    if not isinstance(seam, Seam) or seam.seam == ("line",) or seam.binding is not None:
        return False
    known = full_name(one.part, f"{one.name}.inset") in subject.dimensions.values
    if not (_inside_a_strip(subject, one, seam) if _along(seam) else known):
        return False
    part = subject.model.parts[one.part]
    ground = ground_part(part, seam.of if _along(seam) else seam.on)
    if woven_to_width(subject, ground or one.part):
        return False
    finished = finished_edges(subject, ground or one.part, None if ground else one.name)
    if "all" in finished:
        return False
    named = (seam.sides or ("all",)) if _along(seam) else seam.seam
    edges = _all_edges(subject, ground or one.part) if named == ("all",) else set(named)
    return bool(edges - finished)


def _along(seam: Feature) -> bool:
    """Is it a seam beside another feature, whose distance is `off`?"""
    return isinstance(seam, Seam) and seam.seam == ("along",)


def _inside_a_strip(subject: Subject, one: Worked, seam: Seam) -> bool:
    """Does a seam beside something lie on a strip, inside its edges? Beside anything else there is no raw edge."""
    strip = subject.model.parts[one.part].features.get(seam.of or "")
    off = subject.dimensions.values.get(full_name(one.part, f"{one.name}.off"))
    return isinstance(strip, Strip) and off is not None and off.value > 0


def _all_edges(subject: Subject, part: str) -> set[str]:
    shape = subject.book.shape(part, subject.dimensions.values)
    return set(shape.outline.edges) if shape is not None else set()


RULE = Rule(
    slug="seam-allowance-small",
    severity=Severity.warning,
    why="The threads beside the seam slide out of the edge, and the seam opens under load.",
    remedy="Type a larger inset, and a wider part with it; fold or bind the edge; or lower the plant's seam allowance.",
    check=check,
    bad="""
plant.yaml: {seam allowances: {'301': 5 mm}}
parts/panel.yaml:
  features: {side-seam: {seam: left, inset: 3 mm}}
operations/sew-hem.yaml:
  steps: [{step: side, sew: side-seam, do: Sew the side., time: 2 s}]
""",
    good="""
plant.yaml: {seam allowances: {'301': 5 mm}}
parts/panel.yaml:
  features: {side-seam: {seam: left, inset: 6 mm}}
operations/sew-hem.yaml:
  steps: [{step: side, sew: side-seam, do: Sew the side., time: 2 s}]
""",
    follows_from=("shape-impossible", "expression-unreadable", "setting-unreadable", "step-feature-missing"),
)
