"""The published JSON Schema against the demo plant, read as YAML 1.2 like an editor does."""

from __future__ import annotations

import datetime
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from ruamel.yaml import YAML

from builder.model import schema_of

PLANT = Path(__file__).resolve().parents[2] / "instructions"
FILES = sorted(PLANT.rglob("*.yaml"))
KIND = {
    "stations": "station",
    "materials": "material",
    "elements": "element",
    "parts": "part",
    "operations": "operation",
    "products": "product",
    "templates": "template",
    "languages": "language",
}


def _plain(value: Any) -> Any:
    if isinstance(value, dict):
        return {str(key): _plain(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [_plain(inner) for inner in value]
    return value.isoformat() if isinstance(value, datetime.date) else value


def _kind(file: Path) -> str:
    return "plant" if file.parent == PLANT else KIND[file.parent.name]


@cache
def _validator(kind: str) -> Draft202012Validator:
    schema = schema_of(kind)
    Draft202012Validator.check_schema(schema)
    return Draft202012Validator(schema)


def test_there_are_files() -> None:
    """An empty folder would pass everything below."""
    assert len(FILES) > 20


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
def test_demo_file_fits_the_schema(file: Path) -> None:
    """What `check` accepts, an editor doesn't underline."""
    value = _plain(YAML(typ="safe").load(file.read_text(encoding="utf-8")))
    errors = [f"{list(one.path)}: {one.message[:200]}" for one in _validator(_kind(file)).iter_errors(value)]
    assert errors == []


def test_an_unknown_key_is_refused() -> None:
    """The schema can fail."""
    bad = {"product": "bag", "title": "Bag", "route": ["cut"], "colour": "red"}
    assert list(Draft202012Validator(schema_of("product")).iter_errors(bad))


@pytest.mark.parametrize(
    "outline",
    [
        {"half": [{"x": "0 mm", "y": "0 mm", "edge": "low", "bow": "-3 mm"}, {"x": "0 mm", "y": "9 mm"}]},
        {"polygon": [{"x": "0 mm", "y": "0 mm", "radius": "=2 * width"}]},
        {"rectangle": {"width": "2 in", "height": "1 in"}, "allowance": "10 mm", "typed": "seam line"},
        {"rectangle": {"width": "2 in", "height": "1 in"}, "allowance": {"all": "10 mm", "bottom": "1 in"}},
        {"drawing": "drawings/end.dxf", "layer": 0, "unit": "in", "edges": {"mouth": {"top": "0 mm"}}},
    ],
)
def test_every_form_of_outline_fits_the_schema(outline: dict[str, Any]) -> None:
    """A layer called 0 included."""
    part = {"part": "flap", "title": "Flap", "material": "cloth", "outline": outline}
    assert [one.message for one in _validator("part").iter_errors(part)] == []


def test_an_allowance_in_a_list_is_refused() -> None:
    """One length, or a table."""
    outline = {"rectangle": {"width": "2 in", "height": "1 in"}, "allowance": ["10 mm"]}
    assert list(_validator("part").iter_errors({"part": "flap", "title": "Flap", "outline": outline}))
