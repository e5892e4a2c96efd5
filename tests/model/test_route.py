"""Routes: runs for one finished piece follow from needs and makes."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from builder.model import route_of
from tests.plants import linked


def runs(example: str, folder: Path, product: str = "pouch") -> dict[str, Fraction]:
    """Runs by operation."""
    model = linked(example, folder).model
    return {step.operation: step.quantity for step in route_of(product, model.products, model.operations)}


def test_one_of_each(tmp_path: Path) -> None:
    """A plain chain runs once a piece."""
    assert runs("", tmp_path) == {"cut-panel": 1, "sew-hem": 1, "press-snap": 1}


def test_needs_multiply_along_the_route(tmp_path: Path) -> None:
    """Two panels a hem, two hems a pouch."""
    example = "operations/sew-hem.yaml: {needs: {panel: 2}}\noperations/press-snap.yaml: {needs: {panel-hemmed: 2}}"
    assert runs(example, tmp_path) == {"cut-panel": 4, "sew-hem": 2, "press-snap": 1}


def test_pieces_made_at_once_divide(tmp_path: Path) -> None:
    """A run that makes four panels is a quarter of a run a piece."""
    assert runs("operations/cut-panel.yaml: {makes: {panel: 4}}", tmp_path)["cut-panel"] == Fraction(1, 4)


def test_a_typed_quantity_counts(tmp_path: Path) -> None:
    """And what stands before follows it."""
    example = "products/pouch.yaml: {route: [cut-panel, {operation: sew-hem, quantity: 3}, press-snap]}"
    assert runs(example, tmp_path) == {"cut-panel": 3, "sew-hem": 3, "press-snap": 1}


def test_a_sub_assembly_brings_its_route(tmp_path: Path) -> None:
    """Expanded in place, each operation once."""
    example = """
products/hemmed.yaml: {product: hemmed, title: Hemmed panel, route: [cut-panel, sew-hem], sold: panel-hemmed}
products/pouch.yaml: {route: [{sub assembly: hemmed}, press-snap]}
"""
    assert runs(example, tmp_path) == {"cut-panel": 1, "sew-hem": 1, "press-snap": 1}


def test_a_quantity_in_a_sub_assembly_counts_for_each_of_them(tmp_path: Path) -> None:
    """Two hemmed panels a pouch, three cuts for each."""
    example = """
products/hemmed.yaml:
  {product: hemmed, title: Hemmed panel, route: [{operation: cut-panel, quantity: 3}, sew-hem], sold: panel-hemmed}
operations/press-snap.yaml: {needs: {panel-hemmed: 2}}
products/pouch.yaml: {route: [{sub assembly: hemmed}, press-snap]}
"""
    assert runs(example, tmp_path) == {"cut-panel": 6, "sew-hem": 2, "press-snap": 1}


def test_a_product_inside_itself_ends(tmp_path: Path) -> None:
    """The rule reports it; the route is finite."""
    assert runs("products/pouch.yaml: {route: [cut-panel, {sub assembly: pouch}]}", tmp_path) == {"cut-panel": 1}
