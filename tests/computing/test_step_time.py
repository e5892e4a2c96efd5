"""Machine time of a step from the plant's own measured speeds."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.computing.machine_run import machine_run
from builder.computing.step_bench import bench_of
from builder.geometry import ShapeBook
from tests.plants import linked


def hem_run(folder: Path, stations: str, seam: str, settings: str) -> float:
    """Seconds the machine runs for the small plant's hem, 280 mm."""
    example = f"""
stations/all.yaml: {{stations: {{lockstitch: {{seam speeds: [{stations}]}}}}}}
parts/panel.yaml: {{features: {{hem-seam: {{{seam}}}}}}}
operations/sew-hem.yaml: {{settings: {{{settings}}}}}
"""
    found = linked(example, folder)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    bench = bench_of(found.model, book, "sew-hem", found.dimensions.values)
    assert bench is not None
    step = next(step for step in bench.operation.steps if step.step == "hem")
    run = machine_run(step, bench)
    assert run is not None
    return run


EDGE = "{held: edge stop, top speed: 1200 st/min, study: A}"


def test_a_measured_speed_counts_like_the_same_speed_set(tmp_path: Path) -> None:
    """Measured 1,200 st/min and set to 2,600: as long as set to 1,200."""
    measured = hem_run(tmp_path / "a", EDGE, "held: edge stop", "speed: 2600 st/min")
    set_so = hem_run(tmp_path / "b", "", "held: edge stop", "speed: 1200 st/min")
    free = hem_run(tmp_path / "c", "", "held: edge stop", "speed: 2600 st/min")
    assert measured == pytest.approx(set_so)
    assert measured > free + 1


def test_a_slower_setting_counts_before_what_was_measured(tmp_path: Path) -> None:
    """The least of all speeds."""
    slow = hem_run(tmp_path / "a", EDGE, "held: edge stop", "speed: 900 st/min")
    assert slow == pytest.approx(hem_run(tmp_path / "b", "", "held: edge stop", "speed: 900 st/min"))


def test_a_speed_for_other_seams_changes_nothing(tmp_path: Path) -> None:
    """Measured with an edge stop, sewn free hand."""
    other = hem_run(tmp_path / "a", EDGE, "held: free hand", "speed: 2600 st/min")
    assert other == pytest.approx(hem_run(tmp_path / "b", "", "held: free hand", "speed: 2600 st/min"))
