"""Text with emphasis, parsed once: runs for paper, safe HTML for pages.

Only emphasis is Markdown here; a link, an image, a heading or HTML stays the characters that were typed. Not
here: where a line breaks, and what strong or emphasised looks like.
"""

from __future__ import annotations

import html
import re
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from markdown_it import MarkdownIt

RunKind = Literal["text", "strong", "em"]
Run = tuple[RunKind, str]

_BLANKS = re.compile(r"[ \t\r\n\f\v]+")  # not the no-break space, which was typed on purpose
_TAGS: dict[str, str] = {"strong": "strong", "em": "em"}
_KEPT_TEXTS = 16384


@cache
def _parser() -> MarkdownIt:
    """The one parser: preset `zero` knows plain text only, so nothing but emphasis can get in."""
    from markdown_it import MarkdownIt

    return MarkdownIt("zero").enable("emphasis")


@lru_cache(maxsize=_KEPT_TEXTS)
def runs(text: str) -> tuple[Run, ...]:
    """The runs of a text, in order, neighbours of one kind joined; runs of blanks and line ends become one blank.

    Inside strong text an emphasis stays strong: the heavier wins.

    >>> runs("Panel face up, **notch away**.")
    (('text', 'Panel face up, '), ('strong', 'notch away'), ('text', '.'))
    """
    tokens = _parser().parseInline(_BLANKS.sub(" ", text).strip(" "))
    depth = {"strong": 0, "em": 0}
    found: list[Run] = []
    for token in tokens[0].children or ():
        mark = token.type.removesuffix("_open").removesuffix("_close")
        if mark in depth:
            depth[mark] += token.nesting
        elif token.content:
            _append(found, _kind(depth), token.content)
    return tuple(found)


def _kind(depth: dict[str, int]) -> RunKind:
    if depth["strong"]:
        return "strong"
    return "em" if depth["em"] else "text"


def _append(found: list[Run], kind: RunKind, content: str) -> None:
    """Add a run, joined to the one before it when both are of one kind."""
    if found and found[-1][0] == kind:
        content = found.pop()[1] + content
    found.append((kind, content))


def plain(text: str) -> str:
    """The text without its emphasis marks, for titles and text alternatives.

    >>> plain("Don't **lift** the foot.")
    "Don't lift the foot."
    """
    return "".join(content for _, content in runs(text))


@lru_cache(maxsize=_KEPT_TEXTS)
def to_html(text: str) -> str:
    """The text as HTML that is safe in an element and in an attribute's value: `strong` and `em`, all else escaped.

    >>> to_html("**Mind** the <hook> & needle")
    '<strong>Mind</strong> the &lt;hook&gt; &amp; needle'
    """
    return "".join(_element(kind, content) for kind, content in runs(text))


def _element(kind: RunKind, content: str) -> str:
    safe = html.escape(content, quote=True)
    tag = _TAGS.get(kind)
    return f"<{tag}>{safe}</{tag}>" if tag else safe
