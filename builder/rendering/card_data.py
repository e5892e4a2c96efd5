"""The cards of a station as the plain data their template reads, and as a PDF."""

from __future__ import annotations

from typing import TYPE_CHECKING

from builder.model import say, show_date
from builder.rendering.card_words import card_words
from builder.rendering.sheet import SheetPress, day_of
from builder.rendering.sheet_data import Json, Pens, paper_size
from builder.rendering.sheet_text import SheetText, type_sizes

if TYPE_CHECKING:
    from builder.drawing import Drawing
    from builder.view import (
        AnyCard,
        CardHead,
        CardSource,
        CardStep,
        Caution,
        FaultCard,
        FaultCase,
        HazardCard,
        NeedleCard,
        NeedleUse,
        SettingsCard,
        SettingsGroup,
        ShiftCard,
        StationCards,
    )

CARD_ENTRY = "cards.typ"
"""The theme's file that sets the cards of a station."""


def render_cards(view: StationCards, press: SheetPress) -> bytes:
    """All cards of a station as one tagged PDF (PDF/UA-1), each on pages of its own, with its own page numbers.

    Raises SheetFault when the typesetter refuses.
    """
    days = (day_of(card.head.date) for card in view.cards)
    return press.press(cards_data(view, press.pens), max(days))


def cards_data(view: StationCards, pens: Pens) -> Json:
    """Everything the template prints of a station's cards. Raises ValueError for an unknown paper."""
    width, height = paper_size(view.paper)
    language, _, region = view.language.partition("-")
    look = {
        "paper": {"width": width, "height": height},
        "type": {**type_sizes(view.capital_mm), "capital": view.capital_mm},
    }
    return {
        "title": say("Cards of {station}", station=view.title),
        "author": view.plant,
        "keywords": [card.head.tag for card in view.cards],
        "language": {"lang": language or "en", "region": region or None},
        "words": card_words(),
        "cards": [{**look, **_head(card.head, pens), **_body(card, pens)} for card in view.cards],
    }


def _body(card: AnyCard, pens: Pens) -> Json:
    from builder.view import FaultCard, HazardCard, NeedleCard, SettingsCard

    match card:
        case HazardCard():
            return _hazards(card, pens)
        case SettingsCard():
            return _settings(card, pens)
        case NeedleCard():
            return _needle(card, pens)
        case FaultCard():
            return _faults(card, pens)
        case _:
            return _shift(card, pens)


def _head(head: CardHead, pens: Pens) -> Json:
    said = "".join(f" · {text}" for text in (head.station_title, head.title, show_date(head.date)) if text)
    return {
        "id": f"{head.kind}-{head.station}",
        "kind": head.kind,
        "title": pens.text(head.title, bold=True),
        "station_title": pens.text(head.station_title),
        "lead": pens.text(head.lead),
        "sources": [_source(one, pens) for one in head.sources],
        "footer": {
            "lead": pens.text(head.tag, bold=True),
            "said": pens.text(said),
            "number": pens.text(say("page {n} of {m}", n="99", m="99"), bold=True),
        },
    }


def _source(source: CardSource, pens: Pens) -> Json:
    revision = say("revision {revision}", revision=source.revision) if source.revision else ""
    issue = ", ".join(text for text in (revision, show_date(source.date)) if text)
    return {
        "code": pens.text(source.code, bold=True),
        "title": pens.text(source.title),
        "issue": pens.text(issue),
        "tag": pens.text(source.tag),
    }


def _codes(codes: tuple[str, ...], pens: Pens) -> list[SheetText]:
    return [pens.text(code, bold=True) for code in codes]


def _sign(code: str, name: str, pens: Pens) -> Json:
    return {"svg": pens.sign(code, 100.0), "alt": say("safety sign: {name}", name=name)}


def _caution(caution: Caution, pens: Pens, codes: tuple[str, ...] = ()) -> Json:
    return {
        "sign": _sign(caution.sign, caution.hazard, pens),
        "signal": caution.signal,
        "strong": caution.signal == say("DANGER"),
        "text": pens.marked(caution.text),
        "codes": _codes(codes, pens),
    }


