"""Pictures as typed: each form, places, numbers, and what can't be read."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from pydantic import ValidationError

from builder.model import Shot, Step, fitted_mm


def shots(photo: Any, **keys: str) -> tuple[Shot, ...]:
    return Step.model_validate({"step": "a", "do": "Lay it.", "photo": photo, **keys}).shots


def test_the_short_form_has_the_words_of_the_step() -> None:
    (one,) = shots("photos/a.jpg", alt="A hem.", caption="good")
    assert (one.picture.file, one.picture.alt, one.picture.caption) == ("photos/a.jpg", "A hem.", "good")
    assert (one.path, one.file_path, one.verdict) == (("photo",), ("photo",), "")


def test_a_pair_is_right_and_wrong_in_this_order() -> None:
    """However it was typed."""
    found = shots({"bad": {"file": "b.jpg"}, "good": "g.jpg"})
    assert [(one.picture.file, one.verdict) for one in found] == [("g.jpg", "right"), ("b.jpg", "wrong")]
    assert [one.file_path for one in found] == [("photo", "good"), ("photo", "bad", "file")]


def test_a_list_says_which_is_which() -> None:
    found = shots(["a.jpg", {"file": "b.jpg", "shows": "wrong"}])
    assert [one.verdict for one in found] == ["", "wrong"]
    assert [one.file_path for one in found] == [("photo", 0), ("photo", 1, "file")]


def test_places_are_shares_and_percents() -> None:
    (one,) = shots({"file": "a.jpg", "callouts": [{"ring": ["42 %", 0.3]}, {"arrow": [["0", "1"], ["1/4", "50 %"]]}]})
    spots = [spot for mark in one.picture.callouts for _, spot in mark.points()]
    assert spots == [(Fraction(42, 100), Fraction(3, 10)), (0, 1), (Fraction(1, 4), Fraction(1, 2))]


def test_numbers_count_up_round_those_typed() -> None:
    discs = [{"number": ["1 %", "1 %"], "says": "x", **more} for more in ({}, {"as": "1"}, {}, {"as": "7"}, {})]
    (one,) = shots({"file": "a.jpg", "callouts": discs})
    assert [number for _, number in one.numbered()] == [2, 1, 3, 7, 4]


def test_corners_may_be_typed_either_way() -> None:
    (one,) = shots({"file": "a.jpg", "crop": [["90 %", "80 %"], ["10 %", "20 %"]], "callouts": []})
    assert one.area == (Fraction(1, 10), Fraction(1, 5), Fraction(9, 10), Fraction(4, 5))


@pytest.mark.parametrize(
    ("callout", "kind"),
    [
        ({"rign": ["1 %", "2 %"]}, "union_tag_not_found"),
        ({"ring": ["1 %", "2 %"], "box": []}, "union_tag_not_found"),
        ({"ring": ["1 %"]}, "text_fault"),
        ({"ring": "1 %"}, "text_fault"),
        ({"ring": ["12", "2 %"]}, "text_fault"),
        ({"arrow": [["1 %", "2 %"]]}, "text_fault"),
        ({"number": ["1 %", "2 %"]}, "missing"),
        ({"blur": [["1 %", "2 %"], ["3 %", "4 %"]], "says": "x"}, "extra_forbidden"),
    ],
)
def test_one_fault_gives_one_error(callout: dict[str, Any], kind: str) -> None:
    with pytest.raises(ValidationError) as caught:
        shots({"file": "a.jpg", "callouts": [callout]})
    assert [error["type"] for error in caught.value.errors()] == [kind]


def test_pictures_in_a_row_have_one_height_and_fill_the_width() -> None:
    sizes = fitted_mm([0.5, 1.5, 1.0], 104, 60)
    assert sizes[0] == pytest.approx((25, 50))
    assert sizes[1] == pytest.approx((75, 50))
    assert sizes[2] == pytest.approx((60, 60))
