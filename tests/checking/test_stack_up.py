"""Chains of tolerances against sums done by hand."""

from __future__ import annotations

import pytest

from builder.checking.stack_up import Link, root_sum_square, worst_case


def chain(*halves: float, sensitivity: float = 1.0) -> list[Link]:
    """Links with one sensitivity."""
    return [Link(str(number), half, sensitivity) for number, half in enumerate(halves)]


def test_four_equal_links_add_to_four_and_to_two() -> None:
    """0.1 four times: 0.4 at worst, √(4 · 0.01) = 0.2. Textbook identity (memory)."""
    assert worst_case(chain(0.1, 0.1, 0.1, 0.1)) == pytest.approx(0.4)
    assert root_sum_square(chain(0.1, 0.1, 0.1, 0.1)) == pytest.approx(0.2)


def test_unequal_links() -> None:
    """By hand: 0.5 + 0.5 + 1 + 0.3 = 2.3; √(0.25 + 0.25 + 1 + 0.09) = √1.59 = 1.261."""
    links = chain(0.5, 0.5, 1.0, 0.3)
    assert worst_case(links) == pytest.approx(2.3)
    assert root_sum_square(links) == pytest.approx(1.261, abs=0.0005)


def test_sensitivity_scales_a_link_whatever_its_sign() -> None:
    """A half of 3 mm counted −2 times is 6 mm; with one of 8 mm √(36 + 64) = 10."""
    links = [Link("twice", 3.0, -2.0), Link("once", 8.0, 1.0)]
    assert worst_case(links) == pytest.approx(14.0)
    assert root_sum_square(links) == pytest.approx(10.0)


def test_no_links_no_error() -> None:
    """Nothing the dimension rests on has a tolerance."""
    assert worst_case([]) == root_sum_square([]) == 0.0
