"""What pieces and rolls weigh, against sums done by hand."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.geometry import Scales, ShapeBook, roll_grams
from builder.model import PlantModel
from tests.plants import linked

ROLL = "materials/all.yaml:\n  materials: {cloth: {length: 80 m}}\n"
LABEL = """
parts/label.yaml: {part: label, title: Label, material: cloth, outline: {rectangle: {width: 100 mm, height: 50 mm}}}
operations/cut-label.yaml:
  {operation: cut-label, title: Cut, code: CUT-20, station: laser, makes: label,
   settings: {speed: 200 mm/s, power: 40 %, focus: 3 mm}, steps: [{step: cut, cut: label, do: Start.}]}
operations/sew-hem.yaml: {needs: {panel: 1, label: 2}}
"""


def scales(example: str, folder: Path) -> tuple[Scales, PlantModel]:
    """Scales for the small plant with an example laid over it."""
    found = linked(example, folder)
    model = found.model
    book = ShapeBook(model.parts, model.states, found.dimensions.definitions)
    return Scales(model, book, found.dimensions.values), model


PANEL = (300 * 200 - (4 - 3.141592653589793) * 10**2) * 250 / 1e6


def test_cut_piece_weighs_area_times_mass_per_area(tmp_path: Path) -> None:
    """The rounded corners are not paid for."""
    assert scales("{}", tmp_path)[0].grams("panel") == pytest.approx(PANEL)


def test_what_is_joined_weighs_the_sum_of_its_parts(tmp_path: Path) -> None:
    """A snap of 2 g at the end, two labels of 1.25 g each in the middle."""
    assert scales("{}", tmp_path / "plain")[0].grams("panel-snapped") == pytest.approx(PANEL + 2)
    assert scales(LABEL, tmp_path / "label")[0].grams("panel-snapped") == pytest.approx(PANEL + 2 + 2 * 1.25)


def test_a_part_used_twice_on_the_way_is_weighed_each_time(tmp_path: Path) -> None:
    """A diamond of needs: the label goes in at the hem and again at the snap."""
    twice = LABEL + "operations/press-snap.yaml: {needs: {panel-hemmed: 1, label: 1, snap: 1}}\n"
    assert scales(twice, tmp_path)[0].grams("panel-snapped") == pytest.approx(PANEL + 2 + 3 * 1.25)


def test_unknown_mass_is_none(tmp_path: Path) -> None:
    """Thread has no mass of its own here, and nobody knows the name."""
    one, _ = scales("{}", tmp_path)
    assert one.grams("nothing-like-it") is None
    assert one.grams("thread-70") is None


def test_roll_weighs_its_area(tmp_path: Path) -> None:
    """80 m by 1.5 m of 250 g/m2 are 30 kg; without a length nobody knows."""
    _, model = scales(ROLL, tmp_path)
    assert roll_grams(model.materials["cloth"]) == pytest.approx(30_000)
    assert roll_grams(model.materials["snap"]) is None
