"""A language's file as it is written: for who translates it, as YAML or as a table for a spreadsheet, and read back."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from builder.model import Language, Said, Translated, Translation

COLUMNS = ("key", "state", "original", "translation", "read by", "original before", "translation before")

_HEAD = """\
# What the plant says, in {title}. `seamboard words {code}` writes this file anew and keeps what is in it.
# `is:` is the translation of `of:`, wherever the plant says it. When the original changes, the pair before stands
# under `was:`. Cautions and critical faults count once somebody who reads both languages signs with `read by:`, a code.
"""


def language_file(code: str, translation: Translation) -> str:
    """The YAML text: each original once, in the order of the plant, with what is known of it."""
    language = translation.language
    lines = [_HEAD.format(title=language.title, code=code), f"language: {code}", f"title: {_quoted(language.title)}"]
    if language.read_by is not None:
        lines.append(f"read by: {_quoted(language.read_by)}")
    if language.products:
        lines.append(f"products: [{', '.join(language.products)}]")
    lines.append("texts:")
    for key, said in _entries(translation):
        lines += [f"  {_quoted(key)}:", *_lines(said)]
    return "\n".join(lines) + "\n"


def _lines(said: Said) -> Iterator[str]:
    yield f"    of: {_quoted(said.of)}"
    if said.is_ is not None:
        yield f"    is: {_quoted(said.is_)}"
    if said.was is not None:
        yield f"    was: {{of: {_quoted(said.was.of)}, is: {_quoted(said.was.is_)}}}"
    if said.read_by is not None:
        yield f"    read by: {_quoted(said.read_by)}"


def _quoted(text: str) -> str:
    """A text as YAML in double quotes, which JSON's are."""
    return json.dumps(text, ensure_ascii=False)


def _entries(translation: Translation) -> Iterator[tuple[str, Said]]:
    """What is written: an entry for each original, those kept for a place of its own, and what is said no more."""
    typed, written = translation.language.texts, dict[str, str]()
    for one in translation.texts:
        own = typed.get(one.wording.key)
        kept_apart = own is not None and own.of == one.wording.text
        if one.wording.text in written and not kept_apart:
            continue
        written.setdefault(one.wording.text, one.wording.key)
        yield one.wording.key, _entry(one, typed)
    yield from ((key, typed[key]) for key in translation.unused)


def _entry(one: Translated, typed: Mapping[str, Said]) -> Said:
    known = typed.get(one.entry)
    if known is None or one.state == "missing":
        return Said.model_validate({"of": one.wording.text, "was": known.was if known is not None else None})
    if one.state == "stale":
        was = {"of": known.of, "is": one.said}
        return Said.model_validate({"of": one.wording.text, "was": was})
    return known.model_copy(update={"was": None})


def language_table(translation: Translation) -> str:
    """The same as a CSV table for a spreadsheet. A translator fills the column `translation`, a reader `read by`."""
    states = {one.wording.text: one.state for one in translation.texts}
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\r\n")
    table.writerow(COLUMNS)
    for key, said in _entries(translation):
        before = (said.was.of, said.was.is_) if said.was is not None else ("", "")
        state = states.get(said.of, "missing")
        table.writerow((key, state, said.of, said.is_ or "", said.read_by or "", *before))
    return "\ufeff" + out.getvalue()  # the mark by which spreadsheets know the encoding


@dataclass(slots=True)
class TableRead:
    """A language with what a table says, and (line, what is wrong) of the rows that can't be taken."""

    language: Language
    taken: int = 0
    refused: list[tuple[int, str]] = field(default_factory=list)


def with_table(translation: Translation, text: str) -> TableRead:
    """The language with the translations of a table put in.

    A row counts where its original is still what the plant says; others are refused with a word. Columns may stand in
    any order; a table without them is refused as a whole.
    """
    originals = {one.wording.key: one.wording.text for one in translation.texts}
    rows = csv.reader(io.StringIO(text.removeprefix("\ufeff")), delimiter=";" if _semicolons(text) else ",")
    head = [name.strip().lower() for name in next(rows, [])]
    read = TableRead(translation.language)
    if not {"key", "original", "translation"} <= set(head):
        read.refused.append((1, f"the table needs the columns {', '.join(COLUMNS[:4])}"))
        return read
    texts = dict(translation.language.texts)
    for row in rows:
        cells = dict(zip(head, (cell.strip() for cell in row), strict=False))
        _take(cells, rows.line_num, originals, texts, read)
    read.language = translation.language.model_copy(update={"texts": texts})
    return read


def _take(
    cells: Mapping[str, str], line: int, originals: Mapping[str, str], texts: dict[str, Said], read: TableRead
) -> None:
    key, said = cells.get("key", ""), cells.get("translation", "")
    if not key or not said:
        return
    if key not in originals:
        read.refused.append((line, f"nothing is typed at {key} any more"))
    elif " ".join(cells.get("original", "").split()) != " ".join(originals[key].split()):
        read.refused.append((line, f"the original of {key} has changed since; it is now: {originals[key]}"))
    else:
        reader = cells.get("read by") or None
        texts[key] = Said.model_validate({"of": originals[key], "is": said, "read by": reader})
        read.taken += 1


def _semicolons(text: str) -> bool:
    """Whether the table's separator is a semicolon, as spreadsheets write where the comma is the decimal mark."""
    head = text.partition("\n")[0]
    return head.count(";") > head.count(",")


def lacking_words(texts: Iterable[Translated]) -> str:
    """How many of some texts are missing, stale or not read: `3 missing, 1 stale`."""
    counts: dict[str, int] = {}
    for one in texts:
        if one.state != "said":
            counts[one.state] = counts.get(one.state, 0) + 1
    return ", ".join(f"{count} {state}" for state, count in counts.items())
