"""Emphasis is read, everything else stays text."""

from __future__ import annotations

import html
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.rendering.markdown import plain, runs, to_html


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Lay it flat.", (("text", "Lay it flat."),)),
        ("Lay it **face up**, flat.", (("text", "Lay it "), ("strong", "face up"), ("text", ", flat."))),
        ("*Slowly* now", (("em", "Slowly"), ("text", " now"))),
        ("**all *of* it**", (("strong", "all of it"),)),
        ("5 * 3 mm * 2", (("text", "5 * 3 mm * 2"),)),
        ("two\n  lines", (("text", "two lines"),)),
        ("", ()),
        ("no\u00a0break", (("text", "no\u00a0break"),)),
    ],
)
def test_runs_hold_the_emphasis_and_join_blanks(text: str, expected: tuple[tuple[str, str], ...]) -> None:
    assert runs(text) == expected


@pytest.mark.parametrize(
    "text",
    [
        "# not a heading",
        "- not a list",
        "[not](http://example.org)",
        "![no picture](http://example.org/a.png)",
        "<b>no HTML</b>",
        "`no code`",
        "&amp; no entity",
        "#set text(red) $x$ @ref",
    ],
)
def test_other_markup_stays_the_characters_typed(text: str) -> None:
    assert runs(text) == (("text", text),)
    assert html.unescape(to_html(text)) == text


def test_html_escapes_and_marks() -> None:
    assert to_html('**a < b** & *"c"*') == "<strong>a &lt; b</strong> &amp; <em>&quot;c&quot;</em>"


@given(st.text())
def test_html_has_no_tag_but_strong_and_em(text: str) -> None:
    left = re.sub(r"</?(?:strong|em)>", "", to_html(text))
    assert "<" not in left
    assert ">" not in left
    assert '"' not in left


@given(st.text(alphabet="ab *<&\n"))
def test_html_and_runs_say_the_same(text: str) -> None:
    assert html.unescape(re.sub(r"</?(?:strong|em)>", "", to_html(text))) == plain(text)


def test_a_text_is_parsed_once() -> None:
    assert runs("parsed **once**") is runs("parsed **once**")
