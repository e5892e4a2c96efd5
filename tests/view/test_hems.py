"""Hems carried from a flat part to what it is folded or pleated into."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.geometry import PartShape
from builder.model import PlantModel, Values
from builder.pipeline import check_plant
from builder.view.hems import with_hems

DEMO = Path(__file__).resolve().parents[2] / "instructions"
SEWN = frozenset((("pocket-strip", "hem-fold"), ("pocket-strip", "hem-seam")))


def built(part: str) -> tuple[PartShape, PlantModel, Values]:
    """A part of the demo in its reference size."""
    checked = check_plant(DEMO)
    assert checked.linked is not None
    assert checked.book is not None
    values = checked.linked.dimensions.values
    shape = checked.book.shape(part, values)
    assert shape is not None
    return shape, checked.linked.model, values


def test_a_hem_lies_as_far_from_the_fold_as_it_was_sewn() -> None:
    """The hem's line runs along the mouth of the pleated strip, its inset less what is folded under."""
    shape, model, values = built("pocket-pleated")
    found, made = with_hems(shape, model, values, SEWN)
    line = found.features["hem-seam"].paths[0].runs[0]
    off = float(values["pocket-strip/hem-seam.inset"].value - values["pocket-strip/hem-fold.inset"].value)
    left, _, right, top = shape.bounds
    assert sorted((line.start, line.end)) == [pytest.approx((left, top - off)), pytest.approx((right, top - off))]
    assert ("pocket-pleated", "hem-seam") in made


def test_a_layer_of_a_sub_assembly_keeps_its_hem() -> None:
    """The pleated strip shows its hem on the row too."""
    shape, model, values = built("pocket-row")
    found, _ = with_hems(shape, model, values, SEWN)
    assert [one.name for one in found.components if "hem-seam" in one.shape.features] == ["pocket-pleated"]


@pytest.mark.parametrize("missing", sorted(SEWN))
def test_a_hem_not_folded_or_not_sewn_yet_is_not_drawn(missing: tuple[str, str]) -> None:
    """Only what lies behind the state is shown."""
    shape, model, values = built("pocket-pleated")
    found, made = with_hems(shape, model, values, SEWN - {missing})
    assert "hem-seam" not in found.features
    assert made == SEWN - {missing}
