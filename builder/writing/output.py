"""Writes a build: everything is made beside the output folder first, then moved in, so there is never half a site."""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from types import TracebackType
from typing import Self

from builder.errors import UsageError
from builder.writing.manifest import NAME, Made, manifest_text, read_manifest


@dataclass(frozen=True, slots=True)
class Written:
    """Counts of a finished build."""

    changed: int
    unchanged: int
    removed: int


@dataclass(slots=True)
class Output:
    """An output folder being rebuilt. Used as a context manager: leaving it by an exception changes nothing.

    `keep` is asked for each file with the hash of what it is made from; where that changed, `put` takes the new one.
    `finish` moves the new files in, each atomically, and takes away files of an earlier build.
    """

    folder: Path
    _before: dict[str, Made] = field(default_factory=dict)
    _after: dict[str, Made] = field(default_factory=dict)
    _staged: set[str] = field(default_factory=set)
    _staging: Path | None = None

    def __enter__(self) -> Self:
        _refuse_foreign(self.folder)
        self._before = read_manifest(self.folder)
        self.folder.parent.mkdir(parents=True, exist_ok=True)
        self._staging = Path(tempfile.mkdtemp(prefix=f".{self.folder.name}-", dir=self.folder.parent))
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._staging is not None:
            shutil.rmtree(self._staging, ignore_errors=True)

    def keep(self, path: str, key: str) -> bool:
        """Keep a file as the last build left it, if that had the same key and the file is still there."""
        before = self._before.get(path)
        if before is None or before.key != key or _size(self.folder / path) != before.size:
            return False
        self._after[path] = before
        return True

    def put(self, path: str, key: str, data: bytes, letters: bool = False, notes: tuple[str, ...] = ()) -> None:
        """Take a file that was made. `letters`: those it shows are kept with it; `notes`: what could not be shown."""
        shown = "".join(sorted(set(data.decode()))) if letters else ""
        self._after[path] = Made(key, len(data), shown, notes)
        assert self._staging is not None
        target = self._staging / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(data)
        self._staged.add(path)

    def make(self, path: str, key: str, content: Callable[[], bytes]) -> None:
        """Make a file unless it can be kept."""
        if not self.keep(path, key):
            self.put(path, key, content())

    @property
    def letters(self) -> str:
        """All letters the files made or kept so far show."""
        return "".join(sorted(set().union(*(made.letters for made in self._after.values()))))

    @property
    def notes(self) -> dict[str, tuple[str, ...]]:
        """Notes of the files made or kept so far that have any, by path."""
        return {path: made.notes for path, made in self._after.items() if made.notes}

    def finish(self) -> Written:
        """Move the new files in, remove those no longer made, and store the manifest last."""
        assert self._staging is not None
        changed = 0
        for path in sorted(self._staged):
            target = self.folder / path
            target.parent.mkdir(parents=True, exist_ok=True)
            changed += not _same(self._staging / path, target)
            os.replace(self._staging / path, target)
        stale = [path for path in self._before if path not in self._after]
        for path in stale:
            (self.folder / path).unlink(missing_ok=True)
            _remove_empty(self.folder / path, self.folder)
        self.folder.mkdir(parents=True, exist_ok=True)
        manifest = self._staging / NAME
        manifest.write_text(manifest_text(self._after), encoding="utf-8")
        os.replace(manifest, self.folder / NAME)
        return Written(changed, len(self._after) - changed, len(stale))


def _refuse_foreign(folder: Path) -> None:
    """An output folder is ours, empty, or new; anything else might hold somebody's work."""
    if folder.exists() and not folder.is_dir():
        raise UsageError(f"{folder} is a file, not a folder")
    if folder.is_dir() and not (folder / NAME).exists() and any(folder.iterdir()):
        raise UsageError(f"{folder} holds files that no build made; name an empty or new folder with --to")


def _size(path: Path) -> int:
    try:
        return path.stat().st_size
    except OSError:
        return -1


def _same(new: Path, old: Path) -> bool:
    return _size(new) == _size(old) and new.read_bytes() == old.read_bytes()


def _remove_empty(path: Path, top: Path) -> None:
    for folder in path.parents:
        if folder == top or any(folder.iterdir()):
            return
        folder.rmdir()


def write_file(path: Path, content: bytes) -> None:
    """Write one file atomically: a reader sees the old one or the new one, never half of it."""
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(prefix=f".{path.name}-", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
        Path(name).chmod(0o644)  # mkstemp makes it private
        os.replace(name, path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
