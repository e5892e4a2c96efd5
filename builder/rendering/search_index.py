"""The search of a language as a page takes it: a script with one global, made of what its pages say.

Words are sorted, so that those with a beginning stand together; each has the pages it is on and how much it counts
there, as numbers in base 36 by their distance. `themes/*/site/assets/search.js` reads it.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from builder.rendering.search_fold import base36, fold_data, found_words
from builder.view import SearchEntry, SearchField

FOLD = "assets/fold.js"
"""How letters are compared, shared by the searches of all languages."""

WEIGHTS: dict[SearchField, int] = {
    "title": 8,
    "code": 9,
    "tag": 9,
    "name": 7,
    "setting": 5,
    "step": 4,
    "key": 3,
    "check": 3,
    "fault": 3,
    "where": 2,
    "why": 1,
    "caution": 1,
    "other": 1,
}
"""How much a word counts by where it stands on its page, 1 to 9."""
_SHOWN: tuple[SearchField, ...] = ("step", "setting", "fault", "check", "key")
"""What a result may quote; the rest is found without being quoted, which halves the file."""
_BASE = 10  # a posting is distance times this, plus its weight


def index_path(language: str) -> str:
    """Where the search of a language lies in the output."""
    return f"assets/search-{language}.js"


def fold_script() -> bytes:
    """The table of letters as a script."""
    return f"var seamboardFold = {_plain(fold_data())};\n".encode()


def search_index(entries: Sequence[SearchEntry]) -> bytes:
    """The search of a language as a script. Equal entries give equal bytes."""
    words = _postings(entries)
    order = sorted(words, key=lambda word: word.encode("utf-16-be"))  # as scripts compare texts
    labels: dict[str, int] = {}
    kinds: dict[str, int] = {}
    data = {
        "words": "\n".join(order),
        "pages": [_page(entry, labels, kinds) for entry in entries],
        "found": "\n".join(_packed(words[word]) for word in order),
        "labels": list(labels),
        "kinds": list(kinds),
    }
    return f"var seamboardSearch = {_plain(data)};\n".encode()


def weighted_words(entry: SearchEntry) -> dict[str, int]:
    """The words a page is found by, each with the most it counts there."""
    found: dict[str, int] = {}
    for text in entry.texts:
        weight = WEIGHTS[text.field]
        for word in found_words(text.text):
            if found.get(word, 0) < weight:
                found[word] = weight
    return found


def _postings(entries: Sequence[SearchEntry]) -> dict[str, list[tuple[int, int]]]:
    words: dict[str, list[tuple[int, int]]] = {}
    for number, entry in enumerate(entries):
        for word, weight in weighted_words(entry).items():
            words.setdefault(word, []).append((number, weight))
    return words


def _packed(postings: Sequence[tuple[int, int]]) -> str:
    last = 0
    items = []
    for number, weight in postings:
        items.append(base36((number - last) * _BASE + weight))
        last = number
    return ",".join(items)


def _page(entry: SearchEntry, labels: dict[str, int], kinds: dict[str, int]) -> list[Any]:
    """Path, kind, title, code, where, language, and what may be quoted: label, anchor, text by turns."""
    quoted: list[Any] = []
    for text in entry.texts:
        if text.field in _SHOWN:
            quoted += [labels.setdefault(text.label, len(labels)), text.anchor, text.text]
    kind = kinds.setdefault(entry.kind, len(kinds))
    return [entry.path, kind, entry.title, entry.code, entry.where, entry.language, quoted]


def _plain(data: Any) -> str:
    """JSON that can stand in a script wherever it is put."""
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
