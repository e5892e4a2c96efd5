"""A roll or a bundle too heavy for one person."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.geometry import Scales, roll_grams
from builder.model import Operation, show_mass

LOAD_CONSTANT_G = Fraction(23_000)
"""Most one person lifts when everything is at its best, where the plant types no limit of its own.

Source: Waters, Putz-Anderson, Garg, *Applications Manual for the Revised NIOSH Lifting Equation*, DHHS (NIOSH)
Publication No. 94-110, 1994, the load constant LC; memory.
"""
_HELP = frozenset({"hoist", "roll trolley", "two people"})
_ANSWERED = "heavy load"
"""A station with this hazard is asked for its help by the rule on protections."""


def check(subject: Subject) -> Iterator[Problem]:
    """Rolls cut at stations without help, the heaviest of each; then bundles, where they first become too heavy."""
    handling = subject.model.plant.handling
    limit = handling.lift.value if handling is not None and handling.lift is not None else LOAD_CONSTANT_G
    yield from _rolls(subject, limit)
    yield from _bundles(subject, limit)


def _alone(subject: Subject, operation: Operation) -> bool:
    """Whether one person lifts alone there."""
    station = subject.model.stations.get(operation.station)
    return station is not None and not _HELP.intersection(station.protection) and _ANSWERED not in station.hazards


def _rolls(subject: Subject, limit: Fraction) -> Iterator[Problem]:
    model = subject.model
    heaviest: dict[str, tuple[float, str]] = {}
    for operation in model.operations.values():
        if not _alone(subject, operation):
            continue
        for part in (part for step in operation.steps for part in step.cut):
            name = model.material_of(part) or ""
            grams = roll_grams(model.materials[name]) if name in model.materials else None
            if grams is not None and grams > limit:
                heaviest[operation.station] = max(heaviest.get(operation.station, (0.0, "")), (grams, name))
    for station, (grams, name) in heaviest.items():
        title = model.materials[name].title
        message = f"{title} as bought weighs {_words(subject, grams)}; one person lifts {_words(subject, limit)}"
        path = ("protection",) if model.stations[station].protection else ("title",)
        yield Problem(("station", station), path, message, (f"material:{name}",))


def _bundles(subject: Subject, limit: Fraction) -> Iterator[Problem]:
    found: set[str] = set()
    for size, values in subject.sizes():
        scales = Scales(subject.model, subject.book, values)
        for name, operation in subject.model.operations.items():
            if name in found or not _alone(subject, operation):
                continue
            grams = _bundle(subject, operation, operation.makes, scales)
            before = _bundle(subject, operation, operation.needs, scales)
            if grams is None or grams <= limit or (before is not None and before > limit):
                continue
            found.add(name)
            pieces = operation.bundle or subject.model.plant.bundle
            of = f" in size {size}" if size else ""
            message = (
                f"a bundle of {pieces}{of} weighs {_words(subject, grams)}; one person lifts {_words(subject, limit)}"
            )
            yield Problem(
                ("operation", name), ("bundle",) if operation.bundle else ("makes",), message, remedy=_SMALLER
            )


_SMALLER = "Make the bundle smaller, or name the hoist or the second person under `protection`."


def _bundle(subject: Subject, operation: Operation, pieces: Mapping[str, int], scales: Scales) -> float | None:
    """Mass of a bundle of the pieces of one run, as far as they are known [g]."""
    known = [count * grams for name, count in pieces.items() if (grams := scales.grams(name)) is not None]
    return sum(known) * (operation.bundle or subject.model.plant.bundle) if known else None


def _words(subject: Subject, grams: float | Fraction) -> str:
    return show_mass(grams, subject.model.plant.units, both=False)


RULE = Rule(
    slug="lift-too-heavy",
    severity=Severity.warning,
    why="Backs are hurt by the one lift nobody helps with.",
    remedy="Name the hoist, the roll trolley or the second person under `protection`, or buy shorter rolls.",
    check=check,
    bad="""
stations/all.yaml:
  stations: {laser: {protection: [interlocked enclosure, extraction, fire extinguisher]}}
materials/all.yaml:
  materials: {cloth: {length: 80 m}}
""",
    good="""
stations/all.yaml:
  stations: {laser: {protection: [interlocked enclosure, extraction, fire extinguisher, roll trolley]}}
materials/all.yaml:
  materials: {cloth: {length: 80 m}}
""",
    safety=True,
)
