"""A language the plant's words are said in beside their original: one file of translations a language."""

from __future__ import annotations

from pydantic import Field

from builder.model.base import Names, Noun, Table, Text


class Was(Noun):
    """The original and its translation before the original changed, for who translates it anew."""

    of: Text
    is_: Text


class Said(Noun):
    """One text. It counts while `of` is what the plant says; it is said wherever that text stands.

    of      : the original it was made from
    is_     : the translation, left out while there is none
    was     : the pair before the original changed
    read_by : code of who read the translation of a caution or a critical fault against its original
    """

    of: Text
    is_: Text | None = None
    was: Was | None = None
    read_by: Text | None = None


class Language(Noun):
    """A language. The file's name is its code (BCP 47): `es`, `pt-BR`.

    title    : what the language calls itself
    read_by  : code of who read the program's own cautions in this language
    products : only the work on these; all work when left out
    texts    : translations by the key of the text they were made for
    """

    title: Text
    read_by: Text | None = None
    products: Names = ()
    texts: Table[Text, Said] = Field(default_factory=dict)
