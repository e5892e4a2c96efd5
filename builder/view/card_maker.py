"""Builds the cards of each station from the station and the finished sheets of its operations."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from builder.model import KINDS, PlantModel, Station, capital_mm, named, say
from builder.view.cards import (
    AnyCard,
    CardHead,
    CardSource,
    FaultCard,
    HazardCard,
    NeedleCard,
    SettingsCard,
    ShiftCard,
    StationCards,
)
from builder.view.controls import POWER_OFF, cautions_of, protection_of
from builder.view.fault_finder import fault_rows
from builder.view.fingerprint import controlled_facts, method_hash, tag_of
from builder.view.hazard_card import lock_out_of, notices_of_card, own_of_operations
from builder.view.needle_card import has_needles, needle_parts, needle_record, needle_steps, needle_uses
from builder.view.setting_groups import card_source, limit_lines, machine_facts, setting_groups, stored_programs
from builder.view.sheet import SheetView


@dataclass(slots=True)
class CardMaker:
    """Makes the cards of a plant's stations. `sheets`: those of all operations, in the order of their files.

    whole : stations of whose operations none is missing among the sheets; all when None. A fault finder that lacks a
            fault is worse than one in another language
    """

    model: PlantModel
    sheets: Sequence[SheetView]
    whole: Collection[str] | None = None

    def stations(self) -> Iterator[StationCards]:
        """The cards of each station that has any, in the order of the files."""
        plant = self.model.plant
        for name, station in self.model.stations.items():
            if station.kind not in KINDS or (self.whole is not None and name not in self.whole):
                continue
            cards = tuple(_signed(card) for card in self._cards(name, station))
            if cards:
                letters = capital_mm(float(station.distance.value))
                language = next((one.language for one in self.sheets), plant.language)
                yield StationCards(name, station.title, cards, plant.plant, plant.paper, language, letters)

    def _cards(self, name: str, station: Station) -> Iterator[AnyCard]:
        sheets = [one for one in self.sheets if one.station == name]
        for card in (
            self._hazards(name, station, sheets),
            self._settings(name, station, sheets),
            self._start(name, station),
            self._close_down(name, station),
            self._needle(name, station, sheets),
            self._faults(name, station, sheets),
        ):
            if card is not None:
                yield card

    def _hazards(self, name: str, station: Station, sheets: Sequence[SheetView]) -> HazardCard | None:
        cautions, own = tuple(cautions_of(station)), own_of_operations(station, sheets)
        protection = tuple(protection_of(station))
        if not cautions and not own and not protection:
            return None
        codes = {code for one in own for code in one.codes}
        head = CardHead(
            "hazards",
            say("What can hurt here"),
            name,
            station.title,
            sources=_sources(sheet for sheet in sheets if sheet.code in codes),
        )
        notices = notices_of_card(sheets, bool(cautions))
        return HazardCard(head, cautions, protection, lock_out_of(station, sheets, self.model), own, notices)

    def _settings(self, name: str, station: Station, sheets: Sequence[SheetView]) -> SettingsCard | None:
        groups, limits = setting_groups(sheets), tuple(limit_lines(station, self.model))
        if not groups and not limits:
            return None
        sources = _sources(sheet for sheet in sheets if sheet.settings)
        head = CardHead("settings", say("Settings of the machine"), name, station.title, sources=sources)
        if KINDS[station.kind].paced == "none":
            head = replace(head, title=say("Settings of the station"))
        return SettingsCard(
            head,
            groups,
            limits,
            tuple(stored_programs(station, self.model)),
            tuple(machine_facts(station, self.model)),
        )

    def _start(self, name: str, station: Station) -> ShiftCard | None:
        if not station.start:
            return None
        head = CardHead("start", say("Start of the shift"), name, station.title, say("Before the first piece."))
        refused = say("One fails: do not start. Stop and call.")
        return ShiftCard(head, _checks(station.start), refused)

    def _close_down(self, name: str, station: Station) -> ShiftCard | None:
        if not station.close_down:
            return None
        head = CardHead("close-down", say("End of the shift"), name, station.title, say("After the last piece."))
        return ShiftCard(head, _checks(station.close_down))

    def _needle(self, name: str, station: Station, sheets: Sequence[SheetView]) -> NeedleCard | None:
        if not has_needles(station):
            return None
        head = CardHead("needle", say("A needle broke"), name, station.title, say("One card for each broken needle."))
        return NeedleCard(
            head,
            tuple(needle_steps(station, self.model)),
            needle_uses(station, sheets, self.model),
            needle_parts(),
            needle_record(),
        )

    def _faults(self, name: str, station: Station, sheets: Sequence[SheetView]) -> FaultCard | None:
        rows = fault_rows(sheets)
        if not rows:
            return None
        sources = _sources(sheet for sheet in sheets if sheet.faults)
        lead = say("All faults of the operations here, the critical ones first.")
        head = CardHead("faults", say("Something is wrong"), name, station.title, lead, sources)
        off = any(case.power for row in rows for case in row.cases)
        return FaultCard(head, rows, (f"{say(POWER_OFF)} {say(self.model.plant.lock_out)}",) if off else ())


def _checks(typed: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    return tuple((named(name), text) for name, text in typed.items())


def _sources(sheets: Iterator[SheetView]) -> tuple[CardSource, ...]:
    return tuple({one.code: card_source(one) for one in sheets}.values())


def _signed(card: AnyCard) -> AnyCard:
    """The card with the code of what it says, and the day of its latest sheet."""
    tag = tag_of(method_hash(controlled_facts(card)))
    date = max((one.date for one in card.head.sources), default="")
    return replace(card, head=replace(card.head, tag=tag, date=date))
