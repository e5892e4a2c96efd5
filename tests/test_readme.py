"""The README keeps its word: its example is a plant's files without a finding, its commands and pictures exist."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import yaml

from builder.commands.group import COMMANDS
from builder.pipeline import check_plant

ROOT = Path(__file__).resolve().parents[1]
TEXT = (ROOT / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"```yaml\n# (\S+)\n(.*?)```", TEXT, re.DOTALL)


WHOLE = ("parts/panel.yaml", "operations/sew-label.yaml")


def write_example(demo: Path) -> None:
    """The README's whole files in a copy of the demo; what it shows of others is a few lines of them."""
    for file, content in BLOCKS:
        if file in WHOLE:
            (demo / file).write_text(f"# {file}\n{content}", encoding="utf-8")


def test_the_example_is_clean_and_gets_its_sheet(demo: Path, tmp_path: Path) -> None:
    """As promised: five minutes, no finding, a page and a sheet."""
    write_example(demo)
    cut = "operation: cut-label-panel\ntitle: Cut\ncode: CUT-90\nstation: bench\nmakes: panel\n"
    (demo / "operations" / "cut-label-panel.yaml").write_text(cut + "steps: [{step: cut, do: Cut it., time: 9 s}]\n")
    product = "product: label-panel\ntitle: Panel with a label\nroute: [cut-label-panel, sew-label]\n"
    (demo / "products" / "label-panel.yaml").write_text(product)
    findings = check_plant(demo).findings
    assert findings == (), [(str(one.place), one.message) for one in findings]
    command = [sys.executable, "-m", "builder", "build", str(demo), "--to", str(tmp_path / "out"), "--quiet"]
    subprocess.run(command, check=True)  # in a process of its own, which may fork
    assert (tmp_path / "out" / "operations" / "sew-label.html").exists()
    assert (tmp_path / "out" / "sheets" / "sew-label.pdf").exists()


def test_lines_of_other_files_can_be_typed_into_them(demo: Path) -> None:
    """Rules, sizes, colours, elements: in the place of the demo's own lines they leave no finding."""
    pieces = [(file, content) for file, content in BLOCKS if file not in WHOLE]
    assert {file for file, _ in pieces} == {
        "plant.yaml",
        "products/tool-roll.yaml",
        "operations/hem-strip-stiff.yaml",
        "elements/handling.yaml",
        "templates/handle-edge-gauge.yaml",
    }
    for file, content in pieces:
        path = demo / file
        keys = yaml.load(content, yaml.BaseLoader)
        typed = yaml.load(path.read_text(encoding="utf-8"), yaml.BaseLoader)
        assert set(keys) <= {*typed, "rules"}
        if "elements" in keys:
            assert set(keys["elements"]) <= set(typed["elements"])
            keys = {"elements": {**typed["elements"], **keys["elements"]}}
        path.write_text(yaml.safe_dump({**typed, **keys}, sort_keys=False, allow_unicode=True), encoding="utf-8")
    findings = check_plant(demo).findings
    assert findings == (), [(str(one.place), one.message) for one in findings]


def test_the_mistake_it_shows_is_found_as_shown(demo: Path) -> None:
    """Place and words of the finding printed in the README."""
    write_example(demo)
    shown = re.search(r"```\n(operations/sew-label.yaml:\d+:\d+): error: (.*?) \[(.*?)\]\n```", TEXT)
    assert shown is not None
    path = demo / "operations" / "sew-label.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("is: ± 1 mm", "is: 26 mm ± 1"), encoding="utf-8")
    found = {(str(one.place), one.message, one.rule) for one in check_plant(demo).findings}
    assert shown.groups() in found, found


def test_every_command_is_described() -> None:
    """And no other."""
    assert set(re.findall(r"^\| `seamboard (\w+)", TEXT, re.MULTILINE)) == set(COMMANDS)


def test_every_picture_is_there() -> None:
    """Linked pictures exist."""
    pictures = re.findall(r"!\[[^\]]+\]\(([^)]+)\)", TEXT)
    assert len(pictures) == 2
    assert all((ROOT / picture).is_file() for picture in pictures)
