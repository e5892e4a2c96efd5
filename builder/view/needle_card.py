"""What the broken-needle card says. The procedure is common practice, no source; who releases the work nobody names."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from builder.model import KINDS, PlantModel, Station, parse_needle, say, settings_of, show_quantity
from builder.view.cards import CardStep, NeedleUse
from builder.view.controls import cautions_of
from builder.view.sheet import SheetView


def needle_uses(station: Station, sheets: Iterable[SheetView], model: PlantModel) -> tuple[NeedleUse, ...]:
    """The needles used at a station, the thickest first, each with the operations that use it."""
    length = station.needle_length.value if station.needle_length is not None else None
    shank = station.needle_shank.value if station.needle_shank is not None else None
    codes: dict[str, dict[str, None]] = {}
    for sheet in sheets:
        setting = settings_of(model, sheet.operation).get("needle")
        if setting is not None and setting.needle is not None:
            codes.setdefault(setting.needle.text, {})[sheet.code] = None
    measures = _measures(station, model)
    uses = [NeedleUse(text, parse_needle(text).size, length, shank, tuple(of), measures) for text, of in codes.items()]
    return tuple(sorted(uses, key=lambda use: (-use.size, use.text)))


def _measures(station: Station, model: PlantModel) -> str:
    if station.needle_length is None:
        return ""
    return say("{length} long", length=show_quantity(station.needle_length, model.plant.units))


def needle_parts() -> tuple[str, ...]:
    """Words of what must be found again, from the shank to the point."""
    return say("shank"), say("blade"), say("long groove"), say("eye"), say("point")


def needle_steps(station: Station, model: PlantModel) -> Iterator[CardStep]:
    """What is done when a needle breaks. Common practice, no source."""
    paced = KINDS[station.kind].paced
    if paced == "operator":
        yield CardStep(say("Stop. Foot off the treadle."), say("Leave the work where it lies. Move nothing."))
    else:
        yield CardStep(say("Stop the machine."), say("Leave the work where it lies. Move nothing."))
    yield CardStep(say("Power off."), say(model.plant.lock_out), "M021", say("power off"))
    eyes = next((one for one in ("eye shield", "eye protection") if one in station.protection), "")
    yield CardStep(
        say("Find every piece."),
        say("In the goods, at the needle plate, inside the machine, on table and floor, in trays and clothes."),
        "M004" if eyes else "",
        say("eye protection") if eyes else "",
    )
    yield CardStep(
        say("Lay the pieces on the outline overleaf."),
        say("Shank, eye and point: together they must make one whole needle."),
    )
    yield CardStep(say("All there: stick them down with clear tape."), say("Never throw a piece in a bin."))
    yield CardStep(
        say("Set aside all work since the last good check."),
        say("Marked and locked away. Nobody works on it or packs it until it is released."),
    )
    yield CardStep(
        say("A piece is missing: stop and call."),
        say("The place and the work stay locked until it is found, or the work is rejected."),
    )
    yield CardStep(
        say("Fill in the record. A new needle is given out against this card."),
        say("The work is released by whom the plant has appointed for it, never by the operator alone."),
    )


def needle_record() -> tuple[str, ...]:
    """What is written down of each break."""
    return (
        say("date and time"),
        say("machine number"),
        say("operation code"),
        say("needle"),
        say("pieces found"),
        say("work set aside: lots, bundles, from, to"),
        say("what was done with it"),
        say("released by, date"),
    )


def has_needles(station: Station) -> bool:
    """Whether a station sews, and so can break a needle."""
    return KINDS[station.kind].sews and any(one.hazard == "moving needle" for one in cautions_of(station))
