"""Machine time of a step: measured speeds, moves, marks, what a cutter follows."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.computing.machine_run import machine_run
from builder.computing.step_bench import bench_of
from builder.geometry import ShapeBook
from tests.plants import linked


def hem_run(folder: Path, stations: str, seam: str, settings: str, more: str = "") -> float:
    """Seconds the machine runs for the small plant's hem, 280 mm."""
    example = f"""
stations/all.yaml: {{stations: {{lockstitch: {{seam speeds: [{stations}]}}}}}}
parts/panel.yaml: {{features: {{hem-seam: {{{seam}}}}}}}
operations/sew-hem.yaml: {{settings: {{{settings}}}}}
{more}
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


def test_a_speed_measured_on_fewer_layers_leaves_the_seam_to_the_next(tmp_path: Path) -> None:
    """The hem is two layers: measured on one at 900, on two at 1,200 st/min."""
    both = "{held: edge stop, layers: 1, top speed: 900 st/min, study: B}, " + EDGE.replace(
        "top speed", "layers: 2, top speed"
    )
    found = hem_run(tmp_path / "a", both, "held: edge stop", "speed: 2600 st/min")
    assert found == pytest.approx(hem_run(tmp_path / "b", EDGE, "held: edge stop", "speed: 2600 st/min"))


@pytest.mark.parametrize(("thickest", "speed"), [("2 mm", 900), ("1 mm", 1200)])
def test_a_speed_measured_on_thinner_goods_leaves_the_seam_to_the_next(
    tmp_path: Path, thickest: str, speed: int
) -> None:
    """Two layers of 0.8 mm are 1.6 mm."""
    cloth = "materials/all.yaml: {materials: {cloth: {thickness: 0.8 mm}}}"
    thin = f"{{held: edge stop, thickest: {thickest}, top speed: 900 st/min, study: B}}, {EDGE}"
    found = hem_run(tmp_path / "a", thin, "held: edge stop", "speed: 2600 st/min", cloth)
    assert found == pytest.approx(hem_run(tmp_path / "b", "", "held: edge stop", f"speed: {speed} st/min"))


def run_of(example: str, operation: str, step: str, folder: Path) -> float | None:
    """Seconds the machine runs for a step of the small plant with an example laid over it."""
    found = linked(example, folder)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    bench = bench_of(found.model, book, operation, found.dimensions.values)
    assert bench is not None
    return machine_run(next(one for one in bench.operation.steps if one.step == step), bench)


ROWS = """
stations/all.yaml: {stations: {lockstitch: {pace: {reposition: REPOSITION}, needles: 2}}}
parts/panel.yaml:
  features:
    row-a: {seam: bottom, inset: 20 mm}
    row-b: {seam: bottom, inset: 26 mm}
    row-c: {seam: bottom, inset: 32 mm}
operations/sew-hem.yaml: {SETTINGS steps: [{step: rows, do: Sew the rows., sew: [row-a, row-b, row-c]}]}
"""


def rows_run(folder: Path, reposition: str, settings: str = "") -> float:
    """Seconds of three parallel rows."""
    found = run_of(ROWS.replace("REPOSITION", reposition).replace("SETTINGS", settings), "sew-hem", "rows", folder)
    assert found is not None
    return found


def test_the_work_is_moved_on_between_separate_seams_of_a_step(tmp_path: Path) -> None:
    """Three rows, two moves of 1.5 s; two rows a pass, one move."""
    still, moved = rows_run(tmp_path / "a", "0 s"), rows_run(tmp_path / "b", "1.5 s")
    assert moved - still == pytest.approx(3.0)
    still, moved = (
        rows_run(tmp_path / name, typed, "settings: {rows: 2},") for name, typed in (("c", "0 s"), ("d", "1.5 s"))
    )
    assert moved - still == pytest.approx(1.5)


MARK = """
parts/panel.yaml:
  features:
    label: {box: plain, width: 40 mm, height: 10 mm, at: {left: 50 mm, bottom: 60 mm}}
    drill: {hole: 2 mm, at: {left: 30 mm, bottom: 30 mm}, count: 4, pitch: 20 mm}
operations/cut-panel.yaml:
  makes: {panel: 3}
  settings: {SETTINGS}
  steps: [{step: mark, do: Let it mark the label., mark: WHAT}]
"""


def test_a_laser_marks_an_area_line_by_line_on_every_piece(tmp_path: Path) -> None:
    """Three pieces, 40 lines of 40 mm at 400 mm/s, turns of 2·400/3000 s (worked by hand)."""
    example = MARK.replace("SETTINGS", "raster speed: 400 mm/s, line spacing: 0.25 mm").replace("WHAT", "label")
    assert run_of(example, "cut-panel", "mark", tmp_path) == pytest.approx(3 * 40 * (40 / 400 + 2 * 400 / 3000))


def test_a_mark_without_raster_settings_has_no_machine_time(tmp_path: Path) -> None:
    """Nobody knows how it is marked."""
    assert run_of(MARK.replace("SETTINGS", "").replace("WHAT", "label"), "cut-panel", "mark", tmp_path) is None


def test_a_hole_that_is_marked_is_not_cut_too(tmp_path: Path) -> None:
    """Four drill marks fewer to cut round."""
    marked = MARK.replace("SETTINGS", "raster speed: 400 mm/s, line spacing: 0.25 mm")
    with_holes = run_of(marked.replace("WHAT", "label"), "cut-panel", "cut", tmp_path / "a")
    without = run_of(marked.replace("WHAT", "drill"), "cut-panel", "cut", tmp_path / "b")
    assert with_holes is not None
    assert without is not None
    assert with_holes > without + 3 * 4 * 0.1


def test_kerf_and_lead_in_make_a_cut_longer(tmp_path: Path) -> None:
    """Each for itself."""
    plain = run_of("{}", "cut-panel", "cut", tmp_path / "a")
    kerf = run_of("operations/cut-panel.yaml: {settings: {kerf: 4 mm}}", "cut-panel", "cut", tmp_path / "b")
    lead = run_of("operations/cut-panel.yaml: {settings: {lead in: 4 mm}}", "cut-panel", "cut", tmp_path / "c")
    assert plain is not None
    assert kerf is not None
    assert lead is not None
    assert plain < kerf
    assert plain < lead


def test_two_layers_in_a_click_press_are_half_a_stroke_a_piece(tmp_path: Path) -> None:
    """A stroke of 1.2 s through two layers."""
    example = """
stations/press.yaml:
  stations:
    click: {title: Press, kind: click press, count: 1, distance: 1 m, attendance: constant, pace: {cycle: 1.2 s}}
operations/cut-panel.yaml: {station: click, settings: {die: A, force: 50 kN, layers: LAYERS}}
"""
    one, two = (run_of(example.replace("LAYERS", n), "cut-panel", "cut", tmp_path / n) for n in ("1", "2"))
    assert one == pytest.approx(1.2)
    assert two == pytest.approx(0.6)
