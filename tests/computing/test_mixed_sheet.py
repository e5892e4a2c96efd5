"""A sheet cut for two products: each pays by the length cut for it."""

from __future__ import annotations

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
    model, values = checked.linked.model, checked.linked.dimensions.values
    panel, flap = (run_share("cut-panel", {name}, model, checked.book, values) for name in ("panel", "flap"))
    assert panel + flap == pytest.approx(1)
    assert run_share("cut-panel", {"panel", "flap"}, model, checked.book, values) == 1
    ratio = (1 - flap) / flap
    assert 1.2 < ratio < 1.3  # 2 × about 985 and a notch, against 4 × 400
    lines = {one.product: one.lines[0] for one in checked.results.products}
    whole = checked.results.operations["cut-panel", "", ""].labour_min
    assert lines["pouch"].own_min == pytest.approx(float(lines["pouch"].quantity) * whole * panel)
    assert lines["flap-set"].run_share == pytest.approx(flap)
    # Two panels and four flaps use the sheet up: what both products pay for them is one run.
    assert 2 * lines["pouch"].own_min + 4 * lines["flap-set"].own_min == pytest.approx(whole)
