"""Field types."""

from fractions import Fraction
from typing import Any

import jsonschema  # type: ignore[import-untyped]
import pytest
from pydantic import BaseModel, ConfigDict, TypeAdapter, ValidationError

from builder.model import typed
from builder.model.check_plan import CheckPlan
from builder.model.expression import Expression
from builder.model.frequency import Frequency
from builder.model.quantity import Quantity
from builder.model.time_text import Element, Estimate
from builder.model.tolerance import Tolerance

GOOD: list[tuple[str, Any, Any]] = [
    ("Length", "2 in", Fraction("50.8")),
    ("SignedLength", "-2 in", Fraction("-50.8")),
    ("Length", "1½ in", Fraction("38.1")),
    ("Mass", "8 oz", Fraction("226.796185")),
    ("Time", "0.06 min", Fraction("3.6")),
    ("Force", "1.4 N", Fraction("1.4")),
    ("ForcePerWidth", "12 N/mm", 12),
    ("ArealMass", "330 g/m²", 330),
    ("LinearMass", "40 g/m", 40),
    ("LinearDensity", "tkt 40", 75),
    ("LinearDensity", "70 tex", 70),
    ("StitchLength", "8 st/in", Fraction("3.175")),
    ("StitchRate", "2400 st/min", 40),
    ("Speed", "300 mm/s", 300),
    ("Acceleration", "3 m/s2", 3000),
    ("Temperature", "-5 °C", -5),
    ("Power", "0.4 kW", 400),
    ("Pressure", "4 bar", 400),
    ("Angle", "-45°", -45),
    ("Area", "6 cm2", 600),
    ("Percent", "5 %", Fraction(1, 20)),
    ("Share", "5 %", Fraction(1, 20)),
    ("Share", 0.05, Fraction(1, 20)),
    ("Ratio", 1.31, Fraction("1.31")),
    ("Ratio", "0", 0),
    ("Count", "4", 4),
    ("Count", 4, 4),
    ("Count", "12 pieces", 12),
    ("WholeNumber", 0, 0),
    ("Flag", "yes", True),
    ("Flag", "off", False),
    ("Flag", True, True),
    ("Ident", "sew-handle-end", "sew-handle-end"),
    ("Ident", 301, "301"),
]
BAD: list[tuple[str, Any, str, int]] = [
    ("Length", "38 kg", "kg is a mass", 3),
    ("Length", 38, "which unit?", 2),
    ("Length", "-2 in", "negative", 0),
    ("Length", ["2 in"], "this asks for a length; it is a list", 0),
    ("Length", {"a": 1}, "it is a table", 0),
    ("Length", None, "it is nothing", 0),
    ("Length", True, "it is yes or no", 0),
    ("Share", 5, "500 %", 0),
    ("Ratio", "-1.3", "negative", 0),
    ("Ratio", "1.31 mm", "mm is a length", 5),
    ("Count", "0", "1 or more", 0),
    ("Count", 2.5, "whole number", 0),
    ("Count", True, "it is yes or no", 0),
    ("Flag", "maybe", "neither yes nor no", 0),
    ("Ident", "Sew handle", "lower-case", 0),
    ("Ident", "sew_handle", "lower-case", 3),
    ("StepTime", "0 s", "takes time", 0),
    ("PerText", "20", "20 of what?", 0),
    ("EveryText", "often", "no time for a check", 0),
    ("AnyTolerance", "2 in", "no tolerance", 4),
]


def adapter(name: str) -> TypeAdapter[Any]:
    """Validates one type alone."""
    return TypeAdapter(getattr(typed, name))


@pytest.mark.parametrize(("name", "typed_value", "expected"), GOOD)
def test_a_good_text_becomes_a_value(name: str, typed_value: Any, expected: Any) -> None:
    """Exact, in base units; and the editor's schema lets it through."""
    result = adapter(name).validate_python(typed_value)
    assert (result.value if isinstance(result, Quantity) else result) == expected
    jsonschema.validate(typed_value, adapter(name).json_schema())


@pytest.mark.parametrize(("name", "typed_value", "message", "offset"), BAD)
def test_a_bad_text_gives_one_error_with_place_and_remedy(
    name: str, typed_value: Any, message: str, offset: int
) -> None:
    """The parts travel in the error's context."""
    with pytest.raises(ValidationError) as caught:
        adapter(name).validate_python(typed_value)
    (error,) = caught.value.errors()
    assert error["type"] == "text_fault"
    assert message in error["ctx"]["message"]
    assert error["ctx"]["offset"] == offset
    assert error["ctx"]["remedy"]
    assert error["msg"] == error["ctx"]["message"]


@pytest.mark.parametrize(
    ("name", "text", "kind"),
    [
        ("LengthOrExpression", "2 in", Quantity),
        ("LengthOrExpression", "=row.pitch * 2", Expression),
        ("LengthTolerance", "2 in ± 1/16", Tolerance),
        ("AnyTolerance", "8 st/in ± 1", Tolerance),
        ("StepTime", "3.5 s", Estimate),
        ("StepTime", "2 x reach", Element),
        ("PerText", "20 pieces", Frequency),
        ("EveryText", "first piece, then 20th", CheckPlan),
    ],
)
def test_a_value_already_read_is_passed_on(name: str, text: str, kind: type) -> None:
    """Objects may be built in code from values."""
    value = adapter(name).validate_python(text)
    assert isinstance(value, kind)
    assert adapter(name).validate_python(value) is value
    assert adapter(name).dump_python(value) == text


@pytest.mark.parametrize(
    "name",
    ["Length", "Share", "Count", "Flag", "Ident", "LengthOrExpression", "AnyTolerance", "StepTime", "PerText",
     "EveryText", "LengthRange", "LinearDensity", "Temperature", "Percent", "Ratio", "WholeNumber"],
)  # fmt: skip
def test_the_examples_in_a_schema_are_good(name: str) -> None:
    """Both for the grammar and for the pattern beside them."""
    schema = adapter(name).json_schema()
    assert schema["examples"]
    for example in schema["examples"]:
        adapter(name).validate_python(example)
        jsonschema.validate(example, schema)


@pytest.mark.parametrize(("name", "value"), [("Length", 38), ("Length", "38 kg"), ("Length", "wide"), ("Count", "x")])
def test_an_editor_underlines_what_is_plainly_wrong(name: str, value: Any) -> None:
    """The schema is wider than the grammar, but not blind."""
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(value, adapter(name).json_schema())


def test_the_types_stand_in_a_model() -> None:
    """As fields, optional ones too."""

    class Strip(BaseModel):
        model_config = ConfigDict(frozen=True)
        width: typed.Length
        length: typed.LengthOrExpression | None = None

    strip = Strip.model_validate({"width": "25 mm", "length": "=width * 4"})
    assert strip.width.value == 25
    assert isinstance(strip.length, Expression)
    assert Strip.model_json_schema()["properties"]["width"]["type"] == "string"
    with pytest.raises(ValidationError) as caught:
        Strip.model_validate({"width": "25 mm", "length": "=width *"})
    assert "ends too early" in str(caught.value)
