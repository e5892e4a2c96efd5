"""Work done once a bobbin, a cone, a needle or a sheet, and nobody says how long that lasts."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Operation, Per, Station


class _Missing(NamedTuple):
    fact: str
    remedy: str
    thread: str = ""


def check(subject: Subject) -> Iterator[Problem]:
    """The fact a step's `per:` follows from, where it isn't typed: message and remedy name it and its file."""
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            per = step.per.per if step.per is not None else "piece"
            missing = _missing(subject, name, per)
            if missing is not None:
                message = f"step {step.step} is done once a {per}, and {missing.fact}"
                about = (f"step:{step.step}", *((f"material:{missing.thread}",) if missing.thread else ()))
                yield Problem(("operation", name), ("steps", number, "per"), message, about, missing.remedy)


def _missing(subject: Subject, name: str, per: Per) -> _Missing | None:
    """What isn't typed, None if nothing is missing or another rule tells it."""
    operation = subject.model.operations[name]
    station, kind = subject.model.stations.get(operation.station), subject.model.kind_of(name)
    if per == "sheet" and operation.pieces_a_sheet is None:
        return _Missing("nothing says how many pieces a sheet holds", "Type `pieces a sheet: 22` in the operation.")
    if station is None or kind is None or per not in ("bobbin", "cone", "needle"):
        return None
    if not kind.sews:
        return _Missing(f"{station.title} doesn't sew", "Write how often it is done in pieces, bundles or batches.")
    if per == "needle":
        remedy = f"Type `needle hours: 8 h` at the station {operation.station}."
        gone = station.needle_hours is None
        return _Missing(f"{station.title} doesn't say how long its needles last", remedy) if gone else None
    return _no_thread(subject, name, per, station, operation)


def _no_thread(subject: Subject, name: str, per: Per, station: Station, operation: Operation) -> _Missing | None:
    settings = subject.settings(name)
    if "thread" not in settings:
        return None  # a required setting, which has its own finding
    needle = settings["thread"].words
    under = settings["bobbin thread"].words if "bobbin thread" in settings else needle
    # A bartacker need not say its stitch: it makes a lockstitch.
    stitch = settings["stitch"].words if "stitch" in settings else "304"
    lockstitch = stitch.startswith("3")
    if per == "cone":
        return _no_cone(subject, (needle,) if lockstitch else (needle, under))
    if station.stitches and stitch not in station.stitches:
        return None  # it can't be sewn there at all, which has its own finding
    if not lockstitch:
        return _Missing(f"stitch {stitch} has no bobbin", "Write `per: cone`, or how many pieces it is.")
    if under in station.bobbins:
        return None
    fact = f"{station.title} doesn't say what a bobbin of {under} holds"
    typed = f"bobbins: {{{under}: {{holds: 27 m, left: 1.5 m}}}}"
    return _Missing(fact, f"Measure one and type `{typed}` at the station {operation.station}.", under)


def _no_cone(subject: Subject, threads: tuple[str, ...]) -> _Missing | None:
    materials = subject.model.materials
    for thread in threads:
        if thread in materials and materials[thread].cone is None:
            fact = f"nothing says how much {thread} is on a cone"
            return _Missing(fact, f"Type `cone: 3000 m` at the material {thread}.", thread)
    return None


RULE = Rule(
    slug="per-without-fact",
    severity=Severity.error,
    why="Its time would be left out of the standard.",
    remedy="Type the fact, or write how many pieces it is.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: bobbin, do: Put in a full bobbin., time: 20 s, per: bobbin}]
""",
    good="""
materials/all.yaml:
  materials: {cloth: {thickness: 0.5 mm}}
stations/all.yaml:
  stations: {lockstitch: {bobbins: {thread-70: {holds: 27 m, left: 1.5 m}}}}
operations/sew-hem.yaml:
  steps: [{step: bobbin, do: Put in a full bobbin., time: 20 s, per: bobbin}]
""",
    follows_from=("name-unknown",),
)
