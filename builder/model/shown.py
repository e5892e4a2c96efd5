"""Rounding for show, the only one: what people read on sheets, pages and in reports.

Two families of units stand side by side, `mm` (metric) and `in` (US). The one typed is shown as typed; the
other is converted and rounded. A tolerance is rounded inwards: its shown limits never lie outside the true
ones, so work that passes the shown limits passes the true ones. Files for machines (JSON) are never rounded
and don't come here.

The arithmetic of it is in rounding.py; nothing else in the program rounds.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from builder.model.plain_text import tidy
from builder.model.quantity import Quantity, Range
from builder.model.results import MaterialUse
from builder.model.rounding import (
    MINUS,
    SIXTEENTH,
    decimal,
    decimal_in_step,
    down,
    exact,
    in_step,
    mixed,
    nearest,
    up,
)
from builder.model.shown_units import METRIC, PRETTY, US, First, Scale, other_scale, with_unit
from builder.model.speech import tongue
from builder.model.tolerance import Tolerance
from builder.model.units import UNITS, UNITS_OF, Unit

DOTS = "\N{HORIZONTAL ELLIPSIS}"

# A shown band may be this much narrower than the true one before a finer step is taken.
_ENOUGH = Fraction(3, 4)
# A length in inches is shown as a sixteenth if that is nearer than this [mm]: nobody reads 1.496 off a rule.
_NEAR_SIXTEENTH = Fraction(1, 5)

# ---- plain numbers


def show_number(value: float | Fraction, digits: int = 2, trim: bool = True) -> str:
    """A number with at most that many decimals (all of them without `trim`). ValueError for nan and inf."""
    return decimal(exact(value), digits, trim)


def show_minutes(value: float | Fraction, digits: int = 2) -> str:
    """Minutes: `0.45 min`, always with all digits, so that columns line up."""
    return f"{show_number(value, digits, trim=False)} min"


def show_seconds(value: float | Fraction, digits: int = 1) -> str:
    """Seconds: `3.5 s`."""
    return f"{show_number(value, digits, trim=False)} s"


def show_percent(share: float | Fraction, digits: int = 1) -> str:
    """A share (1 for the whole) in percent: 0.128 is `12.8 %`."""
    return f"{show_number(exact(share) * 100, digits)} %"


def show_mass(grams: float | Fraction, first: First = "mm", both: bool = True) -> str:
    """A mass in both families: `287 g (10.1 oz)`, from a kilogram up `1.25 kg (2.76 lb)`."""
    weight = exact(grams)
    metric, inch = ("kg", "lb") if abs(weight) >= 1000 else ("g", "oz")
    return _pair(_weight(weight, metric), _weight(weight, inch), first, both)


def _weight(grams: Fraction, unit: str) -> str:
    """Grams to three digits, ounces to a tenth; more below one, and hundredths for the large units."""
    number = UNITS[unit].from_base(grams)
    size = abs(number)
    digits = {"g": 0 if size >= 100 else 1 if size >= 10 else 2, "oz": 1 if size >= 1 else 2}.get(unit, 2)
    return f"{decimal(number, digits, True)} {unit}"


def show_interval(low: float | Fraction, high: float | Fraction, digits: int = 1, unit: str = "") -> str:
    """An estimate's interval, rounded outwards so that it never looks narrower than it is: `14.2…16.2 mm`."""
    step = Fraction(1, 10**digits)
    ends = decimal(down(exact(low), step), digits, False), decimal(up(exact(high), step), digits, False)
    return f"{ends[0]}{DOTS}{ends[1]} {PRETTY.get(unit, unit)}".rstrip()


def show_use(use: MaterialUse) -> str:
    """How much of a material: area, length, pieces, length of a thread, or of seam where that is unknown."""
    if use.area_mm2:
        net = show_number(use.area_mm2 / 1e6, 3, trim=False)
        waste = show_number(use.waste_mm2 / 1e6, 3, trim=False)
        return f"{net} m²" if not use.waste_mm2 else f"{net} m², and {waste} m² waste from the nest"
    if use.length_mm:
        return f"{show_number(use.length_mm / 1000, 2, trim=False)} m"
    if use.pieces:
        return f"{show_number(use.pieces, 2)} ×"
    if use.thread_mm:
        return f"{_metres(use.thread_mm / 1000, use.thread_most_mm / 1000)} of thread"
    return f"{show_number(use.seam_mm / 1000, 2, trim=False)} m of seam"


def _metres(least: float, most: float) -> str:
    """`12.4 m`, or `13.0…14.9 m` where it is an interval that shows; below 1 m to the centimetre."""
    digits = 1 if least >= 1 else 2
    one = show_number(least, digits, trim=False)
    return (
        f"{one} m"
        if one == show_number(max(most, least), digits, trim=False)
        else show_interval(least, most, digits, "m")
    )


