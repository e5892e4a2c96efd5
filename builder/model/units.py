"""Units: the table of unit names, what each measures and its exact factor to the base unit.

Base units, used in all arithmetic: mm, g, s, N, g/m2, g/m, tex, mm per stitch, stitches per second, mm/s,
mm/s2, degrees Celsius, W, kPa, N/mm, degrees, mm2; a share is 1 for the whole. All factors are exact
fractions. Money is not here: a currency has no fixed factor to another.

Source of the factors: NIST Special Publication 811 (2008), Appendix B (1 in = 25.4 mm, 1 lb = 0.453 592 37
kg, standard gravity 9.806 65 m/s2, all exact), memory.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class Dimension:
    """What a quantity measures.

    base     : the base unit's name, empty for plain numbers
    words    : for messages, with its article: "a length"
    examples : two good texts, the usual unit first
    signed   : a value below zero is normal (temperatures)
    """

    name: str
    base: str
    words: str
    examples: tuple[str, str]
    signed: bool = False


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit. base = value * factor + offset, or factor / value for a reciprocal unit such as st/in.

    before : the name stands before its number (`tkt 40`, `Ne 20/3`)
    system : "mm" or "in", the family in which it is shown; empty where there is only one
    """

    name: str
    dimension: str
    factor: Fraction
    offset: Fraction = ZERO
    reciprocal: bool = False
    before: bool = False
    system: str = ""

    def to_base(self, value: Fraction) -> Fraction:
        """`value` of this unit in the base unit. Raises ZeroDivisionError for 0 of a reciprocal unit."""
        if self.reciprocal:
            return self.factor / value
        return value * self.factor + self.offset if self.offset else value * self.factor

    def from_base(self, base: Fraction) -> Fraction:
        """A value in the base unit, in this unit. Raises ZeroDivisionError for 0 of a reciprocal unit."""
        return self.factor / base if self.reciprocal else (base - self.offset) / self.factor


DIMENSIONS: Mapping[str, Dimension] = MappingProxyType(
    {
        dimension.name: dimension
        for dimension in (
            Dimension("length", "mm", "a length", ("38 mm", "1 1/2 in")),
            Dimension("mass", "g", "a mass", ("250 g", "8 oz")),
            Dimension("time", "s", "a time", ("3.5 s", "0.06 min")),
            Dimension("force", "N", "a force", ("1.4 N", "30 lbf")),
            Dimension("force per width", "N/mm", "a force per width", ("12 N/mm", "60 lbf/in")),
            Dimension("areal mass", "g/m2", "a mass per area", ("330 g/m2", "10 oz/yd2")),
            Dimension("linear mass", "g/m", "a mass per length", ("40 g/m", "1.3 oz/yd")),
            Dimension("linear density", "tex", "a thread or yarn size", ("70 tex", "250 den")),
            Dimension("stitch length", "mm/st", "a stitch length", ("3.2 mm/st", "8 st/in")),
            Dimension("stitch rate", "st/s", "a stitch rate", ("2400 st/min", "40 st/s")),
            Dimension("speed", "mm/s", "a speed", ("300 mm/s", "12 in/s")),
            Dimension("acceleration", "mm/s2", "an acceleration", ("3000 mm/s2", "3 m/s2")),
            Dimension("temperature", "°C", "a temperature", ("190 °C", "375 °F"), signed=True),
            Dimension("power", "W", "a power", ("400 W", "0.4 kW")),
            Dimension("pressure", "kPa", "a pressure", ("400 kPa", "60 psi")),
            Dimension("angle", "deg", "an angle", ("45 deg", "45°")),
            Dimension("area", "mm2", "an area", ("600 mm2", "1 in2")),
            Dimension("share", "", "a share", ("5 %", "0.05")),
            Dimension("count", "", "a whole number", ("12", "12 pieces")),
            Dimension("number", "", "a plain number", ("4", "1.5")),
        )
    }
)

INCH = Fraction("25.4")
FOOT = 12 * INCH
YARD = 36 * INCH
POUND = Fraction("453.59237")
OUNCE = POUND / 16
GRAVITY = Fraction("9.80665")
POUND_FORCE = POUND / 1000 * GRAVITY
METRE = Fraction(1000)

