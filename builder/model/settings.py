"""Settings of an operation, read against the table of its station's kind of machine.

They stay plain text in the operation, because only the station says what each of them is.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.errors import TextFault
from builder.finding import Finding
from builder.model.faults import fault
from builder.model.machine import KINDS, SettingKind
from builder.model.material import Material
from builder.model.near_names import near
from builder.model.needle import Needle, parse_needle
from builder.model.plant_model import PlantModel
from builder.model.quantity import Quantity, Range, parse_count, parse_range
from builder.model.station import SettingLimit
from builder.model.stitch import STITCHES
from builder.model.tolerance import Tolerance, parse_toleranced


@dataclass(frozen=True, slots=True)
class SettingValue:
    """A setting as read. One of the fields after `kind` is filled, by its sort; `words` always."""

    name: str
    kind: SettingKind
    words: str
    value: Quantity | Tolerance | None = None
    count: int | None = None
    needle: Needle | None = None

    @property
    def nominal(self) -> Fraction | None:
        """The value aimed at in base units, the middle of two limits, None for words."""
        if isinstance(self.value, Quantity):
            return self.value.value
        if isinstance(self.value, Tolerance):
            if self.value.nominal is not None:
                return self.value.nominal.value
            if self.value.low is not None and self.value.high is not None:
                return (self.value.low + self.value.high) / 2
        return None


def read_settings(
    typed: Mapping[str, str], machine: str, materials: Mapping[str, Material]
) -> tuple[dict[str, SettingValue], dict[str, TextFault]]:
    """Settings that could be read, and a fault for each that could not; unknown names are faults too."""
    table = KINDS[machine].settings
    values: dict[str, SettingValue] = {}
    faults: dict[str, TextFault] = {}
    for name, text in typed.items():
        try:
            values[name] = _read(name, text, table, materials, KINDS[machine].title)
        except TextFault as error:
            faults[name] = error
    return values, faults


def _read(
    name: str, text: str, table: Mapping[str, SettingKind], materials: Mapping[str, Material], title: str
) -> SettingValue:
    kind = table.get(name)
    if kind is None:
        close = near(name, table)
        hint = f"Did you mean `{close[0]}`?" if close else f"It has: {', '.join(table) or 'none'}."
        raise TextFault(f"a {title} has no setting `{name}`", remedy=hint)
    if kind.sort == "tolerance":
        return SettingValue(name, kind, text, parse_toleranced(text, kind.dimension))
    if kind.sort == "share":
        return SettingValue(name, kind, text, parse_toleranced(text, "share"))
    if kind.sort == "count":
        return SettingValue(name, kind, text, count=parse_count(text))
    if kind.sort == "stitch" and text not in STITCHES:
        close = near(text, STITCHES)
        raise TextFault(
            f"{text} is no stitch type known here", remedy=f"ISO 4915 types: {', '.join(close or STITCHES)}"
        )
    if kind.sort == "needle":
        return SettingValue(name, kind, text, needle=parse_needle(text))
    if kind.sort == "thread":
        _need_thread(text, materials)
    return SettingValue(name, kind, text)


def _need_thread(name: str, materials: Mapping[str, Material]) -> None:
    material = materials.get(name)
    threads = [key for key, value in materials.items() if value.form == "thread"]
    if material is None:
        close = near(name, threads)
        raise TextFault(f"no thread is called {name}", remedy=f"Did you mean {close[0]}?" if close else "Add it.")
    if material.form != "thread":
        raise TextFault(f"{name} is a {material.form}, not a thread", remedy="Name a thread.")


def settings_of(model: PlantModel, operation: str) -> dict[str, SettingValue]:
    """The readable settings of an operation, read once; {} when its station or kind is unknown."""
    return _read_once(model, operation)[0]


def _read_once(model: PlantModel, operation: str) -> tuple[dict[str, SettingValue], dict[str, TextFault]]:
    kind = model.kind_of(operation)
    if kind is None:
        return {}, {}
    if operation not in model.memo:
        model.memo[operation] = read_settings(model.operations[operation].settings, kind.name, model.materials)
    found: tuple[dict[str, SettingValue], dict[str, TextFault]] = model.memo[operation]
    return found


def setting_findings(model: PlantModel, operation: str, materials: Collection[str] = ()) -> list[Finding]:
    """One finding for each setting of an operation that can't be read.

    materials : names of all materials, those whose file can't be read included: nothing that names them complains
    """
    op = model.operations[operation]
    faults = _read_once(model, operation)[1]
    return [
        fault(
            "setting-unreadable",
            model.place(
                "operation", operation, "settings", name, key=error.message.startswith("a "), offset=error.offset
            ),
            error.message,
            (f"operation:{operation}", f"setting:{name}", *_meant(name, op.settings[name], operation, model)),
            error.remedy,
        )
        for name, error in faults.items()
        if op.settings[name] in model.materials or op.settings[name] not in materials
    ]


def _meant(name: str, text: str, operation: str, model: PlantModel) -> Iterator[str]:
    """Names a setting that can't be read may mean: a near setting, or a near thread."""
    kind = model.kind_of(operation)
    table = kind.settings if kind is not None else {}
    if name not in table:
        yield from (f"setting:{one}" for one in near(name, table))
    elif table[name].sort == "thread":
        threads = [key for key, value in model.materials.items() if value.form == "thread"]
        yield from (f"material:{one}" for one in near(text, threads))


def limit_range(limit: SettingLimit, kind: SettingKind) -> Range | None:
    """The limits a station states for a setting as a range, None when it states none. Raises TextFault."""
    dimension = {"tolerance": kind.dimension, "share": "share", "count": "count"}.get(kind.sort)
    return parse_range(limit.limits, dimension) if limit.limits is not None and dimension is not None else None
