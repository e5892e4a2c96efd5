"""A seeded storm of random edits to the demo: `check` answers with findings, never with an exception."""

from __future__ import annotations

import random
import re
from pathlib import Path

import pytest

from builder.pipeline import check_plant

EDITS = 120
_WORD = re.compile(r"[A-Za-z][\w-]+")
_NUMBER = re.compile(r"\d+(?:\.\d+)?")


def one_edit(rng: random.Random, text: str) -> str:
    """Delete, double, swap or indent a line; scale a number; misspell or exchange a word; cut the file."""
    lines = text.split("\n")
    at = rng.randrange(len(lines))
    match rng.randrange(8):
        case 0:
            del lines[at]
        case 1:
            lines.insert(at, lines[at])
        case 2:
            other = rng.randrange(len(lines))
            lines[at], lines[other] = lines[other], lines[at]
        case 3:
            lines[at] = "  " + lines[at]
        case 4:
            numbers = list(_NUMBER.finditer(text))
            if numbers:
                found = rng.choice(numbers)
                return (
                    text[: found.start()]
                    + rng.choice(["0", "-1", "1e9", "99999", "0.001", "1/0"])
                    + text[found.end() :]
                )
        case 5:
            words = list(_WORD.finditer(text))
            found = rng.choice(words)
            letters = list(found[0])
            letters[rng.randrange(len(letters))] = rng.choice("abcxyz -_'\"{}[]:,#")
            return text[: found.start()] + "".join(letters) + text[found.end() :]
        case 6:
            words = list(_WORD.finditer(text))
            one, other = rng.choice(words), rng.choice(words)
            return text[: one.start()] + other[0] + text[one.end() :]
        case _:
            return text[: rng.randrange(len(text))]
    return "\n".join(lines)


@pytest.mark.parametrize("seed", range(EDITS))
def test_a_random_edit_never_breaks_the_check(seed: int, demo: Path) -> None:
    """Findings have a place in a file that exists, a message, and an order."""
    rng = random.Random(seed)
    path = rng.choice(sorted(demo.rglob("*.yaml")) + sorted(demo.rglob("*.csv")))
    path.write_text(one_edit(rng, path.read_text(encoding="utf-8")), encoding="utf-8")
    findings = check_plant(demo).findings
    assert list(findings) == sorted(findings, key=lambda one: one.sort_key)
    for one in findings:
        assert one.message
        assert one.remedy, one
        assert one.place.line >= 1
        assert (demo / one.place.file).exists() or one.place.file == "plant.yaml"
