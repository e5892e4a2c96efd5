"""What a station's page says of its allowances: one line each, and the factor they come to."""

from __future__ import annotations

from collections.abc import Iterator

from builder.computing import PUBLISHED, station_allowance
from builder.model import (
    PUBLISHED_SOURCE,
    Plant,
    Station,
    force_row_lb,
    say,
    show_mass,
    show_number,
    show_percent,
    show_quantity,
)


def allowance_rows(plant: Plant, station: Station) -> Iterator[tuple[str, str, str]]:
    """(what it is for, share of basic time, source) of each allowance, then the total."""
    allowed = station_allowance(plant, station)
    for line in allowed.lines:
        yield _words(line.words, plant, station), show_percent(float(line.share)), say(line.source)
    if allowed.policy:
        yield say("policy, on all of the above"), show_percent(float(allowed.policy)), say("plant’s own")
    total = float(allowed.factor)
    yield (
        say("in all"),
        show_percent(total - 1),
        say("standard time is {factor} × basic time", factor=show_number(total, 3)),
    )


def allowance_note(plant: Plant, station: Station) -> str:
    """What the lines are shares of, where the published ones come from, and what is rested inside machine time."""
    allowed = station_allowance(plant, station)
    notes = [say("Shares of basic time.")]
    if plant.allowances.convention == "share of the shift":
        notes = [say("Shares of basic time; the plant’s own were typed as shares of the shift.")]
    if any(line.source == PUBLISHED for line in allowed.lines):
        notes.append(say("Published table: {source}.", source=PUBLISHED_SOURCE))
    if station.rest_inside:
        notes.append(
            say(
                "Rest from fatigue is taken inside the machine’s time where its spells are long enough;"
                " only what is left over is added."
            )
        )
    return " ".join(notes)


def _words(words: str, plant: Plant, station: Station) -> str:
    """A line's words; a force as typed, with the row of the table that counts for it."""
    force = station.relaxation.force if station.relaxation is not None else None
    if force is None or not words.startswith("force,"):
        return say(words)
    row = f"{force_row_lb(force)} lb"
    is_mass = force.dimension == "mass"
    shown = show_mass(force.value, plant.units) if is_mass else show_quantity(force, plant.units)
    return (
        say("force, {shown}", shown=shown)
        if force.text == row
        else say("force, {shown}, row of {row}", shown=shown, row=row)
    )
