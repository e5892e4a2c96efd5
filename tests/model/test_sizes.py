"""Named dimensions: values, support, sizes."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from builder.model import Quantity
from tests.plants import linked

CHAIN = """
parts/panel.yaml:
  dimensions: {margin: 10 mm, double: "=margin * 2", half: "=width / 2", both: "=double + half"}
"""


def mm(value: int) -> Quantity:
    """A length."""
    return Quantity.of(Fraction(value), "length", "mm")


def test_values_and_support(tmp_path: Path) -> None:
    """A derived dimension rests on the typed ones behind it."""
    found = linked(CHAIN, tmp_path).dimensions
    assert found.values["panel.both"].value == 170
    assert found.support["panel.both"] == {"panel.margin", "panel.width"}
    assert found.values["panel/hem-seam.inset"].value == 12


def test_a_size_recomputes_what_rests_on_it(tmp_path: Path) -> None:
    """And nothing else changes."""
    found = linked(CHAIN, tmp_path).dimensions
    sized = found.sized({"panel.width": mm(400)})
    assert sized["panel.half"].value == 200
    assert sized["panel.both"].value == 220
    assert sized["panel.double"].value == 20
    assert found.values["panel.half"].value == 150


def test_overriding_a_derived_dimension_cuts_its_expression(tmp_path: Path) -> None:
    """`half` no longer follows the width."""
    sized = linked(CHAIN, tmp_path).dimensions.sized({"panel.half": mm(70), "panel.width": mm(400)})
    assert sized["panel.half"].value == 70
    assert sized["panel.both"].value == 90


def test_equal_sizes_share_their_values(tmp_path: Path) -> None:
    """Computed once."""
    found = linked(CHAIN, tmp_path).dimensions
    assert found.sized({"panel.width": mm(400)}) is found.sized({"panel.width": mm(400)})


def test_a_trial_changes_one_dimension_and_keeps_nothing(tmp_path: Path) -> None:
    """`both` is twice the margin and half the width; a changed `half` cuts its expression as in a size."""
    found = linked(CHAIN, tmp_path).dimensions
    assert found.trial("panel.both", {"panel.margin": mm(11)}).value == 172
    assert found.trial("panel.both", {"panel.half": mm(70), "panel.width": mm(400)}).value == 90
    assert found.trial("panel.both", {}).value == found.values["panel.both"].value == 170
    assert found.rests_on("panel.both") == ["panel.double", "panel.half"]


def test_a_ring_names_its_members(tmp_path: Path) -> None:
    """Once, with all of them."""
    example = 'parts/panel.yaml: {dimensions: {a: "=b + 1 mm", b: "=c", c: "=a"}}'
    findings = linked(example, tmp_path).findings
    assert [one.rule for one in findings] == ["expression-ring"]
    assert all(name in findings[0].message for name in ("panel.a", "panel.b", "panel.c"))


@pytest.mark.parametrize("text", ["=width + 3", "=width * height", "=width -height +", "=sqrt(width)"])
def test_an_expression_without_meaning_is_a_finding(text: str, tmp_path: Path) -> None:
    """Never a traceback, never a guess."""
    findings = linked(f'parts/panel.yaml: {{dimensions: {{a: "{text}"}}}}', tmp_path).findings
    assert findings
    assert all(one.place.file == "parts/panel.yaml" for one in findings)
