"""Files made by several processes are the same as by one, and a fault in one of them is told."""

from __future__ import annotations

import os
import subprocess
import sys
from functools import partial

import pytest

from builder.rendering import forking
from builder.rendering.making import made
from builder.rendering.plan import PlannedFile


def _content(number: int) -> bytes:
    return f"{number}".encode()


def files(count: int) -> list[PlannedFile]:
    """So many small files, three to a group."""
    return [PlannedFile(f"{n}.txt", str(n), partial(_content, n), "pages", group=str(n // 3)) for n in range(count)]


@pytest.mark.parametrize("processes", [1, 2, 3])
def test_all_are_made_once_whoever_makes_them(processes: int) -> None:
    one = {each.file.path: each.data for each in made(files(200), processes)}
    assert one == {f"{number}.txt": f"{number}".encode() for number in range(200)}


def test_a_fault_in_a_process_is_raised_here() -> None:
    def broken() -> bytes:
        raise ValueError("no paper")

    many = [*files(150), PlannedFile("x.txt", "x", broken, "pages")]
    with pytest.raises(ValueError, match="no paper"):
        list(made(many, 2))


def test_no_process_is_forked_beside_threads_of_a_library(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(forking, "_threads_in", 0)
    before = forking.can_fork()
    forking.threads_started()
    assert not forking.can_fork()
    assert forking._threads_in == os.getpid()
    assert before in (True, False)


def test_a_small_set_and_then_a_large_one_ends() -> None:
    """A sheet set here starts the typesetter's threads; a build forked after that would wait forever."""
    code = (
        "from pathlib import Path; import tempfile\n"
        "from builder.pipeline import build_plant\n"
        "from tests.checking.overlay import lay_over\n"
        "folder = Path(tempfile.mkdtemp())\n"
        "plant = lay_over('{}', folder / 'plant')\n"
        "build_plant(plant, folder / 'a')\n"
        "from builder.rendering import making; making._WORTH_IT = 2\n"
        "build_plant(plant, folder / 'b')\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True, timeout=240)
