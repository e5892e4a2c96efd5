"""Watching: batches of saves that really changed something."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable
from pathlib import Path

from builder.watching import changes


def batches(folder: Path, count: int, saves: Callable[[], None]) -> list[list[str]]:
    """The first batches while `saves` runs beside."""
    worker = threading.Thread(target=saves)
    found = []
    watcher = changes(folder, folder / "_out", stop_after=count)
    worker.start()
    for batch in watcher:
        found.append(batch)
    worker.join()
    return found


def test_a_save_is_one_batch_and_output_is_ignored(tmp_path: Path) -> None:
    """Two bursts 20 ms apart are one save; files of the output and rewrites of the same bytes are none."""
    (tmp_path / "a.yaml").write_text("a: 1")
    (tmp_path / "_out").mkdir()

    def saves() -> None:
        time.sleep(0.4)
        (tmp_path / "_out" / "page.html").write_text("x")
        (tmp_path / "a.yaml").write_text("a: 1")
        time.sleep(0.3)
        (tmp_path / "a.yaml").write_text("a:")
        time.sleep(0.02)
        (tmp_path / "a.yaml").write_text("a: 2")

    assert batches(tmp_path, 1, saves) == [["a.yaml"]]
    assert (tmp_path / "a.yaml").read_text() == "a: 2"


def test_new_and_deleted_files_count(tmp_path: Path) -> None:
    """A renamed file is a change of both names."""
    (tmp_path / "old.yaml").write_text("a: 1")

    def saves() -> None:
        time.sleep(0.4)
        (tmp_path / "old.yaml").rename(tmp_path / "new.yaml")

    assert batches(tmp_path, 1, saves) == [["new.yaml", "old.yaml"]]
