"""What can hurt at a station and what answers it: the usual cautions of the trade.

The words are common practice, no source; signs are ISO 7010 numbers, signal words ANSI Z535. They never replace
the machine's manual, local codes or licensed practice, and every sheet says so.
"""

from __future__ import annotations

from dataclasses import dataclass

from builder.model.speech import phrase


@dataclass(frozen=True, slots=True)
class Hazard:
    """A hazard. `answers` are groups of protections; the station must have one of every group."""

    name: str
    sign: str
    signal: str
    text: str
    answers: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class ProtectionKind:
    """A protection: `text` says what the operator does about it."""

    name: str
    sign: str
    text: str


HAZARDS: dict[str, Hazard] = {
    h.name: h
    for h in (
        Hazard(
            "moving needle",
            "W001",
            "WARNING",
            "Moving needle. Foot off the treadle before fingers go near it.",
            (("finger guard",), ("eye protection", "eye shield")),
        ),
        Hazard(
            "sharp blade",
            "W022",
            "WARNING",
            "Sharp blade. Keep fingers out of its way, also when it stands still.",
            (("blade guard",),),
        ),
        Hazard(
            "hot blade",
            "W017",
            "WARNING",
            "Hot blade. It burns at a touch, also minutes after it is switched off.",
            (("heat-resistant gloves", "blade guard"),),
        ),
        Hazard(
            "hot surface",
            "W017",
            "WARNING",
            "Hot surface. Do not touch it, also after it is switched off.",
            (("heat-resistant gloves", "heat shield"),),
        ),
        Hazard(
            "fumes",
            "W016",
            "WARNING",
            "Fumes harm the lungs. Extraction on before the first cut, off after the last.",
            (("extraction",),),
        ),
        Hazard(
            "fire",
            "W021",
            "WARNING",
            "Goods can catch fire. Never leave the machine while it cuts.",
            (("fire extinguisher",),),
        ),
        Hazard(
            "laser beam",
            "W004",
            "DANGER",
            "Laser beam. It blinds and burns. Lid closed; never defeat the interlock.",
            (("interlocked enclosure",),),
        ),
        Hazard(
            "crushing of hands",
            "W024",
            "WARNING",
            "The press crushes hands. Fingers clear before it closes.",
            (("two-hand control", "press guard"),),
        ),
        Hazard(
            "moving gantry",
            "W019",
            "WARNING",
            "The cutting head moves by itself. Stay behind the line until it stands still.",
            (("light curtain", "emergency stop"),),
        ),
        Hazard(
            "automatic start",
            "W018",
            "WARNING",
            "The machine runs its cycle by itself. Hands away before you start it.",
            (("finger guard", "press guard", "two-hand control"),),
        ),
        Hazard(
            "heavy load",
            "W001",
            "CAUTION",
            "Heavy roll. Two people or the hoist; never lift it alone.",
            (("hoist", "roll trolley", "two people"),),
        ),
    )
}

PROTECTIONS: dict[str, ProtectionKind] = {
    p.name: p
    for p in (
        ProtectionKind("finger guard", "M027", "Finger guard in place."),
        ProtectionKind("eye protection", "M004", "Wear eye protection."),
        ProtectionKind("eye shield", "M027", "Eye shield down."),
        ProtectionKind("ear protection", "M003", "Wear ear protection."),
        ProtectionKind("blade guard", "M027", "Blade guard closed."),
        ProtectionKind("heat-resistant gloves", "M009", "Wear heat-resistant gloves."),
        ProtectionKind("cut-resistant gloves", "M009", "Wear cut-resistant gloves to change the blade."),
        ProtectionKind("heat shield", "M027", "Heat shield in place."),
        ProtectionKind("extraction", "M001", "Extraction running."),
        ProtectionKind("fire extinguisher", "F001", "Fire extinguisher within reach."),
        ProtectionKind("interlocked enclosure", "M028", "Lid closed, interlock working."),
        ProtectionKind("two-hand control", "M001", "Start with both hands on the buttons."),
        ProtectionKind("press guard", "M027", "Press guard closed."),
        ProtectionKind("light curtain", "M027", "Light curtain on."),
        ProtectionKind("emergency stop", "E020", "Know the emergency stop."),
        ProtectionKind("hoist", "M001", "Use the hoist."),
        ProtectionKind("roll trolley", "M001", "Use the roll trolley."),
        ProtectionKind("two people", "M001", "Lift with two people."),
        ProtectionKind("safety footwear", "M008", "Wear safety footwear."),
        ProtectionKind("mask", "M016", "Wear a mask."),
    )
}

DEFER = phrase("The machine’s manual, local codes and licensed practice come first.")
"""Stands on every sheet and screen of a station with a hazard."""