# Yarn counts: tex = constant / count. Metric count: km per kg. Cotton count: hanks of 840 yd per lb.
# Linen lea: leas of 300 yd per lb.
METRIC_COUNT = Fraction(1000)
COTTON_COUNT = POUND / (840 * YARD / METRE) * 1000
LINEN_COUNT = POUND / (300 * YARD / METRE) * 1000
# A ticket is three times the count, from the nominal three-ply thread.
METRIC_TICKET = 3 * METRIC_COUNT
COTTON_TICKET = 3 * COTTON_COUNT


def _family(dimension: str, system: str, factors: Mapping[str, Fraction | int | str]) -> list[Unit]:
    return [Unit(name, dimension, Fraction(factor), system=system) for name, factor in factors.items()]


def _table() -> list[Unit]:
    """All units. The same dimension's families stand together, metric first."""
    return [
        *_family("length", "mm", {"mm": 1, "cm": 10, "m": METRE}),
        *_family("length", "in", {"in": INCH, "ft": FOOT, "yd": YARD, "mil": INCH / 1000}),
        *_family("mass", "mm", {"g": 1, "kg": 1000, "mg": Fraction(1, 1000)}),
        *_family("mass", "in", {"oz": OUNCE, "lb": POUND}),
        *_family("time", "", {"s": 1, "min": 60, "h": 3600}),
        *_family("force", "mm", {"N": 1, "kN": 1000, "cN": Fraction(1, 100)}),
        *_family("force", "mm", {"kgf": GRAVITY, "gf": GRAVITY / 1000}),
        *_family("force", "in", {"lbf": POUND_FORCE}),
        *_family("force per width", "mm", {"N/mm": 1, "N/cm": "0.1", "N/m": "0.001", "N/5cm": "0.02"}),
        *_family("force per width", "in", {"lbf/in": POUND_FORCE / INCH}),
        *_family("areal mass", "mm", {"g/m2": 1, "kg/m2": 1000}),
        *_family("areal mass", "in", {"oz/yd2": OUNCE * (METRE / YARD) ** 2, "oz/ft2": OUNCE * (METRE / FOOT) ** 2}),
        *_family("linear mass", "mm", {"g/m": 1}),
        *_family("linear mass", "in", {"oz/yd": OUNCE * METRE / YARD}),
        *_family("linear density", "mm", {"tex": 1, "dtex": Fraction(1, 10)}),
        *_family("linear density", "in", {"den": Fraction(1, 9)}),
        *(
            Unit(name, "linear density", constant, reciprocal=True, before=True, system="in")
            for name, constant in (
                ("tkt", METRIC_TICKET),
                ("cotton tkt", COTTON_TICKET),
                ("Nm", METRIC_COUNT),
                ("Ne", COTTON_COUNT),
                ("NeL", LINEN_COUNT),
            )
        ),
        *_family("stitch length", "mm", {"mm/st": 1}),
        Unit("st/cm", "stitch length", Fraction(10), reciprocal=True, system="mm"),
        Unit("st/in", "stitch length", INCH, reciprocal=True, system="in"),
        *_family("stitch rate", "", {"st/s": 1, "st/min": Fraction(1, 60)}),
        *_family("speed", "mm", {"mm/s": 1, "cm/s": 10, "m/s": METRE, "m/min": METRE / 60}),
        *_family("speed", "in", {"in/s": INCH, "in/min": INCH / 60, "ft/min": FOOT / 60}),
        *_family("acceleration", "mm", {"mm/s2": 1, "m/s2": METRE}),
        *_family("acceleration", "in", {"in/s2": INCH}),
        *_family("temperature", "mm", {"°C": 1}),
        Unit("°F", "temperature", Fraction(5, 9), offset=Fraction(-160, 9), system="in"),
        *_family("power", "", {"W": 1, "kW": 1000}),
        *_family("pressure", "mm", {"kPa": 1, "MPa": 1000, "bar": 100}),
        *_family("pressure", "in", {"psi": POUND_FORCE / INCH**2 * 1000}),
        *_family("angle", "", {"deg": 1}),
        *_family("area", "mm", {"mm2": 1, "cm2": 100, "m2": METRE**2}),
        *_family("area", "in", {"in2": INCH**2, "ft2": FOOT**2, "yd2": YARD**2}),
        *_family("share", "", {"%": Fraction(1, 100)}),
    ]


