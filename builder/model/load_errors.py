"""pydantic's errors to findings: plain words, the place as typed, one message a fault.

A missing key is paired with the nearest unknown key of the same object, so a slip of the pen gives one message.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from typing import TYPE_CHECKING, Any

from pydantic import ValidationError

from builder.finding import Finding
from builder.model.base import Noun
from builder.model.faults import fault
from builder.model.feature import KIND_KEYS, kinds_in
from builder.model.near_names import near
from builder.model.photo import CALLOUT_KEYS, callout_kinds

if TYPE_CHECKING:
    from builder.model.load import Entry

Path = tuple[str | int, ...]
_PLAIN = {
    "string_type": "should be a text",
    "string_too_short": "is empty",
    "dict_type": "should be a table of keys and values",
    "mapping_type": "should be a table of keys and values",
    "model_type": "should be a table of keys and values",
    "model_attributes_type": "should be a table of keys and values",
    "tuple_type": "should be a list, one item a line, each with a dash",
    "list_type": "should be a list, one item a line, each with a dash",
    "too_long": "has more items than it may",
    "too_short": "is empty; it needs at least one item",
    "date_from_datetime_parsing": "is no date; write it as 2026-03-14",
    "date_parsing": "is no date; write it as 2026-03-14",
    "date_type": "is no date; write it as 2026-03-14",
}


def findings_of(error: ValidationError, body: Any, entry: Entry) -> Iterator[Finding]:
    """One finding for each fault in an object's values."""
    about = f"{entry.kind}:{entry.name}"
    missing: dict[Path, list[str]] = {}
    unknown: dict[Path, list[str]] = {}
    for one in error.errors(include_url=False):
        path = _path(one["loc"])
        if entry.is_marred(path):
            continue  # the text itself is already reported
        if one["type"] == "missing":
            missing.setdefault(path[:-1], []).append(str(path[-1]))
        elif one["type"] == "extra_forbidden":
            unknown.setdefault(path[:-1], []).append(str(path[-1]))
        else:
            yield _finding(one, path, body, entry, about)
    for owner, keys in unknown.items():
        for key in keys:
            yield _unknown_key(owner, key, missing.get(owner, []), entry, about)
    for owner, keys in missing.items():
        where = _words(owner) or f"this {entry.kind}"
        for key in keys:
            message = f"`{key}:` is missing in {where}"
            yield fault("key-missing", entry.place(*owner, key=True), message, (about, f"key:{key}"))


def _path(loc: tuple[int | str, ...]) -> Path:
    return tuple(step for step in loc if not (isinstance(step, str) and step.startswith("«")))


def _words(path: Path) -> str:
    return " › ".join(str(step + 1) if isinstance(step, int) else step for step in path)


def _unknown_key(owner: Path, key: str, missing: list[str], entry: Entry, about: str) -> Finding:
    close = near(key, missing) or near(key, _all_keys())
    if close and close[0] in missing:
        missing.remove(close[0])
    hint = f"did you mean `{close[0]}`?" if close else ""
    where = f" in {_words(owner)}" if owner else ""
    message = f"`{key}` is no key this tool knows{where}"
    remedy = f"{hint} Correct its spelling, or take it out.".strip()
    names = (about, *(f"key:{name}" for name in close))
    return fault("key-unknown", entry.place(*owner, key, key=True), message, names, remedy[0].upper() + remedy[1:])


@cache
def _all_keys() -> frozenset[str]:
    from builder.model.load import NOUNS
    from builder.model.plant import Plant

    keys: set[str] = set()
    nouns: list[type[Noun]] = [Plant, *NOUNS.values()]
    for noun in nouns:
        schema = noun.model_json_schema(mode="validation")
        for definition in (schema, *schema.get("$defs", {}).values()):
            keys.update(definition.get("properties", {}))
    return frozenset(keys)


def _finding(one: Any, path: Path, body: Any, entry: Entry, about: str) -> Finding:
    kind, context = one["type"], one.get("ctx", {})
    handler = _HANDLERS.get(kind)
    if handler is not None:
        return handler(one, path, body, entry, about)
    if kind == "text_fault":
        is_key = path[-1:] == ("[key]",)  # pydantic's word for the key of the entry before it
        place = entry.place(*(path[:-1] if is_key else path), key=is_key, offset=int(context.get("offset", 0)))
        return fault("value-unreadable", place, str(context["message"]), (about,), str(context.get("remedy", "")))
    words = _PLAIN.get(kind, "can't be read")
    return fault("value-unreadable", entry.place(*path), f"`{_words(path)}` {words}", (about,))


def _literal(one: Any, path: Path, body: Any, entry: Entry, about: str) -> Finding:
    choices = [choice.strip("'") for choice in one["ctx"]["expected"].replace(" or ", ", ").split(", ")]
    typed = str(one["input"])
    close = near(typed, choices)
    hint = f" Did you mean `{close[0]}`?" if close else ""
    remedy = f"Write one of: {', '.join(choices)}.{hint}"
    key = next(step for step in reversed(path) if isinstance(step, str))
    message = f"`{key}` can't be `{typed}`"
    return fault("value-unreadable", entry.place(*path), message, (about,), remedy)


def _feature(one: Any, path: Path, body: Any, entry: Entry, about: str) -> Finding:
    value = body
    for step in path:
        value = value[step]
    name = path[-1]
    if path[-2:-1] == ("callouts",):
        return _callout(value, path, entry, about)
    found = kinds_in(value)
    if len(found) > 1:
        message = f"feature {name} has two kinds: {' and '.join(found)}"
    else:
        close = [(typed, near(typed, KIND_KEYS)) for typed in value] if isinstance(value, dict) else []
        hint = next((f"; `{typed}` may be meant as `{best[0]}`" for typed, best in close if best), "")
        message = f"feature {name} has no kind{hint}"
    return fault("feature-kind", entry.place(*path, key=True), message, (about, f"feature:{name}"))


def _callout(value: Any, path: Path, entry: Entry, about: str) -> Finding:
    found = callout_kinds(value)
    if len(found) > 1:
        message = f"a callout has two kinds: {' and '.join(found)}"
    else:
        close = [(typed, near(typed, CALLOUT_KEYS)) for typed in value] if isinstance(value, dict) else []
        hint = next((f"; `{typed}` may be meant as `{best[0]}`" for typed, best in close if best), "")
        message = f"a callout has no kind{hint}"
    return fault("callout-kind", entry.place(*path), message, (about,))


def _object(one: Any, path: Path, body: Any, entry: Entry, about: str) -> Finding:
    """A fault between the keys of an object, as the object itself tells it."""
    told = one["ctx"]
    place = entry.place(*path, told["key"], key=True) if told["key"] else entry.place(*path, key=True)
    return fault(told["slug"], place, told["message"], (about,), told["remedy"])


_HANDLERS: dict[str, Callable[[Any, Path, Any, Entry, str], Finding]] = {
    "literal_error": _literal,
    "union_tag_not_found": _feature,
    "union_tag_invalid": _feature,
    "object_fault": _object,
}
