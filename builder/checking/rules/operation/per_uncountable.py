"""Work done once a bobbin, a cone or a needle, and what a piece takes of it can't be worked out."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.under_needle import stacks_under
from builder.finding import Severity
from builder.model import FROM_FACTS

_SAMPLE = "Or type the operation's `thread sample:`."


def check(subject: Subject) -> Iterator[Problem]:
    """Steps whose share came out as nothing, with the likeliest reason."""
    results = subject.results
    if results is None:
        return
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            time = results.operations.get((name, "", ""))
            found = time.step(step.step) if time is not None else None
            if found is None or found.share > 0 or step.per is None or step.per.per not in FROM_FACTS:
                continue
            reason, remedy = _reason(subject, name, step.per.per)
            message = f"step {step.step} is done once a {step.per.per}, but {reason}"
            yield Problem(("operation", name), ("steps", number, "per"), message, (f"step:{step.step}",), remedy)


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
            if found is None:
                yield layer
            elif found[1].thickness is None:
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
