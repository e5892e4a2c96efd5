"""What a station's page says of its allowances."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.pipeline import check_plant, plant_views_of
from builder.view import StationPage
from tests.checking.overlay import lay_over


def page(example: str, tmp_path: Path, station: str = "bench") -> StationPage:
    """A station's page of the small plant, fatigue 4 %, with an example laid over it."""
    views = plant_views_of(check_plant(lay_over(example, tmp_path / "plant")))
    return next(one for one in views.stations if one.name == station)


STRAINED = """
plant.yaml:
  units: in
  allowances: {fatigue: 4 %}
  relaxation: {"monotony, medium": 3 %}
stations/all.yaml:
  stations: {bench: {relaxation: {standing: yes, force: 4.5 kg, air: 1 %, monotony: medium}}}
"""


def test_each_allowance_is_a_row_with_its_source_and_the_last_is_all_of_them(tmp_path: Path) -> None:
    """A force stands with its own figure and the row of the table that counts."""
    assert page(STRAINED, tmp_path).allowances == (
        ("personal", "5 %", "plant’s own"),
        ("fatigue", "4 %", "plant’s own"),
        ("delays", "2 %", "plant’s own"),
        ("standing", "2 %", "published table"),
        ("force, 9.92 lb (4.5 kg), row of 10 lb", "1 %", "published table"),
        ("monotony, medium", "3 %", "plant’s own"),
        ("air", "1 %", "plant’s own"),
        ("in all", "18 %", "standard time is 1.18 × basic time"),
    )


def test_the_note_names_the_published_table_only_where_it_counts(tmp_path: Path) -> None:
    """And says what is rested inside a machine's time."""
    assert "table 7.4" in page(STRAINED, tmp_path / "a").allowance_note
    example = "stations/all.yaml: {stations: {laser: {rest inside: yes}}}"
    laser = page(example, tmp_path / "b", "laser")
    assert "table 7.4" not in laser.allowance_note
    assert "only what is left over is added" in laser.allowance_note


def test_shares_of_the_shift_are_shown_as_shares_of_basic_time(tmp_path: Path) -> None:
    """8, 8 and 4 % of the shift are 10, 10 and 5 % of basic time; policy of 4 % on the 1.25 makes 1.3."""
    typed = "{convention: share of the shift, personal: 8 %, fatigue: 8 %, delays: 4 %, policy: 4 %}"
    bench = page(f"plant.yaml: {{allowances: {typed}}}", tmp_path)
    assert [share for _, share, _ in bench.allowances] == ["10 %", "10 %", "5 %", "4 %", "30 %"]
    assert bench.allowances[-1][2] == "standard time is 1.3 × basic time"
    assert "typed as shares of the shift" in bench.allowance_note


@pytest.mark.parametrize("example", ["{}", "stations/all.yaml: {stations: {bench: {relaxation: {noise: continuous}}}}"])
def test_every_station_has_its_allowances(example: str, tmp_path: Path) -> None:
    """Those of the plant at least."""
    assert page(example, tmp_path).allowances[0] == ("personal", "5 %", "plant’s own")


def test_relaxation_is_no_part_of_the_method(tmp_path: Path) -> None:
    """Another allowance changes times, and no sheet's code."""
    before = plant_views_of(check_plant(lay_over("{}", tmp_path / "a")))
    example = "stations/all.yaml: {stations: {lockstitch: {relaxation: {attention: very fine}}}}"
    after = plant_views_of(check_plant(lay_over(example, tmp_path / "b")))
    pairs = list(zip(before.sheets, after.sheets, strict=True))
    assert [one.fingerprint for one, _ in pairs] == [other.fingerprint for _, other in pairs]
    changed = [one.operation for one, other in pairs if one.standard_minutes != other.standard_minutes]
    assert changed == ["sew-hem"]
