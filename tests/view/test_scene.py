"""What a scene shows of a part whose edge is folded."""

from __future__ import annotations

from pathlib import Path

from builder.pipeline import check_plant
from builder.view.scene import Work, scene

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


def test_a_fold_through_an_assembly_leaves_its_layers_flat() -> None:
    """The flap of the pouch is closed and opened again: afterwards no layer may be drawn folded by itself."""
    checked = check_plant(PLANT)
    assert checked.linked is not None
    model = checked.linked.model
    work = Work(model, model.operations["inspect-pouch"], "inspect-pouch")
    close, *later = work.operation.steps
    assert ("pouch-back", "flap-fold") in work.now(close)
    assert all(("pouch-back", "flap-fold") not in work.before(step) for step in later)
    hem = Work(model, model.operations["hem-pocket"], "hem-pocket")
    assert ("roll-pocket", "hem-fold") in hem.before(hem.operation.steps[-1])
