"""View objects of the search: what of each page can be found, and what a result says of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from builder.view.marking import shown

SearchField = Literal[
    "title", "code", "tag", "name", "where", "step", "setting", "key", "check", "fault", "why", "caution", "other"
]
"""What a text is on its page: it says how much a hit there counts. `tag` is a fingerprint's code, `name` the file's,
`where` the station and the products."""


@dataclass(frozen=True, slots=True)
class SearchText:
    """A text that can be found.

    label  : where on the page it stands, as a result says it: `Step 3`; '' where its words say so themselves
    anchor : the place on the page a result leads to, '' for its top
    """

    field: SearchField = shown()
    text: str = shown()
    label: str = shown(default="")
    anchor: str = shown(default="")


@dataclass(frozen=True, slots=True)
class SearchEntry:
    """A page that can be found.

    path     : from the first page of the language; it may lead out of the language's folder
    kind     : what sort of page, in words
    where    : a second line: station and products
    language : code of the page's language where it is not the one searched in, else ''
    """

    path: str = shown()
    kind: str = shown()
    title: str = shown()
    code: str = shown(default="")
    where: str = shown(default="")
    language: str = shown(default="")
    texts: tuple[SearchText, ...] = shown(default=())
