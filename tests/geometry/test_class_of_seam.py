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


def test_a_tape_along_two_layers_makes_no_edge_item() -> None:
    """Class 7 has one piece limited on one side; of two, the way they lie is the class, with a tape or without."""
    tape = ply("tape", -6, 8, "woven woven")
    along_two = seam_class(section(ply("lining", -200, 8), ply("cloth", -200, 8), tape))
    over_a_lap = seam_class(section(ply("lining", -8, 200), ply("cloth", -200, 8), tape))
    along_one = seam_class(section(ply("cloth", -200, 8), tape))
    assert along_two is not None
    assert over_a_lap is not None
    assert along_one is not None
    assert [one.number for one in (along_two, over_a_lap, along_one)] == [1, 2, 7]


def test_two_strips_on_each_other_are_of_class_8() -> None:
    """Nothing goes on to either side: class 8 however they lie, and superimposed may be said too."""
    found = seam_class(section(ply("tape", -9, 9, "woven woven"), ply("webbing", -9, 9, "woven woven")))
    assert found is not None
    assert (found.number, found.letters, found.words) == (8, "", {"superimposed", "strip alone"})


@pytest.mark.parametrize("name", ["edge-item", "strip-alone"])
def test_no_letters_are_given_where_none_could_be_confirmed(name: str) -> None:
    """Classes 7 and 8: the alternative text names the class of ISO 4916 alone."""
    found = seam_class(SECTIONS[name][0])
    assert found is not None
    assert found.letters == ""


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
