"""What a piece takes, against sums by hand."""

from __future__ import annotations

import math
from fractions import Fraction
from pathlib import Path

import pytest

from builder.computing import product_use
from builder.model import MaterialUse, RouteStep
from builder.pipeline import check_plant
from tests.checking.overlay import lay_over


def takes(example: str, folder: Path) -> dict[str, MaterialUse]:
    """What a pouch takes, by material."""
    results = check_plant(lay_over(example, folder)).results
    assert results is not None
    return {one.material: one for one in results.products[0].materials}


def test_cloth_by_area_thread_by_seam_hardware_by_piece(tmp_path: Path) -> None:
    """A panel of 300 × 200 mm with corners of 10 mm radius, a hem along its top edge, one snap."""
    found = takes("{}", tmp_path / "plant")
    assert found["cloth"].area_mm2 == pytest.approx(300 * 200 - (4 - math.pi) * 10**2)
    assert found["thread-70"].seam_mm == pytest.approx(300, abs=25)
    assert found["snap"].pieces == 1


def test_a_route_multiplies_by_its_quantities() -> None:
    """Two runs of one, one of another, of the same material."""
    uses = {"cut": (MaterialUse("cloth", area_mm2=10.0),), "sew": (MaterialUse("cloth", area_mm2=1.0),)}
    route = [RouteStep("cut", Fraction(2), ""), RouteStep("sew", Fraction(1, 2), "")]
    assert product_use(route, uses) == (MaterialUse("cloth", area_mm2=20.5),)
