"""What the hazard card of a station says: its own hazards, those of single operations, and the lock-out."""

from __future__ import annotations

from collections.abc import Sequence

from builder.model import DEFER, KINDS, PlantModel, Station, say
from builder.view.cards import OwnCaution
from builder.view.controls import cautions_of
from builder.view.sheet import Caution, SheetView

_SIGNALS = ("DANGER", "WARNING", "CAUTION")
POWER_SIGN = "M021"


def own_of_operations(station: Station, sheets: Sequence[SheetView]) -> tuple[OwnCaution, ...]:
    """Cautions of operations and steps that are not the station's, each once, worst first; no codes where all do."""
    common = {one.hazard for one in cautions_of(station)}
    found: dict[Caution, dict[str, None]] = {}
    for sheet in sheets:
        for one in (*sheet.cautions, *(caution for step in sheet.steps for caution in step.cautions)):
            if one.hazard not in common and one.sign != POWER_SIGN:
                found.setdefault(one, {})[sheet.code] = None
    everywhere = len({sheet.code for sheet in sheets})
    said = [say(one) for one in _SIGNALS]
    ordered = sorted(found.items(), key=lambda one: said.index(one[0].signal))
    return tuple(OwnCaution(one, tuple(codes) if len(codes) < everywhere else ()) for one, codes in ordered)


def lock_out_of(station: Station, sheets: Sequence[SheetView], model: PlantModel) -> Caution | None:
    """How the power is locked off, where something runs under power; None at a bench whose work never needs it."""
    steps = any(one.sign == POWER_SIGN for sheet in sheets for step in sheet.steps for one in step.cautions)
    powered = KINDS[station.kind].paced != "none"
    if not powered and not steps:
        return None
    return Caution(say("power off"), POWER_SIGN, say("WARNING"), say(model.plant.lock_out))


def notices_of_card(sheets: Sequence[SheetView], hazards: bool) -> tuple[str, ...]:
    """The sentence that defers to the manual, where anything can hurt."""
    return (say(DEFER),) if hazards or any(say(DEFER) in sheet.notices for sheet in sheets) else ()
