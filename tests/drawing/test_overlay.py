"""Callouts over pictures: inside, apart, with halo, and told when there is no room."""

from __future__ import annotations

from fractions import Fraction
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.drawing import draw_callouts, verdict_svg
from builder.view import Photo, PhotoMark

SHARE = st.integers(5, 95).map(lambda number: Fraction(number, 100))
SPOT = st.tuples(SHARE, SHARE)
WORDS = st.sampled_from(["edge", "needle down here", "tape caught on both sides", "fold", "corner open"])
MARK = st.one_of(
    st.builds(lambda at, says: PhotoMark("ring", (at,), Fraction(12, 100), 0, says), SPOT, WORDS),
    st.builds(lambda a, b, says: PhotoMark("arrow", (a, b), None, 0, says), SPOT, SPOT, WORDS),
    st.builds(lambda a, b, says: PhotoMark("box", (a, b), None, 0, says), SPOT, SPOT, WORDS),
    st.builds(lambda a, b, says: PhotoMark("text", (a, b), None, 0, says), SPOT, SPOT, WORDS),
    st.builds(lambda at, number: PhotoMark("number", (at,), None, number, "x"), SPOT, st.integers(1, 12)),
)


def photo(*marks: PhotoMark, width: float = 58.0, height: float = 44.0) -> Photo:
    return Photo("5f" * 32, "A hem.", "photos/a.jpg", marks=marks, width_mm=width, height_mm=height)


@settings(max_examples=60)
@given(st.lists(MARK, min_size=1, max_size=4))
def test_words_stand_inside_and_apart_or_it_is_told(marks: list[PhotoMark]) -> None:
    found = draw_callouts(photo(*marks, width=90.0, height=68.0))
    ElementTree.fromstring(found.svg)
    words = [text.box for text in found.texts if not text.text.isdecimal()]
    clear = all(box.x0 >= 0 and box.y0 >= 0 and box.x1 <= 90 and box.y1 <= 68 for box in words)
    apart = not any(a.overlaps(b) for number, a in enumerate(words) for b in words[:number])
    assert (clear and apart) or found.problems


def test_two_rings_in_a_corner_have_their_words_apart() -> None:
    """Nothing here is so crowded that it should be told."""
    marks = [
        PhotoMark("ring", ((Fraction(9, 10), Fraction(at, 10)),), Fraction(1, 10), 0, "corner open") for at in (1, 3)
    ]
    assert draw_callouts(photo(*marks)).problems == ()


def test_words_too_many_for_the_picture_are_told() -> None:
    marks = [
        PhotoMark("text", ((Fraction(1, 2), Fraction(1, 2)),), None, 0, "needle down at every corner of the box")
    ] * 5
    assert draw_callouts(photo(*marks, width=30.0, height=20.0)).problems


@pytest.mark.parametrize("kind", ["ring", "box", "arrow"])
def test_every_line_has_a_white_halo_below_it(kind: str) -> None:
    """Wider than the line, drawn before it."""
    spots = (
        ((Fraction(1, 4), Fraction(1, 4)),)
        if kind == "ring"
        else ((Fraction(1, 4), Fraction(1, 4)), (Fraction(3, 4), Fraction(3, 4)))
    )
    root = ElementTree.fromstring(draw_callouts(photo(PhotoMark(kind, spots, Fraction(1, 8)))).svg)
    lines = [(node.get("stroke"), float(node.get("stroke-width", "0"))) for node in root if node.get("stroke")]
    white = [width for colour, width in lines if colour == "#ffffff"]
    dark = [width for colour, width in lines if colour == "#a92f18"]
    assert lines[0][0] == "#ffffff"
    assert max(white) > max(dark) + 0.9


def test_an_arrow_points_to_its_head() -> None:
    """The tip of its head is the second place."""
    svg = draw_callouts(
        photo(PhotoMark("arrow", ((Fraction(1, 10), Fraction(1, 2)), (Fraction(1, 2), Fraction(1, 2)))))
    ).svg
    assert "M29 22L" in svg


def test_a_number_stays_whole_in_the_corner() -> None:
    (text,) = draw_callouts(photo(PhotoMark("number", ((Fraction(0), Fraction(0)),), None, 8, "x"))).texts
    assert text.text == "8"
    assert text.box.x0 > 0
    assert text.box.y0 > 0


def test_nothing_pointed_out_is_nothing_drawn() -> None:
    assert draw_callouts(photo()).svg == ""


def test_right_and_wrong_differ_in_shape() -> None:
    assert "<circle" in verdict_svg("right", 5)
    assert "<rect" in verdict_svg("wrong", 5)
    with pytest.raises(KeyError):
        verdict_svg("maybe", 5)
