"""What a language file says of each text of the plant: said, missing, stale, or not read yet; and the plant in it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from types import MappingProxyType
from typing import Literal

from builder.model.deviation import stood_for
from builder.model.language import Language, Said
from builder.model.plant_model import PlantModel
from builder.model.route import route_of
from builder.model.speech import Tongue, tongue_of
from builder.model.wording import Wording, names_of, reworded, used_by, wordings

State = Literal["said", "missing", "stale", "not read"]


@dataclass(frozen=True, slots=True)
class Translated:
    """A text in a language.

    state : `stale` when the original changed, `not read` when it is guarded and nobody answers for the translation
    said  : its translation where there is one, the stale one included
    entry : key of the entry of the file it comes from, '' for none
    """

    wording: Wording
    state: State
    said: str = ""
    entry: str = ""


@dataclass(frozen=True)
class Translation:
    """A plant's texts in one language."""

    code: str
    language: Language
    texts: tuple[Translated, ...]

    @cached_property
    def words(self) -> Mapping[str, str]:
        """Translations that count, by their originals."""
        return {one.wording.text: one.said for one in self.texts if one.state == "said"}

    @cached_property
    def lacking(self) -> Mapping[tuple[str, str], tuple[Translated, ...]]:
        """What each object lacks, by its kind and name: missing, stale or unread texts."""
        found: dict[tuple[str, str], list[Translated]] = {}
        for one in self.texts:
            if one.state != "said":
                found.setdefault(one.wording.owner, []).append(one)
        return {owner: tuple(texts) for owner, texts in found.items()}

    @cached_property
    def unused(self) -> tuple[str, ...]:
        """Keys of entries whose original nobody says any more, and whose key leads nowhere."""
        used = {one.entry for one in self.texts}
        texts, keys = {one.wording.text for one in self.texts}, {one.wording.key for one in self.texts}
        entries = self.language.texts.items()
        return tuple(key for key, said in entries if key not in used | keys and said.of not in texts)

    @property
    def tongue(self) -> Tongue:
        """The language as it is spoken here: the program's words and the plant's."""
        return replace(tongue_of(self.code), names=MappingProxyType(dict(self.words)))

    def model(self, model: PlantModel) -> PlantModel:
        """The plant with its texts in this language; what isn't translated stays as it is."""
        words = self.words
        return reworded(model, lambda one: words.get(one.text, one.text))

    def complete(self, model: PlantModel, operations: Iterable[str]) -> frozenset[str]:
        """Those of the operations whose every text is said in this language, current and read where it must be."""
        if self.language.read_by is None:
            return frozenset()  # nobody answers for the program's own cautions
        mine = set(operations) & set(self.scope(model))
        return frozenset(name for name in mine if not any(owner in self.lacking for owner in used_by(model, name)))

    def scope(self, model: PlantModel) -> Collection[str]:
        """Operations this language is for."""
        return scope_of(self.language, model)

    def of_work(self, model: PlantModel) -> Translation:
        """The texts of the work this language is for, and those that are translated already."""
        if not self.language.products:
            return self
        wanted = self.wanted(model)
        names = names_of(model, wanted)
        mine = (one for one in self.texts if one.said or one.wording.owner in wanted or one.wording.text in names)
        return replace(self, texts=tuple(mine))

    def wanted(self, model: PlantModel) -> Collection[tuple[str, str]]:
        """Kind and name of the objects whose texts this language should have."""
        operations = self.scope(model)
        products = self.language.products or model.products
        owners = {owner for name in operations for owner in used_by(model, name)}
        return owners | {("product", name) for name in products}


def scope_of(language: Language, model: PlantModel) -> Collection[str]:
    """Operations a language is for: those on the routes of its products, all where it names none."""
    if not language.products:
        return model.operations.keys()
    known = [name for name in language.products if name in model.products]
    found = {step.operation for name in known for step in route_of(name, model.products, model.operations)}
    return found | {name for name in model.operations if stood_for(model.operations, name) in found}


def translations(model: PlantModel) -> tuple[Translation, ...]:
    """The plant in each of its languages, in the order of their codes."""
    if "translations" not in model.memo:
        texts = wordings(model) if model.languages else []
        languages = sorted(model.languages.items())
        model.memo["translations"] = tuple(_translation(code, one, texts) for code, one in languages)
    found: tuple[Translation, ...] = model.memo["translations"]
    return found


def _translation(code: str, language: Language, texts: Iterable[Wording]) -> Translation:
    by_original: dict[str, tuple[str, Said]] = {}
    for key, said in language.texts.items():
        if said.is_ is not None:
            by_original.setdefault(said.of, (key, said))
    return Translation(code, language, tuple(_states(texts, language, by_original)))


def _states(
    texts: Iterable[Wording], language: Language, by_original: Mapping[str, tuple[str, Said]]
) -> Iterator[Translated]:
    for one in texts:
        own = language.texts.get(one.key)
        found = (one.key, own) if own is not None and own.of == one.text and own.is_ else by_original.get(one.text)
        if found is not None:
            key, said = found
            state: State = "not read" if one.guarded and said.read_by is None else "said"
            yield Translated(one, state, said.is_ or "", key)
        elif own is not None and own.of != one.text and own.is_ is not None:
            yield Translated(one, "stale", own.is_, one.key)
        else:
            yield Translated(one, "missing", entry=one.key if own is not None else "")
