"""Darts sewn, zips and elastic taken from the store."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from builder.computing.machine_run import machine_run
from builder.computing.step_bench import bench_of
from builder.geometry import ShapeBook, sewn_by
from tests.computing.test_material_use import takes
from tests.plants import linked

GOODS = """
materials/shaping.yaml:
  materials:
    zip-5: {title: Zip, form: zip, width: 30 mm, composition: [polyester]}
    elastic-20: {title: Elastic, form: tape, width: 20 mm, mass per length: 9 g/m, composition: [polyester]}
"""
LAID = """
parts/panel.yaml:
  features:
    front: {zip: zip-5, along: top, inset: 60 mm, length: 180 mm, ends: 15 mm}
    waist: {elastic: elastic-20, along: bottom, inset: 40 mm, start gap: 30 mm, length: 240 mm, relaxed: 180 mm,
      ends: 10 mm}
operations/sew-hem.yaml:
  steps: [{step: zip, place: front, do: Lay the zip., time: 2 s}, {step: waist, KEY: waist, do: Sew it on., time: 2 s}]
"""


def test_a_zip_takes_its_line_and_elastic_its_relaxed_length_and_ends(tmp_path: Path) -> None:
    """Placed, or sewn on where nobody places it."""
    for number, key in enumerate(("place", "sew")):
        found = takes(GOODS + LAID.replace("KEY", key), tmp_path / str(number))
        assert found["zip-5"].length_mm == pytest.approx(180 + 2 * 15)
        assert found["elastic-20"].length_mm == pytest.approx(180 + 2 * 10)


def test_a_zip_counted_by_the_piece_is_not_counted_by_length(tmp_path: Path) -> None:
    """It comes cut and is needed as hardware is."""
    needs = LAID.replace("KEY", "place").replace("  steps:", "  needs: {panel: 1, zip-5: 1}\n  steps:")
    found = takes(GOODS.replace("form: zip", "form: hardware") + needs, tmp_path / "plant")["zip-5"]
    assert (found.pieces, found.length_mm) == (1, 0)


DART = """
parts/panel.yaml:
  features: {dart: {dart: 40 mm, depth: 90 mm, edge: bottom, at: {left: 150 mm}}, row: {pleat: 5 mm, at: {left: 30 mm}}}
operations/sew-hem.yaml:
  steps: [{step: dart, sew: dart, do: Sew the dart., time: 2 s}, {step: pleat, sew: row, do: Sew it., time: 2 s}]
"""


def test_a_dart_is_timed_along_its_leg_and_goes_through_two_layers(tmp_path: Path) -> None:
    """As a seam as long as its leg, tacked at its start; a pleat has no machine time."""
    found = linked(DART, tmp_path)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    bench = bench_of(found.model, book, "sew-hem", found.dimensions.values)
    assert bench is not None
    steps = {step.step: step for step in bench.operation.steps}
    seam = (
        "parts/panel.yaml: {features: {dart: {seam: line, tack: start, "
        "points: [{left: 130 mm, bottom: 0 mm}, {left: 150 mm, bottom: 90 mm}]}}}\n"
        "operations/sew-hem.yaml:\n  steps: [{step: dart, sew: dart, do: Sew the dart., time: 2 s}]\n"
    )
    same = linked(seam, tmp_path / "seam")
    other = ShapeBook(same.model.parts, same.model.states, same.dimensions.definitions)
    reference = bench_of(same.model, other, "sew-hem", same.dimensions.values)
    assert reference is not None
    expected = machine_run(next(one for one in reference.operation.steps if one.step == "dart"), reference)
    assert machine_run(steps["dart"], bench) == pytest.approx(expected)
    assert machine_run(steps["pleat"], bench) is None
    sewn = next(
        one for one in sewn_by(found.model, book, "sew-hem", found.dimensions.values) if one.feature.name == "dart"
    )
    assert sewn.stacks == {("panel", "panel")}
    assert sewn.feature.paths[0].length == pytest.approx(math.hypot(90, 20))
