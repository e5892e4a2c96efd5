"""A step whose words ask for two kinds of work."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.prose import step_sentences
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.words.work_verbs import work_verbs
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """The `do` of every step: the second kind of work that a clause of it begins with."""
    language = subject.model.plant.language
    for name, operation in subject.model.operations.items():
        for sentence in step_sentences(operation, ("do",)):
            verbs = list(work_verbs(sentence.text, language))
            second = next((one for one in verbs if one[1] != verbs[0][1]), None)
            if second is not None:
                message = f"{sentence.owner} asks for two kinds of work: {verbs[0][0]} and {second[0]}"
                yield Problem(("operation", name), sentence.path, message, offset=second[2])


RULE = Rule(
    slug="step-two-actions",
    severity=Severity.note,
    why="Of two jobs under one number the second is forgotten first; and one picture and one time can't show both.",
    remedy="Make two steps of it, each with its own time.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: hem, do: Fold the hem and sew it.}]
""",
    good="""
operations/sew-hem.yaml:
  steps: [{step: hem, do: Sew the hem.}]
""",
)
