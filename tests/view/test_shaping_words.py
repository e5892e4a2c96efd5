"""What drawings say of pleats, darts, zips and elastic, and what they draw of them."""

from __future__ import annotations

import pytest

from builder.drawing import draw
from builder.view import FigureView
from tests.drawing.shaping_figures import BESIDE, BOXES, DARTS, ELASTIC, KNIFE, ZIPS, made, shaping_figures


def texts(text: str, now: tuple[str, ...] = ()) -> list[str]:
    """The callouts of a figure."""
    return [one.text for one in made("figure", text, now).callouts]


def test_pleats_have_one_name_and_the_sum_of_their_edge() -> None:
    """280 mm between the corners, three pleats of 24 mm."""
    assert texts(KNIFE) == ["3 × knife pleat", "bottom 280 − 72 = 208 mm (8 3/16 in)"]


def test_pleats_part_way_take_only_of_the_edge_they_end_on() -> None:
    """One kind a name; the box pleat ends at the bottom, the inverted one at the top."""
    assert texts(BOXES) == ["box pleat", "inverted pleat", "bottom 280 − 56 = 224 mm (8 13/16 in)"]


def test_what_was_taken_before_counts() -> None:
    """The second dart of an edge leaves it without both."""
    assert texts(DARTS, ("dart-right",)) == ["dart", "bottom 280 − 48 = 232 mm (9.13 in)"]


def test_elastic_says_its_ratio_and_a_zip_its_true_length() -> None:
    """A typed length has a dimension instead."""
    assert texts(ELASTIC) == ["elastic, 180 mm stretched to 240 mm: × 1.33"]
    assert texts(ZIPS, ("side-zip",)) == ["side zip, 200 mm (7 7/8 in)"]
    assert texts(ZIPS, ("front-zip",)) == ["zip"]


def test_depth_width_and_distance_are_dimensioned() -> None:
    """Each from what it is measured from."""
    pleat, dart = made("pleat", KNIFE), made("dart", DARTS, ("dart-right",))
    assert [one.text.split(" (")[0] for one in pleat.dimensions] == ["12 mm", "60 mm", "70 mm"]
    assert [one.text.split(" (")[0] for one in dart.dimensions] == ["24 mm", "90 mm", "90 mm"]
    (off,) = made("seam", BESIDE, ("pocket-edge",)).dimensions
    assert abs(off.start[0] - off.end[0]) + abs(off.start[1] - off.end[1]) == pytest.approx(3)


def test_a_dart_is_sewn_along_one_leg() -> None:
    """It has a start at the edge and ends at its point; its mark was made before."""
    figure = made("dart", DARTS, ("dart-right",))
    assert figure.start == pytest.approx((198, 0))
    assert figure.end == pytest.approx((210, 90))
    assert [one.when for one in figure.strokes if one.role == "drill hole"] == ["earlier", "earlier"]


def test_a_zip_on_the_wrong_side_is_not_seen_from_the_right() -> None:
    """As a strip."""
    text = "\n    a: {zip: zip-5-black, along: top, inset: 50 mm, side: wrong}\n"
    text += "    b: {hole: 9 mm, at: {left: 99 mm, top: 99 mm}}\n"
    assert not [one for one in made("zip", text, ("b",)).strokes if one.role.startswith("zip")]


@pytest.mark.parametrize("figure", list(shaping_figures()), ids=lambda one: one.name)
def test_every_figure_is_drawn_without_a_problem(figure: FigureView) -> None:
    """Each role has line work of its own, and every label a place."""
    drawing = draw(figure)
    assert drawing.problems == ()
    assert drawing.width_mm == pytest.approx(98.0)
