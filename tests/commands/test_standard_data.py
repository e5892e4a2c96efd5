"""`seamboard study --all`: the plant's standard data for people, programs and spreadsheets."""

from __future__ import annotations

import csv
import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from builder.commands.study import command


def study(*arguments: str) -> Result:
    return CliRunner().invoke(command, list(arguments))


def elements(demo: Path) -> dict[str, dict[str, Any]]:
    answer = study("--all", "--in", str(demo), "--json")
    assert answer.exit_code == 0, answer.output
    return {one["element"]: one for one in json.loads(answer.stdout)["elements"]}


def test_json_says_of_each_element_what_the_studies_say(demo: Path) -> None:
    found = elements(demo)
    panel, fold, tie = found["pick-up-panel"], found["fold-edge"], found["tie-bundle"]
    assert (panel["form"], fold["form"], tie["form"]) == ("constant", "constant + length", "typed")
    assert panel["interval_s"][0] < panel["time_s"] < panel["interval_s"][1]
    assert panel["readings"] == sum(step["n"] for step in panel["steps"])
    assert [one["of"] for one in fold["fit"]["coefficients"]] == ["constant", "length"]
    middle = fold["fit"]["middle"]
    assert middle["one_more_step_s"][1] > middle["interval_s"][1] > middle["time_s"]
    assert (tie["time_s"], tie["date"], tie["age_days"]) == (26.0, "2026-05-14", 195)
    assert "cut-keeper" in tie["rests_on_it"]


def test_candidates_are_timed_in_several_studies_and_not_derived_yet(demo: Path) -> None:
    answer = json.loads(study("--all", "--in", str(demo), "--json").stdout)
    derived = {step["step"] for one in answer["elements"] for step in one.get("steps", [])}
    assert answer["candidates"]
    for one in answer["candidates"]:
        assert len({name.partition("/")[0] for name in one["steps"]}) >= 2
        assert not derived.intersection(one["steps"])


def test_the_table_follows_the_studies(demo: Path) -> None:
    """A slower reading of a step makes its element slower: nothing is kept beside the studies."""
    before = elements(demo)["turn-quarter"]
    path = demo / "studies" / "bind-bar-mesh.csv"
    head, *rows = path.read_text(encoding="utf-8").split("step,cycle,reading,rating,note\n")
    lines = [line.split(",", 4) for line in rows[0].splitlines()]
    slower = [[a, b, f"{float(c) + 0.2:.1f}" if a == "turn" else c, d, e] for a, b, c, d, e in lines]
    text = head + "step,cycle,reading,rating,note\n" + "".join(",".join(line) + "\n" for line in slower)
    path.write_text(text, encoding="utf-8")
    after = elements(demo)["turn-quarter"]
    assert after["time_s"] == pytest.approx(before["time_s"] + 0.2, abs=0.02)


def test_to_writes_the_table_and_a_figure_of_each_fit(demo: Path, tmp_path: Path) -> None:
    answer = study("--all", "--in", str(demo), "--csv", "--to", str(tmp_path / "out"))
    assert answer.exit_code == 0, answer.output
    written = {path.name for path in (tmp_path / "out").iterdir()}
    assert written == {"standard-data.csv", "align-two-edges.svg", "fold-edge.svg", "stack-large-panel.svg"}
    text = (tmp_path / "out" / "standard-data.csv").read_text(encoding="utf-8")
    assert text == answer.stdout
    rows = {row["element"]: row for row in csv.DictReader(text.splitlines())}
    assert rows["fold-edge"]["time_s"] == ""
    assert float(rows["fold-edge"]["length_from_mm"]) == 130
    assert float(rows["pick-up-panel"]["low_s"]) < float(rows["pick-up-panel"]["time_s"])
    assert rows["tie-bundle"]["form"] == "typed"


def test_people_read_the_line_its_range_and_what_rests_on_it(demo: Path) -> None:
    text = study("--all", "--in", str(demo)).stdout
    line = next(line for line in text.splitlines() if line.startswith("fold-edge"))
    assert "s for each 100 mm" in line
    assert "130 mm to 564 mm" in line
    assert "nothing yet" in line
    assert "could be derived" in text


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--csv",), "--csv and --to belong to --all"),
        (("--all", "hem.csv"), "--all is of the whole plant"),
        (("--all", "--json", "--csv"), "--json or --csv, not both"),
    ],
)
def test_what_doesnt_go_together_is_refused(arguments: tuple[str, ...], words: str) -> None:
    answer = study(*arguments)
    assert answer.exit_code != 0
    assert words in f"{answer.output} {answer.exception}"


def test_a_plant_with_errors_shows_them_and_no_table(demo: Path) -> None:
    path = demo / "elements" / "handling.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("hem-pocket/lay", "hem-pockt/lay"), encoding="utf-8")
    answer = study("--all", "--in", str(demo))
    assert answer.exit_code == 1
    assert "no study is called `hem-pockt`" in answer.output
    assert "holds for" not in answer.output
