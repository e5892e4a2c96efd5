"""What a piece takes, against sums by hand."""

from __future__ import annotations

import math
from fractions import Fraction
from pathlib import Path

import pytest

from builder.computing import bartack_thread, product_use
from builder.model import MaterialUse, RouteStep, show_use
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
    assert found["thread-70"].thread_mm == 0
    assert found["snap"].pieces == 1


def test_a_route_multiplies_by_its_quantities() -> None:
    """Two runs of one, one of another, of the same material."""
    uses = {"cut": (MaterialUse("cloth", area_mm2=10.0),), "sew": (MaterialUse("cloth", area_mm2=1.0),)}
    route = [RouteStep("cut", Fraction(2), ""), RouteStep("sew", Fraction(1, 2), "")]
    assert product_use(route, uses) == (MaterialUse("cloth", area_mm2=20.5),)


def test_thread_unknown_in_one_operation_is_unknown_in_the_product() -> None:
    """A bartack without a seam among them too: half a sum would look like a whole one."""
    known = MaterialUse("thread", seam_mm=300, thread_mm=900, thread_most_mm=950)
    route = [RouteStep("hem", Fraction(1), ""), RouteStep("tack", Fraction(1), "")]
    for unknown in (MaterialUse("thread", thread_known=False), MaterialUse("thread", seam_mm=1, thread_known=False)):
        (found,) = product_use(route, {"hem": (known,), "tack": (unknown,)})
        assert (found.thread_mm, found.thread_most_mm, found.thread_known) == (0, 0, False)
        assert found.seam_mm == 300 + unknown.seam_mm
    assert product_use(route, {"hem": (known,), "tack": (known,)})[0].thread_mm == 1800


HEMMED = """
materials/all.yaml:
  materials: {cloth: {thickness: 0.5 mm}, thread-135: {title: Thread, form: thread, tex: 135 tex}, thread-40: THIN}
stations/all.yaml:
  stations: {lockstitch: {tail: 100 mm}}
"""


def test_needle_and_bobbin_threads_go_to_their_own_materials(tmp_path: Path) -> None:
    """336 mm of seam and tacks through two layers, 1 + 1/3 of each thread, and its ends of 100 mm; one seam each."""
    threads = HEMMED.replace("THIN", "{title: Thread, form: thread, tex: 40 tex}")
    settings = "operations/sew-hem.yaml: {settings: {bobbin thread: thread-135}}"
    found = takes(f"{threads}\n{settings}\n", tmp_path / "plant")
    each = (300 + 36) * (1 + 1 / 3) + 100
    for name in ("thread-70", "thread-135"):
        assert found[name].thread_mm == found[name].thread_most_mm == pytest.approx(each)
        assert found[name].seam_mm == pytest.approx(300)
    assert "thread-40" not in found
    assert takes(HEMMED.replace(", thread-40: THIN", ""), tmp_path / "one")["thread-70"].thread_mm == pytest.approx(
        2 * each
    )


def test_soft_goods_count_as_pressed(tmp_path: Path) -> None:
    """Mesh of 1 mm under the foot takes the thread of cloth of 0.5 mm."""
    plain = HEMMED.replace(", thread-40: THIN", "")
    soft = plain.replace("thickness: 0.5 mm", "thickness: 1 mm, structure: mesh")
    assert takes(soft, tmp_path / "a")["thread-70"] == takes(plain, tmp_path / "b")["thread-70"]


OVEREDGE = """
materials/all.yaml:
  materials: {cloth: {thickness: 0.5 mm}}
stations/all.yaml:
  stations: {lockstitch: {kind: overlock, stitches: ["504"], protection: [finger guard, eye shield, blade guard]}}
parts/panel.yaml: {features: {hem-seam: {tack: none}}}
operations/sew-hem.yaml: {settings: {stitch: 504, thread: thread-70, needle: Nm 100 R, cut width: 5 mm}}
"""


def test_an_overedge_by_its_bight_is_an_interval(tmp_path: Path) -> None:
    """300 mm in 100 stitches through 1 mm, 5 mm wide: 3 + 20/3 + 4/3 to 5 + 20/3 + 4/3 mm each."""
    thread = takes(OVEREDGE, tmp_path / "plant")["thread-70"]
    assert (thread.thread_mm, thread.thread_most_mm) == pytest.approx((300 * 11, 300 * 13))
    assert takes(OVEREDGE.replace(", cut width: 5 mm", ""), tmp_path / "without")["thread-70"].thread_mm == 0


def test_a_row_of_bartacks_takes_so_many_of_one(tmp_path: Path) -> None:
    """Three tacks of 28 stitches through one layer; their seam has no length."""
    tacked = """
materials/all.yaml:
  materials: {cloth: {thickness: 0.5 mm}}
parts/panel.yaml:
  features: {hem-seam: {bartack: 28, length: 10 mm, width: 2 mm, count: 3, pitch: 40 mm, at: {left: 80 mm, top: 90 mm}}}
"""
    path = lay_over(tacked, tmp_path / "plant") / "parts" / "panel.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("    seam: top\n    inset: 12 mm\n", ""), encoding="utf-8")
    operation = path.parent.parent / "operations" / "sew-hem.yaml"
    text = operation.read_text(encoding="utf-8")
    operation.write_text(text.replace("of: hem-seam.inset", "of: hem-seam.length"), encoding="utf-8")
    results = check_plant(path.parent.parent).results
    assert results is not None
    thread = {one.material: one for one in results.products[0].materials}["thread-70"]
    one = bartack_thread(28, 10, 2, 0.5).total
    assert (thread.thread_mm, thread.thread_most_mm) == pytest.approx((3 * one[0], 3 * one[1]))
    assert thread.seam_mm == 0


def test_waste_is_what_the_nest_leaves_of_the_sheet(tmp_path: Path) -> None:
    """Four panels on a sheet of 1500 × 220 mm: a piece takes a quarter of it, its own area and its waste."""
    nest = "operations/cut-panel.yaml: {pieces a sheet: 4, nest: {sheet: 220 mm, pieces: [{part: panel, count: 4}]}}"
    cloth = takes(nest, tmp_path / "plant")["cloth"]
    assert cloth.area_mm2 + cloth.waste_mm2 == pytest.approx(1500 * 220 / 4)
    assert cloth.area_mm2 == pytest.approx(300 * 200 - (4 - math.pi) * 10**2)
    assert show_use(cloth) == "0.060 m², and 0.023 m² waste from the nest"
