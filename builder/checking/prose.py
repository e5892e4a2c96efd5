"""The sentences of an operation with where each stands. What is good or bad in them, each rule says itself."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.model import Operation

STEP_KEYS = ("do", "key", "why")
FAULT_KEYS = ("sign", "cause", "do", "stop")


@dataclass(frozen=True, slots=True)
class Sentence:
    """A text of an operation: its path in the file, the step or fault it belongs to, and its words."""

    path: tuple[str | int, ...]
    owner: str
    text: str


def step_sentences(operation: Operation, keys: tuple[str, ...] = STEP_KEYS) -> Iterator[Sentence]:
    """Texts of all steps under these keys, in order."""
    for number, step in enumerate(operation.steps):
        for key in keys:
            if text := getattr(step, key):
                yield Sentence(("steps", number, key), f"step {step.step}", text)


def fault_sentences(operation: Operation, keys: tuple[str, ...] = FAULT_KEYS) -> Iterator[Sentence]:
    """Texts of all faults under these keys, in order."""
    for number, fault in enumerate(operation.faults):
        for key in keys:
            if text := getattr(fault, key):
                yield Sentence(("faults", number, key), f"fault {number + 1}", text)
