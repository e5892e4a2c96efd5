"""Many definitions at once."""

from time import perf_counter

from builder.model.expression import Expression, parse_expression
from builder.model.quantity import Quantity, parse_quantity
from builder.model.resolving import ExpressionFault, resolve_all


def definitions(**texts: str) -> dict[str, Quantity | Expression]:
    """Lengths and expressions by name."""
    return {
        name: parse_expression(text) if text.startswith("=") else parse_quantity(text, "length")
        for name, text in texts.items()
    }


def resolve(**texts: str) -> tuple[dict[str, Quantity], dict[str, frozenset[str]], list[ExpressionFault]]:
    """All lengths; `webbing` is known outside."""
    outside = {"webbing": parse_quantity("25 mm", "length")}
    return resolve_all(definitions(**texts), outside.get, lambda name: "length", known=outside)


def test_values_and_what_they_rest_on() -> None:
    """Through several expressions, and to names outside."""
    values, support, faults = resolve(
        total="=half * 2 + webbing", half="=width / 2", width="10 mm", two="=1 mm * 2"
    )
    assert not faults
    assert {name: value.value for name, value in values.items()} == {
        "width": 10,
        "two": 2,
        "half": 5,
        "total": 35,
    }
    assert support == {
        "width": frozenset({"width"}),
        "two": frozenset(),
        "half": frozenset({"width"}),
        "total": frozenset({"width", "webbing"}),
    }


def test_an_unknown_name_is_reported_once_with_a_near_one() -> None:
    """What rests on it is left out quietly."""
    values, _, faults = resolve(width="10 mm", half="=widht / 2", total="=half * 2", other="=width * 3")
    assert set(values) == {"width", "other"}
    (fault,) = faults
    assert (fault.name, fault.message, fault.offset) == ("half", "unknown name widht", 1)
    assert fault.remedy == "Write width"
    assert fault.about == ("widht", "width")


def test_a_ring_names_its_members() -> None:
    """One fault a ring; a definition behind it has none of its own."""
    values, _, faults = resolve(
        a="=b + 1 mm", b="=c * 2", c="=a", behind="=a + b", alone="=alone", free="2 mm"
    )
    assert set(values) == {"free"}
    assert [(fault.name, fault.message) for fault in faults] == [
        ("a", "a ring: a → b → c → a"),
        ("alone", "a ring: alone → alone"),
    ]
    assert faults[0].about == ("a", "b", "c")
    assert faults[0].offset == 1


def test_a_fault_of_kind_is_reported_once() -> None:
    """Where it stands."""
    values, _, faults = resolve(a="=b + 2", b="1 mm", c="=a")
    assert set(values) == {"b"}
    assert [(fault.name, fault.offset) for fault in faults] == [("a", 3)]


def test_names_may_be_short_inside_their_owner() -> None:
    """`pitch` in `row` means `row.pitch`."""
    given: dict[str, Quantity | Expression] = {
        "row.pitch": parse_quantity("10 mm", "length"),
        "row.length": parse_expression("=pitch * 3"),
    }

    def full_name(definition: str, name: str) -> str:
        return name if name in given else f"{definition.split('.')[0]}.{name}"

    values, support, faults = resolve_all(given, lambda name: None, lambda name: "length", full_name)
    assert not faults
    assert values["row.length"].value == 30
    assert support["row.length"] == {"row.pitch"}


def test_a_long_chain_is_resolved_in_linear_time() -> None:
    """Fifty thousand definitions, each on the next, and a ring as long."""
    count = 50_000
    chain = {f"n{i}": f"=n{i + 1}" for i in range(count)} | {f"n{count}": "1 mm"}
    start = perf_counter()
    values, support, faults = resolve(**chain)
    assert len(values) == count + 1 and not faults
    assert support["n0"] == {f"n{count}"}
    ring = resolve(**(chain | {f"n{count}": "=n0"}))[2]
    assert len(ring) == 1 and len(ring[0].about) == count + 1
    assert perf_counter() - start < 20
