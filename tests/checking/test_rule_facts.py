"""What single rules work out for themselves."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from builder.checking.rules.study.estimate_too_old import months_before
from builder.pipeline import check_plant
from tests.checking.overlay import lay_over


@pytest.mark.parametrize(
    ("day", "months", "before"),
    [
        (date(2026, 11, 25), 24, date(2024, 11, 25)),
        (date(2026, 1, 31), 2, date(2025, 11, 30)),
        (date(2024, 3, 31), 1, date(2024, 2, 29)),
        (date(2026, 1, 1), 99_999, date.min),
    ],
)
def test_months_before(day: date, months: int, before: date) -> None:
    """The same day, or the last one of a shorter month."""
    assert months_before(day, months) == before


def found(example: str, folder: Path) -> list[tuple[str, str]]:
    """(rule, message) of the findings of the small plant with an example laid over it."""
    return [(one.rule, one.message) for one in check_plant(lay_over(example, folder / "plant")).findings]


def test_power_stays_off_until_the_machine_works_again(tmp_path: Path) -> None:
    """A step behind one with `power: off` needs none of its own; one behind the seam does."""
    steps = """
operations/sew-hem.yaml:
  steps:
    - {step: lay, power: 'off'}
    - {step: fold-over, do: Fold the top edge over. Oil the hook.}
    - {step: look, do: Change the needle.}
"""
    assert [rule for rule, _ in found(steps, tmp_path)] == ["power-on"]
    assert "step look" in found(steps, tmp_path / "again")[0][1]


def test_a_heavy_bundle_is_told_once_where_it_first_is_too_heavy(tmp_path: Path) -> None:
    """Not again at every operation behind it."""
    heavy = "plant.yaml: {batch: 2000, bundle: 2000}\n"
    findings = found(heavy, tmp_path)
    assert [rule for rule, _ in findings] == ["lift-too-heavy"]
    assert "a bundle of 2000" in findings[0][1]


def test_study_of_a_size_no_product_has(tmp_path: Path) -> None:
    """Sizes count only where the products have some."""
    study = """
operations/sew-hem.yaml: {times: studies/hem.csv}
studies/hem.csv: |
  # size: XL
  # station: laser
  step,cycle,reading,rating,note
  hem,1,8.0,100,
"""
    assert [words.split(";")[0] for _, words in found(study, tmp_path / "plain")] == [
        "the study hem was taken at the station laser"
    ]
    sizes = study + "products/pouch.yaml: {sizes: {S: {}, M: {panel.width: 320 mm}}}\n"
    assert len(found(sizes, tmp_path / "sizes")) == 2