UNITS: Mapping[str, Unit] = MappingProxyType({unit.name: unit for unit in _table()})
"""Unit by its name. A name belongs to one dimension."""

# Written in other ways, read without a word. Superscripts are made plain before a look-up.
ALIASES: Mapping[str, str] = MappingProxyType({'"': "in", "°": "deg"})

# Refused, because a plant writes one thing one way; but we know what is meant.
MEANT: Mapping[str, str] = MappingProxyType(
    {word: unit for unit, words in {
        "mm": "millimetre millimetres millimeter millimeters",
        "cm": "centimetre centimetres centimeter centimeters",
        "m": "metre metres meter meters mtr",
        "in": "inch inches ins",
        "ft": "foot feet",
        "yd": "yard yards yds",
        "mil": "mils thou",
        "g": "gram grams gr gm",
        "kg": "kilo kilos kgs kilogram kilograms",
        "oz": "ounce ounces",
        "lb": "lbs pound pounds",
        "s": "sec secs second seconds",
        "min": "mins minute minutes",
        "h": "hr hrs hour hours",
        "N": "newton newtons",
        "g/m2": "gsm g/sqm g/m^2",
        "oz/yd2": "osy oz/sqyd oz/yd^2",
        "den": "denier d D",
        "st/in": "spi SPI st/inch stitches/in stitches/inch",
        "st/min": "spm SPM rpm stitches/min st/m",
        "%": "percent pct",
        "deg": "degree degrees",
        "°C": "C degC",
        "°F": "F degF",
        "mm2": "sqmm mm^2",
        "in2": "sqin in^2",
    }.items() for word in words.split()}
)  # fmt: skip


def _by_dimension() -> dict[str, Mapping[str, Unit]]:
    tables: dict[str, dict[str, Unit]] = {name: {} for name in DIMENSIONS}
    for unit in UNITS.values():
        tables[unit.dimension][unit.name] = unit
    # A dial reads mm, so a stitch length in plain mm is understood.
    tables["stitch length"]["mm"] = Unit("mm", "stitch length", Fraction(1), system="mm")
    for name in ("share", "count", "number"):
        tables[name][""] = Unit("", name, Fraction(1))
    for name in ("piece", "pieces", "pc", "pcs", "st"):
        tables["count"][name] = Unit(name, "count", Fraction(1))
    for alias, name in ALIASES.items():
        unit = UNITS[name]
        tables[unit.dimension][alias] = unit
    return {name: MappingProxyType(table) for name, table in tables.items()}


UNITS_OF: Mapping[str, Mapping[str, Unit]] = MappingProxyType(_by_dimension())
"""For each dimension, the unit by each spelling that it accepts."""


def unit_of(name: str, dimension: str) -> Unit:
    """The unit of that spelling in that dimension. Raises KeyError if there is none."""
    return UNITS_OF[dimension][name]


def convert(value: Fraction | int, unit: str, into: str) -> Fraction:
    """`value` of one unit in another of the same dimension, exact. Raises KeyError or ValueError."""
    source, target = UNITS[unit], UNITS[into]
    if source.dimension != target.dimension:
        raise ValueError(f"{unit} is {DIMENSIONS[source.dimension].words}, {into} is not")
    return target.from_base(source.to_base(Fraction(value)))


def tex_of_metric_ticket(ticket: Fraction | int) -> Fraction:
    """Tex of a thread of that metric ticket, > 0: tex = 3000 / ticket. The same formula turns tex to ticket.

    Marketed sizes are rounded to a series (ticket 40 is sold as tex 70), so the label may differ.
    Source: textileschool.com, "Yarn conversions", read.
    """
    return METRIC_TICKET / ticket


def tex_of_cotton_ticket(ticket: Fraction | int) -> Fraction:
    """Tex of a thread of that cotton ticket, > 0: tex = 3 * 590.54 / ticket; also turns tex into the ticket.

    Source: thread trade convention (3 x cotton count), memory.
    """
    return COTTON_TICKET / ticket
