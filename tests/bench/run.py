"""`python -m tests.bench.run [OPERATIONS]`: what share of a build goes where, and four ratios."""

from __future__ import annotations

import random
import subprocess
import sys
import tempfile
from pathlib import Path
from time import perf_counter

from builder.computing import summarise
from builder.model import Precision, read_study
from builder.pipeline import build_plant, check_plant
from builder.reading import read_folder, read_table
from tests.bench.make_plant import make_plant

_BARE = "import click\n@click.group()\ndef g():\n    'Bare.'\n@g.command()\ndef a():\n    'A.'\ng(['--help'])"


def main(operations: int) -> None:
    """Print the ratios for a plant of that many operations."""
    with tempfile.TemporaryDirectory() as folder:
        plant = make_plant(operations, Path(folder) / "plant")
        reading = _best(lambda: read_folder(plant))
        checking = _best(lambda: check_plant(plant))
        print(f"check of {operations} operations against reading alone: {checking / reading:.1f} ×")
        out = Path(folder) / "out"
        started = perf_counter()
        built = build_plant(plant, out)
        first = perf_counter() - started
        print(f"shares of a first build: reading {100 * reading / first:.0f} %", end="")
        for stage, seconds in sorted(built.seconds.items(), key=lambda one: -one[1]):
            print(f", {stage} {100 * seconds / first:.0f} %", end="")
        started = perf_counter()
        build_plant(plant, out)
        print(f"\nbuild with nothing changed against the first: {(perf_counter() - started) / first:.2f} ×")
    reading, summing = _study()
    print(f"a study of 500 steps × 50 cycles: its statistics against reading it {summing / reading:.2f} ×")
    print(f"--help against a bare click group: {_start(['-m', 'builder', '--help']) / _start(['-c', _BARE]):.2f} ×")


def _study() -> tuple[float, float]:
    """Seconds to read a study of 25,000 readings, and to work out what it says."""
    rolls = random.Random(3)
    rows = [
        f"step-{step},{cycle},{rolls.gauss(4, 0.4):.2f},{rolls.choice((90, 95, 100, 105, 110))},"
        for cycle in range(1, 51)
        for step in range(500)
    ]
    data = "\n".join(["# operation: big", "step,cycle,reading,rating,note", *rows]).encode()
    study = read_study(read_table(data, "big.csv"), [])
    assert study is not None
    reading = _best(lambda: read_study(read_table(data, "big.csv"), []))
    return reading, _best(lambda: summarise(study, Precision()))


def _best(work: object, tries: int = 3) -> float:
    found = []
    for _ in range(tries):
        started = perf_counter()
        work()  # type: ignore[operator]
        found.append(perf_counter() - started)
    return min(found)


def _start(arguments: list[str]) -> float:
    return _best(lambda: subprocess.run([sys.executable, *arguments], check=True, capture_output=True), tries=7)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 200)
