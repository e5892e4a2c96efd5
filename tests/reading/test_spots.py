"""Packed places, and the place a path leads to."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.finding import Place
from builder.reading import Document, PathStep, pack, read_yaml, unpack

TEXT = b"title: a\nsteps:\n  - do: lay\n    shows: [b, c]\n  - {do: look}\ntolerances:\n  edge:\n    is: 2 in\n"


@given(line=st.integers(1, 2**20 + 1), column=st.integers(1, 2**20 + 1), one_line=st.booleans())
def test_packing_keeps_every_line_and_column_of_the_largest_file(line: int, column: int, one_line: bool) -> None:
    assert unpack(pack(line, column, one_line)) == (line, column)


@pytest.mark.parametrize(
    ("path", "value_at", "key_at"),
    [
        ([], (1, 1), (1, 1)),
        (["title"], (1, 8), (1, 1)),
        (["steps"], (3, 3), (2, 1)),
        (["steps", 0], (3, 5), (3, 5)),
        (["steps", 0, "do"], (3, 9), (3, 5)),
        (["steps", 0, "shows", 1], (4, 16), (4, 16)),
        (["steps", 1], (5, 5), (5, 5)),
        (["steps", 1, "do"], (5, 10), (5, 6)),
        (["tolerances", "edge", "is"], (8, 9), (8, 5)),
    ],
)
def test_place_of_value_and_key(path: list[PathStep], value_at: tuple[int, int], key_at: tuple[int, int]) -> None:
    document = read_yaml(TEXT, "f")
    assert document.place(path) == Place("f", *value_at)
    assert document.place(path, key=True) == Place("f", *key_at)


@pytest.mark.parametrize("key", [False, True])
@pytest.mark.parametrize(
    ("path", "at"),
    [
        (["station"], (1, 1)),  # the top level
        (["title", "x"], (1, 8)),  # below a text: the text
        (["steps", 7], (3, 3)),  # below a list: the list
        (["steps", -1], (3, 3)),
        (["steps", "do"], (3, 3)),
        (["steps", 0, "why"], (3, 5)),  # below a mapping in a list: the item
        (["tolerances", "edge", "of"], (7, 3)),  # below a mapping: its key
        (["tolerances", "edge", "of", "x"], (7, 3)),
        (["tolerances", 0], (6, 1)),
        ([0], (1, 1)),
    ],
)
def test_path_that_goes_too_deep_gives_the_nearest_ancestor(
    path: list[PathStep], at: tuple[int, int], key: bool
) -> None:
    assert read_yaml(TEXT, "f").place(path, key=key, offset=3) == Place("f", *at)


def test_document_that_could_not_be_read_has_one_place() -> None:
    assert Document("f").place(["a", 0]) == Place("f", 1, 1)
    assert not Document("f").is_marred(["a"])


def test_offset_moves_the_value_and_never_the_key() -> None:
    document = read_yaml(TEXT, "f")
    assert document.place(["title"], offset=1) == Place("f", 1, 9)
    assert document.place(["title"], key=True, offset=1) == Place("f", 1, 1)
    assert document.place(["title"], offset=-1) == Place("f", 1, 8)
