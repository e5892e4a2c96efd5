"""A study and the machine model that tell two stories."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import StepTime, show_percent, show_seconds


def check(subject: Subject) -> Iterator[Problem]:
    """Steps with readings and a machine model, where the plant says how far apart the two may be.

    At a machine that paces itself the readings are its run. Where the operator paces it they hold the hand work
    too: they can't be shorter than the run, and with hand work typed they are compared with both together.
    """
    model, results = subject.model, subject.results
    limit = model.plant.model_limit
    if results is None or limit is None:
        return
    for name, operation in model.operations.items():
        time, kind = results.operations.get((name, "", "")), model.kind_of(name)
        if time is None or kind is None or model.study_of(name) is None:
            continue
        for number, step in enumerate(operation.steps):
            found = time.step(step.step)
            if found is None or not found.readings or not found.modelled_s:
                continue
            if words := _apart(found, kind.paced == "machine", float(limit)):
                message = f"step {step.step}: {words}; the plant allows {show_percent(limit, 0)}"
                about = (f"step:{step.step}", f"station:{operation.station}")
                yield Problem(("operation", name), ("steps", number, "step"), message, about)


def _apart(time: StepTime, self_paced: bool, limit: float) -> str:
    """How far the study is from the model, '' when it is near enough."""
    run = time.modelled_s or 0.0
    read = time.run_s if self_paced else time.hand_s
    hand = None if self_paced else time.typed_s
    expected, what = (run, "the machine model") if hand is None else (run + hand, "model and hand work together")
    off = read / expected - 1
    if abs(off) <= limit or (not self_paced and hand is None and off > 0):
        return ""
    side = "longer" if off > 0 else "shorter"
    share = show_percent(abs(off), 0)
    return f"the study reads {show_seconds(read)}, {share} {side} than {what} with {show_seconds(expected)}"


RULE = Rule(
    slug="study-against-model",
    severity=Severity.warning,
    why="One of the two is wrong, and the same model times all the work here that nobody has studied yet.",
    remedy="Look at settings and constants of the station, then at the readings: what was timed, and with which size.",
    check=check,
    bad="""
plant.yaml: {model limit: 25 %}
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hem,1,2.0,100,
  hem,2,2.1,100,
""",
    good="""
plant.yaml: {model limit: 25 %}
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hem,1,7.0,100,
  hem,2,7.1,100,
""",
    follows_from=("pace-missing", "study-conditions-changed", "reading-implausible"),
    needs_results=True,
)
