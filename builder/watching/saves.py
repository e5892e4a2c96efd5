"""Saves in a folder, one batch after another: what changed its content, half-written files waited out.

Editors save in bursts and tools rewrite files with the same bytes; so a batch ends when nothing has happened for
50 ms (shorter reads half a file), and only files whose content really changed count.
"""

from __future__ import annotations

import hashlib
import queue
from collections.abc import Iterator
from pathlib import Path
from typing import Any

QUIET_S = 0.05
_IGNORED = {"opened", "closed_no_write"}


def changes(folder: Path, ignore: Path, stop_after: int | None = None) -> Iterator[list[str]]:
    """Names of changed files, relative to the folder, batch by batch, without end.

    ignore     : the output folder, which may lie inside
    stop_after : for tests, the number of batches after which to stop
    """
    from watchdog.events import FileSystemEvent, FileSystemEventHandler
    from watchdog.observers import Observer

    events: queue.Queue[str] = queue.Queue()

    class Handler(FileSystemEventHandler):
        def on_any_event(self, event: FileSystemEvent) -> None:
            if event.event_type not in _IGNORED:
                events.put(str(event.src_path))

    known = digests(folder, ignore)
    observer: Any = Observer()
    observer.schedule(Handler(), str(folder), recursive=True)
    observer.start()
    try:
        while stop_after is None or stop_after > 0:
            _batch(events)
            now = digests(folder, ignore)
            changed = sorted(name for name in known.keys() | now.keys() if known.get(name) != now.get(name))
            known = now
            if changed:
                yield changed
                stop_after = None if stop_after is None else stop_after - 1
    finally:
        observer.stop()
        observer.join()


def _batch(events: queue.Queue[str]) -> None:
    """Wait for an event, then until none has come for a moment."""
    events.get()
    while True:
        try:
            events.get(timeout=QUIET_S)
        except queue.Empty:
            return


def digests(folder: Path, ignore: Path) -> dict[str, str]:
    """Content hash of every file of a folder by relative name, hidden files and the output left out."""
    out = ignore.resolve()
    found: dict[str, str] = {}
    for path in sorted(folder.rglob("*")):
        inside = path.relative_to(folder)
        if any(step.startswith(".") for step in inside.parts) or out in (path.resolve(), *path.resolve().parents):
            continue
        try:
            found[inside.as_posix()] = hashlib.sha256(path.read_bytes()).hexdigest()
        except OSError:
            continue  # a folder, or a file that vanished meanwhile
    return found
