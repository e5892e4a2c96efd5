"""Field types of the typed model: small texts validated into values, each with its JSON Schema for editors.

A type such as `Length` stands in an object's fields; a text that can't be read gives one pydantic error of
type `text_fault` with message, offset and remedy in its context. The grammars themselves are in their own
files.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from builder.errors import TextFault
from builder.model.check_plan import CheckPlan, parse_check_plan
from builder.model.days import DAYS_PATTERN, parse_days
from builder.model.expression import Expression, parse_expression
from builder.model.frequency import Frequency, parse_frequency
from builder.model.needle import NeedleSizes, parse_needle_sizes
from builder.model.quantity import Quantity, Range, parse_count, parse_quantity, parse_range
from builder.model.time_text import Element, Estimate, parse_time
from builder.model.tolerance import Tolerance, parse_any_tolerance, parse_tolerance, parse_toleranced
from builder.model.units import DIMENSIONS, UNITS_OF

# What JSON Schema patterns are made of. They are wider than the grammars: an editor underlines the plainly
# wrong, the grammar says why.
_NUMBER = r"[0-9./½¼¾⅛⅜⅝⅞⅓⅔ ]+"
_SIGN = "[-+−]?"


@dataclass(frozen=True, slots=True)
class TextType:
    """Makes a field read its text with one of the grammars.

    read     : text to value, raising TextFault
    accepts  : classes of values that are passed on as they are
    words    : what is asked, for the message to a list or a table: "a length"
    types    : JSON types an editor lets through; YAML reads `301` as a number
    pattern  : for the texts among them
    """

    read: Callable[[str], Any]
    accepts: tuple[type, ...]
    words: str
    types: tuple[str, ...] = ("string",)
    pattern: str = ""
    examples: tuple[str | int | float | bool, ...] = ()

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(
            self.validate,
            serialization=core_schema.plain_serializer_function_ser_schema(_as_text),
        )

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        described: JsonSchemaValue = {"type": self.types[0] if len(self.types) == 1 else list(self.types)}
        if self.pattern:
            described["pattern"] = self.pattern
        if self.examples:
            described["examples"] = list(self.examples)
        return described

    def validate(self, value: Any) -> Any:
        """The value read from a text or number. Raises PydanticCustomError of type `text_fault`."""
        if isinstance(value, self.accepts) and not isinstance(value, bool | str):
            return value
        if isinstance(value, bool) and bool in self.accepts:
            return value
        try:
            return self.read(_text_of(value, self.words))
        except TextFault as fault:
            context = {"message": fault.message, "offset": fault.offset, "remedy": fault.remedy}
            raise PydanticCustomError("text_fault", "{message}", context) from None


def _text_of(value: Any, words: str) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, int | float) and not isinstance(value, bool):
        return repr(value)
    kind = {list: "a list", tuple: "a list", dict: "a table", bool: "yes or no"}.get(type(value), "nothing")
    raise TextFault(f"this asks for {words}; it is {kind}", 0, "Write one value on the line")


def _as_text(value: Any) -> Any:
    """For dumps: the text as typed, plain numbers as they are."""
    return str(value) if isinstance(value, Fraction) else getattr(value, "text", value)


def _quantity_pattern(dimension: str) -> str:
    names = sorted((name for name in UNITS_OF[dimension] if name), key=len, reverse=True)
    units = "|".join(re.escape(name).replace("/", r" ?/ ?").replace("2", "[2²]") for name in names)
    before = [name for name, unit in UNITS_OF[dimension].items() if unit.before]
    needed = "" if "" in UNITS_OF[dimension] else "+"
    pattern = rf"{_SIGN}{_NUMBER}(?:{units}|″){'?' if not needed else ''}"
    return rf"^\s*(?:{pattern}{''.join(f'|{name} ?{_NUMBER}' for name in before)})\s*$"


def _inner(dimension: str) -> str:
    return _quantity_pattern(dimension).removeprefix("^").removesuffix("$")


def quantity_of(dimension: str, negative: bool = False) -> TextType:
    """Annotation of a `Quantity` of that dimension: `Annotated[Quantity, quantity_of("length")]`."""
    plain = "" in UNITS_OF[dimension]
    return TextType(
        lambda text: parse_quantity(text, dimension, negative),
        (Quantity,),
        DIMENSIONS[dimension].words,
        ("string", "number") if plain else ("string",),
        _quantity_pattern(dimension),
        DIMENSIONS[dimension].examples,
    )


def quantity_or_expression(dimension: str, negative: bool = False) -> TextType:
    """Annotation of a `Quantity | Expression`: a text that begins with `=` is an expression."""

    def read(text: str) -> Quantity | Expression:
        if text.lstrip().startswith("="):
            return parse_expression(text)
        return parse_quantity(text, dimension, negative)

    examples = (*DIMENSIONS[dimension].examples, "=row.pitch * 4 + 2 * margin")
    pattern = rf"^(?:{_inner(dimension)}|\s*=.+)$"
    return TextType(read, (Quantity, Expression), DIMENSIONS[dimension].words, ("string",), pattern, examples)


def tolerance_of(dimension: str) -> TextType:
    """Annotation of a `Tolerance` of that dimension."""
    first = DIMENSIONS[dimension].examples[0]
    examples = (f"{first} ± 1", f"max {first}")
    return TextType(lambda text: parse_tolerance(text, dimension), (Tolerance,), "a tolerance", examples=examples)


def toleranced_of(dimension: str) -> TextType:
    """Annotation of a `Quantity | Tolerance`: a quantity that may carry a tolerance."""
    first = DIMENSIONS[dimension].examples[0]
    accepts = (Quantity, Tolerance)
    words = DIMENSIONS[dimension].words
    return TextType(lambda text: parse_toleranced(text, dimension), accepts, words, examples=(first, f"{first} ± 1"))


def range_of(dimension: str, negative: bool = False) -> TextType:
    """Annotation of a `Range` of that dimension."""
    first = DIMENSIONS[dimension].examples[0]
    return TextType(
        lambda text: parse_range(text, dimension, negative),
        (Range,),
        "a range",
        pattern=r"\.\.|…",
        examples=(f"1..{first}",),
    )


def _share(text: str) -> Fraction:
    return parse_quantity(text, "share").value


def _number(text: str) -> Fraction:
    return parse_quantity(text, "number").value


def _positive_count(text: str) -> int:
    number = parse_count(text)
    if number == 0:
        raise TextFault("this asks for 1 or more", 0, "Write 1 or more, or leave the line out")
    return number


_FLAGS = {"yes": True, "true": True, "on": True, "no": False, "false": False, "off": False}


def _flag(text: str) -> bool:
    try:
        return _FLAGS[text.strip().casefold()]
    except KeyError:
        raise TextFault(f"{text.strip()} is neither yes nor no", 0, "Write yes or no") from None


_IDENT = r"[a-z0-9]+(?:-[a-z0-9]+)*"


def _ident(text: str) -> str:
    name = text.strip()
    if re.fullmatch(_IDENT, name):
        return name
    slug = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
    at = next((i for i, letter in enumerate(text) if not re.match(r"[a-z0-9-]", letter)), 0)
    remedy = f"Write {slug}" if slug else "Write a name such as sew-handle-end"
    raise TextFault("names are lower-case letters, digits and single hyphens", at, remedy)


Length = Annotated[Quantity, quantity_of("length")]
SignedLength = Annotated[Quantity, quantity_of("length", negative=True)]
Mass = Annotated[Quantity, quantity_of("mass")]
Time = Annotated[Quantity, quantity_of("time")]
Force = Annotated[Quantity, quantity_of("force")]
ForcePerWidth = Annotated[Quantity, quantity_of("force per width")]
ArealMass = Annotated[Quantity, quantity_of("areal mass")]
LinearMass = Annotated[Quantity, quantity_of("linear mass")]
LinearDensity = Annotated[Quantity, quantity_of("linear density")]
StitchLength = Annotated[Quantity, quantity_of("stitch length")]
StitchRate = Annotated[Quantity, quantity_of("stitch rate")]
Speed = Annotated[Quantity, quantity_of("speed")]
Acceleration = Annotated[Quantity, quantity_of("acceleration")]
Temperature = Annotated[Quantity, quantity_of("temperature")]
Power = Annotated[Quantity, quantity_of("power")]
Pressure = Annotated[Quantity, quantity_of("pressure")]
Angle = Annotated[Quantity, quantity_of("angle", negative=True)]
Area = Annotated[Quantity, quantity_of("area")]
Percent = Annotated[Quantity, quantity_of("share")]

LengthOrExpression = Annotated[Quantity | Expression, quantity_or_expression("length")]
SignedLengthOrExpression = Annotated[Quantity | Expression, quantity_or_expression("length", negative=True)]
LengthTolerance = Annotated[Tolerance, tolerance_of("length")]
LengthRange = Annotated[Range, range_of("length")]
AnyTolerance = Annotated[
    Tolerance,
    TextType(parse_any_tolerance, (Tolerance,), "a tolerance", examples=("2 in ± 1/16", "25..27 mm", "max 3 mm")),
]
"""A tolerance whose unit says what it measures."""

NeedleRange = Annotated[
    NeedleSizes,
    TextType(parse_needle_sizes, (NeedleSizes,), "needle sizes", pattern="^ *[Nn][Mm]", examples=("Nm 90..110",)),
]
"""Needle sizes a thread runs in."""

StepTime = Annotated[
    Estimate | Element,
    TextType(parse_time, (Estimate, Element), "a time", examples=("3.5 s", "3..4 s", "2 x pick-up-small")),
]
PerText = Annotated[
    Frequency, TextType(parse_frequency, (Frequency,), "how often", examples=("piece", "20 pieces", "bundle", "bobbin"))
]
EveryText = Annotated[
    CheckPlan,
    TextType(parse_check_plan, (CheckPlan,), "a check plan", examples=("first piece, then 20th", "hourly")),
]
Count = Annotated[
    int,
    TextType(
        _positive_count,
        (),
        "a whole number",
        ("integer", "string"),
        r"^\s*[0-9]+ *(?:pieces?|pcs?)?\s*$",
        (4, "12 pieces"),
    ),
]
"""A whole number from 1 up."""
WholeNumber = Annotated[
    int,
    TextType(parse_count, (), "a whole number", ("integer", "string"), r"^\s*[0-9]+ *(?:pieces?|pcs?)?\s*$", (0, 4)),
]
"""A whole number from 0 up."""
Days = Annotated[
    int,
    TextType(parse_days, (), "a number of days", ("string",), DAYS_PATTERN, ("14 days", "2 weeks")),
]
"""Whole days from 1 up."""
Flag = Annotated[
    bool,
    TextType(_flag, (bool,), "yes or no", ("boolean", "string"), "^(?:yes|no|true|false|on|off)$", ("yes", "no")),
]
Share = Annotated[
    Fraction,
    TextType(_share, (Fraction,), "a share", ("string", "number"), _quantity_pattern("share"), ("5 %", 0.05)),
]
Ratio = Annotated[
    Fraction,
    TextType(_number, (Fraction,), "a plain number", ("number", "string"), _quantity_pattern("number"), (1.31, "1.31")),
]
"""A plain number from 0 up: so much of one thing for 1 of another."""
Ident = Annotated[
    str,
    TextType(_ident, (), "a name", ("string", "integer"), rf"^{_IDENT}$", ("sew-handle-end", "back-panel")),
]
"""The name of an object: lower-case letters, digits, single hyphens."""
