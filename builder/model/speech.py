"""The language the program speaks: its own words, and how numbers are written.

English sentences are the keys, so code reads as what it says; a language is a table from them to its own
(`tongues/<code>.yaml`). What the plant typed is not here: `translated` puts its translations into the model.

The language is set for a stretch of work, as `decimal.localcontext` sets a precision, because the words are said deep
inside view, drawing and rendering, and everything said in one stretch is one document's.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field
from datetime import date
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType

_FOLDER = Path(__file__).parent / "tongues"
_VALUE = re.compile(r"(?<![#&\w])[0-9A-Za-z(][0-9A-Za-z .,/:×±−+%°²³()\-]*[0-9A-Za-z%°)]")
_RIGHT_TO_LEFT = frozenset(("ar", "ckb", "dv", "fa", "he", "ps", "sd", "ug", "ur", "yi"))


@dataclass(frozen=True, slots=True)
class Tongue:
    """A language.

    code    : BCP 47, `es` or `pt-BR`
    words   : the program's own sentences by the English ones; one that is missing is said in English
    names   : the plant's own names (of features, settings, sizes) as words, by the words in its own language
    decimal : the decimal mark
    """

    code: str = "en"
    words: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}), hash=False)
    names: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}), hash=False)
    decimal: str = "."

    @property
    def right_to_left(self) -> bool:
        """Whether its lines run from right to left."""
        return self.code.partition("-")[0] in _RIGHT_TO_LEFT

    @property
    def direction(self) -> str:
        """As HTML calls it: ltr or rtl."""
        return "rtl" if self.right_to_left else "ltr"


ENGLISH = Tongue()
_SPOKEN: ContextVar[Tongue] = ContextVar("tongue", default=ENGLISH)


def tongue() -> Tongue:
    """The language spoken now."""
    return _SPOKEN.get()


@contextmanager
def speaking(one: Tongue) -> Iterator[Tongue]:
    """Says everything inside in a language."""
    before = _SPOKEN.set(one)
    try:
        yield one
    finally:
        _SPOKEN.reset(before)


def say(english: str, **values: object) -> str:
    """A sentence of the program in the language spoken now, its `{…}` filled; a brace in a value is never read again.

    >>> say("page {n} of {m}", n=1, m=2)
    'page 1 of 2'
    """
    sentence = tongue().words.get(english, english)
    if not values:
        return sentence
    text = ""
    for piece in sentence.split("{"):
        name, brace, rest = piece.partition("}")
        text += f"{values[name]}{rest}" if brace and name in values else piece
    return text


def phrase(english: str) -> str:
    """Marks a sentence of a table that `say` says later, so that the list of what is to be translated has it."""
    return english


def plain(name: str) -> str:
    """A name from a file as words, in the language spoken now: `handle-box` is `handle box`."""
    return named(name.replace("-", " "))


def named(words: str) -> str:
    """A name the plant gave, such as that of a gauge, in the language spoken now."""
    return tongue().names.get(words, words)


def isolated(text: str) -> str:
    """The text with its values (`2 mm ± 0.5`) kept in their own order where lines run from right to left.

    Unicode's isolates (UAX #9): without them such a line shows `mm ± 0.5 2`. In other languages nothing changes.
    """
    return _VALUE.sub(_in_order, text) if tongue().right_to_left else text


def _in_order(match: re.Match[str]) -> str:
    value = match[0]
    return f"\u2066{value}\u2069" if any(map(str.isdecimal, value)) and not value.isdecimal() else value


@lru_cache(maxsize=32)
def tongue_of(code: str) -> Tongue:
    """The language of a code; one the program has no words of speaks English words, in its own way with numbers."""
    words: Mapping[str, str] = {}
    for name in (code, code.partition("-")[0]):
        file = _FOLDER / f"{name}.yaml"
        if file.is_file():
            import yaml

            words = yaml.load(file.read_text(encoding="utf-8"), yaml.CSafeLoader) or {}
            break
    return Tongue(code, MappingProxyType(dict(words)), decimal=_decimal_mark(code))


def spoken_languages() -> tuple[str, ...]:
    """Codes of the languages the program has words of, English first."""
    return ("en", *sorted(file.stem for file in _FOLDER.glob("*.yaml")))


def language_name(code: str) -> str:
    """What a language calls itself: `español`; its code where the locale data don't know it."""
    from babel import Locale, UnknownLocaleError

    try:
        return Locale.parse(code, sep="-").get_display_name() or code
    except (UnknownLocaleError, ValueError):
        return code


def is_language(code: str) -> bool:
    """Whether the locale data know the language of a code."""
    from babel import Locale, UnknownLocaleError

    try:
        return bool(Locale.parse(code, sep="-"))
    except (UnknownLocaleError, ValueError):
        return False


@lru_cache(maxsize=32)
def letters_of(code: str) -> frozenset[str]:
    """The letters a language is written in: those of the program's words in it, of its months and of its lands."""
    from babel import Locale

    locale = Locale.parse(_locale(code))
    known = (locale.months["format"]["wide"], locale.days["format"]["wide"], locale.territories)
    texts = [*tongue_of(code).words.values(), *(name for names in known for name in names.values())]
    return frozenset(letter for text in texts for letter in text if unicodedata.category(letter)[0] in "LM")


def _decimal_mark(code: str) -> str:
    if code.partition("-")[0] == "en":
        return "."
    from babel.numbers import get_decimal_symbol

    # Machines show Western figures everywhere, so these are used, with the language's own mark.
    return get_decimal_symbol(_locale(code), numbering_system="latn")


def _locale(code: str) -> str:
    """The locale of a code as the locale data calls it; English for one they don't know."""
    from babel import UnknownLocaleError
    from babel.core import negotiate_locale
    from babel.localedata import locale_identifiers

    try:
        return negotiate_locale([code.replace("-", "_")], locale_identifiers()) or "en"
    except (UnknownLocaleError, ValueError):
        return "en"


def show_date(iso: str) -> str:
    """A day as the language writes it: `2026-11-23` is `23 nov 2026` in Spanish, and stays as it is in English.

    A text that is no day stays as it is.
    """
    one = tongue()
    if one.code.partition("-")[0] == "en":
        return iso  # read the same everywhere, where a day before a month is not
    from babel.dates import format_date

    try:
        return format_date(date.fromisoformat(iso), "medium", locale=_locale(one.code))
    except ValueError:
        return iso
