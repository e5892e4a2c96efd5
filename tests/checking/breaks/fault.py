"""A fault put into a copy of the demo, where its rule must find it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Break:
    """A fault put into the demo."""

    rule: str
    file: str
    old: str
    new: str
    at: tuple[str, str] | None = None
    add: tuple[str, str] | None = None
