"""Themes: a folder with what it changes over the program's own; the plant's colour and logo."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.errors import SeamboardError
from builder.pipeline import build_plant, check_plant
from builder.rendering.theme import theme_names, theme_of
from tests.checking.overlay import lay_over


def test_the_program_comes_with_two() -> None:
    assert {"manila", "chalk"} <= theme_names()


def test_a_theme_takes_what_it_lacks_from_the_programs_own() -> None:
    chalk, manila = theme_of("chalk"), theme_of("manila")
    assert set(chalk.assets()) == set(manila.assets())
    assert chalk.assets()["theme.css"] != manila.assets()["theme.css"]
    assert chalk.assets()["site.css"] == manila.assets()["site.css"]
    assert chalk.digest() != manila.digest()


def test_a_plants_own_folder_comes_first(tmp_path: Path) -> None:
    plant = lay_over("plant.yaml: {theme: ours}", tmp_path / "plant")
    site = plant / "themes" / "ours" / "site"
    site.mkdir(parents=True)
    (site / "home.html").write_text('{% extends "frame.html" %}{% block card %}<h1>Ours</h1>{% endblock %}')
    assert build_plant(plant, tmp_path / "out").written is not None
    home = (tmp_path / "out" / "index.html").read_text(encoding="utf-8")
    assert "<h1>Ours</h1>" in home
    assert "Content-Security-Policy" in home
    assert list((tmp_path / "out" / "sheets").glob("*.pdf"))


def test_every_page_and_sheet_is_made_in_the_second_theme(tmp_path: Path) -> None:
    plant = lay_over("plant.yaml: {theme: chalk}", tmp_path / "plant")
    assert build_plant(plant, tmp_path / "out").written is not None
    assert "chalk" in (tmp_path / "out" / "assets" / "theme.css").read_text(encoding="utf-8")


def test_a_name_nobody_has_is_a_finding_with_a_suggestion(tmp_path: Path) -> None:
    (found,) = check_plant(lay_over("plant.yaml: {theme: chalc}", tmp_path / "plant")).findings
    assert found.rule == "name-unknown"
    assert "chalk" in found.remedy
    with pytest.raises(SeamboardError, match="chalc"):
        theme_of("chalc")
