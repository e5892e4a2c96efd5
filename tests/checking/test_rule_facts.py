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
  hem,2,8.1,100,
"""
    assert [words.split(";")[0] for _, words in found(study, tmp_path / "plain")] == [
        "the study hem was taken at the station laser"
    ]
    sizes = study + "products/pouch.yaml: {sizes: {S: {}, M: {panel.width: 320 mm}}}\n"
    assert len(found(sizes, tmp_path / "sizes")) == 2


@pytest.mark.parametrize(
    ("words", "rules"),
    [
        ("Fold 15 mm of the edge over.", []),
        ("Fold 1.5 cm of the edge over.", []),
        ("Fold 5/8 in of the edge over.", ["number-in-words"]),
        ("Fold 16 mm of the edge over.", ["number-in-words"]),
        ("Trim the corner to 5 mm.", []),
        ("Fold the edge over, thread 15.5 mm2 apart.", []),
    ],
)
def test_only_a_number_that_just_misses_a_measure_is_stale(words: str, rules: list[str], tmp_path: Path) -> None:
    """The fold is 15 mm from the edge; 5 mm was never meant for it."""
    example = f"operations/sew-hem.yaml: {{steps: [{{step: fold-over, do: '{words}'}}]}}"
    assert [rule for rule, _ in found(example, tmp_path)] == rules


def test_a_piece_that_may_be_meant_and_fits_is_enough(tmp_path: Path) -> None:
    """Two pieces come in; the small one fits the element, so nobody is blamed. Hardware could be any size."""
    element = """
elements/all.yaml:
  elements: {pick-up: {title: Pick up, time: 2 s, basis: studied, longest side: 50..200 mm}}
operations/sew-hem.yaml: {steps: [{step: lay, time: pick-up}]}
"""
    assert [rule for rule, _ in found(element, tmp_path / "one")] == ["element-outside-range"]
    label = """
parts/label.yaml: {part: label, title: Label, material: cloth, outline: {rectangle: {width: 100 mm, height: 50 mm}}}
operations/cut-label.yaml:
  {operation: cut-label, title: Cut, code: CUT-20, station: laser, makes: label,
   settings: {speed: 200 mm/s, power: 40 %, focus: 3 mm}, steps: [{step: cut, cut: label, do: Start.}]}
"""
    two = element.replace("{steps:", "{needs: {panel: 1, label: 1}, steps:") + label
    rules = [rule for rule, _ in found(two, tmp_path / "two")]
    assert "element-outside-range" not in rules
    snapped = element.replace("sew-hem", "press-snap").replace("step: lay", "step: press")
    assert [rule for rule, _ in found(snapped, tmp_path / "snap")] == []


def test_age_of_an_element_counts_only_for_estimates(tmp_path: Path) -> None:
    """A studied element stays; one without a date is not judged."""
    elements = """
plant.yaml: {oldest estimate months: 24}
elements/all.yaml:
  elements:
    old-guess: {title: Turn, time: 2 s, basis: estimate, date: 2020-01-01}
    old-study: {title: Turn, time: 2 s, basis: studied, date: 2020-01-01}
    guess: {title: Turn, time: 2 s, basis: estimate}
"""
    findings = found(elements, tmp_path)
    assert [rule for rule, _ in findings] == ["estimate-too-old"]
    assert "old-guess" in findings[0][1]


def test_readings_of_a_machine_that_paces_itself_are_its_run(tmp_path: Path) -> None:
    """The laser's model says a few seconds; a study of 60 s is far off, whatever hand work is typed."""
    study = """
plant.yaml: {model limit: 25 %}
operations/cut-panel.yaml: {times: studies/cut.csv}
studies/cut.csv: |
  # operation: cut-panel
  step,cycle,reading,rating,note
  cut,1,60,100,
  cut,2,61,100,
"""
    findings = found(study, tmp_path / "far")
    assert [rule for rule, _ in findings] == ["study-against-model"]
    assert "longer than the machine model" in findings[0][1]
    assert found(study.replace("plant.yaml: {model limit: 25 %}\n", ""), tmp_path / "none") == []


@pytest.mark.parametrize(("reading", "rules"), [("30", []), ("1.5", ["study-against-model"])])
def test_without_hand_work_typed_only_too_short_a_reading_is_wrong(
    reading: str, rules: list[str], tmp_path: Path
) -> None:
    """An operator's reading holds hand work nobody typed, so it may be longer than the run."""
    study = f"""
plant.yaml: {{model limit: 25 %}}
parts/panel.yaml: {{features: {{low-seam: {{seam: bottom, inset: 12 mm}}}}}}
operations/sew-hem.yaml:
  times: studies/hem.csv
  steps: [{{step: low, sew: low-seam, do: Sew the lower edge.}}]
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  low,1,{reading},100,
  low,2,{reading},100,
"""
    assert [rule for rule, _ in found(study, tmp_path)] == rules


def test_readings_without_a_median_are_not_judged_by_it(tmp_path: Path) -> None:
    """Two readings have no middle; a rating of 200 % is a slip all the same."""
    study = """
operations/sew-hem.yaml: {times: studies/hem.csv}
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hem,1,2,100,
  hem,2,90,100,
  lay,1,3,200,
  lay,2,3,100,
"""
    assert found(study, tmp_path) == [("reading-implausible", "lay, cycle 1: a rating of 200 % is outside 50 to 150 %")]
