"""The commands: exit codes, JSON, the previous output untouched, never a traceback."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from tests.checking.overlay import lay_over

ROOT = Path(__file__).resolve().parents[2]
FINDING_KEYS = {"file", "line", "column", "rule", "severity", "message", "remedy", "folded"}


def run(*arguments: str | Path, cwd: Path = ROOT) -> subprocess.CompletedProcess[str]:
    """The program as a user starts it."""
    command = [sys.executable, "-m", "builder", *map(str, arguments)]
    return subprocess.run(command, capture_output=True, text=True, check=False, cwd=cwd)


def break_demo(demo: Path) -> None:
    """Put an error into a copy of the demo."""
    path = demo / "operations" / "sew-handle-end.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("sew: handle-box", "sew: handle-bow"), encoding="utf-8")


def test_check_of_the_demo_is_clean() -> None:
    """Exit 0 and nothing found."""
    answer = run("check", ROOT / "instructions")
    assert answer.returncode == 0
    assert "nothing found" in answer.stdout
    assert answer.stderr == ""


def test_check_shows_place_caret_reason_and_remedy(demo: Path) -> None:
    """As an engineer reads it."""
    break_demo(demo)
    answer = run("check", demo)
    assert answer.returncode == 1
    lines = answer.stderr.splitlines()
    assert lines[0].startswith("operations/sew-handle-end.yaml:")
    assert "[step-feature-missing]" in lines[0]
    caret = lines[2].index("^") - lines[2].index("|")
    assert lines[1][lines[1].index("|") + caret :].startswith("handle-bow")
    assert any(line.startswith("  why:") for line in lines)
    assert any("handle-box" in line for line in lines if line.startswith("  do:"))


def test_check_json_has_stable_keys(demo: Path) -> None:
    """One object, every finding with the same keys."""
    break_demo(demo)
    answer = run("check", demo, "--json")
    assert answer.returncode == 1
    whole = json.loads(answer.stdout)
    assert set(whole) == {"findings"}
    assert all(set(one) == FINDING_KEYS for one in whole["findings"])


def test_times_json_has_stable_keys() -> None:
    """The keys programs rely on."""
    whole = json.loads(run("times", "tool-roll", "--json").stdout)
    assert set(whole) == {"batch", "products"}
    product = whole["products"][0]
    assert set(product) == {
        "product",
        "variant",
        "colour",
        "standard_minutes",
        "machine_minutes",
        "estimate_share",
        "interval",
        "operations",
        "stations",
        "labour_grades",
        "materials",
    }
    assert set(product["interval"]) == {
        "low_minutes",
        "high_minutes",
        "confidence",
        "width_from_estimates",
        "sources",
        "time_next",
    }
    assert set(product["materials"][0]) == {
        "material",
        "area_mm2",
        "length_mm",
        "pieces",
        "seam_mm",
        "thread_mm",
        "thread_most_mm",
    }
    assert set(product["operations"][0]) == {
        "operation",
        "station",
        "labour_grade",
        "quantity",
        "own_minutes",
        "own_machine_minutes",
        "cumulative_minutes",
        "estimate_share",
        "run_share",
        "allowances",
        "comes_from",
    }
    assert set(product["stations"][0]) == {
        "station",
        "minutes",
        "machine_minutes",
        "pieces_a_shift_by_labour",
        "pieces_a_shift_by_machine",
        "held_by",
    }


@pytest.mark.parametrize(
    "arguments",
    [("times", "tool-rol"), ("sheets", "nothing"), ("check", "no-such-folder"), ("bild",), ("check", "--fast")],
)
def test_wrong_usage_is_exit_2_and_one_message(arguments: tuple[str, ...]) -> None:
    """Never a traceback."""
    answer = run(*arguments)
    assert answer.returncode == 2
    assert "Traceback" not in answer.stderr
    assert answer.stderr.strip()


def test_a_build_with_an_error_leaves_the_output_as_it_was(tmp_path: Path) -> None:
    """Byte for byte; mended and rebuilt, it is byte for byte what it was."""
    plant, out = lay_over("{}", tmp_path / "plant"), tmp_path / "out"
    assert run("build", plant, "--to", out, "--quiet").returncode == 0
    before = {path: path.read_bytes() for path in sorted(out.rglob("*")) if path.is_file()}
    assert len(before) > 40
    hem = plant / "operations" / "sew-hem.yaml"
    typed = hem.read_text(encoding="utf-8")
    hem.write_text(typed.replace("sew: hem-seam", "sew: hem-sean"), encoding="utf-8")
    answer = run("build", plant, "--to", out)
    assert answer.returncode == 1
    assert "as it was" in answer.stderr
    assert {path: path.read_bytes() for path in sorted(out.rglob("*")) if path.is_file()} == before
    hem.write_text(typed, encoding="utf-8")
    again = tmp_path / "again"
    assert run("build", plant, "--to", again, "--quiet").returncode == 0
    after = {path.relative_to(again): path.read_bytes() for path in again.rglob("*") if path.is_file()}
    assert after == {path.relative_to(out): content for path, content in before.items()}


def test_help_loads_nothing_heavy() -> None:
    """`--help` answers in a blink: only click and the list of commands are imported."""
    code = (
        "import sys\nsys.argv = ['seamboard', '--help']\nfrom builder.commands import main\n"
        "try:\n    main()\nexcept SystemExit:\n    pass\n"
        "heavy = {'pydantic', 'yaml', 'jinja2', 'typst', 'rich', 'fontTools', 'PIL', 'cairosvg', 'markdown_it'}\n"
        "print('loaded:', sorted(heavy & set(sys.modules)), [m for m in sys.modules if m.startswith('builder.') "
        "and m.split('.')[1] not in ('commands', 'errors')])"
    )
    answer = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT)
    assert answer.stdout.splitlines()[-1] == "loaded: [] []"
    assert "build" in answer.stdout


def test_sheets_makes_one_pdf(tmp_path: Path) -> None:
    """All sheets of a station in one tagged PDF."""
    from pypdf import PdfReader

    target = tmp_path / "station.pdf"
    assert run("sheets", "bartacker", "--to", target).returncode == 0
    reader = PdfReader(target)
    assert len(reader.pages) > 2
    assert reader.trailer["/Root"]["/MarkInfo"]["/Marked"]


def test_times_of_one_variant() -> None:
    """A size and a colour; a name the product hasn't is wrong usage."""
    whole = json.loads(run("times", "tool-roll", "--variant", "L", "--json").stdout)
    assert [one["variant"] for one in whole["products"]] == ["L"]
    answer = run("times", "tool-roll", "--variant", "XXL")
    assert answer.returncode == 2
    assert "no variant XXL" in answer.stderr
    assert run("times", "--variant", "L").returncode == 2


def test_explain_says_why_what_to_do_and_shows_both_examples() -> None:
    """For a rule; a wrong slug gets a near one."""
    answer = run("explain", "protection-missing")
    assert answer.returncode == 0
    for words in ("safety", "why:", "do:", "found:", "not found:", "stations/all.yaml"):
        assert words in answer.stdout
    assert "did you mean gauge-missing?" in run("explain", "gauge-mising").stderr
    assert "text-tab" in run("explain").stdout
