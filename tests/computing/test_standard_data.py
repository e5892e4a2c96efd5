"""Element times from the plant's own studies, and what the steps of other operations take from them."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.computing import element_candidates
from builder.model import ElementData, Results, StepTime
from builder.pipeline import Checked, check_plant
from tests.checking.overlay import lay_over

FOLDS = """
parts/panel.yaml:
  features:
    first: {fold: line, points: [{left: 20 mm, bottom: 50 mm}, {left: 60 mm, bottom: 50 mm}]}
    second: {fold: line, points: [{left: 20 mm, bottom: 80 mm}, {left: 120 mm, bottom: 80 mm}]}
    third: {fold: line, points: [{left: 20 mm, bottom: 110 mm}, {left: 220 mm, bottom: 110 mm}]}
    fourth: {fold: line, points: [{left: 20 mm, bottom: 140 mm}, {left: FOURTH, bottom: 140 mm}]}
operations/sew-hem.yaml:
  times: studies/hem.csv
  steps:
  - {step: first, do: Fold the first edge over., fold: first}
  - {step: second, do: Fold the second edge over., fold: second}
  - {step: third, do: Fold the third edge over., fold: third}
  - {step: fourth, do: Fold the fourth edge over., fold: fourth, time: TIME}
elements/all.yaml:
  elements:
    fold-edge: {title: Fold an edge, from: [hem/first, hem/second, hem/third], varies with: length}
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  first,1,1.9,100,
  first,2,2.1,100,
  second,1,3.1,100,
  second,2,3.3,100,
  third,1,5.1,100,
  third,2,5.3,100,
"""
"""Folds of 40, 100 and 200 mm that take 1.2 s and 0.02 s for each mm."""


def checked(example: str, folder: Path) -> Checked:
    return check_plant(lay_over(example, folder / "plant"))


def results(example: str, folder: Path) -> Results:
    found = checked(example, folder).results
    assert found is not None
    return found


def step(found: Results, operation: str, name: str) -> StepTime:
    time = found.operations[operation, "", ""].step(name)
    assert time is not None
    return time


def folded(folder: Path, end: str, time: str = "fold-edge") -> tuple[ElementData, StepTime]:
    """The element of the folds, and the time of a fourth fold from 20 mm to `end`."""
    found = results(FOLDS.replace("FOURTH", end).replace("TIME", time), folder)
    return found.standard_data["fold-edge"], step(found, "sew-hem", "fourth")


def test_a_step_is_timed_by_its_own_length(tmp_path: Path) -> None:
    data, fourth = folded(tmp_path, "170 mm")
    assert data.fit is not None
    assert [one.value for one in data.fit.coefficients] == pytest.approx([1.2, 0.02])
    assert data.fit.ranges == ((pytest.approx(40), pytest.approx(200)),)
    assert (data.readings, [one.n for one in data.steps]) == (6, [2, 2, 2])
    assert fourth.hand_s == pytest.approx(1.2 + 0.02 * 150)
    assert (fourth.source, fourth.beyond, fourth.hand_estimated_s) == ("element", None, 0.0)
    assert [part.source for part in fourth.parts] == ["element:fold-edge"]


def test_done_twice_it_takes_twice_as_long_and_is_twice_as_unsure(tmp_path: Path) -> None:
    _, once = folded(tmp_path / "a", "170 mm")
    _, twice = folded(tmp_path / "b", "170 mm", "2 x fold-edge")
    assert twice.hand_s == pytest.approx(2 * once.hand_s)
    assert twice.parts[0].error_s == pytest.approx(2 * once.parts[0].error_s)


@pytest.mark.parametrize(("end", "nearest"), [("280 mm", 200.0), ("30 mm", 40.0)])
def test_beyond_what_was_timed_the_nearest_end_counts_as_an_estimate(end: str, nearest: float, tmp_path: Path) -> None:
    """Never a longer line: 260 mm takes what 200 mm takes, 10 mm what 40 mm takes."""
    _, fourth = folded(tmp_path, end)
    assert fourth.hand_s == pytest.approx(1.2 + 0.02 * nearest)
    assert fourth.hand_estimated_s == fourth.hand_s
    assert fourth.beyond is not None
    assert (fourth.beyond.element, fourth.beyond.variable) == ("fold-edge", "length")
    assert fourth.beyond.value == pytest.approx(float(end.removesuffix(" mm")) - 20)


def test_a_reading_of_its_own_overrules_the_element(tmp_path: Path) -> None:
    """And then nobody is warned of its length."""
    example = FOLDS.replace("FOURTH", "280 mm").replace("TIME", "fold-edge").replace("hem/first, ", "")
    example = example.replace("hem/third]", "hem/third, hem/first]") + "  fourth,1,9.0,100,\n  fourth,2,9.2,100,\n"
    fourth = step(results(example, tmp_path), "sew-hem", "fourth")
    assert (fourth.source, fourth.hand_s, fourth.beyond) == ("study", pytest.approx(9.1), None)
    assert fourth.typed_s == pytest.approx(1.2 + 0.02 * 200)


POOLED = """
operations/sew-hem.yaml:
  times: studies/hem.csv
  steps:
  - {step: fold-over, time: 2 x turn}
  - {step: look, time: 2 s}
