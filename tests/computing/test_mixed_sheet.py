"""A sheet cut for two products: each pays by the length cut for it."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from builder.computing import run_share
from builder.pipeline import check_plant
from tests.checking.overlay import lay_over

MIXED = """
parts/flap.yaml:
  part: flap
  title: Flap
  material: cloth
  outline: {rectangle: {width: 100 mm, height: 100 mm}}
operations/cut-panel.yaml: {makes: {panel: 2, flap: 4}}
operations/sew-flap.yaml:
  operation: sew-flap
  title: Hem the flap
  code: SEW-20
  station: bench
  needs: {flap: 1}
  makes: flap-done
  steps: [{step: look, do: Look along the edge., time: 3 s}]
products/flap-set.yaml:
  product: flap-set
  title: Flap
  route: [cut-panel, sew-flap]
"""


def test_the_shares_of_all_pieces_add_up_and_follow_the_cut_length(tmp_path: Path) -> None:
    """Panels 2 × (with corners), flaps 4 × 400 mm; both products together pay the whole run."""
    checked = check_plant(lay_over(MIXED, tmp_path / "plant"))
    assert checked.linked is not None
    assert checked.book is not None
    assert checked.results is not None
    model, values, book = checked.linked.model, checked.linked.dimensions.values, checked.book
    whole = frozenset({("cut-panel", "panel"), ("cut-panel", "flap")})

    def share(panels: int, flaps: int) -> float:
        taken = {"panel": Fraction(panels), "flap": Fraction(flaps)}
        return run_share("cut-panel", taken, whole, model, book, values)

    panel, flap = share(2, 0), share(0, 4)
    assert panel + flap == pytest.approx(1)
    assert share(1, 1) + share(1, 3) == pytest.approx(1)
    assert share(2, 4) == 1
    ratio = (1 - flap) / flap
    assert 1.2 < ratio < 1.3  # 2 × about 985 and a notch, against 4 × 400
    lines = {one.product: one.lines[0] for one in checked.results.products}
    run = checked.results.operations["cut-panel", "", ""].labour_min
    assert lines["pouch"].own_min == pytest.approx(float(lines["pouch"].quantity) * run * panel)
    assert lines["flap-set"].run_share == pytest.approx(flap)
    # Two panels and four flaps use the sheet up: what both products pay for them is one run.
    assert 2 * lines["pouch"].own_min + 4 * lines["flap-set"].own_min == pytest.approx(run)
    assert checked.findings == ()


BOTH = (
    MIXED.replace("makes: {panel: 2, flap: 4}", "makes: {panel: 2, flap: 4, tab: 1}")
    + """
parts/tab.yaml: {part: tab, title: Tab, material: cloth, outline: {rectangle: {width: 40 mm, height: 20 mm}}}
operations/sew-hem.yaml: {needs: {panel: 1, flap: 1}}
"""
)


def test_a_product_that_takes_some_of_another_ones_pieces_pays_for_those(tmp_path: Path) -> None:
    """A pouch takes a panel and a flap, two a run; the other flaps are paid by the flap set.

    A tab nobody takes is paid with the rest: 10 pouches take 5 sheets and leave 10 flaps of 20.
    """
    checked = check_plant(lay_over(BOTH, tmp_path / "plant"))
    assert [one.rule for one in checked.findings] == ["made-never-used"]
    assert checked.results is not None
    lines = {one.product: one.lines[0] for one in checked.results.products}
    run = checked.results.operations["cut-panel", "", ""].labour_min
    assert 10 * lines["pouch"].own_min + 10 * lines["flap-set"].own_min == pytest.approx(5 * run)


def test_goods_follow_the_pieces_a_product_takes(tmp_path: Path) -> None:
    """A flap of 100 x 100 mm, whatever else is cut beside it."""
    checked = check_plant(lay_over(MIXED, tmp_path / "plant"))
    assert checked.results is not None
    flap = next(one for one in checked.results.products if one.product == "flap-set")
    assert [(one.material, one.area_mm2) for one in flap.materials] == [("cloth", pytest.approx(100 * 100))]


def test_pieces_nobody_else_takes_are_paid_by_who_cuts_them(tmp_path: Path) -> None:
    """Two patches a run, one a pouch: a finding, and the whole run for its panel."""
    example = """
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
operations/cut-panel.yaml: {makes: {panel: 1, patch: 2}}
operations/sew-hem.yaml: {needs: {panel: 1, patch: 1}}
"""
    checked = check_plant(lay_over(example, tmp_path / "plant"))
    assert [one.rule for one in checked.findings] == ["pieces-left-over"]
    assert checked.results is not None
    assert checked.results.products[0].lines[0].run_share == 1
