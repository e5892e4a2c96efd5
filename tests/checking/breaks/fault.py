"""A fault put into a copy of the demo, where its rule must find it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Break:
    """A fault put into the demo.

    at    : where the finding stands, when not in the new text: a file and a text there
    add   : a file to write first
    small : a photo to make so small
    """

    rule: str
    file: str
    old: str
    new: str
    at: tuple[str, str] | None = None
    add: tuple[str, str] | None = None
    small: str | None = None
