"""A setting the station can't be set to."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from builder.checking.rule import Problem, Rule, Subject
from builder.errors import TextFault
from builder.finding import Severity
from builder.model import KINDS, Quantity, Range, SettingLimit, SettingValue, limit_range, show_range


def check(subject: Subject) -> Iterator[Problem]:
    """Settings with their tolerance against the limits or choices of the station."""
    model = subject.model
    for name, operation in model.operations.items():
        station = model.stations.get(operation.station)
        if station is None or station.kind not in KINDS:
            continue
        for setting, value in subject.settings(name).items():
            limit = station.settings.get(setting)
            if limit is None:
                continue
            words = ""
            if limit.choices is not None and value.words not in limit.choices:
                words = f"it has {', '.join(limit.choices)}"
            elif (limits := _limits(limit, value)) is not None and not _fits(value, limits):
                words = f"it goes from {show_range(limits, model.plant.units, both=False)}"
            if words:
                message = f"{setting} {value.words} can't be set at {station.title}: {words}"
                about = (f"setting:{setting}", f"station:{operation.station}")
                yield Problem(("operation", name), ("settings", setting), message, about)


def _limits(limit: SettingLimit, value: SettingValue) -> Range | None:
    try:
        return limit_range(limit, value.kind)
    except TextFault:
        return None  # reported by station-limit-unreadable


def _fits(value: SettingValue, limits: Range) -> bool:
    if value.count is not None:
        return limits.contains(Fraction(value.count))
    if value.value is None:
        return True
    if isinstance(value.value, Quantity):
        return limits.contains(value.value)
    return all(limits.contains(end) for end in (value.value.low, value.value.high) if end is not None)


RULE = Rule(
    slug="setting-outside-range",
    severity=Severity.error,
    why="The operator sets the nearest value there is, and the sheet, the seam and the time no longer agree.",
    remedy="Choose a value inside the station's limits, or another station.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  settings: {stitch length: 7 mm}
""",
    good="""
operations/sew-hem.yaml:
  settings: {stitch length: 3 mm ± 0.2}
""",
    follows_from=("setting-unreadable", "station-limit-unreadable", "stitch-not-sewn"),
)
