"""Where things begin that the YAML parser marks too early or not at all. It reports nothing.

Events are Any: their types allow a missing mark, which the parser's C half never gives.
"""

from __future__ import annotations

import re
from typing import Any

from yaml.events import ScalarEvent

from builder.reading.raw_text import LINE_BREAK

_PROPERTIES = re.compile(r"(?:[&!]\S*\s*(?:#[^\r\n]*\s*)*)+")
_BLOCK_HEAD = re.compile(r"[|>][^\r\n]*(?:[\r\n]+[ \t]*)+(?=[^ \t\r\n])")
_COLON_NEXT = re.compile(r"\s*(?:#[^\r\n]*\s*)*:")
_TAG = re.compile(r"![^\s,\]}]*")
_COMMENT = re.compile(r"[ \t]*#")


def content_start(text: str, event: Any) -> tuple[int, int]:
    """1-based line and column where a value's own text begins, behind anchor, tag, quote and block head."""
    mark = event.start_mark
    index = mark.index
    if event.anchor or event.tag:
        found = _PROPERTIES.match(text, index)
        index = found.end() if found else index
    style = event.style if event.__class__ is ScalarEvent else None
    if style in ("'", '"'):
        index += 1
    elif style and event.value.strip():
        head = _BLOCK_HEAD.match(text, index)
        index = head.end() if head else index
    if index == mark.index:
        return mark.line + 1, mark.column + 1
    line, start = mark.line + 1, mark.index - mark.column
    for line_end in LINE_BREAK.finditer(text, mark.index, index):
        line, start = line + 1, line_end.end()
    return line, index - start + 1


def is_bare(text: str, key: Any, value: Any) -> bool:
    """Whether a key in braces has not even a colon."""
    return not value.style and not _COLON_NEXT.match(text, key.end_mark.index)


def is_commented_out(text: str, event: Any) -> bool:
    """Whether a comment stands where the value of an empty scalar should."""
    return not event.style and _COMMENT.match(text, event.end_mark.index) is not None


def type_mark(text: str, event: Any) -> tuple[int, int, str]:
    """1-based line and column of a value's type mark, and the mark as typed."""
    mark = event.start_mark
    found = _TAG.search(text, mark.index)
    ahead = found.start() - mark.index if found else 0
    return mark.line + 1, mark.column + 1 + ahead, found.group() if found else str(event.tag)
