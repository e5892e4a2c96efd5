"""What all nouns of the model share: frozen, no unknown keys, keys in files written with blanks."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Annotated, Any, TypeVar

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, StringConstraints, WithJsonSchema

K = TypeVar("K")
V = TypeVar("V")


class Noun(BaseModel):
    """Base of every typed object. A field `set_at` is typed `set at:` in a file."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        alias_generator=lambda name: name.rstrip("_").replace("_", " "),
        arbitrary_types_allowed=True,
    )


def _read_only(value: Mapping[K, V]) -> Mapping[K, V]:
    return MappingProxyType(dict(value))


def _one_or_many(value: Any) -> Any:
    return value if isinstance(value, list | tuple) else (value,)


# A plain 301 or 14 is a number to an editor's YAML reader; to ours every scalar is the text as typed.
_ANY_WORD = {"type": ["string", "number", "boolean"], "minLength": 1}

Text = Annotated[str, StringConstraints(min_length=1), WithJsonSchema(_ANY_WORD)]
"""Words for people. Emphasis (`*…*`, `**…**`) is the only markup."""

Names = Annotated[tuple[str, ...], BeforeValidator(_one_or_many, json_schema_input_type=str | list[str])]
"""One name, or a list of names."""

OneOrMany = BeforeValidator(_one_or_many, json_schema_input_type=str | list[str])
"""Annotation of a tuple that may also be typed as its only item."""

Table = Annotated[Mapping[K, V], AfterValidator(_read_only)]
"""A mapping nobody can change once it is read."""
