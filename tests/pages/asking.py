"""What journeys in both browsers ask of a page, and how they wait for an answer."""

from __future__ import annotations

import time
from collections.abc import Callable

SIZES = [(320, 640), (1920, 1080), (3840, 2160)]
"""Windows of a phone, of a full-HD and of a 4K screen."""
WITHIN = "document.documentElement.scrollWidth <= innerWidth"
"""Nothing is wider than the window."""
SCREENS = "[...document.querySelectorAll('.screen')]"
SHOWN = f"{SCREENS}.filter(s => s.offsetParent !== null)"
ANCHORS = f"{SCREENS}.map(s => s.id).join(' ')"
SHOWN_ANCHORS = f"{SHOWN}.map(s => s.id).join(' ')"


def wait_until(ask: Callable[[str], object], expression: str, seconds: float = 20.0) -> None:
    """Ask again and again until an expression holds. Raises TimeoutError."""
    until = time.monotonic() + seconds
    while not ask(f"Boolean({expression})"):
        if time.monotonic() > until:
            raise TimeoutError(expression)
        time.sleep(0.1)
