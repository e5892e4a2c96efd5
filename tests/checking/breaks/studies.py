"""Breaks of the rules about how a study was taken and what its readings say."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

_HEAD = """# operation: bind-edge
# station: binder
# date: 2026-10-28
# size: M
# conditions: machine B-1, observer E2, operator 6 years on binders, second hour of the shift
"""

_EQUAL = "# operation: tack-end-rings\nstep,cycle,reading,rating,note\n" + "".join(
    f"ring,{cycle},3.0,100,\n" for cycle in range(1, 7)
)

BREAKS = [
    Break(
        "reading-single",
        "operations/hem-patch.yaml",
        "    time: untie-bundle\n    per: bundle\n",
        "    time: untie-bundle\n",
        ("studies/hem-patch.csv", "¦untie,"),
    ),
    Break(
        "readings-equal",
        "operations/tack-end-rings.yaml",
        "operation: tack-end-rings\n",
        "operation: tack-end-rings\ntimes: studies/again.csv\n",
        ("studies/again.csv", "¦ring,1"),
        add=("studies/again.csv", _EQUAL),
    ),
    Break("study-without-head", "studies/bind-edge.csv", _HEAD, "", ("studies/bind-edge.csv", "¦step,cycle")),
]
