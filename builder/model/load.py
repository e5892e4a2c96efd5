"""Plain values to typed objects: one finding for each fault, at the place where it was typed.

No object refers to another here; linking.py does that.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from pydantic import ValidationError

from builder.finding import Finding, Place
from builder.model.base import Noun
from builder.model.element import Element
from builder.model.faults import fault
from builder.model.language import Language
from builder.model.load_errors import findings_of
from builder.model.material import Material
from builder.model.near_names import near
from builder.model.operation import Operation
from builder.model.part import Part
from builder.model.plant import Plant
from builder.model.product import Product
from builder.model.station import Station
from builder.model.template import Template
from builder.reading import Document, Source

NOUNS: dict[str, type[Noun]] = {
    "station": Station,
    "material": Material,
    "element": Element,
    "language": Language,
    "part": Part,
    "operation": Operation,
    "product": Product,
    "template": Template,
}
"""Kind of object, which is also the key that names one in a file; the plural names a table of them."""

Key = tuple[str, str]


@dataclass(slots=True)
class Entry:
    """A typed object with where it was typed: its document and the path to it."""

    kind: str
    name: str
    value: Any
    document: Document
    path: tuple[str, ...] = ()

    def is_marred(self, path: tuple[str | int, ...]) -> bool:
        """Whether the reading room already reported the text of this value."""
        return self.document.is_marred((*self.path, *path))

    def place(self, *path: str | int, key: bool = False, offset: int = 0) -> Place:
        """The place of a value inside the object, or of its key."""
        return self.document.place((*self.path, *path), key=key, offset=offset)


@dataclass(slots=True)
class Loaded:
    """All objects that could be read; `known` holds also those that could not, so that nothing complains of them.

    blind : an operation's file can't be read at all, so nobody knows which parts it makes
    """

    plant: Entry | None = None
    entries: dict[Key, Entry] = field(default_factory=dict)
    known: dict[Key, Place] = field(default_factory=dict)
    blind: bool = False
    findings: list[Finding] = field(default_factory=list)


def load(source: Source) -> Loaded:
    """All typed objects of a plant folder."""
    loaded = Loaded()
    for document in source.documents:
        if document.kind == "plant":
            _load_plant(document, loaded)
        elif document.kind in NOUNS:
            _load_document(document, loaded)
    return loaded


def _load_plant(document: Document, loaded: Loaded) -> None:
    entry = Entry("plant", "plant", None, document)
    if document.broken or document.value is None:
        return
    entry.value = _typed(Plant, document.value, entry, loaded)
    if entry.value is not None:
        loaded.plant = entry


def _load_document(document: Document, loaded: Loaded) -> None:
    kind, value = document.kind, document.value
    if document.broken or value is None:
        loaded.known[kind, document.name] = Place(document.file)
        loaded.blind = loaded.blind or kind == "operation"
        return
    plural = f"{kind}s"
    if kind in value and plural in value:
        message = f"a file holds one {kind} or a table of {plural}, not both"
        loaded.findings.append(fault("object-unnamed", document.place((plural,), key=True), message, ()))
    if kind in value:
        _load_single(document, loaded)
    elif plural in value:
        _load_table(document, plural, loaded)
    else:
        loaded.known[kind, document.name] = Place(document.file)
        close = near(kind, value) or near(plural, value)
        hint = f"; `{close[0]}` may be meant for it" if close else ""
        message = f"this file lies in {plural}/ but names no {kind}: its first key should be `{kind}:`{hint}"
        loaded.findings.append(fault("object-unnamed", Place(document.file), message, (f"{kind}:{document.name}",)))


def _load_single(document: Document, loaded: Loaded) -> None:
    kind, value = document.kind, document.value
    assert value is not None
    name = value[kind]
    if name != document.name:
        message = f"the file is called {document.name}, but the {kind} calls itself {name}"
        about = (f"{kind}:{name}", f"{kind}:{document.name}")
        loaded.findings.append(fault("name-differs", document.place((kind,)), message, about))
        loaded.known.setdefault((kind, document.name), Place(document.file))
    if not isinstance(name, str):
        return
    body = {key: item for key, item in value.items() if key != kind}
    _add(Entry(kind, name, None, document), body, loaded)


def _load_table(document: Document, plural: str, loaded: Loaded) -> None:
    kind, value = document.kind, document.value
    assert value is not None
    table = value[plural]
    for key in value:
        if key != plural:
            message = f"`{key}` stands beside the table of {plural}; nothing reads it"
            loaded.findings.append(
                fault("key-unknown", document.place((key,), key=True), message, (f"file:{document.file}",))
            )
    if not isinstance(table, dict):
        message = f"`{plural}:` should be a table of names, each with its own keys"
        loaded.findings.append(fault("value-unreadable", document.place((plural,)), message, ()))
        return
    for name, body in table.items():
        _add(Entry(kind, name, None, document, (plural, name)), body, loaded)


def _add(entry: Entry, body: Any, loaded: Loaded) -> None:
    key = (entry.kind, entry.name)
    first = loaded.known.get(key)
    if first is not None and key in loaded.entries:
        message = f"there are two {entry.kind}s called {entry.name}; the other is in {first.file}, line {first.line}"
        loaded.findings.append(fault("name-twice", entry.place(key=True), message, (f"{entry.kind}:{entry.name}",)))
        return
    loaded.known[key] = entry.place(key=True)
    entry.value = _typed(NOUNS[entry.kind], body, entry, loaded)
    if entry.value is not None:
        loaded.entries[key] = entry
    elif entry.kind == "operation":
        for made in _made_by(body):
            loaded.known.setdefault(("part", made), entry.place("makes"))


def _made_by(body: Any) -> list[str]:
    """Names an operation makes, as far as its plain values tell: they count as known though it can't be read."""
    makes = body.get("makes") if isinstance(body, dict) else None
    return [makes] if isinstance(makes, str) else list(makes) if isinstance(makes, dict) else []


def _typed(noun: type[Noun], body: Any, entry: Entry, loaded: Loaded) -> Noun | None:
    try:
        return noun.model_validate(body)
    except ValidationError as error:
        loaded.findings.extend(findings_of(error, body, entry))
        return None
