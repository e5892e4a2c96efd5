"""Hands at needle, blade, thread path or jam while the machine can start."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.words.near_machine import deed_in
from builder.finding import Severity
from builder.model import Operation, Station

Place = tuple[tuple[str | int, ...], str, str]
"""Path of a text, the text, and how a message calls where it stands."""

_MACHINE_WORK = ("sew", "cut", "set")


def check(subject: Subject) -> Iterator[Problem]:
    """Texts of steps and faults at machines without `power: off`, and what a station says of settings and shifts."""
    model = subject.model
    language = model.plant.language
    for name, operation in model.operations.items():
        kind = model.kind_of(name)
        if kind is None or kind.paced == "none":
            continue
        for path, text, where in (*_steps(operation), *_faults(operation)):
            if found := deed_in(text, language):
                message = f"{found[0]} in {where}, and nothing switches the machine off"
                yield Problem(("operation", name), path, message, offset=found[1])
    for name, station in model.stations.items():
        for path, text, where in _station_texts(station):
            if found := deed_in(text, language, topic=str(path[1])):
                message = f"{found[0]} in {where}, and nothing says that the machine is off"
                yield Problem(("station", name), path, message, offset=found[1], remedy=_SAY_SO)


def _station_texts(station: Station) -> Iterator[Place]:
    for key, limit in station.settings.items():
        if limit.how:
            yield ("settings", key, "how"), limit.how, f"how {key} is verified"
    yield from ((("start", key), text, f"the start, {key}") for key, text in station.start.items())
    yield from ((("close down", key), text, f"the close down, {key}") for key, text in station.close_down.items())


_SAY_SO = "Say in the text that the machine is switched off first."


def _steps(operation: Operation) -> Iterator[Place]:
    """Texts of the steps done while the power may be on: it stays off until the machine works again."""
    off = False
    for number, step in enumerate(operation.steps):
        if step.work[0] in _MACHINE_WORK:
            off = False
        off = off or step.power == "off"
        if not off:
            yield from (
                (("steps", number, key), text, f"step {step.step}")
                for key in ("do", "key")
                if (text := getattr(step, key))
            )


def _faults(operation: Operation) -> Iterator[Place]:
    for number, fault in enumerate(operation.faults):
        if fault.power != "off":
            yield from (
                (("faults", number, key), text, f"the fault `{fault.sign}`")
                for key in ("do", "stop")
                if (text := getattr(fault, key))
            )


RULE = Rule(
    slug="power-on",
    severity=Severity.error,
    why="A foot on the treadle, or a cycle that goes on by itself, drives the needle or the blade through the fingers.",
    remedy="Add `power: off` to the step or the fault: the sheet then says first how the machine is switched off.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  faults: [{sign: skipped stitches, class: major, cause: needle bent, do: Change the needle.}]
""",
    good="""
operations/sew-hem.yaml:
  faults: [{sign: skipped stitches, class: major, cause: needle bent, do: Change the needle., power: 'off'}]
""",
    safety=True,
)
