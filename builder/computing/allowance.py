"""Allowances on labour: what turns basic time into standard time, line by line.

    standard = basic × (F + r) × (1 + policy)

    F : factor of the plant's personal, fatigue, delay and contingency allowances, in the plant's convention
    r : the station's relaxation, a share of basic time in both conventions

The published relaxation percents are shares of basic time, so r is added to F and never put under the shift's
convention, where the same percent would weigh more. Policy is a rise of the finished standard by agreement, neither
work nor rest: it multiplies, and pays, but holds no machine.
Source: ILO, *Introduction to Work Study* (contingency, relaxation, policy allowances), memory; the sum in one
expression is ours.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from builder.computing.relaxation import OWN, strain_factors
from builder.model import Allowances, Plant, Station


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


@dataclass(frozen=True, slots=True)
class AllowanceLine:
    """One allowance of a station.

    share  : of basic time, whatever the plant's convention
    source : who says so: the published table or the plant
    rest   : it is rest from fatigue, which may be taken while a machine runs; personal needs and delays are not
    """

    words: str
    share: Fraction
    source: str
    rest: bool = False


@dataclass(frozen=True, slots=True)
class StationAllowance:
    """All allowances on work at one station. `policy` is a share of the standard without it."""

    lines: tuple[AllowanceLine, ...] = ()
    policy: Fraction = Fraction(0)

    @property
    def work_factor(self) -> Fraction:
        """F + r: time with all allowances but policy ÷ basic time."""
        return 1 + sum((one.share for one in self.lines), Fraction(0))

    @property
    def rest(self) -> Fraction:
        """What of it is rest from fatigue, as a share of basic time."""
        return sum((one.share for one in self.lines if one.rest), Fraction(0))

    @property
    def factor(self) -> Fraction:
        """Standard time ÷ basic time, with nothing rested inside machine time."""
        return self.work_factor * (1 + self.policy)


def station_allowance(plant: Plant, station: Station) -> StationAllowance:
    """The plant's allowances and the station's relaxation, each as a share of basic time.

    A part p of allowances that are shares of the shift is p ÷ (1 − a) of basic time: so the parts add up to F − 1.
    """
    allowances = plant.allowances
    strain = (
        AllowanceLine(one.words, one.share, one.source, rest=True)
        for one in strain_factors(station.relaxation, plant.relaxation)
    )
    return StationAllowance((*_plant_lines(allowances), *strain), allowances.policy)


def _plant_lines(allowances: Allowances) -> Iterator[AllowanceLine]:
    parts = {
        "personal": allowances.personal,
        "fatigue": allowances.fatigue,
        "delays": allowances.delays,
        "contingency": allowances.contingency,
    }
    by_shift = allowances.convention == "share of the shift"
    divisor = 1 - sum(parts.values(), Fraction(0)) if by_shift else Fraction(1)
    for words, share in parts.items():
        if share or words != "contingency":
            yield AllowanceLine(words, share / divisor, OWN, rest=words == "fatigue")