# ---- quantities


def show_quantity(quantity: Quantity, first: First = "mm", both: bool = True) -> str:
    """A quantity, in both families where there are two: 2 in is `50.8 mm (2 in)`.

    first : the family shown first, by its length unit
    both  : the other one in brackets; without, only the first
    """
    own = as_typed(quantity)
    scale = other_scale(quantity.dimension, quantity.unit)
    if scale is None or (scale.unit.reciprocal and quantity.value == 0):
        return own
    return _sides(own, _rounded(quantity.value, scale), quantity.unit, quantity.dimension, first, both)


def show_range(limits: Range, first: First = "mm", both: bool = True) -> str:
    """A range with its ends rounded inwards in the unit not typed: `25…27 mm (0.99…1.06 in)`."""
    unit = limits.low.unit
    own = _pretty_text(limits.text)
    scale = other_scale(limits.dimension, unit)
    if scale is None or (scale.unit.reciprocal and limits.low.value == 0):
        return own
    shown = _limits_text(limits.low.value, limits.high.value, scale)
    return _sides(own, shown, unit, limits.dimension, first, both)


def as_typed(quantity: Quantity) -> str:
    """The quantity in its own unit: the number as typed, or rounded if it was calculated."""
    plain = tidy(quantity.text)[0]
    unit = UNITS_OF[quantity.dimension][quantity.unit]
    if plain.startswith("=") or not any(letter.isdigit() for letter in plain):
        if unit.reciprocal and quantity.value == 0:
            return "0"
        return _calculated(quantity, unit)
    if unit.before:
        return _pretty_text(quantity.text)
    number = re.match(r"[-+]? *[0-9./ ]*[0-9]", plain)
    return with_unit(_signs(number[0] if number else plain), quantity.unit)


def _calculated(quantity: Quantity, unit: Unit) -> str:
    number = unit.from_base(quantity.value)
    if unit.before:
        return f"{unit.name} {decimal(number, 1, True)}"
    steps = {"mm": METRIC, "in": US}.get(unit.system, {})
    usual, step = steps.get(quantity.dimension, ("", Fraction(1, 100)))
    if usual == quantity.unit:
        return _rounded(quantity.value, Scale(unit, step))
    return with_unit(decimal(number, 3 if abs(number) < 100 else 1, True), quantity.unit)


def _rounded(base: Fraction, scale: Scale) -> str:
    number = scale.unit.from_base(base)
    if scale.unit.name == "in":
        sixteenth = nearest(number, SIXTEENTH)
        if _good_sixteenth(sixteenth, base) or (number * 64).denominator == 1:
            return with_unit(mixed(sixteenth if (number * 64).denominator != 1 else number), "in")
    # Below ten steps a value keeps two digits: 0.127 mm is not 0.1 mm.
    step = next(step for step in scale.finer() if number == 0 or abs(number) >= 10 * step)
    return with_unit(decimal_in_step(nearest(number, step), step), scale.unit.name)


def _good_sixteenth(sixteenth: Fraction, base: Fraction) -> bool:
    return sixteenth != 0 and abs(UNITS["in"].to_base(sixteenth) - base) <= _NEAR_SIXTEENTH


# ---- tolerances


def show_tolerance(tolerance: Tolerance, first: First = "mm", both: bool = True) -> str:
    """A tolerance in both families: `3.2 mm +1.5 −0 (1/8 in +1/16 −0)`, `32 mm ± 1 (1.26 in ± 0.03)`.

    The limits shown in the unit not typed lie inside the true ones.
    """
    own = _pretty_text(tolerance.text)
    scale = other_scale(tolerance.dimension, tolerance.unit)
    # A band alone has no width in a reciprocal unit: 0.2 mm more or less is how many st/in?
    none = (
        scale is not None
        and scale.unit.reciprocal
        and (tolerance.form == "band" or 0 in (tolerance.low, tolerance.high))
    )
    if scale is None or none:
        return own
    return _sides(own, _converted(tolerance, scale), tolerance.unit, tolerance.dimension, first, both)


def _converted(tolerance: Tolerance, scale: Scale) -> str:
    low, high = tolerance.low, tolerance.high
    if low is None or high is None:
        return _one_limit(low, high, scale)
    if tolerance.form == "band":
        minus, plus, step = _band_inside(-low / scale.unit.factor, high / scale.unit.factor, scale)
        return with_unit(_deviations(minus, plus, step), scale.unit.name)
    if tolerance.nominal is None:
        return _limits_text(low, high, scale)
    return _around_text(tolerance.nominal.value, low, high, scale)


