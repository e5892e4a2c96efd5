"""Allowances on labour, in both conventions of work study."""

from __future__ import annotations

from builder.model import Allowances


def allowance_factor(allowance: float, convention: str) -> float:
    """Standard time ÷ basic time.

    share of basic time: 1 + a; share of the shift: 1 ÷ (1 − a), 0 ≤ a < 1.
    Source: Stevenson, *Operations Management*, ch. 7 (AF_job, AF_day), memory.

    >>> allowance_factor(0.25, "share of basic time"), allowance_factor(0.2, "share of the shift")
    (1.25, 1.25)
    """
    if convention == "share of the shift":
        return 1.0 / (1.0 - allowance)
    return 1.0 + allowance


def plant_factor(allowances: Allowances) -> float:
    """The plant's factor: its personal, fatigue and delay allowances added."""
    total = float(allowances.personal + allowances.fatigue + allowances.delays)
    return allowance_factor(total, allowances.convention)
