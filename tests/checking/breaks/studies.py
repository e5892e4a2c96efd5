"""Breaks of the rules about how a study was taken and what its readings say."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

_HEAD = """# operation: bind-edge
# station: binder
# date: 2026-10-28
# size: M
# conditions: machine B-1, observer E2, operator 6 years on binders, second hour of the shift
"""

BREAKS = [
    Break("study-without-head", "studies/bind-edge.csv", _HEAD, "", ("studies/bind-edge.csv", "¦step,cycle")),
]
