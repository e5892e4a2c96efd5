"""Small plants for tests: the plant of the rules' examples with files written over it."""

from __future__ import annotations

from pathlib import Path

from builder.finding import Finding
from builder.model import Linked, link
from builder.reading import read_folder
from tests.checking.overlay import lay_over


def linked(example: str, folder: Path) -> Linked:
    """The small plant with an example laid over it, linked."""
    found = link(read_folder(lay_over(example or "{}", folder / "plant")))
    assert isinstance(found, Linked), found
    return found


def found(example: str, folder: Path) -> list[Finding]:
    """Findings of linking alone."""
    return list(linked(example, folder).findings)
