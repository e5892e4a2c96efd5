"""What a scene shows of a part whose edge is folded."""

from __future__ import annotations

from pathlib import Path

from builder.pipeline import check_plant
from builder.view.scene import scene

PLANT = Path(__file__).resolve().parents[2] / "instructions"


def test_a_fold_hides_the_notches_on_it_and_leaves_those_of_both_sides() -> None:
    """The folded edge is a polygon again, so a notch's place lies on it by rounding only; its tip decides."""
    checked = check_plant(PLANT)
    shape = checked.book.shape("bar-panel", checked.linked.dimensions.values)
    assert shape is not None
    notches = {name for name, one in shape.features.items() if one.kind == "notch"}
    made = frozenset(("bar-panel", name) for name in (*notches, "hem-fold"))
    (layer,) = scene(shape, made, frozenset(), wrong=False, cut_now=False)
    assert notches - {one.shape.name for one in layer.features} == {"hem-notch-left", "hem-notch-right"}
