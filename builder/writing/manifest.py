"""The manifest of an output folder: what each file was made from, so that nothing unchanged is rendered again."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

NAME = ".seamboard.json"
_FORM = 2


@dataclass(frozen=True, slots=True)
class Made:
    """A file made earlier: the hash of what it was made from, its size in bytes, the letters it shows, and notes."""

    key: str
    size: int
    letters: str = ""
    notes: tuple[str, ...] = ()


def read_manifest(out: Path) -> dict[str, Made]:
    """Files of the last build by path. A missing, broken or older manifest is an empty one: all is made again."""
    try:
        whole = json.loads((out / NAME).read_text(encoding="utf-8"))
        if whole["form"] != _FORM:
            return {}
        files = whole["files"].items()
        return {path: Made(key, size, letters, tuple(notes)) for path, (key, size, letters, notes) in files}
    except (OSError, ValueError, KeyError, TypeError, IndexError):
        return {}


def manifest_text(files: dict[str, Made]) -> str:
    """The manifest as it is stored, sorted, so that equal builds store equal bytes."""
    plain = {path: [made.key, made.size, made.letters, made.notes] for path, made in sorted(files.items())}
    return json.dumps({"form": _FORM, "files": plain}, ensure_ascii=False, indent=0)
