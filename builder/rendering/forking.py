"""Whether this process may be forked: not beside running threads, for what one of them held is never let go."""

from __future__ import annotations

import multiprocessing
import os
import threading

_threads_in = 0  # the process in which a library has threads that Python doesn't know of


def threads_started() -> None:
    """Told by whatever starts threads of its own."""
    global _threads_in
    _threads_in = os.getpid()


def can_fork() -> bool:
    """Whether the system forks, and no thread runs here but the one that asks."""
    forks = "fork" in multiprocessing.get_all_start_methods()
    return forks and threading.active_count() == 1 and _threads_in != os.getpid()
