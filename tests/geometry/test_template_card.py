"""Cards of gauges and marks."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.geometry import GeometryFault, gauge_card, marking_card
from builder.geometry.template_card import GRIP_MM, LEAST_HOLE_MM, TONGUE_MM, Places

limits = st.floats(0.5, 400)


@given(limits, st.floats(0.1, 20))
def test_the_ends_of_a_gauge_are_as_wide_as_its_limits(low: float, band: float) -> None:
    """Both from the same datum edge, and the body tells them apart from itself."""
    card = gauge_card(low, low + band)
    assert card.go is not None
    assert card.no_go is not None
    assert card.go[2] - card.go[0] == pytest.approx(low)
    assert card.no_go[2] - card.no_go[0] == pytest.approx(low + band)
    assert card.go[0] == card.no_go[0] == card.outline.bounds()[0] == 0
    assert card.body[2] >= low + band + 10
    ends = low * TONGUE_MM + (low + band) * TONGUE_MM
    assert card.outline.area() == pytest.approx(card.body[2] * GRIP_MM[1] + ends)


def test_one_limit_makes_one_end() -> None:
    """`max 3 mm` has nothing to go, `min 2 mm` nothing to refuse, and 0..1 mm nothing lies before the edge."""
    assert gauge_card(None, 3).go is None
    assert gauge_card(2, None).no_go is None
    assert gauge_card(0, 1).go is None


def test_gauges_without_limits_are_refused() -> None:
    """And limits the wrong way round."""
    for low, high in ((None, None), (0, None), (3, 3), (4, 3), (None, 0)):
        with pytest.raises(GeometryFault):
            gauge_card(low, high)


GROUND = (0.0, 0.0, 300.0, 200.0)


def test_a_marking_card_reaches_from_its_datum_edges_beyond_the_last_place() -> None:
    """Flush with left and top, 15 mm beyond the others."""
    row = Places(((40.0, 170.0), (80.0, 170.0)), (10.0, 2.0))
    card = marking_card(GROUND, [row], ("left", "top"))
    assert card.box == (0.0, 155.0, 95.0, 200.0)
    assert card.edges == ("left", "top")
    assert [slit.bounds() for slit in card.slits[0]] == [(35.0, 169.0, 45.0, 171.0), (75.0, 169.0, 85.0, 171.0)]


def test_a_card_that_nearly_reaches_the_other_edge_goes_to_it() -> None:
    """A card that ends 5 mm before an edge would be laid flush with the wrong one."""
    card = marking_card(GROUND, [Places(((280.0, 20.0),), (0.0, 0.0))], ("left", "bottom"))
    assert card.box == (0.0, 0.0, 300.0, 35.0)
    assert card.edges == ("left", "right", "bottom")
    assert card.holes[0] == (((280.0, 20.0), LEAST_HOLE_MM),)


def test_places_beyond_the_datum_edge_are_refused() -> None:
    """And no place at all."""
    with pytest.raises(GeometryFault):
        marking_card(GROUND, [Places(((-1.0, 20.0),), (0.0, 0.0))], ("left", "bottom"))
    with pytest.raises(GeometryFault):
        marking_card(GROUND, [], ("left", "bottom"))
