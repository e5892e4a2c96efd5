"""Work done once a bobbin, a cone or a needle, and what a piece takes of it can't be worked out."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.under_needle import stacks_under
from builder.checking.walk import in_size
from builder.finding import Severity
from builder.model import FROM_FACTS

_SAMPLE = "Or type the operation's `thread sample:`."


def check(subject: Subject) -> Iterator[Problem]:
    """Steps whose share came out as nothing in some size, with the likeliest reason."""
    results = subject.results
    if results is None:
        return
    asked = {
        (name, step.step): (number, step.per.per)
        for name, operation in subject.model.operations.items()
        for number, step in enumerate(operation.steps)
        if step.per is not None and step.per.per in FROM_FACTS
    }
    for (name, _, size), time in results.operations.items():
        for one in time.steps:
            if one.share > 0 or (name, one.step) not in asked or _told_elsewhere(subject, name):
                continue
            number, per = asked.pop((name, one.step))
            reason, remedy = _reason(subject, name, per)
            message = f"step {one.step} is done once a {per}, but {reason}{in_size(size)}"
            yield Problem(("operation", name), ("steps", number, "per"), message, (f"step:{one.step}",), remedy)


def _told_elsewhere(subject: Subject, name: str) -> bool:
    """Whether a part has no shape, or a layer no material: each has a finding of its own."""
    sewn = [one for one in subject.worked(name) if one.key == "sew"]
    under = list(stacks_under(subject, name))
    layers = {layer for _, stacks in under for stack in stacks for layer in stack}
    return len(under) < len(sewn) or any(subject.model.material_under(layer) is None for layer in layers)


def _reason(subject: Subject, name: str, per: str) -> tuple[str, str]:
    """(what is unknown, remedy)."""
    operation, settings = subject.model.operations[name], subject.settings(name)
    stitch = settings["stitch"].words if "stitch" in settings else "304"
    if not any(step.sew for step in operation.steps):
        return "nothing is sewn here", "Write how often it is done in pieces, bundles or batches."
    if per == "needle":
        return "the machine's time is unknown", "State the station's `pace:`, or write how many pieces it is."
    if operation.thread_sample is None:
        thin = next(_unknown(subject, name), None)
        if thin is not None:
            return f"the thickness of {thin} under its seams is unknown", f"Type its `thickness:`. {_SAMPLE}"
        if stitch.startswith("5") and "cut width" not in settings:
            return "how wide its stitch reaches is unknown", f"Type the setting `cut width`. {_SAMPLE}"
        if stitch not in ("301", "304", "504", "514", "516", "401", "101"):
            return f"no length of thread is known for stitch {stitch}", f"Unravel a sample. {_SAMPLE}"
    if per == "cone":
        return "no length of thread is known", "Write how many pieces it is."
    return (
        "one piece takes more than a bobbin gives",
        "Say `inside a piece: yes` in the station's `bobbins:` if it may be changed there, or correct what it holds.",
    )


def _unknown(subject: Subject, name: str) -> Iterator[str]:
    """Materials under the needle whose thickness nobody typed."""
    for _, stacks in stacks_under(subject, name):
        for layer in sorted({layer for stack in stacks for layer in stack}):
            found = subject.model.material_under(layer)
            if found is not None and found[1].thickness is None:
                yield found[0]


RULE = Rule(
    slug="per-uncountable",
    severity=Severity.error,
    why="Its time would be left out of the standard.",
    remedy="Type what is missing, or write how many pieces it is.",
    check=check,
    bad="""
materials/all.yaml:
  materials: {cloth: {thickness: 0.5 mm}}
stations/all.yaml:
  stations: {lockstitch: {bobbins: {thread-70: {holds: 2 m, left: 1.8 m}}}}
operations/sew-hem.yaml:
  steps: [{step: bobbin, do: Put in a full bobbin., time: 20 s, per: bobbin}]
""",
    good="""
materials/all.yaml:
  materials: {cloth: {thickness: 0.5 mm}}
stations/all.yaml:
  stations: {lockstitch: {bobbins: {thread-70: {holds: 2 m, left: 0.3 m}}}}
operations/sew-hem.yaml:
  steps: [{step: bobbin, do: Put in a full bobbin., time: 20 s, per: bobbin}]
""",
    needs_results=True,
)
