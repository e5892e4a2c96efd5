"""Constants of sewing stations from the studies of the demo."""

from __future__ import annotations

import pytest

from builder.computing import StationFit, station_fits
from builder.pipeline import check_plant
from tests.conftest import ROOT


@pytest.fixture(scope="module")
def fits() -> dict[tuple[str, str], StationFit]:
    checked = check_plant(ROOT / "instructions")
    assert checked.linked is not None
    assert checked.book is not None
    assert checked.results is not None
    values = checked.linked.dimensions.values
    found = station_fits(checked.linked.model, checked.book, checked.results, values)
    return {(one.station, one.held): one for one in found}


def test_enough_seams_give_a_speed_with_its_error(fits: dict[tuple[str, str], StationFit]) -> None:
    """A dozen seams along an edge stop: a speed under the machine's top, a corner stop, errors above 0."""
    one = fits["lockstitch", "edge stop"]
    assert one.seams >= 10
    assert one.fit is not None
    assert 20 < one.fit.top_speed_st_s.value < 3500 / 60
    assert one.fit.top_speed_st_s.error > 0
    assert one.fit.corner_s is not None
    assert 0.2 < one.fit.corner_s.value < 1.2


def test_too_few_seams_say_how_many_are_needed(fits: dict[tuple[str, str], StationFit]) -> None:
    one = fits["overlock", "edge stop"]
    assert one.fit is None
    assert "timed seams are needed" in one.refusal


def test_machines_that_pace_themselves_are_left_out(fits: dict[tuple[str, str], StationFit]) -> None:
    assert not [station for station, _ in fits if station in ("bartacker", "laser")]
