"""The manifest of an output folder: what each file was made from, so that nothing unchanged is rendered again."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

NAME = ".seamboard.json"
_FORM = 1


@dataclass(frozen=True, slots=True)
class Made:
    """A file made earlier: the hash of what it was made from, its size in bytes, and the letters it shows."""

    key: str
    size: int
    letters: str = ""


def read_manifest(out: Path) -> dict[str, Made]:
    """Files of the last build by path. A missing, broken or older manifest is an empty one: all is made again."""
    try:
        whole = json.loads((out / NAME).read_text(encoding="utf-8"))
        if whole["form"] != _FORM:
            return {}
        return {path: Made(*entry) for path, entry in whole["files"].items()}
    except (OSError, ValueError, KeyError, TypeError):
        return {}


def manifest_text(files: dict[str, Made]) -> str:
    """The manifest as it is stored, sorted, so that equal builds store equal bytes."""
    plain = {path: [made.key, made.size, made.letters] for path, made in sorted(files.items())}
    return json.dumps({"form": _FORM, "files": plain}, ensure_ascii=False, indent=0)
