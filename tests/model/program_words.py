"""Every sentence the program itself can say: what a language's table must have.

    python -m tests.model.program_words es      lists what the table of Spanish lacks, and what it has too much

Found in the source by `say("…")` and `phrase("…")`, in the themes' templates, and in the tables whose words are shown.
"""

from __future__ import annotations

import ast
import json
import re
import sys
from collections.abc import Iterator
from pathlib import Path

from builder.computing.relaxation import OWN, PUBLISHED
from builder.model import (
    HAZARDS,
    KINDS,
    PROTECTIONS,
    PUBLISHED_PERCENT,
    SEAM_WORDS,
    STITCHES,
    Plant,
    tongue_of,
)
from builder.model.frequency import LOTS

ROOT = Path(__file__).parents[2]
_IN_TEMPLATE = re.compile(r"""\bsay\(\s*("(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*')""")
_FORMS = ("sheet", "foam", "webbing", "tape", "thread", "hardware", "zip")


def program_words() -> set[str]:
    """All of them, in English."""
    return {*_in_code(), *_in_templates(), *_in_tables()}


def _in_code() -> Iterator[str]:
    for file in (ROOT / "builder").rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.args):
                continue
            first = node.args[0]
            if node.func.id in ("say", "phrase") and isinstance(first, ast.Constant) and isinstance(first.value, str):
                yield first.value


def _in_templates() -> Iterator[str]:
    for file in (ROOT / "themes").rglob("*.html"):
        for typed in _IN_TEMPLATE.findall(file.read_text(encoding="utf-8")):
            yield ast.literal_eval(typed)


def _in_tables() -> Iterator[str]:
    for hazard in HAZARDS.values():
        yield from (hazard.name, hazard.signal, hazard.text)
    for guard in PROTECTIONS.values():
        yield from (guard.name, guard.text)
    for kind in KINDS.values():
        yield from (kind.title, *kind.settings)
    yield from (stitch.title for stitch in STITCHES.values())
    yield from SEAM_WORDS
    yield from LOTS
    yield from _FORMS
    yield from ("critical", "major", "minor", "error", "warning", "note", "off")
    yield from ("constant", "in sight", "free", "sitting", "standing", "sit-stand")
    yield from ("edge stop", "folder", "drawn line", "free hand", "knife", "box", "inverted box")
    yield from ("left", "right", "top", "bottom", "thread", "bobbin thread", "binding", "zip", "elastic")
    yield from ("personal", "fatigue", "delays", "contingency", "air")
    yield from (OWN, PUBLISHED)
    yield from (words for words in PUBLISHED_PERCENT if not words.startswith("force,"))
    yield Plant.model_fields["lock_out"].default


def main() -> None:
    """Print what a language lacks, as JSON."""
    has = set(tongue_of(sys.argv[1]).words) if len(sys.argv) > 1 else set()
    words = program_words()
    print(json.dumps({"missing": sorted(words - has), "too much": sorted(has - words)}, ensure_ascii=False, indent=1))


if __name__ == "__main__":
    main()
