"""Readings taken under other conditions: carried over by the model, or stale."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.model import StepTime
from builder.pipeline import check_plant
from tests.checking.overlay import lay_over

STUDY = """
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  {head}
  step,cycle,reading,rating,note
  fold-over,1,3.0,100,
  fold-over,2,3.2,100,
  hem,1,9.0,100,
  hem,2,9.2,100,
"""


def steps(folder: Path, *head: str, more: str = "") -> dict[str, StepTime]:
    """Steps of the hem with a study of that head, by name."""
    example = STUDY.replace("{head}", "\n  ".join(f"# {line}" for line in head)) + more
    checked = check_plant(lay_over(example, folder / "plant"))
    assert checked.results is not None
    return {step.step: step for step in checked.results.operations["sew-hem", "", ""].steps}


def run_of(folder: Path, more: str = "") -> float:
    """What the model says of the hem's run without a study."""
    checked = check_plant(lay_over(more or "{}", folder / "bare"))
    assert checked.results is not None
    found = checked.results.operations["sew-hem", "", ""].step("hem")
    assert found is not None
    return found.run_s


def test_what_the_head_states_and_still_holds_changes_nothing(tmp_path: Path) -> None:
    hem = steps(tmp_path, "operation: sew-hem", "station: lockstitch", "stitch length: 3 mm", "panel.width: 300 mm")[
        "hem"
    ]
    assert (hem.source, hem.hand_s, hem.hand_estimated_s) == ("study", pytest.approx(9.1), 0.0)


def test_a_longer_stitch_scales_the_machine_part_only(tmp_path: Path) -> None:
    """Read with 2.5 mm, sewn with 3 mm: manual part kept, the run × model(now) ÷ model(then)."""
    found = steps(tmp_path, "operation: sew-hem", "stitch length: 2.5 mm")
    now = run_of(tmp_path)
    then = run_of(tmp_path / "then", "operations/sew-hem.yaml: {settings: {stitch length: 2.5 mm}}")
    assert found["hem"].source == "study + carried over"
    assert found["hem"].hand_s == pytest.approx(9.1 - then + now)
    assert found["hem"].hand_estimated_s == pytest.approx(found["hem"].hand_s)
    assert found["fold-over"].source == "study"


def test_a_dimension_that_has_changed_scales_too(tmp_path: Path) -> None:
    """Read on a panel 600 mm wide, now 300 mm: the run is shorter, the rest of the reading stays."""
    hem = steps(tmp_path, "operation: sew-hem", "panel.width: 600 mm")["hem"]
    then = run_of(tmp_path, "parts/panel.yaml: {outline: {rectangle: {width: 600 mm, height: 200 mm, corner: 10 mm}}}")
    assert hem.hand_s == pytest.approx(9.1 - then + run_of(tmp_path / "now"))
    assert hem.hand_s < 9.1


def test_another_station_of_the_kind_is_scaled_by_its_own_constants(tmp_path: Path) -> None:
    more = """stations/slow.yaml:
  stations:
    slow:
      title: Slow lockstitch
      kind: lockstitch
      count: 1
      distance: 0.6 m
      attendance: constant
      stitches: ["301"]
      pace: {top speed: 500 st/min, acceleration: 400 mm/s2, braking: 800 mm/s2, start: 0.8 s, corner stop: 0.5 s,
        finish: 1 s, calibrated: 2026-09-01}
      protection: [finger guard, eye protection]
"""
    hem = steps(tmp_path, "operation: sew-hem", "station: slow", more=more)["hem"]
    assert hem.source == "study + carried over"
    assert hem.hand_s < 9.1


@pytest.mark.parametrize("line", ["operation: sew-belt", "station: laser", "station: gone"])
def test_readings_of_other_work_are_stale_and_count_as_estimates(tmp_path: Path, line: str) -> None:
    hem = steps(tmp_path, line)["hem"]
    assert (hem.source, hem.hand_s, hem.hand_estimated_s) == ("stale", pytest.approx(9.1), pytest.approx(9.1))


def test_a_reading_of_a_self_paced_run_is_never_rated(tmp_path: Path) -> None:
    """The press takes 2.4 s whatever the observer thinks of it."""
    more = """
operations/press-snap.yaml: {times: studies/press.csv}
studies/press.csv: |
  # operation: press-snap
  step,cycle,reading,rating,note
  press,1,2.4,80,
  press,2,2.4,80,
"""
    checked = check_plant(lay_over(more, tmp_path / "plant"))
    assert checked.results is not None
    found = checked.results.operations["press-snap", "", ""]
    press = next(step for step in found.steps if step.readings)
    assert (press.run_s, press.source.split(" + ")[0]) == (pytest.approx(2.4), "study")
