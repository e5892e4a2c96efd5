"""Words that leave the work to guessing."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.prose import Sentence, fault_sentences, step_sentences
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.words.vague import vague_pattern
from builder.finding import Severity
from builder.model import Operation


def check(subject: Subject) -> Iterator[Problem]:
    """Texts of steps, faults and tolerances in the plant's language; the first such word of each text."""
    plant = subject.model.plant
    pattern = vague_pattern(plant.language, plant.vague_words)
    if pattern is None:
        return
    for name, operation in subject.model.operations.items():
        for sentence in _sentences(operation):
            if found := pattern.search(sentence.text):
                message = f"`{found[0]}` in {sentence.owner} leaves it to each reader what is meant"
                about = (f"word:{found[0].casefold()}",)
                yield Problem(("operation", name), sentence.path, message, about, offset=found.start())


def _sentences(operation: Operation) -> Iterator[Sentence]:
    yield from step_sentences(operation)
    yield from fault_sentences(operation)
    for name, tolerance in operation.tolerances.items():
        if tolerance.what:
            yield Sentence(("tolerances", name, "what"), f"tolerance {name}", tolerance.what)


RULE = Rule(
    slug="vague-words",
    severity=Severity.warning,
    why="Three operators read it in three ways, and only who wrote it knows which was meant.",
    remedy="Say what is seen, felt or measured when it is right: `edges flush`, `no pleat`, a number with its gauge.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: hem, do: Sew the hem properly.}]
""",
    good="""
operations/sew-hem.yaml:
  steps: [{step: hem, do: Sew the hem along the edge guide.}]
""",
)
