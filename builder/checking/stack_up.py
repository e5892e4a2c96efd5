"""A chain of toleranced dimensions: how far their sum may be off.

Each link counts with its sensitivity, the change of the sum for a unit of its own change. Uneven limits are taken as
their middle ± half their width. Root of the sum of squares: a textbook identity for independent errors (memory).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Link:
    """A dimension of the chain: its name, half its tolerance width [mm], and its sensitivity [mm/mm]."""

    name: str
    half_mm: float
    sensitivity: float


def worst_case(links: Sequence[Link]) -> float:
    """Every link at its limit at once: Σ |aᵢ| tᵢ, mm."""
    return math.fsum(abs(one.sensitivity) * one.half_mm for one in links)


def root_sum_square(links: Sequence[Link]) -> float:
    """Links off independently of each other: √ Σ (aᵢ tᵢ)², mm."""
    return math.sqrt(math.fsum((one.sensitivity * one.half_mm) ** 2 for one in links))