def _hazards(card: HazardCard, pens: Pens) -> Json:
    return {
        "cautions": [_caution(one, pens) for one in card.cautions],
        "protection": [
            {"sign": _sign(one.sign, one.name, pens), "text": pens.text(one.text or one.name)}
            for one in card.protection
        ],
        "lock_out": _caution(card.lock_out, pens) if card.lock_out is not None else None,
        "own": [_caution(one.caution, pens, one.codes) for one in card.own],
        "notices": [pens.text(one) for one in card.notices],
    }


def _settings(card: SettingsCard, pens: Pens) -> Json:
    return {
        "groups": [_group(one, pens) for one in card.groups],
        "limits": [
            {
                "name": pens.text(one.name),
                "limits": [pens.text(limit, bold=True) for limit in one.limits],
                "set_at": pens.text(one.set_at),
                "proof": pens.text(one.proof),
            }
            for one in card.limits
        ],
        "programs": _pairs(card.programs, pens),
        "facts": _pairs(card.facts, pens),
    }


def _group(group: SettingsGroup, pens: Pens) -> Json:
    return {
        "operations": [_source(one, pens) for one in group.operations],
        "settings": [
            {
                "name": pens.text(one.name),
                "value": pens.text(one.value, bold=True),
                "other": pens.text(one.other),
            }
            for one in group.settings
        ],
    }


def _pairs(pairs: tuple[tuple[str, str], ...], pens: Pens) -> list[list[SheetText]]:
    return [[pens.text(name, bold=True), pens.text(value)] for name, value in pairs]


def _shift(card: ShiftCard, pens: Pens) -> Json:
    return {
        "days": card.days,
        "checks": [{"name": pens.text(name, bold=True), "how": pens.text(how)} for name, how in card.checks],
        "refused": pens.text(card.refused, bold=True),
    }


def _needle(card: NeedleCard, pens: Pens) -> Json:
    from builder.drawing import needle_parts_figure

    alt = say("A whole needle, large: {parts}.", parts=", ".join(card.parts))
    true_size = any(one.true_size for one in card.needles)
    lay = (
        say("True size. The pieces together are as long as this.")
        if true_size
        else say("Lay a new needle of the same packet beside the pieces: as long, all there.")
    )
    return {
        "steps": [_card_step(one, pens) for one in card.steps],
        "picture": _picture(needle_parts_figure(card.parts, alt), alt),
        "lay": pens.text(lay, bold=True),
        "needles": [_needle_use(one, pens) for one in card.needles],
        "record": [pens.text(one) for one in card.record],
    }


def _card_step(step: CardStep, pens: Pens) -> Json:
    return {
        "do": pens.text(step.do, bold=True),
        "more": pens.text(step.more),
        "sign": _sign(step.sign, step.sign_name, pens) if step.sign else None,
    }


def _needle_use(use: NeedleUse, pens: Pens) -> Json:
    from builder.drawing import needle_outline

    alt = say("Outline of a whole needle {needle}, true size.", needle=use.text)
    used = ", ".join(use.codes)
    return {
        "text": pens.text(use.text, bold=True),
        "measures": pens.text(use.measures),
        "codes": _codes(use.codes, pens),
        "used": pens.text(used),
        "listed": pens.text(f"{use.text}: {used}"),
        "outline": _picture(needle_outline(use, alt), alt) if use.true_size else None,
    }


def _picture(drawing: Drawing, alt: str) -> Json:
    return {"svg": drawing.svg, "width": drawing.width_mm, "height": drawing.height_mm, "alt": alt}


def _faults(card: FaultCard, pens: Pens) -> Json:
    return {
        "rows": [
            {
                "sign": pens.marked(row.sign, bold=True),
                "grade": pens.text(row.grade),
                "cases": [_case(one, pens) for one in row.cases],
            }
            for row in card.rows
        ],
        "notices": [pens.text(one) for one in card.notices],
    }


def _case(case: FaultCase, pens: Pens) -> Json:
    return {
        "causes": [{"cause": pens.marked(one.cause), "codes": _codes(one.codes, pens)} for one in case.causes],
        "power": pens.text(case.power, bold=True),
        "remedy": pens.marked(case.remedy),
        "stop": pens.marked(case.stop, bold=True),
        "grade": pens.text(case.grade),
    }
