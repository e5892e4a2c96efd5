"""Near names: what the engineer probably meant by a name nobody knows.

Edit distance with swaps of neighbours (optimal string alignment). It only offers; nothing is ever corrected
silently.
"""

from __future__ import annotations

from collections.abc import Iterable


def near(word: str, candidates: Iterable[str], limit: int = 1) -> tuple[str, ...]:
    """The candidates nearest to `word`, nearest first, ties in alphabetical order; empty if none is near.

    Near means at most 1 edit for words of up to 4 letters, 2 up to 9, 3 above. Capitals don't count as edits.
    """
    plain = word.casefold()
    most = _most_edits(len(plain))
    letters = frozenset(plain)
    found = []
    for candidate in set(candidates):
        other = candidate.casefold()
        if not _may_be_near(plain, letters, other, most):
            continue
        edits = distance(plain, other, most)
        if edits <= most:
            found.append((edits, candidate))
            if len(found) >= limit:
                # From here only what is at least as near as the worst wanted one counts.
                found.sort()
                most = found[limit - 1][0]
    return tuple(candidate for _, candidate in sorted(found)[:limit])


def _most_edits(length: int) -> int:
    if length <= 4:
        return 1
    return 2 if length <= 9 else 3


def _may_be_near(word: str, letters: frozenset[str], other: str, most: int) -> bool:
    """A cheap test that loses nothing: an edit brings in one letter at most, the length changes by 0 or 1."""
    if abs(len(word) - len(other)) > most:
        return False
    return len(letters.difference(other)) <= most and len(set(other) - letters) <= most


def distance(word: str, other: str, most: int) -> int:
    """Edits (insert, delete, replace, swap neighbours) between two words, or `most` + 1 if there are more.

    Source: optimal string alignment, the restricted Damerau-Levenshtein distance; textbook recursion, memory.
    """
    word, other = _without_ends(word, other)
    beyond = most + 1
    if abs(len(word) - len(other)) > most:
        return beyond
    before: list[int] = []
    previous = [min(j, beyond) for j in range(len(other) + 1)]
    for i, letter in enumerate(word, start=1):
        # Cells further from the diagonal than `most` can't be on a good way.
        first, last = max(1, i - most), min(len(other), i + most)
        row = [beyond] * (len(other) + 1)
        row[0] = min(i, beyond)
        for j in range(first, last + 1):
            against = other[j - 1]
            edits = min(previous[j] + 1, row[j - 1] + 1, previous[j - 1] + (letter != against))
            if i > 1 and j > 1 and letter == other[j - 2] and word[i - 2] == against:
                edits = min(edits, before[j - 2] + 1)
            row[j] = min(edits, beyond)
        # A swap reaches back two rows, so both must be beyond the limit before giving up.
        if min(row) > most and min(previous) > most:
            return beyond
        before, previous = previous, row
    return previous[-1]


def _without_ends(word: str, other: str) -> tuple[str, str]:
    """Both words without the letters they begin and end with alike, which cost no edit."""
    shorter = min(len(word), len(other))
    start = 0
    while start < shorter and word[start] == other[start]:
        start += 1
    end = 0
    while end < shorter - start and word[-1 - end] == other[-1 - end]:
        end += 1
    return word[start : len(word) - end], other[start : len(other) - end]
