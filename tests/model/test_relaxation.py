"""Relaxation as typed: one message a fault, at its place, with what was probably meant."""

from __future__ import annotations

from pathlib import Path
from typing import Any, get_args

import pytest

from builder.model import FORCE_ROWS_LB, PUBLISHED_PERCENT, Quantity, Relaxation, force_of_row, force_row_lb
from builder.pipeline import check_plant
from tests.checking.overlay import SMALL_PLANT, lay_over

STATION = "stations/all.yaml"


def one_fault(example: str, tmp_path: Path) -> tuple[str, str, str]:
    """(message, remedy, text at its place) of the one finding of the small plant with an example laid over it."""
    folder = lay_over(example, tmp_path / "plant")
    (found,) = check_plant(folder).findings
    line = (folder / found.place.file).read_text(encoding="utf-8").splitlines()[found.place.line - 1]
    return found.message, found.remedy, line[found.place.column - 1 :]


@pytest.mark.parametrize(
    ("typed", "at", "message", "remedy"),
    [
        ("light: wel below", "wel below", "`light` can't be `wel below`", "Did you mean `well below`?"),
        ("noise: high pitched loud", "high", "`noise` can't be", "Did you mean `high-pitched loud`?"),
        ("position: awkward", "awkward", "`position` can't be", "slightly awkward, awkward bending, very awkward"),
        ("standing: sometimes", "sometimes", "neither yes nor no", "yes or no"),
        ("monotonous: low", "monotonous", "`monotonous` is no key", "monotony"),
        ("force: 80 lb", "80 lb", "ends at 70 lb, which is 31.8 kg or 311 N", "hoist"),
        ("force: 10", "", "which unit?", "10 kg, 10 lb or 10 N"),
        ("force: 3 stone", "stone", "unknown unit stone", ""),
        ("air: 12 %", "12 %", "10 % at most", "better the air"),
    ],
)
def test_a_wrong_word_of_a_station_gives_one_message(
    typed: str, at: str, message: str, remedy: str, tmp_path: Path
) -> None:
    """At the word, with the choices or the nearest of them."""
    found = one_fault(f"{STATION}: {{stations: {{bench: {{relaxation: {{{typed}}}}}}}}}", tmp_path)
    assert message in found[0]
    assert remedy in found[1]
    assert found[2].startswith(at)


@pytest.mark.parametrize(
    ("typed", "message", "remedy"),
    [
        (
            "'noise, intermitent loud': 3 %",
            "`noise, intermitent loud` is no figure",
            "Did you mean `noise, intermittent",
        ),
        ("'noise, howling': 3 %", "`noise, howling` is no figure", "Write one of: noise, continuous; noise, interm"),
        ("music: 3 %", "`music` is no figure", "standing; position; force; light; attention; noise"),
        ("air: 3 %", "air has no figure to replace", "at the station"),
        ("standing: 3", "3 without a unit is 300 %", "3 %"),
    ],
)
def test_a_wrong_figure_of_the_plant_gives_one_message(typed: str, message: str, remedy: str, tmp_path: Path) -> None:
    """At the key, or at the value if that is wrong."""
    found = one_fault(f"plant.yaml: {{relaxation: {{{typed}}}}}", tmp_path)
    assert message in found[0]
    assert remedy in found[1]
    name = typed.partition(":")[0].strip("'")
    assert found[2].lstrip("'").startswith("3" if "without a unit" in message else name)


def test_allowances_that_take_the_whole_shift_are_refused(tmp_path: Path) -> None:
    """1 ÷ (1 − a) has no answer there; as a share of basic time the same figures are only generous."""
    typed = "{convention: %s, personal: 50 %%, fatigue: 40 %%, delays: 10 %%}"
    found = one_fault(f"plant.yaml: {{allowances: {typed % 'share of the shift'}}}", tmp_path / "a")
    assert "no time is left to work" in found[0]
    assert found[2].startswith("convention:")
    assert check_plant(lay_over(f"plant.yaml: {{allowances: {typed % 'share of basic time'}}}", tmp_path / "b")).results


def test_every_word_of_a_station_is_a_figure_of_the_table() -> None:
    """And each figure but the forces is a word of a station."""
    names: list[str] = []
    for factor, info in Relaxation.model_fields.items():
        names += [f"{factor}, {word}" for word in _choices(info.annotation)]
    assert ["standing", *names] == [one for one in PUBLISHED_PERCENT if not one.startswith("force")]


def _choices(annotation: Any) -> list[str]:
    return [word for one in get_args(annotation) for word in get_args(one) if isinstance(word, str)]


@pytest.mark.parametrize("row", FORCE_ROWS_LB)
def test_a_rows_own_force_lies_in_it(row: int) -> None:
    """And a hair more in the next, or beyond the table."""
    force = force_of_row(row)
    assert force_row_lb(force) == row
    above = force_row_lb(Quantity.of(force.value * 1001 / 1000, "force"))
    assert above is None or above > row


def test_the_small_plant_has_no_relaxation() -> None:
    """So what these tests find is what they typed."""
    assert "relaxation" not in (SMALL_PLANT / STATION).read_text(encoding="utf-8")
