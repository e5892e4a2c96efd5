"""`seamboard words`: the file to translate, the table, and what comes back. `seamboard cards`: a station's cards."""

from __future__ import annotations

import csv
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest
import yaml

from tests.checking.overlay import SMALL_PLANT, lay_over


@pytest.fixture
def plant(tmp_path: Path) -> Path:
    return lay_over("{}", tmp_path / "plant")


@dataclass(frozen=True)
class Answer:
    """What a command said, and its exit code."""

    exit_code: int
    output: str


def run(*words: object) -> Answer:
    command = [sys.executable, "-m", "builder", *map(str, words)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    return Answer(done.returncode, done.stdout + done.stderr)


def test_a_new_language_lists_every_text_and_keeps_what_is_said(plant: Path) -> None:
    assert run("words", "es", "--in", plant).exit_code == 0
    file = plant / "languages" / "es.yaml"
    typed = yaml.safe_load(file.read_text(encoding="utf-8"))
    assert typed["in work"] is True
    assert typed["texts"]["operation/sew-hem/hem/do"] == {"of": "Sew the hem."}
    said = file.read_text(encoding="utf-8").replace('of: "Sew the hem."', 'of: "Sew the hem."\n    is: "Cosa."')
    file.write_text(said, encoding="utf-8")
    again = run("words", "es", "--in", plant)
    assert again.exit_code == 0
    assert "missing" in again.output
    assert file.read_text(encoding="utf-8") == said


def test_a_table_goes_out_and_comes_back(plant: Path, tmp_path: Path) -> None:
    table = tmp_path / "es.csv"
    assert run("words", "es", "--in", plant, "--csv", table).exit_code == 0
    assert not (plant / "languages" / "es.yaml").exists()
    rows = list(csv.reader(table.read_text(encoding="utf-8-sig").splitlines()))
    for row in rows[1:]:
        row[3], row[4] = f"«{row[2]}»", "T1"
    with table.open("w", encoding="utf-8", newline="") as out:
        csv.writer(out).writerows(rows)
    taken = run("words", "es", "--in", plant, "--from", table)
    assert taken.exit_code == 0
    assert "all translated" in taken.output
    typed = yaml.safe_load((plant / "languages" / "es.yaml").read_text(encoding="utf-8"))
    assert typed["texts"]["operation/sew-hem/hem/do"]["is"] == "«Sew the hem.»"


def test_a_language_for_one_product_lists_only_its_work(plant: Path) -> None:
    assert run("words", "vi", "--in", plant, "--product", "pouch").exit_code == 0
    typed = yaml.safe_load((plant / "languages" / "vi.yaml").read_text(encoding="utf-8"))
    assert typed["products"] == ["pouch"]
    assert "operation/sew-hem/hem/do" in typed["texts"]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("words", "xx-nonsense"), "no code of a language"),
        (("words", "es", "--product", "sail"), "no product is called sail"),
        (("cards", "no-such-station"), "no-such-station"),
    ],
)
def test_what_nobody_knows_is_wrong_usage(plant: Path, words: tuple[str, ...], told: str) -> None:
    answer = run(*words, "--in", plant)
    assert answer.exit_code != 0
    assert told in answer.output


def test_a_table_that_is_none_changes_nothing(plant: Path, tmp_path: Path) -> None:
    table = tmp_path / "es.csv"
    table.write_text("a,b\n1,2\n", encoding="utf-8")
    answer = run("words", "es", "--in", plant, "--from", table)
    assert answer.exit_code == 1
    assert "columns" in answer.output
    assert not (plant / "languages").exists()


def test_the_cards_of_a_station_are_one_file(plant: Path, tmp_path: Path) -> None:
    out = tmp_path / "cards.pdf"
    assert run("cards", "lockstitch", "--in", plant, "--to", out, "--quiet").exit_code == 0
    assert out.read_bytes().startswith(b"%PDF")


def test_training_sheets_of_a_product(plant: Path, tmp_path: Path) -> None:
    out = tmp_path / "training.pdf"
    assert run("sheets", "pouch", "--training", "--in", plant, "--to", out, "--quiet").exit_code == 0
    assert out.read_bytes().startswith(b"%PDF")
    assert SMALL_PLANT.is_dir()
