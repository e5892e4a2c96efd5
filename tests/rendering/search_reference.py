"""The search as the page does it, told the slow and obvious way: for tests."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from builder.rendering.search_fold import typed_words
from builder.rendering.search_index import weighted_words
from builder.view import SearchEntry

EXACT, BEGINNING, NEAR = 10, 7, 4


class Reference:
    """All words of all pages, looked at one after the other."""

    def __init__(self, entries: Sequence[SearchEntry]) -> None:
        self.pages = [weighted_words(entry) for entry in entries]
        self.words = sorted({word for page in self.pages for word in page})

    def find(self, query: str) -> list[int]:
        """Numbers of the pages found, best first."""
        typed = typed_words(query)
        if not typed:
            return []
        plain, more = [self._plain(word) for word in typed], self._together(typed)
        found = _ranked([scores or self._near(word) for scores, word in zip(plain, typed, strict=True)], more)
        if found:
            return found
        near = [_best(self._near(word), scores) for word, scores in zip(typed, plain, strict=True)]
        return _ranked(near, more) or _ranked(near, more, every=False)

    def _together(self, typed: list[str]) -> dict[int, int]:
        pairs = {one + other for one, other in pairwise(typed) if _figure(one[-1]) != _figure(other[0])}
        pairs &= set(self.words)
        found: dict[int, int] = {}
        for pair in pairs:
            for number, score in self._scores({pair: EXACT}).items():
                found[number] = max(score, found.get(number, 0))
        return found

    def _plain(self, word: str) -> dict[int, int]:
        return self._scores({one: EXACT if one == word else BEGINNING for one in self.words if one.startswith(word)})

    def _near(self, word: str) -> dict[int, int]:
        most = 0 if any("0" <= letter <= "9" for letter in word) or len(word) < 4 else 1 if len(word) < 8 else 2
        if not most:
            return {}
        return self._scores({one: NEAR for one in self.words if edits(word, one) <= most})

    def _scores(self, words: dict[str, int]) -> dict[int, int]:
        found: dict[int, int] = {}
        for number, page in enumerate(self.pages):
            scores = [page[word] * quality for word, quality in words.items() if word in page]
            if scores:
                found[number] = max(scores)
        return found


def edits(typed: str, word: str) -> int:
    """Least edits (letters left out, added, changed, swapped with the next) that make a beginning of the word."""
    rows = [list(range(len(typed) + 1))]
    for j in range(1, len(word) + 1):
        row = [j]
        for i in range(1, len(typed) + 1):
            cost = min(rows[-1][i] + 1, row[-1] + 1, rows[-1][i - 1] + (typed[i - 1] != word[j - 1]))
            if i > 1 and j > 1 and typed[i - 1] == word[j - 2] and typed[i - 2] == word[j - 1]:
                cost = min(cost, rows[-2][i - 2] + 1)
            row.append(cost)
        rows.append(row)
    return min(row[-1] for row in rows)


def _figure(letter: str) -> bool:
    return "0" <= letter <= "9"


def _best(one: dict[int, int], other: dict[int, int]) -> dict[int, int]:
    return {number: max(one.get(number, 0), other.get(number, 0)) for number in one.keys() | other.keys()}


def _ranked(each: list[dict[int, int]], more: dict[int, int], every: bool = True) -> list[int]:
    met: dict[int, list[int]] = {}
    for scores in each:
        for number, score in scores.items():
            met.setdefault(number, []).append(score)
    found = [
        (len(one) * 1000 + sum(one) + more.get(number, 0), number)
        for number, one in met.items()
        if not every or len(one) == len(each)
    ]
    return [number for _, number in sorted(found, key=lambda one: (-one[0], one[1]))]