def _one_limit(low: Fraction | None, high: Fraction | None, scale: Scale) -> str:
    number = scale.unit.from_base(low if low is not None else high or Fraction(0))
    upper = (low is None) != scale.unit.reciprocal
    step = next(step for step in scale.finer() if number == 0 or abs(number) >= 10 * step)
    shown = down(number, step) if upper else up(number, step)
    return f"{'max' if upper else 'min'} {with_unit(decimal_in_step(shown, step), scale.unit.name)}"


def _ends(low: Fraction, high: Fraction, unit: Unit) -> tuple[Fraction, Fraction]:
    """Two limits in the unit, the lower number first (a reciprocal unit swaps them)."""
    first, last = sorted((unit.from_base(low), unit.from_base(high)))
    return first, last


def _steps(scale: Scale, nominal: Fraction | None) -> Iterator[Fraction]:
    """Sixteenths first where the nominal is near one, then decimals."""
    near_sixteenth = (
        nominal is not None
        and scale.unit.name == "in"
        and _good_sixteenth(nearest(scale.unit.from_base(nominal), SIXTEENTH), nominal)
    )
    if near_sixteenth:
        yield SIXTEENTH
    yield from scale.finer()


def _inside(low: Fraction, high: Fraction, steps: Iterator[Fraction]) -> tuple[Fraction, Fraction, Fraction]:
    """The first step at which limits rounded inwards keep enough of the band, and those limits."""
    for step in steps:
        first, last = up(low, step), down(high, step)
        if last - first >= (high - low) * _ENOUGH:
            return first, last, step
    raise AssertionError("steps get finer without end")


def _limits_text(low: Fraction, high: Fraction, scale: Scale) -> str:
    ends = _ends(low, high, scale.unit)
    first, last, step = _inside(*ends, scale.finer())
    return with_unit(f"{in_step(first, step)}{DOTS}{in_step(last, step)}", scale.unit.name)


def _around_text(nominal: Fraction, low: Fraction, high: Fraction, scale: Scale) -> str:
    ends = _ends(low, high, scale.unit)
    middle = scale.unit.from_base(nominal)
    even = middle - ends[0] == ends[1] - middle
    steps = _steps(scale, nominal)
    while True:
        first, last, step = _inside(*ends, steps)
        shown = min(max(nearest(middle, step), first), last)
        minus, plus = shown - first, last - shown
        if even and minus != plus:
            # A tolerance typed with one ± is shown with one, if enough of it is left.
            minus = plus = min(minus, plus)
            if 2 * plus < (ends[1] - ends[0]) * _ENOUGH:
                continue
        return f"{with_unit(in_step(shown, step), scale.unit.name)} {_deviations(minus, plus, step)}"


def _band_inside(minus: Fraction, plus: Fraction, scale: Scale) -> tuple[Fraction, Fraction, Fraction]:
    for step in scale.finer():
        sides = down(minus, step), down(plus, step)
        if sum(sides) >= (minus + plus) * _ENOUGH:
            return *sides, step
    raise AssertionError("steps get finer without end")


def _deviations(minus: Fraction, plus: Fraction, step: Fraction) -> str:
    if minus == plus:
        return f"± {in_step(plus, step)}"
    return f"+{in_step(plus, step)} {MINUS}{in_step(minus, step)}"


# ---- writing numbers


def _sides(own: str, other: str, unit: str, dimension: str, first: First, both: bool) -> str:
    metric = UNITS_OF[dimension][unit].system == "mm"
    return _pair(own if metric else other, other if metric else own, first, both)


def _pair(metric: str, inch: str, first: First, both: bool) -> str:
    ordered = (metric, inch) if first == "mm" else (inch, metric)
    return f"{ordered[0]} ({ordered[1]})" if both else ordered[0]


def _signs(plain: str) -> str:
    signed = plain.strip().replace("-", MINUS)
    mark = tongue().decimal
    return signed if mark == "." else re.sub(r"(?<=[0-9])\.(?=[0-9])", mark, signed)


def _pretty_text(text: str) -> str:
    """A typed tolerance or range with proper signs and a blank before each unit."""
    plain = tidy(text)[0].replace("+/-", "±").replace("+-", "±").replace('"', " in")
    plain = re.sub(r" *± *", " ± ", plain)
    plain = re.sub(r" *\.\. *", DOTS, plain)
    plain = re.sub(r"([+-]) +(?=[0-9.])", r"\1", plain)
    plain = re.sub(r"(?<=[0-9])(?=[A-Za-z°%])(?<!/)", " ", plain)
    for name, pretty in PRETTY.items():
        if name != "deg":
            plain = re.sub(rf"(?<![\w/]){re.escape(name)}(?!\w)", pretty, plain)
    plain = re.sub(r" *(?:deg\b|°(?![CF]))", "°", plain)
    return " ".join(_signs(plain).split())
