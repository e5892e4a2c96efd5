"""Decoding, and counting lines as the parser does."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from builder.reading.raw_text import decode, line_and_column, split_lines


@given(st.text(st.sampled_from("ab\r\n"), max_size=30), st.data())
def test_line_and_column_agree_with_split_lines(text: str, data: st.DataObject) -> None:
    """The character at a place is the character at the index."""
    index = data.draw(st.integers(0, len(text)))
    line, column = line_and_column(text, index)
    shown = split_lines(text)[line - 1]
    if index < len(text) and text[index] not in "\r\n":
        assert shown[column - 1] == text[index]


@given(st.text(max_size=50))
def test_decoding_never_changes_the_length(text: str) -> None:
    data = text.encode("utf-8", "surrogatepass")
    decoded, findings = decode(data, "f", 1000)
    if decoded is None:
        assert findings
    else:
        assert len(decoded) == len(text.removeprefix("\ufeff"))


def test_letters_joined_by_invisible_characters_are_text() -> None:
    """Scripts that need joiners, blanks that do not break and tabs inside a line are no fault."""
    text = "a\u200cb \u200d \u00a0\tc\r\n"
    assert decode(text.encode(), "f", 1000) == (text, [])


def test_size_is_refused_only_above_the_limit() -> None:
    assert decode(b"abc", "f", 3) == ("abc", [])
    text, findings = decode(b"abcd", "f", 3)
    assert text is None
    assert [one.rule for one in findings] == ["text-too-large"]
