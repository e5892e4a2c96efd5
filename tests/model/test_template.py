"""Templates as typed: what they are of, and whether their copy may be used."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.model import parse_quantity, sized_values
from tests.plants import found, linked

GAUGE = """
plant.yaml: {{template limit: 0.5 mm}}
templates/g.yaml: {{template: g, title: Hem, kind: gauge, of: sew-hem/hem, number: G-1, date: 2026-10-12, {more}}}
"""


def gauge(more: str, folder: Path):
    """The small plant's hem gauge with more keys."""
    return linked(GAUGE.format(more=more), folder).model.templates["g"]


@pytest.mark.parametrize(
    ("across", "along", "off"),
    [
        ("100 mm", "100 mm", False),
        ("100.5 mm", "99.5 mm", False),  # the limit itself is allowed
        ("100.51 mm", "100 mm", True),
        ("100 mm", "99.4 mm", True),  # a printer may stretch one way only
        ("4 in", "4 in", False),
        ("4.02 in", "4 in", True),  # 4.02 in is 102.108 mm, 0.508 mm off
        ("10.01 cm", "100 mm", False),
    ],
)
def test_a_copy_is_off_beyond_the_limit(across: str, along: str, off: bool, tmp_path: Path) -> None:
    """Either way of the paper, in mm against 100 mm, in inches against 4 in."""
    template = gauge(f"measured: {{across: {across}, along: {along}, date: 2026-10-13, by: K2}}", tmp_path)
    assert template.is_off(parse_quantity("0.5 mm", "length")) is off


def test_a_record_of_an_earlier_issue_does_not_count(tmp_path: Path) -> None:
    """The copy of the new issue is another print."""
    template = gauge("measured: {across: 100.8 mm, along: 100 mm, date: 2026-10-11, by: K2}", tmp_path)
    assert template.record() is None
    assert not template.is_off(parse_quantity("0.5 mm", "length"))


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("kind: gauge, of: panel", "a gauge is of a tolerance"),
        ("kind: marking, of: panel", "without `features:` has nothing to mark"),
        ("kind: part, of: panel, features: hem-seam", "is for a marking template"),
        ("kind: stencil, of: panel", "`kind` can't be `stencil`"),
        ("kind: part, of: pannel", "no part is called `pannel`"),
        ("kind: marking, of: panel, features: snap-plaec", "no feature is called `snap-plaec`"),
        ("kind: gauge, of: sew-hem/hme", "no tolerance is called `hme`"),
        ("kind: gauge, of: sew-hmm/hem", "no operation is called `sew-hmm`"),
        ("kind: part, of: panel, size: XXL", "no size is called `XXL`"),
    ],
)
def test_faults_are_told_at_the_value(text: str, message: str, tmp_path: Path) -> None:
    """One finding each, in the template's file."""
    example = f"templates/t.yaml: {{template: t, title: T, number: T-1, date: 2026-10-12, {text}}}"
    findings = found(example, tmp_path)
    assert [message in one.message for one in findings] == [True], findings
    assert findings[0].place.file == "templates/t.yaml"


def test_a_step_names_its_templates(tmp_path: Path) -> None:
    """A name that leads nowhere is told with the near one."""
    example = (
        GAUGE.format(more="card: 1.5 mm") + "operations/sew-hem.yaml: {steps: [{step: hem, with: [gg]}]}\n"
        "stations/more.yaml: {stations: {}}\n"
    )
    findings = found(
        example.replace("templates/g.yaml: {template: g,", "templates/ggg.yaml: {template: ggg,"), tmp_path
    )
    assert [one.message for one in findings] == ["no template is called `gg`"]
    assert "ggg" in findings[0].remedy


def test_a_size_that_means_two_things_asks_for_its_product(tmp_path: Path) -> None:
    """`L` alone, where two products make it different."""
    two = """
products/pouch.yaml: {sizes: {L: {panel.width: 340 mm}}}
products/sack.yaml: {product: sack, title: Sack, route: [cut-panel], sizes: {L: {panel.width: 400 mm}}}
"""
    one = linked(two, tmp_path)
    assert sized_values("sack/L", one.model.products, one.dimensions)["panel.width"].text == "400 mm"
    with pytest.raises(KeyError):
        sized_values("L", one.model.products, one.dimensions)
