"""`seamboard study`: numbers for people and programs, clear words for bad files, a form to fill in."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from builder.commands.study import command

KEYS = {"step", "n", "mean_s", "sd_s", "rating", "basic_s", "interval_s", "more_needed", "outliers"}
HEAD = "# operation: sew-hem\n# date: 2026-10-01\n"


def study(folder: Path, text: str, *arguments: str) -> Result:
    """The command on a file of its own, without a plant."""
    file = folder / "hem.csv"
    file.write_text(text, encoding="utf-8")
    return CliRunner().invoke(command, [str(file), *arguments])


def plain(answer: Result) -> list[dict[str, object]]:
    return list(json.loads(answer.stdout)["steps"])


def test_json_has_the_stable_keys(tmp_path: Path) -> None:
    rows = "".join(f"lay,{i},{20 + i % 3},100,\n" for i in range(1, 8)) + "lay,8,60,100,\nhem,1,3,90,\n"
    answer = study(tmp_path, HEAD + "step,cycle,reading,rating,note\n" + rows, "--json")
    assert answer.exit_code == 0
    lay, hem = plain(answer)
    assert set(lay) == KEYS
    assert lay["outliers"] == [8]
    assert (hem["n"], hem["sd_s"], hem["interval_s"], hem["more_needed"]) == (1, None, None, 1)
    assert hem["basic_s"] == pytest.approx(2.7)


def test_the_table_says_what_was_asked_and_how_it_counts(tmp_path: Path) -> None:
    text = HEAD + "step,cycle,reading,rating,note\nlay,1,4,100,\nlay,2,4.4,100,\n"
    answer = study(tmp_path, text, "--needed", "normal", "--within", "10")
    assert "± 10 % at 95 % (normal)" in answer.stdout
    assert "lay" in answer.stdout


def test_a_study_without_a_head_is_read_with_a_warning(tmp_path: Path) -> None:
    answer = study(tmp_path, "step,cycle,reading,rating,note\nlay,1,4,100,\nlay,2,4.1,100,\n", "--json")
    assert answer.exit_code == 0
    assert "[study-without-head]" in answer.stderr
    assert plain(answer)[0]["n"] == 2


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("stp,cycle,reading,rating\nlay,1,3,100\n", "the header lacks step"),
        ("step,cycle,reading,rating\nlay,1,-3,100\n", "the reading is -3"),
        ("", "empty"),
        ("no table at all", "header lacks"),
    ],
)
def test_a_bad_file_is_exit_1_with_place_and_remedy(tmp_path: Path, text: str, words: str) -> None:
    answer = study(tmp_path, text)
    assert answer.exit_code == 1
    assert words in answer.stderr
    assert "do:" in answer.stderr
    assert answer.stdout == ""


def test_single_and_equal_readings_are_told(tmp_path: Path) -> None:
    rows = "".join(f"lay,{i},4,100,\n" for i in range(1, 7)) + "hem,1,3,90,\n"
    answer = study(tmp_path, HEAD + "step,cycle,reading,rating,note\n" + rows, "--json")
    assert answer.exit_code == 0
    assert "[readings-equal]" in answer.stderr
    assert "[reading-single]" in answer.stderr
    assert plain(answer)[0]["interval_s"] == [4, 4]


def test_no_file_is_wrong_usage(tmp_path: Path) -> None:
    assert CliRunner().invoke(command, []).exit_code != 0
    assert CliRunner().invoke(command, [str(tmp_path / "gone.csv")]).exit_code != 0


def test_a_form_states_the_conditions_and_reads_back_once_filled_in(demo: Path, tmp_path: Path) -> None:
    """Head with station, size, settings and dimensions; every step in every cycle, seldom ones once."""
    form = CliRunner().invoke(command, ["--form", "hem-pocket", "--in", str(demo), "--cycles", "3"]).stdout
    assert "# station: lockstitch\n" in form
    assert "# stitch length:" in form
    assert form.count("\nsew,") == 3
    assert form.count("\nuntie,") == 1
    filled = "".join(
        line.replace(",,,", ",3.2,100,") + "\n" for line in form.splitlines() if not line.startswith("untie")
    )
    answer = study(tmp_path, filled, "--json")
    assert answer.exit_code == 0, answer.stderr
    assert {one["step"]: one["n"] for one in plain(answer)}["sew"] == 3
