"""Making planned files, in several processes where that is faster: a sheet, its page and its figures in one of them.

Threads gain nothing here, because setting and drawing hold the interpreter. Processes are forked, so that each has the
views and templates at once; where the system can't fork, or other threads run, one process does it all.
"""

from __future__ import annotations

import multiprocessing
import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from time import perf_counter

from builder.rendering.forking import can_fork
from builder.rendering.plan import PlannedFile

_BATCH = 24
"""Files handed to a process at a time: few enough to share the work evenly, many enough that little is drawn twice."""
_WORTH_IT = 3 * _BATCH
_files: Sequence[PlannedFile] = ()


@dataclass(frozen=True, slots=True)
class MadeFile:
    """A file made: its content, what could not be shown well, and the seconds it took."""

    file: PlannedFile
    data: bytes
    notes: tuple[str, ...]
    seconds: float


def made(files: Sequence[PlannedFile], processes: int | None = None) -> Iterator[MadeFile]:
    """All the files, as they get ready. `processes` : as many as there are cores when left out."""
    count = processes or _cores()
    if count < 2 or len(files) < _WORTH_IT or not can_fork():
        yield from map(_make, files)
        return
    global _files
    _files = files
    try:
        with multiprocessing.get_context("fork").Pool(count) as pool:
            for batch in pool.imap_unordered(_make_batch, _batches(files)):
                for number, data, notes, seconds in batch:
                    yield MadeFile(files[number], data, notes, seconds)
    finally:
        _files = ()


def _make(file: PlannedFile) -> MadeFile:
    started = perf_counter()
    data = file.make()
    return MadeFile(file, data, file.notes(), perf_counter() - started)


def _make_batch(numbers: Sequence[int]) -> list[tuple[int, bytes, tuple[str, ...], float]]:
    """In a process of the pool: only numbers come in, and what was made goes back."""
    results = ((number, _make(_files[number])) for number in numbers)
    return [(number, one.data, one.notes, one.seconds) for number, one in results]


def _batches(files: Sequence[PlannedFile]) -> list[list[int]]:
    """Numbers of files, those of a group together, in batches."""
    groups: dict[str, list[int]] = {}
    for number, file in enumerate(files):
        groups.setdefault(file.group, []).append(number)
    batches: list[list[int]] = [[]]
    for numbers in groups.values():
        if len(batches[-1]) + len(numbers) > _BATCH and batches[-1]:
            batches.append([])
        batches[-1] += numbers
    return batches


def _cores() -> int:
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
