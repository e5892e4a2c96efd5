"""`python -m tests.bench.storm [EDITS]`: seeded single edits to a copy of the demo, and what the check makes of each.

An edit deletes a line, swaps two, scales a number or misspells a word. It is found (a finding more), harmless (the
file still says the same), a word of a sentence (which no rule reads for spelling), a reading of a study (one of many),
or a fact that passed: those are listed, to be looked at.
"""

from __future__ import annotations

import os
import random
import re
import shutil
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import yaml

from builder.pipeline import check_plant

DEMO = Path(__file__).resolve().parents[2] / "instructions"
SENTENCES = {"do", "key", "why", "title", "note", "cause", "sign", "stop", "alt", "caption", "label", "what", "how"}
SENTENCES |= {"set at", "cautions", "start", "close down", "relief", "verify", "source", "document", "readings"}
SENTENCES |= {"composition", "colour", "because"}
_WORD, _NUMBER = re.compile(r"[A-Za-z][\w-]+"), re.compile(r"(?<![\w.])\d+(?:\.\d+)?")


def edited(rng: random.Random, text: str) -> tuple[str, str]:
    """(what was done, the new text)."""
    lines = text.split("\n")
    body = [number for number, line in enumerate(lines) if line.strip() and not line.lstrip().startswith("#")]
    at, other = rng.choice(body), rng.choice(body)
    match rng.choice(("delete", "swap", "scale", "rename")):
        case "delete":
            return f"delete {lines.pop(at).strip()}", "\n".join(lines)
        case "swap":
            lines[at], lines[other] = lines[other], lines[at]
            return f"swap {lines[other].strip()} | {lines[at].strip()}", "\n".join(lines)
        case "scale":
            found = rng.choice(list(_NUMBER.finditer(text)) or list(_WORD.finditer(text)))
            number = float(found[0]) if found[0][0].isdecimal() else 1.0
            new = f"{number * rng.choice([0.1, 0.5, 2, 10]):g}"
        case _:
            found = rng.choice(list(_WORD.finditer(text)))
            new = found[0][:-1] + rng.choice("xyzq") + found[0][-1]
    line = lines[text.count("\n", 0, found.start())].strip()
    return f"{found[0]} -> {new} in {line}", text[: found.start()] + new + text[found.end() :]


def kind_of(path: Path, before: str, after: str) -> str:
    """What an edit that nothing found has changed."""
    if path.suffix == ".csv":
        return "harmless" if sorted(before.split("\n")) == sorted(after.split("\n")) else "a reading of a study"
    changed = set(_differences(yaml.safe_load(before), yaml.safe_load(after), ""))
    if not changed:
        return "harmless"
    return "words of a sentence" if changed <= SENTENCES else "a fact"


def _differences(one: Any, other: Any, key: str) -> Iterator[str]:
    """Keys whose values differ, the nearest above a list or text."""
    if isinstance(one, dict) and isinstance(other, dict):
        for name in {*one, *other}:
            inner = key if key in SENTENCES else str(name)
            yield from _differences(one.get(name), other.get(name), inner)
    elif isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        for left, right in zip(one, other, strict=True):
            yield from _differences(left, right, key)
    elif one != other:
        yield key


def main(edits: int) -> None:
    """Print each fact that passed, then how many edits came to what."""
    os.environ["SOURCE_DATE_EPOCH"] = "1795564800"
    counts: Counter[str] = Counter()
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "instructions"
        shutil.copytree(DEMO, copy)
        files = sorted((*copy.rglob("*.yaml"), *copy.rglob("*.csv")))
        for seed in range(edits):
            rng = random.Random(seed)
            path = rng.choice(files)
            before = path.read_text(encoding="utf-8")
            what, after = edited(rng, before)
            path.write_text(after, encoding="utf-8")
            kind = "found" if check_plant(copy).findings else kind_of(path, before, after)
            path.write_text(before, encoding="utf-8")
            counts[kind] += 1
            if kind == "a fact":
                print(f"{seed} {path.relative_to(copy)}: {what[:150]}", flush=True)
    print(", ".join(f"{kind} {count}" for kind, count in counts.most_common()))


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 500)
