"""Near names."""

from functools import cache
from time import perf_counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.near_names import distance, near

WORDS = st.text(alphabet="abcde-", max_size=8)


@cache
def plain_distance(a: str, b: str) -> int:
    """The recursion as textbooks print it, without the early end."""
    if not a or not b:
        return len(a) + len(b)
    best = min(
        plain_distance(a[1:], b) + 1,
        plain_distance(a, b[1:]) + 1,
        plain_distance(a[1:], b[1:]) + (a[0] != b[0]),
    )
    if len(a) > 1 and len(b) > 1 and a[0] == b[1] and a[1] == b[0]:
        best = min(best, plain_distance(a[2:], b[2:]) + 1)
    return best


@pytest.mark.parametrize(
    ("word", "candidates", "expected"),
    [
        ("hadnle", ["handle", "hands"], ("handle",)),
        ("Handle", ["handle"], ("handle",)),
        ("handel-webing", ["handle-webbing", "handle"], ("handle-webbing",)),
        ("mm", ["cm", "km", "in"], ("cm",)),
        ("edge", ["seam", "webbing"], ()),
        ("", ["ab"], ()),
    ],
)
def test_the_nearest_name_is_offered(word: str, candidates: list[str], expected: tuple[str, ...]) -> None:
    """A swap is one edit, capitals are none, ties go by the alphabet."""
    assert near(word, candidates) == expected


def test_more_than_one_can_be_asked_for() -> None:
    """Nearest first."""
    assert near("row", ["rows", "raw", "crown"], limit=3) == ("raw", "rows")


@given(st.text(alphabet="abc", max_size=5), st.text(alphabet="abc", max_size=5))
def test_distance_is_the_textbook_one(a: str, b: str) -> None:
    """The early end changes nothing below the limit."""
    true = plain_distance(a, b)
    assert distance(a, b, 9) == true
    assert distance(a, b, 1) == min(true, 2)


@given(WORDS, st.lists(WORDS, max_size=12))
def test_the_quick_filter_loses_nothing(word: str, candidates: list[str]) -> None:
    """All candidates within the limit are found."""
    most = 1 if len(word) <= 4 else 2
    expected = {c for c in candidates if plain_distance(word, c) <= most} if len(word) < 7 else None
    if expected is not None:
        assert set(near(word, candidates, limit=99)) == expected


def test_ten_thousand_candidates_are_fast() -> None:
    """A finding with a near name costs far less than a second in the largest plant."""
    candidates = [f"sew-panel-{number:05d}-edge" for number in range(10_000)]
    start = perf_counter()
    assert near("sew-panel-01234-egde", candidates) == ("sew-panel-01234-edge",)
    assert perf_counter() - start < 2
