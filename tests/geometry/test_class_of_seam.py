"""Classes of seams read off sections built by hand."""

from __future__ import annotations

import pytest

from builder.geometry import DEFINITIONS, seam_class
from builder.model import SEAM_WORDS
from tests.drawing.gallery_sections import SECTIONS, ply, section


@pytest.mark.parametrize("name", SECTIONS)
def test_each_section_of_the_gallery_has_its_class(name: str) -> None:
    """The number written beside it."""
    one, number, _ = SECTIONS[name]
    found = seam_class(one)
    assert found is not None
    assert found.number == number


def test_every_class_is_in_the_gallery() -> None:
    """One to eight."""
    assert {number for _, number, _ in SECTIONS.values()} == set(range(1, 9))


def test_a_piece_laid_on_goods_that_go_on_is_class_5_and_lapped() -> None:
    """A pocket on a panel: class 5 by its edges, LS by letters; either word may be typed."""
    found = seam_class(section(ply("cloth", -200, 200), ply("lining", -70, 4)))
    assert found is not None
    assert (found.number, found.letters, found.words) == (5, "LS", {"lapped", "decorative"})


def test_turning_goods_over_changes_no_class() -> None:
    """Seen from the other side it is the same seam."""
    for one, number, _ in SECTIONS.values():
        turned = type(one)(one.part, one.feature, one.goods.turned(), one.seam)
        found = seam_class(turned)
        assert found is not None
        assert found.number == number


def test_every_word_has_its_definition() -> None:
    """And no other."""
    assert tuple(DEFINITIONS) == SEAM_WORDS
