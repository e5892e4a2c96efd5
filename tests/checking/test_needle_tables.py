"""The rules' tables of needles, thread and goods hang together."""

from __future__ import annotations

from itertools import pairwise

from builder.checking.rules.operation.needle_for_thread import USUAL
from builder.checking.rules.operation.needle_point_for_goods import FOR, HARM
from builder.model import NEEDLE_POINTS


def test_a_thicker_thread_never_takes_a_thinner_needle() -> None:
    """Both ends of the sizes rise with the thread, and neighbours overlap."""
    for (tex, sizes), (next_tex, next_sizes) in pairwise(USUAL):
        assert tex < next_tex
        assert sizes.low <= next_sizes.low <= sizes.high <= next_sizes.high


def test_every_family_of_points_is_judged() -> None:
    """A new point needs its line."""
    assert {point.family for point in NEEDLE_POINTS.values()} == set(HARM)


def test_the_point_offered_does_no_harm() -> None:
    """Following the remedy ends the finding."""
    harmed = {structure for harm in HARM.values() for structure in harm}
    assert harmed == set(FOR)
    for structure, point in FOR.items():
        assert structure not in HARM[NEEDLE_POINTS[point].family]
