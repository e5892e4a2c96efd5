"""Relaxation: what a station's strain adds to basic time, and how much of it can be rested inside machine time.

The published percents and the words for them are in the model. Not here: personal needs, basic fatigue and delays,
which hold for the whole plant (allowance.py).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.model import PUBLISHED_PERCENT, Relaxation

PUBLISHED = "published table"
OWN = "plant’s own"

NO_REST_S = 30.0
"""A spell no longer than this is no rest."""
WHOLE_REST_S = 90.0
"""A spell longer than this is rest from end to end."""


@dataclass(frozen=True, slots=True)
class StrainFactor:
    """One factor of a station's relaxation.

    words  : its name, as `noise, intermittent loud`
    share  : share of basic time
    source : PUBLISHED or OWN
    """

    words: str
    share: Fraction
    source: str


def strain_factors(relaxation: Relaxation | None, own: Mapping[str, Fraction]) -> Iterator[StrainFactor]:
    """The factors of a station in the order of the published table, air last.

    own : the plant's shares by the name of the figure they replace
    Source: variable-allowance table after the ILO, in Stevenson, *Operations Management*, 14th ed. (2021), table 7.4,
    read. Each figure is a percent of basic time (there: normal time); they are added, not compounded.

    >>> [str(one.share) for one in strain_factors(Relaxation(standing=True, monotony="high"), {})]
    ['1/50', '1/25']
    """
    if relaxation is None:
        return
    for name in relaxation.figures():
        if name in own:
            yield StrainFactor(name, own[name], OWN)
        else:
            yield StrainFactor(name, Fraction(PUBLISHED_PERCENT[name], 100), PUBLISHED)
    if relaxation.air is not None:
        # The table gives a range only, so the figure is the plant's judgement.
        yield StrainFactor("air", relaxation.air, OWN)


def rest_in_spell(spell_s: float) -> float:
    """Rest in one unoccupied spell [s].

    spell ≤ 0.5 min: 0;  0.5 to 1.5 min: 1.5 × (spell − 0.5 min);  longer: the whole spell
    Source: ILO, *Introduction to Work Study*, memory. Raises ValueError for a negative spell.

    >>> [rest_in_spell(spell * 60) / 60 for spell in (0.4, 1.0, 2.0)]
    [0.0, 0.75, 2.0]
    """
    if spell_s < 0:
        raise ValueError("a spell is not negative")
    if spell_s <= NO_REST_S:
        return 0.0
    return 1.5 * (spell_s - NO_REST_S) if spell_s <= WHOLE_REST_S else spell_s
