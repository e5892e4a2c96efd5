"""A theme: folders of templates, the first that has a file gives it. What a theme leaves out is the program's own.

A plant's theme lies in its own folder `themes/<name>/`, or comes with the program. It needs only the files it changes:
`site/*.html`, `site/assets/*`, `sheets/*.typ`. `site/assets/theme.css` is empty in the program's own theme and read
last, so colours and type can be changed without copying a style sheet.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from builder.errors import SeamboardError

BASE = "manila"
"""The program's own theme, which has every file."""


@dataclass(frozen=True, slots=True)
class Theme:
    """A theme by its folders, its own first."""

    name: str
    folders: tuple[Path, ...]

    @property
    def site(self) -> tuple[Path, ...]:
        """Folders of page templates."""
        return tuple(folder / "site" for folder in self.folders if (folder / "site").is_dir())

    @property
    def sheets(self) -> tuple[Path, ...]:
        """Folders of sheet templates."""
        return tuple(folder / "sheets" for folder in self.folders if (folder / "sheets").is_dir())

    def assets(self) -> dict[str, Path]:
        """The files pages share, by name."""
        found: dict[str, Path] = {}
        for folder in self.site:
            for file in sorted((folder / "assets").glob("*")):
                found.setdefault(file.name, file)
        return dict(sorted(found.items()))

    def digest(self) -> str:
        """Hash of all its files."""
        found = hashlib.sha256()
        for folder in self.folders:
            for file in sorted(path for path in folder.rglob("*") if path.is_file()):
                found.update(file.relative_to(folder).as_posix().encode())
                found.update(file.read_bytes())
        return found.hexdigest()


def theme_of(name: str, plant: Path | None = None) -> Theme:
    """The theme of a name, from the plant's folder or the program's. Raises SeamboardError where there is none."""
    own = next((folder for folder in _places(name, plant) if folder.is_dir()), None)
    base = next((folder for folder in _places(BASE, None) if folder.is_dir()), None)
    if own is None or base is None:
        known = ", ".join(sorted(theme_names(plant)))
        raise SeamboardError(f"there is no theme called {name}; there are {known}")
    return Theme(name, (own,) if own == base else (own, base))


def theme_names(plant: Path | None = None) -> set[str]:
    """Names of the themes there are."""
    return {folder.name for top in _tops(plant) if top.is_dir() for folder in top.iterdir() if folder.is_dir()}


def _places(name: str, plant: Path | None) -> Iterator[Path]:
    yield from (top / name for top in _tops(plant))


def _tops(plant: Path | None) -> Iterator[Path]:
    """The plant's own, then inside the installed package, then beside it in a checkout."""
    if plant is not None:
        yield plant / "themes"
    package = Path(__file__).resolve().parent.parent
    yield package / "themes"
    yield package.parent / "themes"
