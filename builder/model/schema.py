"""JSON Schema of the plant's files, made from the typed model, for editors that check while one types."""

from __future__ import annotations

from typing import Any

from builder.model.base import Noun
from builder.model.load import NOUNS
from builder.model.plant import Plant

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schema_of(kind: str) -> dict[str, Any]:
    """Schema of one kind of file: `plant`, or a kind of object, alone or as a table. Raises KeyError."""
    if kind == "plant":
        return {"$schema": DIALECT, **Plant.model_json_schema()}
    noun = NOUNS[kind]
    whole = noun.model_json_schema()
    definitions = whole.pop("$defs", {})
    name = f"{kind}-itself"
    definitions[name] = whole
    single = {
        **whole,
        "properties": {kind: {"type": ["string", "number"]}, **whole["properties"]},
        "required": [kind, *whole.get("required", [])],
    }
    table = {
        "type": "object",
        "properties": {f"{kind}s": {"type": "object", "additionalProperties": {"$ref": f"#/$defs/{name}"}}},
        "required": [f"{kind}s"],
        "additionalProperties": False,
    }
    return {"$schema": DIALECT, "title": _title(noun), "anyOf": [single, table], "$defs": definitions}


def _title(noun: type[Noun]) -> str:
    return (noun.__doc__ or noun.__name__).split("\n")[0]
