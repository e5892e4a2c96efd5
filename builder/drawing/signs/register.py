"""The register: code, registered title and what each pictogram shows.

Titles: ISO 7010 as listed in the Typst package lbize/iso-7010, lib.typ (read). Descriptions and art are ours;
what is shown follows the register (M021 from a description read, the others from memory), not its outlines.
"""

from __future__ import annotations

TITLES: dict[str, tuple[str, str]] = {
    "W001": ("General warning sign", "An exclamation mark."),
    "W004": ("Laser beam", "A burst of rays with one long beam to the right."),
    "W012": ("Electricity", "A lightning bolt that ends in an arrow head."),
    "W016": ("Toxic material", "A skull over two crossed bones."),
    "W017": ("Hot surface", "Three waves of heat rising from a plate."),
    "W018": ("Automatic start-up", "A gear wheel with an arrow bent round it."),
    "W019": ("Crushing", "A person between two plates that move together."),
    "W021": ("Flammable material", "A flame over a line."),
    "W022": ("Sharp element", "A spike going into the finger of a hand."),
    "W024": ("Crushing of hands", "A hand between a fixed bar and a bar that comes down on it."),
    "W025": ("Counterrotating rollers", "Fingers going into the nip of two rollers that turn against each other."),
    "M001": ("General mandatory action sign", "An exclamation mark."),
    "M002": ("Refer to instruction manual/booklet", "A person behind an open book."),
    "M003": ("Wear ear protection", "A head with ear muffs."),
    "M004": ("Wear eye protection", "A head with goggles."),
    "M008": ("Wear safety footwear", "A pair of boots with toe caps."),
    "M009": ("Wear protective gloves", "A pair of gloves."),
    "M010": ("Wear protective clothing", "An overall with collar, belt and a fastening down the front."),
    "M011": ("Wash your hands", "Two hands under a running tap."),
    "M016": ("Wear a mask", "A head with a mask over nose and mouth."),
    "M017": ("Wear respiratory protection", "A head with a respirator and two filters."),
    "M021": (
        "Disconnect before carrying out maintenance or repair",
        "An open switch and an arrow in the direction of opening.",
    ),
    "M027": ("Check guard", "A gear wheel under a guard, and a tick."),
    "M028": ("Keep locked", "A closed padlock."),
    "P002": ("No smoking", "A burning cigarette, struck through."),
    "P003": ("No open flame; fire, open ignition source and smoking prohibited", "A burning match, struck through."),
    "P010": ("Do not touch", "A hand held up flat, struck through."),
    "P015": ("No reaching in", "A hand reaching down into a box, struck through."),
    "P028": ("Do not wear gloves", "A glove, struck through."),
    "E003": ("First aid", "A cross with equal arms."),
    "E011": ("Eyewash station", "An eye over drops of water and a bowl."),
    "E020": ("Emergency stop button", "A hand that presses a mushroom button."),
    "F001": ("Fire extinguisher", "A fire extinguisher beside a flame."),
    "F016": ("Fire blanket", "A blanket pulled down out of its box, beside a flame."),
}
