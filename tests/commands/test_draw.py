"""`seamboard draw`: figures as files of their own."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree

from tests.commands.test_commands import ROOT, break_demo, run

SVG = "{http://www.w3.org/2000/svg}"


def test_a_part_is_drawn_from_both_sides_with_its_size(tmp_path: Path) -> None:
    """Its texts are paths, so that the file needs no font."""
    answer = run("draw", "grip-panel", "--in", ROOT / "instructions", "--to", tmp_path)
    assert answer.returncode == 0, answer.stderr
    names = {path.name for path in tmp_path.glob("*.svg")}
    assert {"grip-panel-right.svg", "grip-panel-wrong.svg"} <= names
    root = ElementTree.parse(tmp_path / "grip-panel-right.svg").getroot()
    assert not list(root.iter(f"{SVG}text"))
    assert (tmp_path / "grip-panel-right.png").read_bytes().startswith(b"\x89PNG")


def test_an_operation_is_drawn_step_by_step_in_all_sizes(tmp_path: Path) -> None:
    answer = run("draw", "sew-handle-end", "--in", ROOT / "instructions", "--to", tmp_path, "--quiet")
    assert (answer.returncode, answer.stdout) == (0, "")
    assert (tmp_path / "sew-handle-end-4.svg").exists()
    assert any("--" in path.stem for path in tmp_path.glob("*.svg"))


def test_a_size_changes_the_part(tmp_path: Path) -> None:
    for size in ("S", "L"):
        command = ("draw", "roll-back", "--in", ROOT / "instructions", "--of", "tool-roll", "--size", size)
        assert run(*command, "--to", tmp_path / size).returncode == 0
    small, large = (((tmp_path / size / "roll-back-right.svg").read_bytes()) for size in ("S", "L"))
    assert small != large


def test_unknown_names_are_wrong_usage(tmp_path: Path) -> None:
    folder = ("--in", ROOT / "instructions", "--to", tmp_path)
    wrong = run("draw", "grip-pannel", *folder)
    assert wrong.returncode == 2
    assert "grip-panel" in wrong.stderr
    assert run("draw", "roll-back", *folder, "--of", "tool-roll", "--size", "XXL").returncode == 2
    assert run("draw", "roll-back", *folder, "--size", "L").returncode == 2
    assert not list(tmp_path.iterdir())


def test_a_plant_with_errors_is_not_drawn(demo: Path, tmp_path: Path) -> None:
    break_demo(demo)
    answer = run("draw", "grip-panel", "--in", demo, "--to", tmp_path / "figures")
    assert answer.returncode == 1
    assert "step-feature-missing" in answer.stderr
    assert not (tmp_path / "figures").exists()