operations/press-snap.yaml:
  steps: [{step: away, do: Turn it and lay it aside., time: turn}]
elements/all.yaml:
  elements:
    turn: {title: Turn a panel, from: [hem/lay, hem/fold-over]}
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  lay,1,2.0,100,
  lay,2,2.2,100,
  lay,3,9.0,100,out: fell down
  fold-over,1,4.0,110,
  fold-over,2,4.4,100,
"""


def test_readings_are_rated_and_divided_by_how_often_the_step_does_the_element(tmp_path: Path) -> None:
    """What is out stays out; `2 x turn` halves the readings."""
    found = results(POOLED, tmp_path)
    data = found.standard_data["turn"]
    assert data.pooled is not None
    assert [one.seconds for one in data.steps] == [pytest.approx(2.1), pytest.approx((4.0 * 1.1 / 2 + 2.2) / 2)]
    assert data.pooled.mean_s == pytest.approx((2.0 + 2.2 + 2.2 + 2.2) / 4)
    away = step(found, "press-snap", "away")
    assert away.hand_s == pytest.approx(data.pooled.mean_s)
    assert away.parts[0].error_s == data.pooled.error_s
    assert away.parts[0].rated


def test_a_single_reading_counts_as_an_estimate(tmp_path: Path) -> None:
    """Nobody knows its error."""
    example = POOLED.replace("hem/lay, hem/fold-over", "hem/look") + "  look,1,2.4,100,\n"
    away = step(results(example, tmp_path), "press-snap", "away")
    assert (away.hand_s, away.hand_estimated_s) == (pytest.approx(2.4), pytest.approx(2.4))
    assert away.parts[0].error_s > 0


@pytest.mark.parametrize(
    ("change", "why"),
    [
        (("hem/lay, ", "hem/hem, "), "machine run"),
        (("# operation: sew-hem", "# operation: press-snap"), "other work"),
        (("hem/lay, ", "hem/look, "), "left out"),
        (("  times: studies/hem.csv\n", ""), "no operation"),
    ],
)
def test_readings_that_are_no_hand_work_of_a_step_are_left_out(
    change: tuple[str, str], why: str, tmp_path: Path
) -> None:
    more = "  hem,1,9.0,100,\n  hem,2,9.2,100,\n  look,1,2.0,100,out: watch fell\n"
    data = results(POOLED.replace(*change) + more, tmp_path).standard_data["turn"]
    assert why in {one.why for one in data.left_out}
    assert data.left_out[0].n == 0


def test_an_operation_with_errors_leaves_its_element_unjudged(tmp_path: Path) -> None:
    """One finding: the fault itself."""
    found = checked(POOLED + "plant.yaml: {}\n" + "parts/panel.yaml: {material: clth}\n", tmp_path)
    assert [one.rule for one in found.findings] == ["name-unknown"]
    assert found.results is not None
    assert found.results.standard_data["turn"].blind


def test_work_of_one_name_in_two_studies_could_become_an_element(tmp_path: Path) -> None:
    """Typed elements first; what is derived already and what the machine does is left out."""
    example = """
elements/all.yaml:
  elements:
    turn: {title: Turn a panel, time: 2 s, basis: studied}
    lay-down: {title: Lay a panel down, from: hem/lay}
operations/sew-hem.yaml:
  times: studies/hem.csv
  steps: [{step: fold-over, time: 2 x turn}]
operations/press-snap.yaml:
  times: studies/snap.csv
  steps: [{step: look, do: Look at the snap.}, {step: away, do: Turn it., time: turn}, {step: lay, do: Lay it down.}]
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  lay,1,2.0,100,
  fold-over,1,4.0,100,
  fold-over,2,4.2,100,
  look,1,2.9,100,
studies/snap.csv: |
  # operation: press-snap
  step,cycle,reading,rating,note
  press,1,2.0,100,
  lay,1,2.0,100,
  away,1,2.1,100,
  look,1,3.1,100,
"""
    found = checked(example, tmp_path)
    assert found.results is not None
    assert found.linked is not None
    candidates = element_candidates(found.linked.model, found.results.studies, 0.95)
    assert [(one.name, one.element, one.steps) for one in candidates] == [
        ("turn", True, ("hem/fold-over", "snap/away")),
        ("look", False, ("hem/look", "snap/look")),
    ]
    assert candidates[0].pooled.mean_s == pytest.approx((2.0 + 2.1 + 2.1) / 3)
    assert candidates[1].pooled.mean_s == pytest.approx(3.0)


def test_the_size_of_a_study_says_how_long_the_work_was(tmp_path: Path) -> None:
    """Taken in L, where the fold along the top is longer; another product's L doesn't count."""
    example = FOLDS.replace("FOURTH", "60 mm").replace("TIME", "fold-edge").replace("hem/third]", "hem/fold-over]")
    example = example.replace("third,1,5.1", "fold-over,1,9.0").replace("third,2,5.3", "fold-over,2,9.2")
    example = example.replace("# operation: sew-hem", "# operation: sew-hem\n  # size: L")
    example += "products/pouch.yaml: {sizes: {M: {}, L: {panel.width: 420 mm}}}\n"
    fold = results(example, tmp_path).standard_data["fold-edge"].steps[2]
    assert fold.length_mm == pytest.approx(420)
